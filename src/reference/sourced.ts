/** What every row of the tables carries: where it comes from, and how far it is trusted. */
import type { Basis, Source } from '../results/source.ts';

export interface Sourced {
  readonly source: string;
  readonly basis: Basis;
  readonly note?: string;
}

/** A published figure. Where sources differ, `low` and `high` are the least and the greatest of them. */
export interface Band extends Sourced {
  readonly low: number;
  readonly high: number;
}

/** A published judgement in words or classes ("medium", "2-4"). */
export interface Trait extends Sourced {
  readonly value: string;
}

/** A band from its two ends; the note is left out when empty. */
export function band(low: number, high: number, basis: Basis, source: string, note?: string): Band {
  return note ? { low, high, basis, source, note } : { low, high, basis, source };
}

/** A judgement in words; the note is left out when empty. */
export function trait(value: string, basis: Basis, source: string, note?: string): Trait {
  return note ? { value, basis, source, note } : { value, basis, source };
}

/** A figure or a class seen in a public page or file. */
export const read = (low: number, high: number, source: string, note?: string): Band =>
  band(low, high, 'read', source, note);

/** A figure that is only remembered: an unverified default, the workshop's own figure replaces it. */
export const memory = (low: number, high: number, note?: string): Band =>
  band(low, high, 'memory', 'remembered trade figure, unverified', note);

/** Arithmetic on figures that were read. */
export const computed = (low: number, high: number, source: string, note?: string): Band =>
  band(low, high, 'computed', source, note);

/** The figure halfway between the two ends of a band, for a single-value calculation. */
export function middle(of: { readonly low: number; readonly high: number }): number {
  return (of.low + of.high) / 2;
}

/** The source of a row in the shape that results carry. */
export function sourceOf(row: Sourced): Source {
  return { text: row.source, basis: row.basis };
}
