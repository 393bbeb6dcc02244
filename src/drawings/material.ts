import type { Material } from './hatch.ts';

const BRASS = /brass|bronze|copper/i;
const METAL = /steel|stainless|alumin|iron|zinc|metal|titanium/i;

/** How a material is washed and hatched: by its key first (a brass sheet is brass), then by the kind of part. */
export function materialOf(key: string, kind: string): Material {
  if (BRASS.test(key)) return 'brass';
  if (METAL.test(key)) return 'metal';
  if (kind === 'bar' || kind === 'tube') return 'metal';
  return kind === 'sheet' ? 'board' : 'timber';
}

const LAID = /ply|lvl|laminated|block/i;

/** Is a sheet laid up of layers, so that its edge shows them? Fibre and particle boards are one stuff through. */
export const layered = (key: string): boolean => LAID.test(key);
