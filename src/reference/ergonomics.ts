/** Sizes that fit people and things, by piece. */
import { BEDS } from './ergonomics-beds.ts';
import { BODY } from './ergonomics-body.ts';
import { OTHERS } from './ergonomics-others.ts';
import { SEATS } from './ergonomics-seats.ts';
import { STORAGE } from './ergonomics-storage.ts';
import { TABLES } from './ergonomics-tables.ts';
import { type Keyed, table } from './keys.ts';
import type { Sourced } from './sourced.ts';

/** A size in its unit (mm unless named otherwise); an end or a usual value the source leaves open is absent. */
export interface UsualSize extends Keyed, Sourced {
  readonly piece: string;
  readonly what: string;
  readonly low?: number;
  readonly usual?: number;
  readonly high?: number;
  readonly unit: string;
  readonly forWhom?: string;
}

export const USUAL_SIZES = table<UsualSize>([...BEDS, ...BODY, ...OTHERS, ...SEATS, ...STORAGE, ...TABLES]);

/** The size of that key: `dining-table-height-to-top`. */
export const usualSize = (key: string): UsualSize | undefined => USUAL_SIZES.find(key);

/** All sizes of a piece: `desk`, `bookcase`. */
export const sizesOf = (piece: string): UsualSize[] => USUAL_SIZES.rows.filter(row => row.piece === piece);
