import type { Box } from '../geometry/box.ts';
import { box, intersectBoxes } from '../geometry/box.ts';
import { directionToWorld, toWorld } from '../geometry/frame.ts';
import { AXES, type Axis, axisVector, type Vec3, vec } from '../geometry/vector.ts';
import { hollowOf } from '../results/cut-shapes.ts';
import { type Cut, FACE_AXIS, type Size, type TenonCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import { clipFacets, cutPlanes, keptBelow } from './planes.ts';
import { turnStretch } from './turned.ts';
import { cutPrisms, prismsOf } from './wastes.ts';

export type Segment = readonly [Vec3, Vec3];

/** How a facet lies on its part, for hatching: `end` across the grain, `edge` of a sheet, `face`, a `hole`. */
export type FacetKind = 'face' | 'edge' | 'end' | 'side' | 'hole';

/** A flat convex piece of a part's surface, with those of its sides that are edges of the part. */
export interface Facet {
  points: readonly Vec3[];
  normal: Vec3;
  segments: readonly Segment[];
  kind: FacetKind;
  /** Whole face it belongs to: corner and two sides, `along` the grain where there is one. */
  field: { corner: Vec3; along: Vec3; across: Vec3 };
  /** Among coplanar facets the higher is painted later. */
  rank: number;
  /** Index of the instance it belongs to. */
  owner: number;
}

/** Sides of a round bar as drawn. */
const ROUND_SIDES = 20;

/** Boxes taken from an envelope by a tenon: all beyond the shoulder but the tenon and its haunch. */
export function tenonRemovals(cut: TenonCut, size: Size): Box[] {
  const { length: l, width: w, thickness: t } = size;
  const span = (a: number, b: number): [number, number] =>
    cut.end === 'end2' ? [l - cut.length + a, l - cut.length + b] : [cut.length - b, cut.length - a];
  const slab = (from: number, to: number, y0: number, y1: number, z0: number, z1: number): Box => {
    const [x0, x1] = span(from, to);
    return box(x0, y0, z0, x1, y1, z1);
  };
  const full: [number, number] = [0, cut.length];
  const boxes = [
    slab(...full, 0, cut.y.low, 0, t),
    slab(...full, w - cut.y.high, w, 0, t),
    slab(...full, 0, w, 0, cut.z.low),
    slab(...full, 0, w, t - cut.z.high, t),
  ];
  const { haunch } = cut;
  if (!haunch) return boxes;
  // The haunch stands beside the tenon across the axis that is not its thickness.
  const onY = cut.cheeks === 'z';
  const high = haunch.side === 'high';
  const index = onY ? (high ? 1 : 0) : high ? 3 : 2;
  const wide = onY ? w : t;
  const taken = onY ? (high ? cut.y.high : cut.y.low) : high ? cut.z.high : cut.z.low;
  const [from, to] = high ? [wide - taken, wide - taken + haunch.width] : [taken - haunch.width, taken];
  const side = (a: number, b: number, low: number, top: number): Box =>
    onY ? slab(a, b, low, top, 0, t) : slab(a, b, 0, w, low, top);
  const [least, most] = high ? [wide - taken, wide] : [0, taken];
  boxes.splice(
    index,
    1,
    side(haunch.length, cut.length, least, most),
    side(0, haunch.length, ...(high ? ([to, most] as const) : ([least, from] as const))),
  );
  return boxes;
}

const removals = (cut: Cut, size: Size): Box[] =>
  cut.kind === 'tenon' ? tenonRemovals(cut, size) : 'box' in cut ? [cut.box] : [];

/** Facets of one instance in the world: its envelope less pockets, tenon shoulders, tapers and sawn ends. */
export function facetsOf(instance: Instance, owner: number): Facet[] {
  const whole = instance.round ? roundFacets(instance.size, owner) : boxFacets(instance, owner);
  const prisms = prismsOf(instance);
  const planes = cutPlanes(instance.cuts, instance.size);
  // A slot in a sawn end opens in that end: the end is sawn before the slot is taken out of it.
  const first = prisms.length > 0 ? clipFacets(whole, planes, instance.size, owner) : whole;
  const sawn = cutPrisms(first, prisms, boxesOf(instance), instance.size, owner, planes);
  const local = instance.cuts.reduce(
    (kept, cut) => (cut.kind === 'turned' ? turnStretch(kept, cut, instance.size, owner) : kept),
    sawn,
  );
  const holes = instance.round ? [] : instance.cuts.flatMap(cut => holeFacets(cut, instance.size, owner));
  const clipped =
    prisms.length > 0
      ? [...local, ...keptBelow(holes, planes)]
      : clipFacets([...local, ...holes], planes, instance.size, owner);
  return clipped.map(facet => toWorldFacet(facet, instance));
}

function toWorldFacet(facet: Facet, { frame }: Instance): Facet {
  const p = (v: Vec3): Vec3 => toWorld(frame, v);
  return {
    ...facet,
    points: facet.points.map(p),
    normal: directionToWorld(frame, facet.normal),
    segments: facet.segments.map(([a, b]) => [p(a), p(b)] as const),
    field: {
      corner: p(facet.field.corner),
      along: directionToWorld(frame, facet.field.along),
      across: directionToWorld(frame, facet.field.across),
    },
  };
}

/** Boxes taken from the envelope, as far as they lie in it. */
function boxesOf(instance: Instance): Box[] {
  const { cuts, size } = instance;
  const envelope = box(0, 0, 0, size.length, size.width, size.thickness);
  return [hollowOf(instance), ...cuts.flatMap(cut => removals(cut, size))]
    .filter(b => b !== undefined)
    .map(b => intersectBoxes(b, envelope))
    .filter(b => b !== undefined);
}

function boxFacets(instance: Instance, owner: number): Facet[] {
  const { size } = instance;
  const envelope = box(0, 0, 0, size.length, size.width, size.thickness);
  const taken = boxesOf(instance);
  const stations = (k: Axis): number[] =>
    [...new Set([envelope.min[k], envelope.max[k], ...taken.flatMap(b => [b.min[k], b.max[k]])])].sort(
      (a, b) => a - b,
    );
  const grid = { x: stations('x'), y: stations('y'), z: stations('z') };
  const solid = (cell: Record<Axis, number>): boolean => {
    if (AXES.some(k => cell[k] < 0 || cell[k] >= grid[k].length - 1)) return false;
    const mid = (k: Axis): number => (grid[k][cell[k]]! + grid[k][cell[k] + 1]!) / 2;
    const [x, y, z] = [mid('x'), mid('y'), mid('z')];
    return !taken.some(
      b => x > b.min.x && x < b.max.x && y > b.min.y && y < b.max.y && z > b.min.z && z < b.max.z,
    );
  };
  return AXES.flatMap(axis =>
    ([1, -1] as const).flatMap(sign => sideFacets(axis, sign, grid, solid, instance, owner)),
  );
}

type Grid = Record<Axis, number[]>;
type Cell = Record<Axis, number>;

/** The two axes that span a face across `axis`, along the grain first where it lies in the face. */
const SPAN: Record<Axis, readonly [Axis, Axis]> = { x: ['y', 'z'], y: ['x', 'z'], z: ['x', 'y'] };

const kindOf = (instance: Instance, axis: Axis): FacetKind => {
  if (instance.kind === 'sheet') return axis === 'z' ? 'face' : 'edge';
  if (instance.kind === 'timber') return axis === 'x' ? 'end' : 'face';
  return 'face';
};

/** Exposed faces across one axis in one direction, cells merged into rectangles. */
function sideFacets(
  axis: Axis,
  sign: 1 | -1,
  grid: Grid,
  solid: (cell: Cell) => boolean,
  instance: Instance,
  owner: number,
): Facet[] {
  const [u, v] = SPAN[axis];
  const [nu, nv] = [grid[u].length - 1, grid[v].length - 1];
  const facets: Facet[] = [];
  for (let layer = 0; layer < grid[axis].length - 1; layer++) {
    const at = grid[axis][sign === 1 ? layer + 1 : layer]!;
    const cell = (i: number, j: number, k = layer): Cell => ({
      ...{ x: 0, y: 0, z: 0 },
      [axis]: k,
      [u]: i,
      [v]: j,
    });
    const open = (i: number, j: number): boolean => solid(cell(i, j)) && !solid(cell(i, j, layer + sign));
    for (const r of mergeCells(nu, nv, open))
      facets.push(rectangle(r, at, axis, sign, grid, open, instance, owner));
  }
  return facets;
}

interface CellRange {
  i0: number;
  i1: number;
  j0: number;
  j1: number;
}

/** Greedy rectangles that cover the open cells, each once. */
function mergeCells(nu: number, nv: number, open: (i: number, j: number) => boolean): CellRange[] {
  const done = new Set<number>();
  const free = (i: number, j: number): boolean => !done.has(i * nv + j) && open(i, j);
  const ranges: CellRange[] = [];
  for (let j = 0; j < nv; j++)
    for (let i = 0; i < nu; i++) {
      if (!free(i, j)) continue;
      let i1 = i + 1;
      while (i1 < nu && free(i1, j)) i1++;
      let j1 = j + 1;
      const rowFree = (row: number): boolean => {
        for (let k = i; k < i1; k++) if (!free(k, row)) return false;
        return true;
      };
      while (j1 < nv && rowFree(j1)) j1++;
      for (let a = i; a < i1; a++) for (let b = j; b < j1; b++) done.add(a * nv + b);
      ranges.push({ i0: i, i1, j0: j, j1 });
    }
  return ranges;
}

function rectangle(
  r: CellRange,
  at: number,
  axis: Axis,
  sign: 1 | -1,
  grid: Grid,
  open: (i: number, j: number) => boolean,
  instance: Instance,
  owner: number,
): Facet {
  const [u, v] = SPAN[axis];
  const p = (i: number, j: number): Vec3 => ({
    ...vec(0, 0, 0),
    [axis]: at,
    [u]: grid[u][i]!,
    [v]: grid[v][j]!,
  });
  const segments: Segment[] = [];
  for (let i = r.i0; i < r.i1; i++) {
    if (!open(i, r.j0 - 1)) segments.push([p(i, r.j0), p(i + 1, r.j0)]);
    if (!open(i, r.j1)) segments.push([p(i, r.j1), p(i + 1, r.j1)]);
  }
  for (let j = r.j0; j < r.j1; j++) {
    if (!open(r.i0 - 1, j)) segments.push([p(r.i0, j), p(r.i0, j + 1)]);
    if (!open(r.i1, j)) segments.push([p(r.i1, j), p(r.i1, j + 1)]);
  }
  const points = [p(r.i0, r.j0), p(r.i1, r.j0), p(r.i1, r.j1), p(r.i0, r.j1)];
  const extent = (k: Axis): number => grid[k].at(-1)!;
  // A turned sheet part shows its grain across: the field is laid the other way round.
  const [a, b] = instance.grain === 'width' && axis === 'z' ? [v, u] : [u, v];
  const kind = kindOf(instance, axis);
  return {
    points,
    normal: axisVector(axis, sign),
    segments: joinSegments(segments),
    kind,
    field: {
      corner: { ...vec(0, 0, 0), [axis]: at },
      along: scaleAxis(a, extent(a)),
      across: scaleAxis(b, extent(b)),
    },
    rank: kind === 'end' ? 2 : 0,
    owner,
  };
}

const scaleAxis = (axis: Axis, length: number): Vec3 => ({ ...vec(0, 0, 0), [axis]: length });

/** Joins collinear runs of cell borders so that an edge is one line. */
function joinSegments(segments: readonly Segment[]): Segment[] {
  const joined: Segment[] = [];
  for (const [a, b] of segments) {
    const last = joined.findIndex(([p, q]) => same(q, a) && parallel(p, q, a, b));
    if (last >= 0) joined[last] = [joined[last]![0], b];
    else joined.push([a, b]);
  }
  return joined;
}

const same = (a: Vec3, b: Vec3): boolean => a.x === b.x && a.y === b.y && a.z === b.z;
const parallel = (p: Vec3, q: Vec3, a: Vec3, b: Vec3): boolean =>
  AXES.every(k => (p[k] === q[k]) === (a[k] === b[k]));

function roundFacets(size: Size, owner: number): Facet[] {
  const radius = size.width / 2;
  const rim = (x: number): Vec3[] =>
    Array.from({ length: ROUND_SIDES }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.5)) / ROUND_SIDES;
      return vec(x, radius + radius * Math.cos(angle), radius + radius * Math.sin(angle));
    });
  const [near, far] = [rim(0), rim(size.length)];
  const across = { corner: vec(0, 0, 0), along: vec(0, size.width, 0), across: vec(0, 0, size.width) };
  const edges = (ring: Vec3[]): Segment[] => ring.map((p, i) => [p, ring[(i + 1) % ring.length]!] as const);
  const ends: Facet[] = (
    [
      [near, -1],
      [far, 1],
    ] as const
  ).map(([ring, sign]) => ({
    points: ring,
    normal: axisVector('x', sign),
    segments: edges([...ring]),
    kind: 'end' as const,
    field: { ...across, corner: vec(sign === 1 ? size.length : 0, 0, 0) },
    rank: 2,
    owner,
  }));
  const sides: Facet[] = near.map((p, i) => {
    const j = (i + 1) % ROUND_SIDES;
    const middle = (2 * Math.PI * (i + 1)) / ROUND_SIDES;
    return {
      points: [p, far[i]!, far[j]!, near[j]!],
      normal: vec(0, Math.cos(middle), Math.sin(middle)),
      segments: [
        [p, near[j]!],
        [far[i]!, far[j]!],
      ],
      kind: 'side' as const,
      field: { corner: p, along: vec(size.length, 0, 0), across: vec(0, near[j]!.y - p.y, near[j]!.z - p.z) },
      rank: 0,
      owner,
    };
  });
  return [...ends, ...sides];
}

