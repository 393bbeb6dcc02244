/** Problems in which nothing lies beside another are problems of lengths: there and back. */
import type { Found } from '../columns/column-search.ts';
import type { CutProblem, CutStock, Layout, Lie, Slab, Solution } from '../problem.ts';
import { type LengthsProblem, solveLengths } from './solve-lengths.ts';

/** Is every stock so narrow that no two items lie side by side on it? */
export function isOfLengths({ items, stocks }: CutProblem): boolean {
  return stocks.every((stock, s) => {
    if (stock.single) return true;
    const narrowest = Math.min(...items.flatMap(item => item.lies[s]!.map(lie => lie.w)));
    return 2 * narrowest + stock.kerf > stock.w;
  });
}

/**
 * The problem with kerf put into the lengths, in the coarsest whole unit. `order[i]` is the item of row i.
 * Undefined when an item is not of one length wherever it lies.
 */
export function asLengths(problem: CutProblem): { lengths: LengthsProblem; order: number[] } | undefined {
  const { items, stocks } = problem;
  const kerf = stocks[0]!.kerf;
  if (stocks.some(stock => stock.kerf !== kerf)) return undefined;
  const sizes = items.map(item => new Set(item.lies.flat().map(lie => lie.l)));
  if (sizes.some(set => set.size !== 1)) return undefined;
  const grown = sizes.map(set => [...set][0]! + kerf);
  const unit = grown.reduce(commonDivisor, 0);
  const order = items.map((_, i) => i).sort((a, b) => grown[b]! - grown[a]! || a - b);
  return {
    order,
    lengths: {
      lengths: Int32Array.from(order, i => grown[i]! / unit),
      demands: Int32Array.from(order, i => items[i]!.demands.length),
      stocks: stocks.map((stock, s) => ({
        length: Math.floor((stock.l + kerf) / unit),
        cost: stock.cost,
        limit: stock.limit,
        serves: order.map(i => items[i]!.lies[s]!.length > 0),
      })),
    },
  };
}

function commonDivisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}

/** A better solution than `from` if one is found, and the bound that goes with it. */
export function improveLengths(
  problem: CutProblem,
  from: Solution,
  effort: { seed: number; nodes: number; bound: number },
): { solution: Solution; bound: number } {
  const as = asLengths(problem);
  if (!as) return { solution: from, bound: effort.bound };
  const found = solveLengths(as.lengths, {
    seed: effort.seed,
    trials: 3,
    nodes: effort.nodes,
    bound: effort.bound,
  });
  const better = found.value < from.cost - 1e-6;
  return {
    solution: better ? drawn(problem, as.order, found) : from,
    bound: Math.max(effort.bound, found.bound),
  };
}

function drawn(problem: CutProblem, order: readonly number[], found: Found<undefined>): Solution {
  const left = problem.items.map(item => item.demands.length);
  const layouts: Layout[] = [];
  for (const { way, times } of found.chosen)
    for (let t = 0; t < times; t++) {
      const pieces = way.items.flatMap((row, k) => {
        const item = order[row]!;
        const n = Math.min(way.counts[k]!, left[item]!);
        left[item]! -= n;
        return Array.from({ length: n }, () => item);
      });
      if (pieces.length > 0) layouts.push(inARow(problem, way.stock, pieces));
    }
  return {
    layouts,
    missing: left,
    cost: layouts.reduce((sum, layout) => sum + problem.stocks[layout.stock]!.cost, 0),
    bought: layouts.filter(layout => problem.stocks[layout.stock]!.use.from === 'buy').length,
  };
}

/** Pieces one after another along the stock, each cross-cut off what is left. */
function inARow(problem: CutProblem, stock: number, pieces: readonly number[]): Layout {
  const on = problem.stocks[stock]!;
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const counts = new Map<number, number>();
  let area = 0;
  let rest: Slab | undefined = root;
  for (const item of pieces) {
    const lie = problem.items[item]!.lies[stock]![0]!;
    rest = rest && crossOff(rest, item, lie, on);
    counts.set(item, (counts.get(item) ?? 0) + 1);
    area += lie.l * lie.w;
  }
  return { stock, slab: root, counts, area };
}

function crossOff(slab: Slab, item: number, lie: Lie, on: CutStock): Slab | undefined {
  let kept = slab;
  if (slab.l > lie.l) {
    kept = { x: slab.x, y: slab.y, l: lie.l, w: slab.w };
    const beyond = slab.l - lie.l - on.kerf;
    slab.cut = 'cross';
    slab.kept = kept;
    if (beyond > 0) slab.rest = { x: slab.x + lie.l + on.kerf, y: slab.y, l: beyond, w: slab.w };
  }
  ripTo(kept, item, lie, on);
  return slab.rest;
}

function ripTo(slab: Slab, item: number, lie: Lie, on: CutStock): void {
  let kept = slab;
  if (slab.w > lie.w) {
    kept = { x: slab.x, y: slab.y, l: slab.l, w: lie.w };
    const beyond = slab.w - lie.w - on.kerf;
    slab.cut = 'rip';
    slab.kept = kept;
    if (beyond > 0) slab.rest = { x: slab.x, y: slab.y + lie.w + on.kerf, l: slab.l, w: beyond };
  }
  kept.item = item;
  kept.lie = lie;
}
