/** Drills and cutters a workshop can be expected to have or buy; its own list wins. */
import type { SizeSet } from './stock.ts';

const RECALLED = { source: 'remembered, unverified', basis: 'memory' } as const;

export const STRAIGHT_CUTTERS_MM: SizeSet = {
  sizesMm: [3, 4, 5, 6, 6.35, 8, 9.5, 10, 12, 12.7, 15, 16, 18, 19, 20, 22, 25],
  note: 'a new one -0.1 to +0.05; resharpened 0.1-0.5 under: cut a test slot',
  ...RECALLED,
};
export const ROUND_OVER_RADII_MM: SizeSet = { sizesMm: [2, 3, 5, 6.35, 8, 9.5, 12.7], ...RECALLED };
export const MORTISE_CHISELS_MM: SizeSet = {
  sizesMm: [6, 6.35, 8, 9.5, 10, 12, 12.7, 13, 14, 16, 19, 20],
  ...RECALLED,
};
export const BRAD_POINT_DRILLS_MM: SizeSet = { sizesMm: [3, 4, 5, 6, 7, 8, 9, 10, 12], ...RECALLED };
export const TWIST_DRILLS_MM: SizeSet = {
  sizesMm: [
    1, 1.5, 1.6, 2, 2.4, 2.5, 2.8, 3, 3.2, 3.3, 3.5, 4, 4.2, 4.5, 5, 5.5, 6, 6.5, 6.8, 7, 7.5, 8, 8.5, 9, 9.5,
    10, 11, 12, 13,
  ],
  ...RECALLED,
};
export const FORSTNER_BITS_MM: SizeSet = {
  sizesMm: [10, 12, 15, 16, 18, 20, 22, 25, 30, 35, 40],
  ...RECALLED,
};

/** The size of the set nearest to a wish, mm; the smaller of two equally near. */
export function nearestSize(set: SizeSet, wishMm: number): number | undefined {
  let best: number | undefined;
  for (const size of set.sizesMm) {
    if (best === undefined || Math.abs(size - wishMm) < Math.abs(best - wishMm)) best = size;
  }
  return best;
}
