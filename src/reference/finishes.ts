/** Finishes and stains: coats, spread, waits, hazards. The tin wins over all of it. */

import type { FinishProduct } from './finish-row.ts';
import { FILM_FINISHES } from './finishes-film.ts';
import { OIL_FINISHES } from './finishes-oil.ts';
import { STAINS_AND_METAL } from './finishes-stain.ts';
import { table } from './keys.ts';

export const FINISHES = table<FinishProduct>([...OIL_FINISHES, ...FILM_FINISHES, ...STAINS_AND_METAL]);

/** The finish of that key, of another name for it, or of the same words in another order. */
export const finishProduct = (key: string): FinishProduct | undefined => FINISHES.find(key);
