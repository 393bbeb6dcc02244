/** Metal bars and tubes as sold, mm, by key of the metal. */
import type { Sourced } from './sourced.ts';

/** Flat: width x thickness. Round, square: one size. Tube: outside x wall. */
export interface BarStock extends Sourced {
  readonly metal: string;
  readonly shape: 'flat' | 'round' | 'square' | 'round tube' | 'square tube';
  readonly sizes: readonly (readonly [size: number, second?: number])[];
  /** Tolerance in words of the list. */
  readonly tolerance?: string;
}

const RECALLED = { source: 'remembered, unverified', basis: 'memory' } as const;
const BLACKBURNS = { source: 'rightonblackburns.co.uk stainless bar datasheet 63', basis: 'read' } as const;
const single = (...sizes: number[]): [number][] => sizes.map(size => [size]);

// biome-ignore format: a table, one stock a line
export const BARS: readonly BarStock[] = [
  { metal: 'mild-steel', shape: 'flat', sizes: [[10, 3], [12, 3], [16, 3], [20, 3], [20, 5], [25, 3], [25, 5], [25, 6], [30, 5], [40, 5], [40, 6], [50, 5], [50, 6], [50, 10]], tolerance: 'black: thickness +-0.5, width +-0.75 to 40 and +-1.0 to 80; bright h11', ...RECALLED },
  { metal: 'mild-steel', shape: 'round', sizes: single(6, 8, 10, 12, 16, 20, 25), ...RECALLED },
  { metal: 'mild-steel', shape: 'square tube', sizes: [[20, 1.5], [20, 2], [25, 1.5], [25, 2], [30, 2], [40, 2], [40, 3], [50, 3]], tolerance: 'outside +-0.12-0.20', ...RECALLED },
  { metal: 'mild-steel', shape: 'round tube', sizes: [[16, 1.2], [19, 1.2], [22, 1.5], [25, 1.5], [32, 1.5]], tolerance: 'outside +-0.12-0.20', ...RECALLED },
  { metal: 'brass', shape: 'flat', sizes: [[10, 3], [12, 3], [15, 3], [20, 3], [20, 5], [25, 3], [25, 5], [30, 3], [30, 5], [40, 5], [50, 5], [50, 6]], tolerance: '+0/-0.08 to -0.16 (drawn, h11)', ...RECALLED },
  { metal: 'brass', shape: 'round', sizes: single(2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30), tolerance: 'h9-h11: 6-10 +0/-0.09', ...RECALLED },
  { metal: 'brass', shape: 'square', sizes: single(4, 5, 6, 8, 10, 12, 16, 20, 25), tolerance: 'h11', ...RECALLED },
  { metal: 'brass', shape: 'round tube', sizes: [[4, 0.5], [6, 1], [8, 1], [10, 1], [12, 1], [16, 1], [20, 1.5], [25, 1.5]], tolerance: 'outside +-0.05-0.10', ...RECALLED },
  { metal: 'aluminium', shape: 'flat', sizes: [[10, 3], [15, 3], [20, 3], [25, 3], [30, 3], [40, 3], [50, 5]], tolerance: '+-0.15-0.30', ...RECALLED },
];

/** How much under its size a bright drawn round bar of stainless may be, mm. */
export interface BarTolerance extends Sourced {
  readonly fromMm: number;
  readonly toMm: number;
  readonly minusMm: number;
}

export const STAINLESS_ROUND_BRIGHT: readonly BarTolerance[] = [
  { fromMm: 6, toMm: 10, minusMm: 0.036, ...BLACKBURNS },
  { fromMm: 11, toMm: 18, minusMm: 0.043, ...BLACKBURNS },
  { fromMm: 19, toMm: 30, minusMm: 0.052, ...BLACKBURNS },
];
