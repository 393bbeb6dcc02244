/**
 * Plates filled one after another, each built up from the pieces that are left with large pieces worth more
 * than their share; then a few plates, the emptiest among them, are taken apart and filled anew, and what is
 * no worse is kept. Deterministic for a seed and a count of steps.
 */
import type { CutProblem, CutStock, Layout, Solution } from '../problem.ts';
import { type Random, seeded } from '../random.ts';
import { better } from '../search.ts';
import { buildUp } from './build-up.ts';
import { GuillotineTable } from './guillotine-table.ts';

export interface FillLimits {
  seed: number;
  /** Steps of the tables of all plates filled. */
  steps: number;
  /** A solution that costs no more is the best there is. */
  bound: number;
  stop?: () => boolean;
}

interface Fill {
  /** By item, for a plate of its own. */
  worth: Float64Array;
  /** Above 1 favours full large stock, below 1 cheap small stock. */
  pull: number;
  /** Rectangles kept of a size. */
  width: number;
  /** Sums kept along a side. */
  points: number;
}

/** Sums along a side at most, and so few that the first filling leaves steps for taking apart. */
const POINTS = { most: 200, least: 40 };
const FIRST_SHARE = 0.25;
/** A small table takes its time to make, too. */
const LEAST_STEPS = 50_000;
const MOST_RECTANGLES = 400_000;
/** The most worthy piece counts as much, so that worths are whole numbers and still fine. */
const WORTH = 1e5;

/** Bars, boards measured one by one and timber that is cross-cut first are not built up. */
export const canFill = ({ stocks }: CutProblem): boolean =>
  stocks.every(stock => !stock.single && !stock.crossFirst && !stock.board);

/** The better of `from` and what is found. */
export function fillPlates(problem: CutProblem, from: Solution | undefined, limits: FillLimits): Solution {
  return new PlateFiller(problem, limits).run(from);
}

class PlateFiller {
  private readonly problem: CutProblem;
  private readonly limits: FillLimits;
  private readonly random: Random;
  private spent = 0;

  constructor(problem: CutProblem, limits: FillLimits) {
    this.problem = problem;
    this.limits = limits;
    this.random = seeded(limits.seed);
  }

  run(from: Solution | undefined): Solution {
    if (from && this.noBetter(from)) return from;
    const demands = Int32Array.from(this.problem.items, item => item.demands.length);
    const points = this.pointsFor(from?.layouts.length ?? 1);
    const first = this.filled([], demands, {
      worth: this.worths(1 + 0.1 * this.random(), 0),
      pull: 1,
      width: 2,
      points,
    });
    let best = from ?? first ?? { layouts: [], missing: [...demands], cost: 0, bought: 0 };
    if (first && better(first, best)) best = first;
    let at = best;
    while (!this.spentUp() && at.layouts.length > 0 && !this.noBetter(best)) {
      const found = this.again(at);
      if (!found) continue;
      if (!better(at, found)) at = found;
      if (better(at, best)) best = at;
    }
    return best;
  }

  private spentUp(): boolean {
    return this.spent >= this.limits.steps || (this.limits.stop?.() ?? false);
  }

  private noBetter(solution: Solution): boolean {
    return solution.cost <= this.limits.bound + 1e-6 && solution.missing.every(n => n === 0);
  }

  /** A table of n sums a side takes about n ** 3 / 2 steps, once for each plate. */
  private pointsFor(plates: number): number {
    const points = Math.cbrt((2 * FIRST_SHARE * this.limits.steps) / (plates * this.problem.stocks.length));
    return Math.max(POINTS.least, Math.min(POINTS.most, Math.floor(points)));
  }

