/** Can all pieces be cut from one plate? A plate, a proof that there is none, or not known. */
import type { CutProblem, Layout } from '../problem.ts';
import { type Random, seeded } from '../random.ts';
import { pricedPlate } from './best-plate.ts';
import { buildUp } from './build-up.ts';
import { GuillotineTable } from './guillotine-table.ts';
import { Prices } from './prices.ts';

export interface Fit {
  answer: 'feasible' | 'infeasible' | 'unknown';
  /** The plate, where the answer is feasible. */
  layout: Layout | undefined;
}

export interface FitSearch {
  seed: number;
  /** Rectangles kept in one run. */
  most: number;
  stop?: () => boolean;
}

const POINTS = 1000;
const PRICE_STEPS = 200;
/**
 * Rectangles kept of a size, one run after another: few to find a plate soon, all to show there is none; and
 * how far the worths of that run are from the best prices.
 */
const RUNS: readonly { width: number; shake: number; share: number }[] = [
  { width: 4, shake: 0, share: 1 },
  { width: 40, shake: 0, share: 1 },
  { width: 40, shake: 0.2, share: 1 },
  { width: 200, shake: 0, share: 1 },
  { width: Infinity, shake: 0, share: 0.1 },
  ...Array.from({ length: 6 }, () => ({ width: 100, shake: 0.2, share: 1 })),
  { width: Infinity, shake: 0, share: 1 },
];

export function fitAll(problem: CutProblem, limits: FitSearch): Fit {
  const { items, stocks } = problem;
  const on = stocks[0]!;
  if (items.some(item => item.lies[0]!.length === 0)) return { answer: 'infeasible', layout: undefined };
  const caps = Int32Array.from(items, item => item.demands.length);
  const areas = Float64Array.from(items, item => item.area);
  const total = areas.reduce((sum, area, i) => sum + area * caps[i]!, 0);
  if (total > on.l * on.w) return { answer: 'infeasible', layout: undefined };
  const table = new GuillotineTable(problem, 0, POINTS);
  const builder = table.exact ? table : new GuillotineTable(problem, 0, POINTS, 'free', 'larger');
  // Pieces that are easy to fill with count less than their area: the bound on what is missed gets tighter.
  const prices = new Prices(pricedPlate(problem, table), areas, caps);
  prices.move(PRICE_STEPS, 0, limits.stop);
  if (prices.bound < total) return { answer: 'infeasible', layout: undefined };
  const random = seeded(limits.seed);
  for (const { width, shake, share } of RUNS) {
    if (limits.stop?.()) break;
    const built = buildUp(problem, builder, {
      worth: areas,
      priced: shake === 0 ? prices.best : shaken(areas, shake, random),
      caps,
      above: total - 1,
      width,
      most: share * limits.most,
      ...(limits.stop ? { stop: limits.stop } : {}),
    });
    if (built.layout) return { answer: 'feasible', layout: built.layout };
    if (built.complete && builder.exact) return { answer: 'infeasible', layout: undefined };
  }
  return { answer: 'unknown', layout: undefined };
}

/** Worths near the areas, large pieces a little more or less for theirs. */
function shaken(areas: Float64Array, shake: number, random: Random): Float64Array {
  const power = 1 + shake * (2 * random() - 0.5);
  return areas.map(area => area ** power * (1 + shake * (random() - 0.5)));
}
