import { boxSize } from '../geometry/box.ts';
import { extentOf } from '../results/extent.ts';
import type { Instance, JointMade } from '../results/piece.ts';
import type { AssemblyView, View } from './view.ts';

/** Diagonal of a rectangle: d = sqrt(a^2 + b^2), mm. */
export const diagonalMm = (a: number, b: number): number => Math.hypot(a, b);

/**
 * How far the longer diagonal is pushed in at a glue-up to bring a frame square: half the difference of the
 * two, mm. Exact to the second order for small errors. Common practice; printed at
 * wood-working-hobby.com, How to square up a cabinet (2007).
 */
export const pushInMm = (one: number, other: number): number => Math.abs(one - other) / 2;

/** Outer diagonal over the two longest sides of what the copies take up together, mm. */
export function outerDiagonalMm(copies: readonly Instance[]): number {
  const { x, y, z } = boxSize(extentOf(copies));
  const [longest, next] = [x, y, z].sort((a, b) => b - a);
  return diagonalMm(longest!, next!);
}

/** Four corners that stay make a frame whose diagonals say whether it is square. */
export function diagonals(view: View, of: AssemblyView): string[] {
  const stays = (joint: JointMade): boolean =>
    !joint.dry && (joint.glue.length > 0 || joint.weld !== undefined);
  if (of.joints.filter(stays).length < 4) return [];
  const copies = [...of.all].flatMap(id => view.instances.get(id) ?? []);
  const diagonal = Math.round(outerDiagonalMm(copies) * 10) / 10;
  return [`Outer diagonals ${diagonal} mm: push the longer in by half the difference`];
}
