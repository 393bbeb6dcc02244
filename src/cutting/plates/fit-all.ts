/** Can all pieces be cut from one plate? A plate, a proof that there is none, or not known. */
import type { CutProblem, Layout } from '../problem.ts';
import { buildUp } from './build-up.ts';
import { GuillotineTable } from './guillotine-table.ts';

export interface Fit {
  answer: 'feasible' | 'infeasible' | 'unknown';
  /** The plate, where the answer is feasible. */
  layout: Layout | undefined;
}

export interface FitSearch {
  /** Rectangles kept in one run. */
  most: number;
  stop?: () => boolean;
}

const POINTS = 1000;
/** Rectangles kept of a size, one run after another: few to find a plate soon, all to show there is none. */
const WIDTHS = [4, 40, 400, Infinity];

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
  for (const width of WIDTHS) {
    if (limits.stop?.()) break;
    const built = buildUp(problem, builder, {
      worth: areas,
      priced: areas,
      caps,
      above: total - 1,
      width,
      most: limits.most,
      ...(limits.stop ? { stop: limits.stop } : {}),
    });
    if (process.env.TRACE) console.error(width, built.complete, built.layout !== undefined);
    if (built.layout) return { answer: 'feasible', layout: built.layout };
    if (built.complete && builder.exact) return { answer: 'infeasible', layout: undefined };
  }
  return { answer: 'unknown', layout: undefined };
}
