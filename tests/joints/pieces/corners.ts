import { board, type Sample } from './parts.ts';

/** A board that lies, its end against the face of one that stands, flush with its lower end. */
const side = (t: number) => board(t, { along: 'up', facing: 'right' });
const bottom = (t: number, over: object = {}) =>
  board(t, { length: 15 * t, at: { left: 'into.right', front: 0, bottom: 0 }, ...over });

/** Boards and frames at corners. */
export const CORNERS: Record<string, Sample> = {
  'through-dovetail': t => ({ parts: { into: side(t), from: bottom(t) } }),
  'lapped-dovetail': t => ({ parts: { into: side(t), from: bottom(t) } }),
  'sliding-dovetail': t => ({
    parts: { into: side(t), from: bottom(t, { at: { left: 'into.right', front: 0, bottom: 200 } }) },
  }),
  'finger-joint': t => ({ parts: { into: side(t), from: bottom(t) } }),
};
