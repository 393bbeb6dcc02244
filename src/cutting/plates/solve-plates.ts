/** Plates by column generation with dives, from a problem and the solutions known already. */
import { ColumnSearch, type Found, type SearchLimits } from '../columns/column-search.ts';
import type { CutProblem, Layout, Slab, Solution } from '../problem.ts';
import { seeded } from '../random.ts';
import { canFill, fillPlates } from './fill-plates.ts';
import type { Stages } from './guillotine-table.ts';
import { PlatePricer, wayOf } from './plate-pricer.ts';

export interface PlateLimits extends SearchLimits {
  seed: number;
  stages: Stages;
}

export function solvePlates(
  problem: CutProblem,
  known: readonly Solution[],
  limits: PlateLimits,
): Found<Layout> {
  const demands = Int32Array.from(problem.items, item => item.demands.length);
  const pricer = new PlatePricer(problem, limits.stages, seeded(limits.seed));
  const search = new ColumnSearch(demands, problem.stocks, pricer, limits);
  for (const solution of known)
    search.offer(solution.layouts.map(layout => ({ way: wayOf(layout), times: 1 })));
  if (known.length === 0) {
    const ways = pricer.complete(
      demands,
      problem.stocks.map(stock => stock.limit),
    );
    if (ways) search.offer(ways.map(way => ({ way, times: 1 })));
  }
  return search.run();
}

/** The layouts of a result, each its own; pieces beyond what is wanted are left out of them. */
export function layoutsOf(problem: CutProblem, found: Found<Layout>): Layout[] {
  const left = problem.items.map(item => item.demands.length);
  const layouts: Layout[] = [];
  for (const { way, times } of found.chosen)
    for (let t = 0; t < times; t++) {
      const counts = new Map<number, number>();
      let area = 0;
      const copy = (slab: Slab): Slab => {
        const { item, lie, kept, rest, ...own } = slab;
        const made: Slab = { ...own };
        if (kept) made.kept = copy(kept);
        if (rest) made.rest = copy(rest);
        if (item !== undefined && lie && left[item]! > 0) {
          left[item]! -= 1;
          counts.set(item, (counts.get(item) ?? 0) + 1);
          area += lie.l * lie.w;
          made.item = item;
          made.lie = lie;
        }
        return made;
      };
      const slab = copy(way.payload.slab);
      if (counts.size > 0) layouts.push({ stock: way.stock, slab, counts, area });
    }
  return layouts;
}

export interface PlateEffort {
  seed: number;
  /** Linear programmes solved in dives. */
  nodes: number;
  /** Steps of the tables of plates filled one after another. */
  steps: number;
  bound: number;
  /** Told which share of its time the work may take so far; true ends it with what there is. */
  stop?: (share: number) => boolean;
}

/** Shares of the time after which the first filling and the columns end. */
const FILLED = 0.25;
const DIVED = 0.6;

/**
 * A better solution than `from` if one is found, and the bound that goes with it: plates filled one after
 * another, then columns, which also give the bound, then what time is left for filling again.
 */
export function improvePlates(
  problem: CutProblem,
  from: Solution,
  effort: PlateEffort,
): { solution: Solution; bound: number } {
  const { seed, nodes, steps, stop } = effort;
  const until = (share: number): { stop?: () => boolean } => (stop ? { stop: () => stop(share) } : {});
  const filling = (at: Solution, bound: number, share: number, seed: number): Solution =>
    canFill(problem) ? fillPlates(problem, at, { seed, steps: steps / 2, bound, ...until(share) }) : at;
  const filled = filling(from, effort.bound, FILLED, seed);
  const found = solvePlates(problem, [filled], {
    seed,
    nodes,
    bound: effort.bound,
    stages: 'free',
    ...until(DIVED),
  });
  const dived = found.value < filled.cost - 1e-6 ? solutionOf(problem, found) : filled;
  const bound = Math.max(effort.bound, found.bound);
  return { solution: filling(dived, bound, 1, seed + 1), bound };
}

function solutionOf(problem: CutProblem, found: Found<Layout>): Solution {
  const layouts = layoutsOf(problem, found);
  const placed = (item: number): number =>
    layouts.reduce((sum, layout) => sum + (layout.counts.get(item) ?? 0), 0);
  return {
    layouts,
    missing: problem.items.map((item, i) => item.demands.length - placed(i)),
    cost: layouts.reduce((sum, layout) => sum + problem.stocks[layout.stock]!.cost, 0),
    bought: layouts.filter(layout => problem.stocks[layout.stock]!.use.from === 'buy').length,
  };
}
