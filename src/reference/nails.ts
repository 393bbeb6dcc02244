/** Nails and pins for wood, by diameter and length. */
import { type Keyed, table, toKey } from './keys.ts';
import { type Band, memory, read } from './sourced.ts';

export interface Nail extends Keyed {
  /** As it is asked for: `2 x 40`. */
  readonly name: string;
  readonly diameterMm: Band;
  readonly lengthMm: Band;
}

const HANDBOOK = 'FPL-GTR-282 Table 8-1, read through a public digitisation';
const SOLD = 'lost-head nails and panel pins as sold, remembered';

const nail = (diameter: number, length: number, of: typeof read, source: string): Nail => ({
  key: toKey(`${diameter} x ${length}`),
  name: `${diameter} x ${length}`,
  diameterMm: of(diameter, diameter, source),
  lengthMm: of(length, length, source),
});

/** Ascending by length. */
export const NAILS = table<Nail>([
  nail(1.2, 20, memory, SOLD),
  nail(1.4, 25, memory, SOLD),
  nail(1.6, 30, memory, SOLD),
  nail(2, 40, memory, SOLD),
  nail(2.4, 45, memory, SOLD),
  nail(2.87, 50.8, read, HANDBOOK),
  nail(3.33, 63.5, read, HANDBOOK),
  nail(3.76, 76.2, read, HANDBOOK),
  nail(4.11, 88.9, read, HANDBOOK),
  nail(4.88, 101.6, read, HANDBOOK),
]);
