import { layersOf } from '../../drawings/hatch.ts';
import { seeded, seedOf } from '../../drawings/seeded.ts';
import { cross, dot, scale, sub, unit, type Vec3, vec } from '../../geometry/vector.ts';
import { corner, type EdgeKind, type PartMesh } from './part-mesh.ts';

/** How a face is hatched; numbers shared with the shader. */
export const FACE_KIND = { long: 0, end: 1, sheetFace: 2, sheetEdge: 3, metal: 4, round: 5 } as const;
const EDGE_CODE: Record<EdgeKind, number> = { crease: 0, smooth: 1, tangent: 2 };

/** All parts as flat arrays: faces with hatch coordinates in part millimetres, edges with their two faces. */
export interface Batch {
  triangles: number;
  positions: Float32Array;
  /** Along and across the hatch, mm. */
  uv: Float32Array;
  /** Bounds across the hatch, or thickness and layers of a sheet edge. */
  aux: Float32Array;
  /** Face number, part number, kind, seed. */
  ids: Float32Array;
  edges: number;
  ea: Float32Array;
  eb: Float32Array;
  n0: Float32Array;
  n1: Float32Array;
  /** Two face numbers, part number, kind of edge. */
  eid: Float32Array;
  /** Grain direction of each part, and a number of its own from 0 to 1. */
  axes: [number, number, number, number][];
}

interface Hatch {
  kind: number;
  uv: (p: Vec3) => [number, number];
  aux: [number, number];
  /** Bounds across the hatch are gathered over all triangles with this key. */
  bounds?: string;
}

export function batch(parts: readonly PartMesh[]): Batch {
  const triangles = parts.reduce((n, p) => n + p.faces.length, 0);
  const edges = parts.reduce((n, p) => n + p.edges.length, 0);
  const out: Batch = {
    triangles,
    positions: new Float32Array(triangles * 9),
    uv: new Float32Array(triangles * 6),
    aux: new Float32Array(triangles * 6),
    ids: new Float32Array(triangles * 12),
    edges,
    ea: new Float32Array(edges * 3),
    eb: new Float32Array(edges * 3),
    n0: new Float32Array(edges * 3),
    n1: new Float32Array(edges * 3),
    eid: new Float32Array(edges * 4),
    axes: [],
  };
  const at = { corner: 0, edge: 0, face: 1 };
  parts.forEach((part, index) => {
    writeFaces(out, part, index, at);
    writeEdges(out, part, index, at);
    at.face += part.faceCount;
  });
  return out;
}

interface Cursor {
  corner: number;
  edge: number;
  face: number;
}

function writeFaces(out: Batch, part: PartMesh, index: number, at: Cursor): void {
  const hatch = hatcher(part);
  const seed = seedOf(part.instance);
  const { grain } = part.grainFrame;
  out.axes.push([grain.x, grain.y, grain.z, seeded(seed)()]);
  const hatches = part.normals.map((n, t) => hatch(n, part.faces[t]!));
  const bounds = new Map<string, [number, number]>();
  const points = (t: number): Vec3[] => [0, 1, 2].map(k => corner(part, part.indices[3 * t + k]!));
  hatches.forEach((h, t) => {
    if (h.bounds === undefined) return;
    const b = bounds.get(h.bounds) ?? [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const p of points(t)) {
      const v = h.uv(p)[1];
      b[0] = Math.min(b[0], v);
      b[1] = Math.max(b[1], v);
    }
    bounds.set(h.bounds, b);
  });
  hatches.forEach((h, t) => {
    const aux = h.bounds === undefined ? h.aux : bounds.get(h.bounds)!;
    const own = (seed + directionSeed(part.normals[t]!)) % 65521;
    for (const p of points(t)) {
      const i = at.corner++;
      out.positions.set([p.x, p.y, p.z], i * 3);
      out.uv.set(h.uv(p), i * 2);
      out.aux.set(aux, i * 2);
      out.ids.set([at.face + part.faces[t]!, index, h.kind, own], i * 4);
    }
  });
}

const directionSeed = (n: Vec3): number =>
  Math.round(n.x * 4 + 4) * 81 + Math.round(n.y * 4 + 4) * 9 + Math.round(n.z * 4 + 4) * 7;

