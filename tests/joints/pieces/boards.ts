import { board, type Sample, timber } from './parts.ts';

const shelf = (t: number, over: object = {}) =>
  board(t, { length: 15 * t, at: { left: 'into.right', front: 0, bottom: 200 }, ...over });
const side = (t: number) => board(t, { along: 'up', facing: 'right' });

/** Boards let into boards. */
export const BOARDS: Record<string, Sample> = {
  'stopped-housing': t => ({ parts: { into: side(t), from: shelf(t) } }),
  'tapered-housing': t => ({ parts: { into: side(t), from: shelf(t) } }),
  'corner-notch': t => ({
    parts: {
      into: board(t, { length: 20 * t, width: 10 * t, at: { left: 0, front: 0, bottom: 100 } }),
      from: timber({
        length: 20 * t,
        width: 2 * t,
        thickness: 2 * t,
        along: 'up',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
    },
  }),
};
