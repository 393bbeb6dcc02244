/** Plates by column generation with dives, from a problem and the solutions known already. */
import { ColumnSearch, type Found, type SearchLimits } from '../columns/column-search.ts';
import type { CutProblem, Layout, Slab, Solution } from '../problem.ts';
import { seeded } from '../random.ts';
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

/** A better solution than `from` if one is found, and the bound that goes with it. */
export function improvePlates(
  problem: CutProblem,
  from: Solution,
  effort: { seed: number; nodes: number; bound: number },
): { solution: Solution; bound: number } {
  const found = solvePlates(problem, [from], { ...effort, stages: 'free' });
  if (found.value >= from.cost - 1e-6) return { solution: from, bound: Math.max(effort.bound, found.bound) };
  const layouts = layoutsOf(problem, found);
  const placed = (item: number): number =>
    layouts.reduce((sum, layout) => sum + (layout.counts.get(item) ?? 0), 0);
  const solution = {
    layouts,
    missing: problem.items.map((item, i) => item.demands.length - placed(i)),
    cost: layouts.reduce((sum, layout) => sum + problem.stocks[layout.stock]!.cost, 0),
    bought: layouts.filter(layout => problem.stocks[layout.stock]!.use.from === 'buy').length,
  };
  return { solution, bound: Math.max(effort.bound, found.bound) };
}
