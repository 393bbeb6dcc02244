import { post, rail, type Sample } from './parts.ts';

/** Tenons of other kinds, in the same post and rail. */
export const TENONS: Record<string, Sample> = {
  'twin-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
  'wedged-tenon': t => ({ parts: { into: post(t), from: rail(t) } }),
};