function writeEdges(out: Batch, part: PartMesh, index: number, at: Cursor): void {
  for (const e of part.edges) {
    const i = at.edge++;
    out.ea.set([e.a.x, e.a.y, e.a.z], i * 3);
    out.eb.set([e.b.x, e.b.y, e.b.z], i * 3);
    out.n0.set([e.normals[0].x, e.normals[0].y, e.normals[0].z], i * 3);
    out.n1.set([e.normals[1].x, e.normals[1].y, e.normals[1].z], i * 3);
    out.eid.set([at.face + e.faces[0], at.face + e.faces[1], index, EDGE_CODE[e.kind]], i * 4);
  }
}

/** Extent of a part's corners along a direction. */
function extent(part: PartMesh, d: Vec3): [number, number] {
  let [lo, hi] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < part.positions.length / 3; i++) {
    const v = dot(corner(part, i), d);
    lo = Math.min(lo, v);
    hi = Math.max(hi, v);
  }
  return [lo, hi];
}

/** Chooses the hatch of each face from its direction to the grain or to the sheet. */
function hatcher(part: PartMesh): (normal: Vec3, face: number) => Hatch {
  const { grain, sheet, round } = part.grainFrame;
  const [wide, thin] = across(part, grain);
  const middle = [(wide.lo + wide.hi) / 2, (thin.lo + thin.hi) / 2] as const;
  const radius = Math.max(wide.hi - wide.lo, thin.hi - thin.lo) / 2;
  const heart = heartOf(part, wide, thin);
  const plane = (n: Vec3, along: Vec3, shift = 0): ((p: Vec3) => [number, number]) => {
    const u = unit(sub(along, scale(n, dot(along, n))));
    const v = cross(n, u);
    return p => [dot(p, u) + shift, dot(p, v)];
  };
  return (n, face) => {
    const along = Math.abs(dot(n, grain));
    const key = `${face} ${Math.round(n.x * 20)} ${Math.round(n.y * 20)} ${Math.round(n.z * 20)}`;
    if (sheet) return sheetHatch(part, n, sheet, grain, plane, key);
    if (part.material !== 'timber') {
      if (round && along < 0.3)
        return {
          kind: FACE_KIND.round,
          uv: p => [(dot(p, wide.d) - middle[0]) / radius, (dot(p, thin.d) - middle[1]) / radius],
          aux: [0, 0],
        };
      return { kind: FACE_KIND.metal, uv: plane(n, along < 0.9 ? grain : wide.d), aux: [0, 0] };
    }
    if (along > 0.8)
      return {
        kind: FACE_KIND.end,
        uv: p => [dot(p, wide.d) - heart[0], dot(p, thin.d) - heart[1]],
        aux: [0, 0],
      };
    return { kind: FACE_KIND.long, uv: plane(n, grain, directionSeed(n) * 37), aux: [0, 0], bounds: key };
  };
}

function sheetHatch(
  part: PartMesh,
  n: Vec3,
  sheet: Vec3,
  grain: Vec3,
  plane: (n: Vec3, along: Vec3) => (p: Vec3) => [number, number],
  key: string,
): Hatch {
  if (Math.abs(dot(n, sheet)) > 0.8)
    return { kind: FACE_KIND.sheetFace, uv: plane(n, grain), aux: [0, 0], bounds: key };
  const [lo, hi] = extent(part, sheet);
  const along = unit(cross(n, sheet));

  return {
    kind: FACE_KIND.sheetEdge,
    uv: p => [dot(p, along), dot(p, sheet) - lo],
    aux: [hi - lo, layersOf(hi - lo)],
  };
}

interface Across {
  d: Vec3;
  lo: number;
  hi: number;
}

/** Two directions across the grain: the wide way first, the thin way second. */
function across(part: PartMesh, grain: Vec3): [Across, Across] {
  const first = unit(cross(grain, Math.abs(grain.z) < 0.9 ? vec(0, 0, 1) : vec(1, 0, 0)));
  const second = cross(grain, first);
  const span = (d: Vec3): Across => {
    const [lo, hi] = extent(part, d);
    return { d, lo, hi };
  };
  const [a, b] = [span(first), span(second)];
  return a.hi - a.lo >= b.hi - b.lo ? [a, b] : [b, span(scale(first, -1))];
}

/** The heart of the tree, outside the section and turned over in neighbouring boards. */
function heartOf(part: PartMesh, wide: Across, thin: Across): [number, number] {
  const random = seeded(seedOf(part.instance) + 13);
  const width = wide.hi - wide.lo;
  const height = thin.hi - thin.lo;
  const turned = Number(/(\d+)\D*$/.exec(part.instance)?.[1] ?? 0) % 2 === 1;
  const off = height * (0.3 + 0.5 * random());
  return [wide.lo + width * (0.25 + 0.5 * random()), turned ? thin.lo - off : thin.hi + off];
}
