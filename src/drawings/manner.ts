import type { DisplayList, Item } from './list.ts';

/**
 * The hand a drawing is drawn in: which unit, how large letters are, how wide a rod. One drawing function
 * serves desk, bench and paper; only the manner differs.
 */
export interface Manner {
  unit: 'px' | 'mm';
  /** List units to one CSS pixel: gaps, ticks and leaders of looks.md are given in pixels. */
  px: number;
  /** Figures in the drawing, list units. */
  text: number;
  /** Titles in the drawing. */
  large: number;
  /** Thickness of a rod. */
  rod: number;
  /** Least distance of labels along a lying rod, where figures are turned. */
  least: number;
  /** Factor on line weights; small drawings take 0.7. */
  weight: number;
}

const MM_PER_PX = 25.4 / 96;

export const DESK: Manner = { unit: 'px', px: 1, text: 12, large: 15, rod: 26, least: 15, weight: 1 };
export const BENCH: Manner = { unit: 'px', px: 1, text: 13.5, large: 18, rod: 34, least: 17, weight: 1 };
export const PAPER: Manner = {
  unit: 'mm',
  px: MM_PER_PX,
  text: 2.9,
  large: 3.6,
  rod: 4.2,
  least: 3.6,
  weight: 1,
};

/** A drawing under 400 px wide takes thinner lines. */
export const small = (manner: Manner): Manner => ({ ...manner, weight: 0.7 });

export const list = (
  manner: Manner,
  title: string,
  width: number,
  height: number,
  items: Item[],
): DisplayList => ({ unit: manner.unit, width, height, title, weight: manner.weight, items });

/** Ground kept clear on each side of words on hatch, in their own size. */
export const CLEAR_PAD = 0.22;

const NARROW = new Set("ijlI.,:;'|!()[] ftr\u202f");
const WIDE = new Set('mwMW\u00d7@%');

/**
 * Width of a text as it will be set, near enough to keep hatch clear of it (Encode Sans, semi-condensed);
 * renderers that own the font measure instead.
 */
export function textWidth(content: string, size: number, strong = false): number {
  let em = 0;
  for (const c of content) em += NARROW.has(c) ? 0.29 : WIDE.has(c) ? 0.74 : /[A-Z]/.test(c) ? 0.58 : 0.515;
  return em * size * (strong ? 1.05 : 1);
}
