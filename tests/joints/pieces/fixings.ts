import { board, post, rail, type Sample, timber } from './parts.ts';

const upright = (t: number) => board(t, { along: 'up', facing: 'right', length: 30 * t });
const strip = (t: number, over: object = {}) =>
  timber({ length: 14 * t, width: 2 * t, thickness: t, along: 'back', facing: 'right', ...over });
const top = (t: number) =>
  board(t, { length: 40 * t, width: 30 * t, at: { left: 0, front: 0, bottom: 500 } });
const under = (t: number) => rail(t, { length: 30 * t, at: { left: 5 * t, front: 3 * t, top: 500 } });
const stile = (t: number, over: object = {}) =>
  timber({ length: 30 * t, width: 3 * t, thickness: t, along: 'up', facing: 'front', ...over });

/** Joints made with what is bought: screws, nails, pins, bolts, plates, hinges and locks. */
const flat = (over: object) => ({
  kind: 'bar',
  material: 'mild-steel',
  along: 'right',
  facing: 'up',
  ...over,
});

export const FIXINGS: Record<string, Sample> = {
  tapped: t => ({
    parts: {
      into: flat({ length: 20 * t, width: 3 * t, thickness: t / 2, at: { left: 0, front: 0, bottom: 0 } }),
      from: flat({
        length: 20 * t,
        width: 3 * t,
        thickness: 4,
        at: { left: 0, front: 0, bottom: 'into.top' },
      }),
    },
  }),
  welded: t => ({
    parts: {
      into: flat({ length: 20 * t, width: t, thickness: t, at: { left: 0, front: 0, bottom: 0 } }),
      from: flat({
        length: 12 * t,
        width: t,
        thickness: t,
        along: 'up',
        facing: 'front',
        at: { centre_x: 10 * t, front: 0, bottom: 'into.top' },
      }),
    },
  }),
  // Flat 3 mm thick, which is welded without a gap; gaps of mitres are tried in welded-mitre.test.ts.
  'welded-mitre': t => ({
    parts: {
      into: flat({
        length: 20 * t,
        width: 2 * t,
        thickness: 3,
        along: 'up',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
      from: flat({
        length: 20 * t,
        width: 2 * t,
        thickness: 3,
        along: 'right',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
    },
  }),
  'pocket-screw': t => ({ parts: { into: post(t), from: rail(t) } }),
  'barrel-nut': t => ({ parts: { into: post(t), from: rail(t, { width: 5 * t }) } }),
  'bed-connector': t => ({ parts: { into: post(t), from: rail(t, { width: 6 * t }) } }),
  'shelf-pins': t => ({
    parts: {
      into: upright(t),
      from: board(t, { length: 15 * t, at: { left: 'into.right + 1 mm', front: 0, bottom: 12 * t } }),
    },
  }),
  nailed: t => ({
    parts: {
      into: rail(3 * t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: rail(t, { length: 20 * t, at: { left: 0, back: 'into.front', bottom: 0 } }),
    },
  }),
  cleat: t => ({
    parts: {
      into: upright(t),
      from: strip(t, { length: 8 * t, at: { left: 'into.right', front: 0, bottom: 10 * t } }),
    },
  }),
  'glue-block': t => ({
    parts: {
      into: rail(t, { length: 20 * t, at: { left: 0, front: 0, bottom: 0 } }),
      from: timber({
        length: 3 * t,
        width: t,
        thickness: t,
        along: 'right',
        facing: 'front',
        at: { left: 5 * t, front: 'into.back', top: 'into.top' },
      }),
    },
  }),
  'threaded-insert': t => ({
    parts: {
      into: rail(3 * t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: rail(t, { length: 20 * t, at: { left: 0, back: 'into.front', bottom: 0 } }),
    },
  }),
  'slotted-screw': t => ({ parts: { into: top(t), from: under(t) } }),
  'table-plate': t => ({ parts: { into: top(t), from: { ...under(t), thickness: 2 * t } } }),
  'hinge-recess': t => ({
    parts: {
      into: stile(t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: stile(t, { at: { left: 'into.right + 1.5 mm', front: 0, bottom: 0 } }),
      back: board(t, { length: 10 * t, at: { left: 0, front: 20 * t, bottom: 0 } }),
    },
  }),
  'lock-recess': t => ({
    parts: {
      into: stile(t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: stile(t, { width: 5 * t, at: { left: 'into.right + 2 mm', front: 0, bottom: 0 } }),
      back: board(t, { length: 10 * t, at: { left: 0, front: 20 * t, bottom: 0 } }),
    },
  }),
  'runner-groove': t => ({
    parts: {
      into: board(t, { facing: 'front', along: 'right' }),
      from: timber({
        length: 17 * t,
        width: t,
        thickness: (2 * t) / 3,
        along: 'right',
        facing: 'front',
        at: { left: 0, centre_z: 'into.centre_z', front: -t / 3 },
      }),
    },
  }),
};
