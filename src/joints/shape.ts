import { type Box, boxBetween, boxSize } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { LocalFace, Size } from '../results/cuts.ts';
import { FACE_AXIS } from '../results/cuts.ts';
import type { JointLimit } from '../results/piece.ts';
import type { Rule, Source } from '../results/source.ts';
import { isHigh, OPPOSITE, SIZE_OF_AXIS } from '../setting-out/faces.ts';
import type { Contact, MakeContext, Role } from '../setting-out/joint-type.ts';

/** Small geometry that joints share. Boxes here are in body frames, mm. */

export const COMMON_PRACTICE: Source = { text: 'common practice', basis: 'common practice' };

export const rule = (
  number: string,
  says: string,
  reason: string,
  source: Source = COMMON_PRACTICE,
): Rule => ({
  number,
  says,
  reason,
  source,
});

export const sizeAlong = (size: Size, face: LocalFace): number => size[SIZE_OF_AXIS[FACE_AXIS[face]]];

/** The same region in the other member's body frame. */
export function across(context: MakeContext, from: Role, b: Box): Box {
  const [a, z] = from === 'from' ? [context.from, context.into] : [context.into, context.from];
  return boxBetween(a.frame, z.frame, b);
}

/** Replaces the span of a box along an axis. */
export const withSpan = (b: Box, axis: Axis, low: number, high: number): Box => ({
  min: { ...b.min, [axis]: Math.min(low, high) },
  max: { ...b.max, [axis]: Math.max(low, high) },
});

/** A box that reaches from a face into the body by `depth`, with the footprint's extent. */
export function sunk(footprint: Box, face: LocalFace, size: Size, depth: number): Box {
  const axis = FACE_AXIS[face];
  const at = isHigh(face) ? sizeAlong(size, face) : 0;
  return withSpan(footprint, axis, at, isHigh(face) ? at - depth : at + depth);
}

/** A box that stands out beyond a face of the body by `length` (a tenon, a tongue). */
export const beyond = (footprint: Box, face: LocalFace, size: Size, length: number): Box =>
  sunk(footprint, face, size, -length);

/** The axis, other than the face's own, along which a footprint is longest. */
export function longAxis(b: Box, face: LocalFace): Axis {
  const size = boxSize(b);
  const axes = (['x', 'y', 'z'] as const).filter(a => a !== FACE_AXIS[face]);
  return size[axes[0]!] >= size[axes[1]!] ? axes[0]! : axes[1]!;
}

export const otherAxis = (face: LocalFace, not: Axis): Axis =>
  (['x', 'y', 'z'] as const).find(a => a !== FACE_AXIS[face] && a !== not)!;

export const flatArea = (b: Box): number => {
  const s = boxSize(b);
  const [, middle, most] = [s.x, s.y, s.z].sort((p, r) => p - r);
  return middle! * most!;
};

export const deep = (contact: Contact, size: Size): number => sizeAlong(size, contact.intoFace);

/** Whole millimetres, as cutters and chisels come. */
export const wholeMm = (value: number): number => Math.max(1, Math.round(value));
export const halfMm = (value: number): number => Math.round(value * 2) / 2;

export function limit(
  r: Rule,
  figure: string,
  value: number,
  range: { min?: number; max?: number },
  severity: JointLimit['severity'],
  remedy: string,
): JointLimit {
  return { rule: r, figure, value, ...range, kind: 'length', severity, remedy };
}

export { FACE_AXIS, isHigh, OPPOSITE, SIZE_OF_AXIS };
