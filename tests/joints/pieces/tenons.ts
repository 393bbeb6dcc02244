import { post, rail, type Sample } from './parts.ts';

/** Tenons of other kinds, in the same post and rail. */
export const TENONS: Record<string, Sample> = {
  'twin-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'wedged-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'round-tenon': t => ({
    parts: {
      into: post(t),
      from: rail(t, { width: t, at: { left: 'into.right', centre_y: 'into.centre_y', centre_z: 300 } }),
    },
  }),
};
