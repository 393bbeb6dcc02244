import { board, type Sample, timber } from './parts.ts';

/** A board that lies, its end against the face of one that stands, flush with its lower end. */
const side = (t: number) => board(t, { along: 'up', facing: 'right' });
const bottom = (t: number, over: object = {}) =>
  board(t, { length: 15 * t, at: { left: 'into.right', front: 0, bottom: 0 }, ...over });

/** Two members of a frame that lie in one plane and share a corner. */
const frame: Sample = t => ({
  parts: {
    into: timber({
      length: 20 * t,
      width: 2 * t,
      thickness: t,
      along: 'up',
      facing: 'front',
      at: { left: 0, front: 0, bottom: 0 },
    }),
    from: timber({
      length: 20 * t,
      width: 2 * t,
      thickness: t,
      along: 'right',
      facing: 'front',
      at: { left: 0, front: 0, bottom: 0 },
    }),
  },
});
/** Two boards of a box, each running to the outer corner. */
const box: Sample = t => ({
  parts: { into: side(t), from: bottom(t, { at: { left: 0, front: 0, bottom: 0 } }) },
});

/** Boards and frames at corners, and lengths end to end. */
export const CORNERS: Record<string, Sample> = {
  'through-dovetail': t => ({ parts: { into: side(t), from: bottom(t) } }),
  'lapped-dovetail': t => ({ parts: { into: side(t), from: bottom(t) } }),
  'sliding-dovetail': t => ({
    parts: { into: side(t), from: bottom(t, { at: { left: 'into.right', front: 0, bottom: 200 } }) },
  }),
  'mitre-spline': frame,
  'mitre-keys': frame,
  'mitre-dowels': frame,
  'box-mitre': box,
  scarf: t => ({
    parts: {
      into: board(t, { width: 3 * t }),
      from: board(t, { width: 3 * t, at: { left: 'into.right', front: 0, bottom: 0 } }),
    },
  }),
  'breadboard-end': t => ({
    parts: {
      into: board(t, { length: 8 * t, width: 4 * t, along: 'back', at: { left: 0, front: 0, bottom: 0 } }),
      from: board(t, { at: { left: 'into.right', front: 0, bottom: 0 } }),
    },
  }),
  'finger-joint': t => ({ parts: { into: side(t), from: bottom(t) } }),
};
