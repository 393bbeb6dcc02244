/** What the piece is for, read from its title and the names of its parts: which published load speaks. */
import type { Instance } from '../results/piece.ts';
import type { CheckInput } from './check.ts';

export type Purpose = 'seat' | 'table' | 'storage' | undefined;

const SEAT = /\b(seats?|bench(es)?|stools?|chairs?|settles?)\b/i;
const TABLE = /\b(tables?|desks?)\b/i;
const STORAGE = /\b(cabinets?|chests?|wardrobes?|bookcases?|dressers?|cupboards?|sideboards?)\b/i;
const SHELF = /\bshel(f|ves)\b/i;
const TOP = /\btop\b/i;

/** The title decides; without a word there, the names of the parts. */
export function purposeOf({ commission, piece }: CheckInput): Purpose {
  const words = [commission.title, piece.instances.map(i => i.name).join(' ')];
  for (const said of words) {
    if (SEAT.test(said)) return 'seat';
    if (TABLE.test(said)) return 'table';
    if (STORAGE.test(said)) return 'storage';
  }
  return undefined;
}

export const isSeat = (part: Instance): boolean => SEAT.test(part.name);
export const isShelf = (part: Instance): boolean => SHELF.test(part.name);
/** A table's top: the name says `top` and nothing that makes it a rail. */
export const isTop = (part: Instance): boolean =>
  TOP.test(part.name) && !/rail|frieze|frame/i.test(part.name);
