/** How tight a bar or sheet of each metal is bent cold, as a multiple of its thickness. */
import type { Sourced } from './sourced.ts';

interface LeastBend extends Sourced {
  readonly metal: string;
  /** Inside radius over thickness. */
  readonly times: number;
}

const MEMORY = {
  source: 'remembered workshop values, annealed or half-hard flat, bent cold',
  basis: 'memory',
} as const;

export const LEAST_BENDS: readonly LeastBend[] = [
  { metal: 'mild-steel', times: 1, ...MEMORY },
  { metal: 'steel-s275', times: 1, ...MEMORY },
  { metal: 'steel-s355', times: 1.5, ...MEMORY },
  { metal: 'stainless-304', times: 1.5, ...MEMORY },
  { metal: 'brass', times: 1, ...MEMORY },
  { metal: 'copper', times: 0.5, ...MEMORY },
  { metal: 'bronze', times: 2, ...MEMORY },
  { metal: 'aluminium', times: 1.5, ...MEMORY },
];

/** The least inside radius over thickness; 2 for a metal nobody has told about. */
export const leastBend = (metal: string): number => LEAST_BENDS.find(b => b.metal === metal)?.times ?? 2;
