import { board, post, rail, type Sample, timber } from './parts.ts';

/** The joints of the spine. */
export const PLAIN: Record<string, Sample> = {
  'mortise-and-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'pegged-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'tusk-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'loose-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'tongue-and-groove': t => ({
    parts: { into: board(t), from: board(t, { at: { left: 0, front: 'into.back', bottom: 0 } }) },
  }),
  button: t => ({
    parts: {
      into: board(t, { length: 40 * t, width: 30 * t, at: { left: 0, front: 0, bottom: 500 } }),
      from: rail(t, { along: 'right', length: 30 * t, at: { left: 5 * t, front: 3 * t, top: 500 } }),
    },
  }),
  'corner-bridle': t => ({
    parts: {
      into: post(t),
      from: rail(t, { thickness: 2 * t, at: { left: 'into.right', front: 0, top: 'into.top' } }),
    },
  }),
  't-bridle': t => ({
    parts: {
      into: timber({
        length: 40 * t,
        width: 4 * t,
        thickness: 2 * t,
        along: 'right',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
      from: timber({
        length: 10 * t,
        width: 2 * t,
        thickness: 2 * t,
        along: 'up',
        facing: 'front',
        at: { centre_x: 'into.centre_x', centre_y: 'into.centre_y', bottom: 'into.top' },
      }),
    },
  }),
  housing: t => ({
    parts: {
      into: board(t, { along: 'up', facing: 'right' }),
      from: board(t, { length: 15 * t, at: { left: 'into.right', front: 0, bottom: 200 } }),
    },
  }),
  halving: t => ({
    parts: {
      into: timber({
        length: 20 * t,
        width: 3 * t,
        thickness: t,
        along: 'right',
        facing: 'up',
        at: { left: 0, front: 0, bottom: 0 },
      }),
      from: timber({
        length: 20 * t,
        width: 3 * t,
        thickness: t,
        along: 'back',
        facing: 'up',
        at: { centre_x: 'into.centre_x', centre_y: 'into.centre_y', bottom: 0 },
      }),
    },
  }),
  'grooved-panel': t => ({
    parts: {
      into: rail(2 * t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: board(t / 2, {
        length: 20 * t,
        width: 10 * t,
        facing: 'front',
        at: { left: 0, bottom: 'into.top', centre_y: 'into.centre_y' },
      }),
    },
  }),
  'mitred-frame': t => ({
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
  }),
  dowelled: t => ({ parts: { into: post(t), from: rail(t) } }),
  'bar-in-hole': t => ({
    parts: {
      into: post(t),
      from: {
        kind: 'bar',
        material: 'brass',
        diameter: t,
        length: 20 * t,
        along: 'right',
        facing: 'front',
        at: { left: 'into.right', centre_y: 'into.centre_y', centre_z: 300 },
      },
    },
  }),
  screwed: t => ({
    parts: {
      into: rail(3 * t, { at: { left: 0, front: 0, bottom: 0 } }),
      from: rail(t, { length: 20 * t, at: { left: 0, back: 'into.front', bottom: 0 } }),
    },
  }),
  'edge-glued': t => ({
    parts: { into: board(t), from: board(t, { at: { left: 0, front: 'into.back', bottom: 0 } }) },
  }),
  'splayed-rail': t => ({
    parts: {
      into: { ...post(t), turn: { y: '8 deg' } },
      from: rail(t, { at: { left: 'into.right', centre_y: 'into.centre_y', centre_z: 'into.centre_z' } }),
    },
  }),
  lipped: t => ({
    parts: {
      into: board(t),
      from: {
        kind: 'timber',
        material: 'oak-european',
        length: 20 * t,
        width: t,
        thickness: 6,
        along: 'right',
        facing: 'front',
        at: { left: 0, back: 'into.front', bottom: 0 },
      },
    },
  }),
  'sheet-bonded': t => ({
    parts: {
      into: board(t),
      from: {
        kind: 'sheet',
        material: 'brass',
        length: 20 * t,
        width: 8 * t,
        thickness: 0.9,
        along: 'right',
        facing: 'up',
        at: { left: 0, front: 0, bottom: 'into.top' },
      },
    },
  }),
  'sheet-let-in': t => ({
    parts: {
      into: board(t),
      from: {
        kind: 'sheet',
        material: 'brass',
        length: 10 * t,
        width: 4 * t,
        thickness: 0.9,
        along: 'right',
        facing: 'up',
        at: { left: 2 * t, front: 2 * t, top: 'into.top' },
      },
    },
  }),
};
