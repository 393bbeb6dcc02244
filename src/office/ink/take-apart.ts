import {
  type Box,
  boundsOf,
  boxCentre,
  boxSize,
  boxToWorld,
  box as makeBox,
  shiftBox,
} from '../../geometry/box.ts';
import { AXES, type Axis, add, scale, type Vec3, vec, ZERO } from '../../geometry/vector.ts';
import type { Assembly, Instance, Piece } from '../../results/piece.ts';

/** One glue-up undone: which instances move, and how far when it is open. */
export interface TakingApart {
  name: string;
  moves: Map<string, Vec3>;
}

const worldBox = (i: Instance): Box =>
  boxToWorld(i.frame, makeBox(0, 0, 0, i.size.length, i.size.width, i.size.thickness));

const union = (boxes: readonly Box[]): Box => boundsOf(boxes.flatMap(b => [b.min, b.max]));

/** Steps of taking apart, last glue-up first. Loose parts come off before any glue-up is undone. */
export function takingApart(piece: Piece): TakingApart[] {
  const boxes = new Map(piece.instances.map(i => [i.id, worldBox(i)]));
  const byId = new Map(piece.assemblies.map(a => [a.id, a]));
  const whole = wholeOf(piece);
  const all = [...piece.assemblies].sort((a, b) => b.order - a.order);
  const steps = whole ? [whole, ...all] : all;
  const gap = Math.max(...AXES.map(k => boxSize(piece.bounds)[k])) * 0.12;
  return steps
    .map(assembly => ({
      name: assembly.name,
      moves: opened(assembly, byId, boxes, piece, gap),
    }))
    .filter(step => step.moves.size > 0);
}

/** What no assembly holds, as one more; none if a single assembly holds everything. */
function wholeOf(piece: Piece): Assembly | undefined {
  const held = new Set(piece.assemblies.flatMap(a => a.assemblies));
  const inSome = new Set(piece.assemblies.flatMap(a => a.instances));
  const tops = piece.assemblies.filter(a => !held.has(a.id));
  const loose = piece.instances.filter(i => !inSome.has(i.id)).map(i => i.id);
  if (tops.length + loose.length < 2) return undefined;
  return {
    id: '',
    name: 'Loose parts',
    instances: loose,
    assemblies: tops.map(a => a.id),
    joints: [],
    dryFit: false,
    order: Number.MAX_SAFE_INTEGER,
  };
}

export function membersOf(assembly: Assembly, byId: ReadonlyMap<string, Assembly>, depth = 0): string[] {
  if (depth > 40) return assembly.instances;
  return [
    ...assembly.instances,
    ...assembly.assemblies.flatMap(id => {
      const inner = byId.get(id);
      return inner ? membersOf(inner, byId, depth + 1) : [];
    }),
  ];
}

function opened(
  assembly: Assembly,
  byId: ReadonlyMap<string, Assembly>,
  boxes: ReadonlyMap<string, Box>,
  piece: Piece,
  gap: number,
): Map<string, Vec3> {
  const groups = [
    ...assembly.assemblies.map(id => {
      const inner = byId.get(id);
      return inner ? membersOf(inner, byId) : [];
    }),
    ...assembly.instances.map(id => [id]),
  ]
    .map(ids => ids.filter(id => boxes.has(id)))
    .filter(ids => ids.length > 0);
  const moves = new Map<string, Vec3>();
  if (groups.length < 2) return moves;
  const whole = union(groups.flat().map(id => boxes.get(id)!));
  for (const ids of groups) {
    const own = union(ids.map(id => boxes.get(id)!));
    const way = wayOut(own, whole);
    if (!way) continue;
    const by = scale(way.direction, gap + jointDepth(ids, way.axis, piece));
    for (const id of ids) moves.set(id, by);
  }
  return moves;
}

/** Out along the axis on which the group lies farthest from the middle; what lies in the middle stays. */
function wayOut(own: Box, whole: Box): { axis: Axis; direction: Vec3 } | undefined {
  const [c, m, size] = [boxCentre(own), boxCentre(whole), boxSize(whole)];
  let [axis, most]: [Axis, number] = ['x', 0];
  for (const k of AXES) {
    const off = size[k] > 0 ? (c[k] - m[k]) / (size[k] / 2) : 0;
    // Nothing is pushed through the floor: what lies low stays or goes sideways.
    if (k === 'z' && off < 0) continue;
    if (Math.abs(off) > Math.abs(most) + 1e-6) [axis, most] = [k, off];
  }
  if (Math.abs(most) < 0.3) return undefined;
  const sign = Math.sign(most);
  return { axis, direction: vec(axis === 'x' ? sign : 0, axis === 'y' ? sign : 0, axis === 'z' ? sign : 0) };
}

/** How deep the joints of a group reach along an axis into what stays behind, mm. */
function jointDepth(ids: readonly string[], axis: Axis, piece: Piece): number {
  const own = new Set(ids);
  return Math.max(
    0,
    ...piece.joints
      .filter(j => j.instances.some(i => own.has(i)) && j.instances.some(i => !own.has(i)))
      .map(j => boxSize(j.contact)[axis]),
  );
}

/** Offsets of every instance at a share of taking apart, 0 whole to 1 all apart; one step after another. */
export function offsetsAt(steps: readonly TakingApart[], share: number): Map<string, Vec3> {
  const out = new Map<string, Vec3>();
  steps.forEach((step, i) => {
    const t = Math.min(1, Math.max(0, share * steps.length - i));
    if (t === 0) return;
    for (const [id, by] of step.moves) out.set(id, add(out.get(id) ?? ZERO, scale(by, t)));
  });
  return out;
}

/** The box that holds the piece with its parts moved. */
export function spreadBounds(piece: Piece, offsets: ReadonlyMap<string, Vec3>): Box {
  if (offsets.size === 0) return piece.bounds;
  const moved = piece.instances.map(i => shiftBox(worldBox(i), offsets.get(i.id) ?? ZERO));
  return union([piece.bounds, ...moved]);
}