/** Mouths of bored holes, on the face they enter and, when through, on the one they leave. */
function holeFacets(cut: Cut, size: Size, owner: number): Facet[] {
  if (cut.kind !== 'hole') return [];
  const d = cut.direction;
  const square = AXES.some(k => Math.abs(Math.abs(d[k]) - 1) < 1e-6);
  const axis = FACE_AXIS[cut.face];
  const lean = Math.abs(d[axis]);
  if (lean < 0.05) return [];
  const extent = { x: size.length, y: size.width, z: size.thickness }[axis];
  const [u, v] = SPAN[axis];
  const radius = (cut.countersink?.diameter ?? cut.diameter) / 2;
  const mouth = (at: number, sign: 1 | -1, r: number): Facet => {
    const points = Array.from({ length: 16 }, (_, i): Vec3 => {
      const angle = (2 * Math.PI * i) / 16;
      const [a, b] = [r * Math.cos(angle), r * Math.sin(angle)];
      // A leaning drill meets the face in an ellipse, longer the way it leans.
      const longer = square ? 0 : ((a * d[u] + b * d[v]) / (1 - lean * lean)) * (1 / lean - 1);
      return {
        ...cut.at,
        [axis]: at,
        [u]: cut.at[u] + a + longer * d[u],
        [v]: cut.at[v] + b + longer * d[v],
      };
    });
    return {
      points,
      normal: axisVector(axis, sign),
      segments: points.map((p, i) => [p, points[(i + 1) % 16]!] as const),
      kind: 'hole',
      field: { corner: points[0]!, along: scaleAxis(u, 1), across: scaleAxis(v, 1) },
      rank: 3,
      owner,
    };
  };
  const inward = d[axis] > 0 ? 1 : -1;
  const entry = cut.at[axis];
  if (Math.min(Math.abs(entry), Math.abs(entry - extent)) > 0.01) return [];
  const out: Facet[] = [mouth(entry, inward === 1 ? -1 : 1, radius)];
  if (cut.through && square) out.push(mouth(inward === 1 ? extent : 0, inward, cut.diameter / 2));
  return out;
}
