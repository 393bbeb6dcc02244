import { type Box, boundsOf, box, intersectBoxes } from '../geometry/box.ts';
import { type Frame, toLocal, toWorld } from '../geometry/frame.ts';
import { AXES, type Axis, cross, sub, type Vec3, vec } from '../geometry/vector.ts';
import { type Cut, POLYGON_AXES, type Size } from '../results/cuts.ts';
import type { Triangles } from '../results/kernel.ts';
import type { Instance, Piece } from '../results/piece.ts';
import { hasShape, type SolidCache } from '../solids/shapes.ts';

/** The play found between two cuts that are to fit, and the play stated for them. */
export interface Fit {
  /** Id of the joint in the setting-out. */
  joint: string;
  a: string;
  b: string;
  /** Stated play in all, mm. */
  wanted: number;
  /**
   * Play found between the solids, both sides together, mm; a side that is open by design counts nothing. Null where
   * no wall of the one meets the other at all.
   */
  found: number | null;
}

type Flat = [number, number][];
interface Facet {
  level: number;
  sign: number;
  flat: Flat;
  bounds: Box;
}

/** Wider than this a wall is no wall of the fit, mm. */
const WIDEST = 6;
/** Two faces that look at each other over less are a corner, mm2. */
const LEAST = 4;
/** A wall may stand inside the other by no more than this and still count as its wall, mm. */
const INSIDE = 1;

/**
 * Measures the play of every pair of cuts that states one, on the solids: across the cheeks of a tenon, across a
 * notch or slot. Most joints are set out closed and get their play at the machine, so the play found lies between
 * nothing and what is stated. Round and slanting mates state no play of this kind and are not measured here.
 */
export function fitsOf(piece: Piece, cache: SolidCache): Fit[] {
  const by = new Map(piece.instances.map(i => [i.id, i]));
  const taken = new Map<string, Triangles>();
  const surface = (i: Instance): Triangles => {
    const kept = taken.get(i.id) ?? cache.surface(i);
    taken.set(i.id, kept);
    return kept;
  };
  return piece.instances.flatMap(a =>
    a.cuts.flatMap((cut): Fit[] => {
      const b = cut.mate && by.get(cut.mate.instance);
      const mate = b?.cuts.find(c => c.id === cut.mate?.cut);
      if (!b || !mate || cut.clearance === undefined || !hasShape(a) || !hasShape(b)) return [];
      if (!owns(a, cut, b, mate)) return [];
      const way = fitAxis(cut, a.size);
      if (!way) return [];
      const across = way.axis;
      const found = playAlong(
        facetsAlong(surface(a), a.frame, a.frame, across, way.within),
        facetsAlong(surface(b), b.frame, a.frame, across, way.within),
      );
      return [{ joint: cut.by, a: a.id, b: b.id, wanted: cut.clearance, found }];
    }),
  );
}

/** Of two mates one is measured: the tenon, else the first by name. */
function owns(a: Instance, cut: Cut, b: Instance, mate: Cut): boolean {
  if ((cut.kind === 'tenon') !== (mate.kind === 'tenon')) return cut.kind === 'tenon';
  return `${a.id} ${cut.id}` < `${b.id} ${mate.id}`;
}

/** The axis of the part across which a cut fits, and the room in the part where its walls lie. */
function fitAxis(cut: Cut, size: Size): { axis: Axis; within: Box } | undefined {
  if (cut.kind === 'tenon') {
    const [from, to] = cut.end === 'end1' ? [0, cut.length] : [size.length - cut.length, size.length];
    return { axis: cut.cheeks, within: box(from, 0, 0, to, size.width, size.thickness) };
  }
  if (!('box' in cut)) return undefined;
  const into = cut.face.startsWith('end') ? 'x' : cut.face.endsWith('Edge') ? 'y' : 'z';
  const axis = AXES.find(k => k !== cut.run && k !== into);
  return axis && { axis, within: cut.box };
}

/** Facets square to an axis of `frame`, near a room in it. */
function facetsAlong(
  { positions, indices }: Triangles,
  from: Frame,
  frame: Frame,
  axis: Axis,
  within: Box,
): Facet[] {
  const point = (n: number): Vec3 => {
    const own = vec(positions[3 * n]!, positions[3 * n + 1]!, positions[3 * n + 2]!);
    return from === frame ? own : toLocal(frame, toWorld(from, own));
  };
  const near = grown(within, 0.5);
  const found: Facet[] = [];
  const [u, v] = POLYGON_AXES[axis];
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [point(indices[t]!), point(indices[t + 1]!), point(indices[t + 2]!)];
    const n = cross(sub(b, a), sub(c, a));
    const long = Math.hypot(n.x, n.y, n.z);
    if (long < 1e-9 || Math.abs(n[axis]) / long < 1 - 1e-6) continue;
    const bounds = grown(boundsOf([a, b, c]), 1e-3);
    if (!intersectBoxes(bounds, near)) continue;
    found.push({
      level: a[axis],
      sign: Math.sign(n[axis]),
      flat: [a, b, c].map(p => [p[u], p[v]]),
      bounds,
    });
  }
  return found;
}

const grown = (b: Box, by: number): Box =>
  box(b.min.x - by, b.min.y - by, b.min.z - by, b.max.x + by, b.max.y + by, b.max.z + by);

/** Way to go towards either side before faces meet, both together; null where both sides are open. */
function playAlong(a: readonly Facet[], b: readonly Facet[]): number | null {
  const side = (sign: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const one of a) {
      if (one.sign !== sign) continue;
      for (const two of b) {
        const gap = (two.level - one.level) * sign;
        if (two.sign === sign || gap < -INSIDE || gap > WIDEST || gap >= least) continue;
        if (sharedArea(one.flat, two.flat) > LEAST) least = gap;
      }
    }
    return least;
  };
  const walls = [side(1), side(-1)].filter(gap => Number.isFinite(gap));
  return walls.length > 0 ? walls.reduce((sum, gap) => sum + gap, 0) : null;
}

const area = (p: Flat): number =>
  Math.abs(p.reduce((s, [x, y], i) => s + x * p[(i + 1) % p.length]![1] - y * p[(i + 1) % p.length]![0], 0)) /
  2;

/** Area that two triangles share: the one clipped by each edge of the other (Sutherland and Hodgman, 1974). */
function sharedArea(a: Flat, b: Flat): number {
  const [p, q, r] = b as [[number, number], [number, number], [number, number]];
  const turn = Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  let left = a;
  for (let i = 0; i < 3 && left.length > 2; i++) {
    const [s, e] = [b[i]!, b[(i + 1) % 3]!];
    const inside = ([x, y]: [number, number]): number =>
      turn * ((e[0] - s[0]) * (y - s[1]) - (e[1] - s[1]) * (x - s[0]));
    left = left.flatMap((from, k): Flat => {
      const to = left[(k + 1) % left.length]!;
      const [df, dt] = [inside(from), inside(to)];
      const kept: Flat = df >= 0 ? [from] : [];
      if (df >= 0 === dt >= 0) return kept;
      const f = df / (df - dt);
      return [...kept, [from[0] + f * (to[0] - from[0]), from[1] + f * (to[1] - from[1])]];
    });
  }
  return left.length > 2 ? area(left) : 0;
}
