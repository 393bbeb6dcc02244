import type { Box } from '../../geometry/box.ts';
import { AXES, type Axis } from '../../geometry/vector.ts';
import { corner, type PartMesh } from './part-mesh.ts';

/** A mark on a rod. `at` in millimetres of the world. */
export interface Station {
  at: number;
  name?: string;
  centre?: boolean;
  picked?: boolean;
  /** 3 picked, 2 an overall end, 1 a main face; the lowest give way when the room is short. */
  rank: number;
}

export interface PartStations {
  low: number;
  high: number;
  at: number[];
}

const NEAR = 0.05;
const near = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

/** Areas of the faces square to an axis that look outwards, by their place on it. */
function planes(part: PartMesh, axis: Axis): { low: number; high: number; areas: Map<number, number> } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < part.positions.length / 3; i++) {
    const v = corner(part, i)[axis];
    low = Math.min(low, v);
    high = Math.max(high, v);
  }
  const middle = (low + high) / 2;
  const areas = new Map<number, number>();
  part.normals.forEach((n, t) => {
    if (Math.abs(n[axis]) < 0.999) return;
    const v = Math.round(corner(part, part.indices[3 * t]!)[axis] * 100) / 100;
    if (v < middle === n[axis] < 0) areas.set(v, (areas.get(v) ?? 0) + part.areas[t]!);
  });
  return { low, high, areas };
}

/** Stations of a part: its ends, and the shoulders that look outwards. Recesses and small mortises stay quiet. */
export function partStations(part: PartMesh, axis: Axis): PartStations {
  const { low, high, areas } = planes(part, axis);
  const most = Math.max(0, ...areas.values());
  const at = [...areas].filter(([v, a]) => a > 0.16 * most || near(v, low) || near(v, high)).map(([v]) => v);
  for (const end of [low, high]) if (!at.some(v => near(v, end))) at.push(Math.round(end * 10) / 10);
  return { low, high, at: at.sort((a, b) => a - b) };
}

/** Ends and middle of the whole, and the faces that count most on each axis, named by the part they belong to. */
export function mainStations(
  parts: readonly PartMesh[],
  names: ReadonlyMap<string, string>,
  bounds: Box,
): Record<Axis, Station[]> {
  const pick = (axis: Axis): Station[] => {
    const faces = new Map<number, Plane>();
    for (const part of parts) {
      const { low, high, areas } = planes(part, axis);
      for (const [v, way] of [
        [low, -1],
        [high, 1],
      ] as const) {
        const at = tenth(v);
        const area = areas.get(Math.round(v * 100) / 100) ?? 0;
        const known = faces.get(at) ?? { net: 0, parts: 0, name: '', most: -1 };
        known.net += way * area;
        if (area > 0) known.parts++;
        if (area > known.most) {
          known.most = area;
          known.name = names.get(part.instance) ?? '';
        }
        faces.set(at, known);
      }
    }
    return chosen(faces, bounds.min[axis], bounds.max[axis], MOST_MAIN[axis]);
  };
  return Object.fromEntries(AXES.map(k => [k, pick(k)])) as Record<Axis, Station[]>;
}

/** Faces in one plane. Where boards abut, what looks one way takes away what looks the other: no main face. */
interface Plane {
  /** Area that looks up the axis less area that looks down it, mm2. */
  net: number;
  parts: number;
  name: string;
  most: number;
}

const tenth = (v: number): number => Math.round(v * 10) / 10;
/** Heights carry names and stand in two columns: there is room for more of them. */
const MOST_MAIN: Record<Axis, number> = { x: 4, y: 4, z: 6 };

/** A plane that many parts share is a station of the setting-out, even where each is narrow. */
const weight = (plane: Plane): number => Math.sqrt(Math.abs(plane.net)) * plane.parts;

function chosen(faces: Map<number, Plane>, low: number, high: number, most: number): Station[] {
  const nameAt = (v: number): string => [...faces].find(([at]) => near(at, v))?.[1].name ?? '';
  const middle = (low + high) / 2;
  const mirrored = (at: number): number => tenth(2 * middle - at);
  const ranked = [...faces]
    .filter(([at, f]) => at > low + NEAR && at < high - NEAR && Math.abs(f.net) > 1)
    .sort((a, b) => weight(b[1]) - weight(a[1]) || a[0] - b[0])
    .map(([at]) => at);
  const inner = new Set<number>();
  for (const at of ranked) {
    if (inner.size >= most) break;
    inner.add(at);
    if (faces.has(mirrored(at))) inner.add(mirrored(at));
  }
  const even = inner.size > 0 && [...inner].every(at => faces.has(mirrored(at)));
  const out: Station[] = [
    { at: low, name: nameAt(low), rank: 2 },
    ...[...inner].map((at): Station => ({ at, name: nameAt(at), rank: 1 })),
    { at: high, name: nameAt(high), rank: 2 },
  ];
  if (even) out.push({ at: middle, centre: true, rank: 1 });
  return out.sort((a, b) => a.at - b.at);
}
