import type { Frame } from './frame.ts';
import { AXES, type Axis, dot, sub, type Vec3, vec } from './vector.ts';

/** An axis-aligned box in some frame, millimetres. */
export interface Box {
  min: Vec3;
  max: Vec3;
}

export const box = (x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): Box => ({
  min: vec(Math.min(x0, x1), Math.min(y0, y1), Math.min(z0, z1)),
  max: vec(Math.max(x0, x1), Math.max(y0, y1), Math.max(z0, z1)),
});

export const boxSize = (b: Box): Vec3 => vec(b.max.x - b.min.x, b.max.y - b.min.y, b.max.z - b.min.z);

export const boxVolume = (b: Box): number => {
  const s = boxSize(b);
  return Math.max(0, s.x) * Math.max(0, s.y) * Math.max(0, s.z);
};

export const boxCentre = (b: Box): Vec3 =>
  vec((b.min.x + b.max.x) / 2, (b.min.y + b.max.y) / 2, (b.min.z + b.max.z) / 2);

export function intersectBoxes(a: Box, b: Box): Box | undefined {
  const min = vec(Math.max(a.min.x, b.min.x), Math.max(a.min.y, b.min.y), Math.max(a.min.z, b.min.z));
  const max = vec(Math.min(a.max.x, b.max.x), Math.min(a.max.y, b.max.y), Math.min(a.max.z, b.max.z));
  return AXES.every(k => max[k] > min[k]) ? { min, max } : undefined;
}

export const shiftBox = (b: Box, d: Vec3): Box => ({
  min: vec(b.min.x + d.x, b.min.y + d.y, b.min.z + d.z),
  max: vec(b.max.x + d.x, b.max.y + d.y, b.max.z + d.z),
});

export const corners = (b: Box): Vec3[] =>
  [b.min.x, b.max.x].flatMap(x => [b.min.y, b.max.y].flatMap(y => [b.min.z, b.max.z].map(z => vec(x, y, z))));

export function boundsOf(points: readonly Vec3[]): Box {
  const pick = (k: Axis, f: (...n: number[]) => number): number => f(...points.map(p => p[k]));
  return {
    min: vec(pick('x', Math.min), pick('y', Math.min), pick('z', Math.min)),
    max: vec(pick('x', Math.max), pick('y', Math.max), pick('z', Math.max)),
  };
}

/** Least and greatest of a sum of three spans, each scaled. */
function spanOf(b: Box, x: number, y: number, z: number, from: number): [number, number] {
  let low = from;
  let high = from;
  for (const [k, scaled] of [
    ['x', x],
    ['y', y],
    ['z', z],
  ] as const) {
    const [p, r] = [scaled * b.min[k], scaled * b.max[k]];
    low += Math.min(p, r);
    high += Math.max(p, r);
  }
  return [low, high];
}

const boxOfSpans = (x: [number, number], y: [number, number], z: [number, number]): Box => ({
  min: vec(x[0], y[0], z[0]),
  max: vec(x[1], y[1], z[1]),
});

/** Bounds, in the world, of a box given in `frame`. Exact when the frame is square to the world. */
export const boxToWorld = (f: Frame, b: Box): Box =>
  boxOfSpans(
    spanOf(b, f.x.x, f.y.x, f.z.x, f.origin.x),
    spanOf(b, f.x.y, f.y.y, f.z.y, f.origin.y),
    spanOf(b, f.x.z, f.y.z, f.z.z, f.origin.z),
  );

/** Bounds, in `frame`, of a box given in the world. */
export const boxToLocal = (f: Frame, b: Box): Box =>
  boxOfSpans(
    spanOf(b, f.x.x, f.x.y, f.x.z, -dot(f.origin, f.x)),
    spanOf(b, f.y.x, f.y.y, f.y.z, -dot(f.origin, f.y)),
    spanOf(b, f.z.x, f.z.y, f.z.z, -dot(f.origin, f.z)),
  );

const SQUARE = 1e-9;

/** Are the axes of one frame those of the other, in some order and either way? */
export const squareTo = (a: Frame, b: Frame): boolean =>
  [a.x, a.y, a.z].every(u => [b.x, b.y, b.z].some(v => Math.abs(dot(u, v)) > 1 - SQUARE));

/** What is all but 0 or 1 is 0 or 1: turned frames carry float noise that would grow a box. */
const crisp = (k: number): number => (Math.abs(k) < SQUARE ? 0 : Math.abs(k) > 1 - SQUARE ? Math.sign(k) : k);

/**
 * Bounds, in frame `to`, of a box given in frame `from`. Exact when the two are square to each other, however
 * they stand in the world; by way of the world a turned box would grow.
 */
export function boxBetween(from: Frame, to: Frame, b: Box): Box {
  const d = sub(from.origin, to.origin);
  const span = (axis: Vec3): [number, number] =>
    spanOf(b, crisp(dot(from.x, axis)), crisp(dot(from.y, axis)), crisp(dot(from.z, axis)), dot(d, axis));
  return boxOfSpans(span(to.x), span(to.y), span(to.z));
}

/**
 * Volume of the union of boxes inside `within` (mm3), exact, by compressing coordinates.
 * Cost grows with the cube of the number of boxes: meant for the cuts of one part.
 */
export function unionVolume(boxes: readonly Box[], within: Box): number {
  const kept = boxes.map(b => intersectBoxes(b, within)).filter(b => b !== undefined);
  if (kept.length === 0) return 0;
  const cuts = (k: Axis): number[] =>
    [...new Set(kept.flatMap(b => [b.min[k], b.max[k]]))].sort((a, b) => a - b);
  const [xs, ys, zs] = [cuts('x'), cuts('y'), cuts('z')];
  let total = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    const column = kept.filter(b => b.min.x <= xs[i]! && b.max.x >= xs[i + 1]!);
    if (column.length === 0) continue;
    for (let j = 0; j + 1 < ys.length; j++) {
      const stack = column.filter(b => b.min.y <= ys[j]! && b.max.y >= ys[j + 1]!);
      for (let k = 0; k + 1 < zs.length; k++) {
        if (stack.some(b => b.min.z <= zs[k]! && b.max.z >= zs[k + 1]!))
          total += (xs[i + 1]! - xs[i]!) * (ys[j + 1]! - ys[j]!) * (zs[k + 1]! - zs[k]!);
      }
    }
  }
  return total;
}
