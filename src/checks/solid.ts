/** Distances inside a part, in its own frame: how far to the far side, how much a taper took, what a cut sweeps. */
import { type Box, box } from '../geometry/box.ts';
import { AXES, type Axis, add, dot, norm, scale, sub, type Vec3 } from '../geometry/vector.ts';
import type { HoleCut, LocalFace, PocketCut, Size } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';

/** Wood that can be drilled through by mistake. */
export const isSolid = ({ kind }: Instance): boolean => kind === 'timber' || kind === 'sheet';

const SIZE: Record<Axis, keyof Size> = { x: 'length', y: 'width', z: 'thickness' };

export const extent = (size: Size, axis: Axis): number => size[SIZE[axis]];

const FACES: Record<Axis, { low: LocalFace; high: LocalFace }> = {
  x: { low: 'end1', high: 'end2' },
  y: { low: 'backEdge', high: 'faceEdge' },
  z: { low: 'back', high: 'face' },
};

export function faceAxis(face: LocalFace): { axis: Axis; high: boolean } {
  const axis = AXES.find(a => FACES[a].low === face || FACES[a].high === face)!;
  return { axis, high: FACES[axis].high === face };
}

/** What a taper has taken off a face at a station along the grain, mm. */
function takenAt(instance: Instance, face: LocalFace, x: number): number {
  return instance.cuts.reduce((most, cut) => {
    if (cut.kind !== 'taper' || cut.face !== face) return most;
    const share = (x - cut.from) / (cut.to - cut.from);
    return Math.max(most, cut.amount * Math.min(1, Math.max(0, share)));
  }, 0);
}

const taken = (instance: Instance, face: LocalFace, xs: readonly number[]): number =>
  Math.max(...xs.map(x => takenAt(instance, face, x)));

/** Wood left between a pocket's floor and the face behind it, mm; tapers counted. */
export function woodBehindPocket(instance: Instance, pocket: PocketCut): number {
  const { axis, high } = faceAxis(pocket.face);
  const behind = high ? FACES[axis].low : FACES[axis].high;
  const lost = axis === 'x' ? 0 : taken(instance, behind, [pocket.box.min.x, pocket.box.max.x]);
  return (high ? pocket.box.min[axis] : extent(instance.size, axis) - pocket.box.max[axis]) - lost;
}

/** Way from the mouth of a hole, along its direction, until it leaves the envelope, mm. */
export function wayThrough(size: Size, at: Vec3, direction: Vec3): number {
  const ways = AXES.map(axis => {
    const d = direction[axis];
    if (Math.abs(d) < 1e-6) return Number.POSITIVE_INFINITY;
    return ((d > 0 ? extent(size, axis) : 0) - at[axis]) / d;
  });
  return Math.min(...ways);
}

/** Wood left beyond the end of a blind hole, mm; tapers counted for a hole square to a long face. */
export function woodBehindHole(instance: Instance, hole: HoleCut): number {
  const left = wayThrough(instance.size, hole.at, hole.direction) - hole.depth;
  const axis = AXES.find(a => Math.abs(hole.direction[a]) > 0.999);
  if (!axis || axis === 'x') return left;
  const behind = hole.direction[axis] > 0 ? FACES[axis].high : FACES[axis].low;
  return left - takenAt(instance, behind, hole.at.x);
}

/** A side of a hole or pocket, and how far the part's face lies from it, mm. */
export interface Beside {
  face: LocalFace;
  /** From the centre line of a hole; from the wall of a pocket. */
  distance: number;
}

/** Distances from the centre line of a square hole to the four faces beside it. A slanting one is not measured. */
export function besideHole(instance: Instance, hole: HoleCut): Beside[] {
  const along = AXES.find(a => Math.abs(hole.direction[a]) > 0.999);
  if (!along) return [];
  return AXES.filter(a => a !== along).flatMap(axis => [
    {
      face: FACES[axis].low,
      distance: hole.at[axis] - (axis === 'x' ? 0 : takenAt(instance, FACES[axis].low, hole.at.x)),
    },
    {
      face: FACES[axis].high,
      distance:
        extent(instance.size, axis) -
        hole.at[axis] -
        (axis === 'x' ? 0 : takenAt(instance, FACES[axis].high, hole.at.x)),
    },
  ]);
}

/** Walls of wood beside a pocket on its four sides, mm. Sides it is open at come out as 0. */
export function besidePocket(instance: Instance, pocket: PocketCut): Beside[] {
  const { axis: into } = faceAxis(pocket.face);
  const ends = [pocket.box.min.x, pocket.box.max.x];
  return AXES.filter(a => a !== into).flatMap(axis => [
    {
      face: FACES[axis].low,
      distance: pocket.box.min[axis] - (axis === 'x' ? 0 : taken(instance, FACES[axis].low, ends)),
    },
    {
      face: FACES[axis].high,
      distance:
        extent(instance.size, axis) -
        pocket.box.max[axis] -
        (axis === 'x' ? 0 : taken(instance, FACES[axis].high, ends)),
    },
  ]);
}

/** The box that holds a hole: exact along the axis of a square one, wider than the drill for a slanting one. */
export function holeBox(hole: HoleCut, size: Size): Box {
  const depth = hole.through ? wayThrough(size, hole.at, hole.direction) : hole.depth;
  const radius = hole.diameter / 2;
  const at = (axis: Axis, end: boolean): number => hole.at[axis] + (end ? hole.direction[axis] * depth : 0);
  const low = (axis: Axis): number => Math.min(at(axis, false), at(axis, true)) - side(axis);
  const high = (axis: Axis): number => Math.max(at(axis, false), at(axis, true)) + side(axis);
  const side = (axis: Axis): number => radius * Math.sqrt(Math.max(0, 1 - hole.direction[axis] ** 2));
  return box(low('x'), low('y'), low('z'), high('x'), high('y'), high('z'));
}

export interface Line {
  from: Vec3;
  to: Vec3;
}

export function centreLine(hole: HoleCut, size: Size): Line {
  const depth = hole.through ? wayThrough(size, hole.at, hole.direction) : hole.depth;
  return { from: hole.at, to: add(hole.at, scale(hole.direction, depth)) };
}

const between = (value: number): number => Math.min(1, Math.max(0, value));

/**
 * Least distance between two straight lines with ends, mm: the foot on each is found from the other, and held
 * to the ends. Lines that run alike are tried from the ends of the one.
 */
export function distanceBetween(a: Line, b: Line): number {
  const [u, v, w] = [sub(a.to, a.from), sub(b.to, b.from), sub(a.from, b.from)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const onB = (s: number): number => (vv > 0 ? between((uv * s + vw) / vv) : 0);
  const onA = (t: number): number => (uu > 0 ? between((uv * t - uw) / uu) : 0);
  const apart = (s: number, t: number): number => norm(add(w, sub(scale(u, s), scale(v, t))));
  const cross = uu * vv - uv * uv;
  const crossing = cross > 1e-9 * uu * vv ? between((uv * vw - vv * uw) / cross) : 0;
  const first = onA(onB(crossing));
  return Math.min(
    apart(first, onB(first)),
    apart(0, onB(0)),
    apart(1, onB(1)),
    apart(onA(0), 0),
    apart(onA(1), 1),
  );
}