  /** Takes a few plates apart and fills as many at most. */
  private again(from: Solution): Solution | undefined {
    const { problem, random } = this;
    const fullness = from.layouts.map(layout => layout.area / areaOf(problem.stocks[layout.stock]!));
    const count = Math.min(from.layouts.length, 2 + Math.floor(3 * random()));
    // The emptier, the sooner it is taken.
    const order = fullness
      .map((full, i) => ({ i, key: (1 - full + 0.05) * random() + (1 - full) }))
      .sort((a, b) => b.key - a.key || a.i - b.i);
    const out = new Set(order.slice(0, count).map(({ i }) => i));
    const left = Int32Array.from(from.missing);
    for (const i of out) for (const [item, n] of from.layouts[i]!.counts) left[item]! += n;
    return this.filled(
      from.layouts.filter((_, i) => !out.has(i)),
      left,
      {
        worth: this.worths(1 + 0.2 * random(), 0.3 * random()),
        pull: 0.85 + 0.3 * random(),
        width: 1 + Math.floor(3 * random()),
        points: POINTS.most,
      },
      from.cost,
    );
  }

  /** Areas raised to a power, up or down by a share of chance. */
  private worths(power: number, noise: number): Float64Array {
    const { items } = this.problem;
    const largest = Math.max(...items.map(item => item.area));
    return Float64Array.from(items, ({ area }) => {
      const shaken = 1 + noise * (this.random() - 0.5);
      return Math.max(1, Math.round(WORTH * shaken * (area / largest) ** power));
    });
  }

  /** Keeps `keep` and fills plates until nothing is left; undefined once that costs more than `most`. */
  private filled(
    keep: readonly Layout[],
    wanted: Int32Array,
    fill: Fill,
    most = Infinity,
  ): Solution | undefined {
    const { stocks } = this.problem;
    const left = wanted.slice();
    const stockLeft = stocks.map(stock => stock.limit);
    for (const { stock } of keep) stockLeft[stock]! -= 1;
    const layouts = [...keep];
    let cost = keep.reduce((sum, { stock }) => sum + stocks[stock]!.cost, 0);
    while (left.some(n => n > 0)) {
      const next = this.cheapest(left, stockLeft, fill);
      if (!next) break;
      cost += stocks[next.stock]!.cost;
      if (cost > most + 1e-6 || this.limits.stop?.()) return undefined;
      for (const [item, n] of next.counts) left[item]! -= n;
      stockLeft[next.stock]! -= 1;
      layouts.push(next);
    }
    const bought = layouts.filter(({ stock }) => stocks[stock]!.use.from === 'buy').length;
    return { layouts, missing: [...left], cost, bought };
  }

  private cheapest(left: Int32Array, stockLeft: readonly number[], fill: Fill): Layout | undefined {
    let best: Layout | undefined;
    let bestScore = Infinity;
    this.problem.stocks.forEach((stock, s) => {
      if (stockLeft[s]! <= 0) return;
      const layout = this.plate(s, left, fill);
      if (!layout) return;
      // A hair of area stands for stock that costs nothing in the books.
      const score = (stock.cost + 1e-9 * areaOf(stock)) / layout.area ** fill.pull;
      if (score >= bestScore) return;
      best = layout;
      bestScore = score;
    });
    return best;
  }

  private plate(s: number, left: Int32Array, fill: Fill): Layout | undefined {
    const { items, stocks } = this.problem;
    const part: CutProblem = {
      stocks: [stocks[s]!],
      items: items.map((item, i) => ({
        ...item,
        demands: item.demands.slice(0, left[i]!),
        lies: [left[i]! > 0 ? item.lies[s]! : []],
      })),
    };
    if (part.items.every(item => item.lies[0]!.length === 0)) return undefined;
    const table = new GuillotineTable(part, 0, fill.points, 'free', 'larger');
    this.spent += LEAST_STEPS + table.steps;
    const { layout } = buildUp(part, table, {
      worth: fill.worth,
      priced: fill.worth,
      caps: left,
      above: 0,
      width: fill.width,
      most: MOST_RECTANGLES,
      ...(this.limits.stop ? { stop: this.limits.stop } : {}),
    });
    return layout && { ...layout, stock: s };
  }
}

const areaOf = (stock: CutStock): number => stock.l * stock.w;
