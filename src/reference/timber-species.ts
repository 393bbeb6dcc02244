/** The timbers, by key: `ash-european`, `white-oak-american`, `sycamore`. */
import { table } from './keys.ts';
import { AMERICAN_HARDWOODS, AMERICAN_SOFTWOODS } from './timber-america.ts';
import { EUROPEAN_HARDWOODS } from './timber-europe-hardwoods.ts';
import { EUROPEAN_SOFTWOODS } from './timber-europe-softwoods.ts';
import { OTHER_TIMBERS } from './timber-more.ts';
import type { TimberSpecies } from './timber-row.ts';
import { TRADED_TIMBERS } from './timber-traded.ts';

export const TIMBERS = table<TimberSpecies>([
  ...EUROPEAN_HARDWOODS,
  ...EUROPEAN_SOFTWOODS,
  ...TRADED_TIMBERS,
  ...OTHER_TIMBERS,
  ...AMERICAN_HARDWOODS,
  ...AMERICAN_SOFTWOODS,
]);

/** The timber of that key, of another name for it, or of the same words in another order. */
export const timberSpecies = (key: string): TimberSpecies | undefined => TIMBERS.find(key);
