/**
 * Lengths from stock lengths: as cheaply as can be found, with a bound. Kerf is in the lengths already
 * (each piece and each stock length one kerf longer). Everything in whole units.
 */
import {
  type Chosen,
  ColumnSearch,
  type Found,
  type Priced,
  type Pricer,
  type SearchLimits,
  type StockTerms,
  type Way,
  WORTH_STEPS,
} from '../columns/column-search.ts';
import { type Random, seeded } from '../random.ts';
import { decideCount } from './decide-count.ts';
import { knapsack } from './knapsack.ts';
import { boundL2 } from './length-bounds.ts';
import { nearWays } from './near-ways.ts';
import { fullestFill } from './quick-lengths.ts';

export interface StockLength extends StockTerms {
  length: number;
  /** Items that this stock may serve; all when absent. */
  serves?: readonly boolean[];
}

export interface LengthsProblem {
  /** Falling. */
  lengths: Int32Array;
  demands: Int32Array;
  stocks: readonly StockLength[];
}

export interface LengthsLimits extends SearchLimits {
  seed: number;
  /** Trials of quick filling before columns are generated. */
  trials: number;
}

/** Steps of one search for the fullest length, and for the most worthy one. */
const FILL_STEPS = 3000;
const PRICE_STEPS = 400_000;
/** Steps that all quick fillings before column generation may take together. */
const TRIAL_STEPS = 6_000_000;

/** Ways, and linear programmes over them, that a decision by search may take. */
const NEAR_WAYS = 60_000;
const DECIDE_NODES = 20_000;

export type LengthWay = Way<undefined>;

export function solveLengths(problem: LengthsProblem, limits: LengthsLimits): Found<undefined> {
  const quick = new QuickLengths(problem, limits.seed);
  const bound = Math.max(limits.bound ?? 0, quickBound(problem));
  const search = new ColumnSearch<undefined>(
    problem.demands,
    problem.stocks,
    new LengthPricer(problem, quick, limits.stop),
    {
      ...limits,
      bound,
    },
  );
  search.beginWith(alikes(problem));
  let best = Infinity;
  const everything = problem.stocks.map(stock => stock.limit);
  const trials = Math.max(1, Math.min(limits.trials, Math.floor(TRIAL_STEPS / stepsOfTrial(problem))));
  for (let trial = 0; trial < trials && best > bound; trial++) {
    const ways = quick.complete(problem.demands, everything, trial);
    if (!ways) continue;
    const cost = ways.reduce((sum, way) => sum + problem.stocks[way.stock]!.cost, 0);
    if (cost < best || trial < 2) search.offer(tallied(ways));
    best = Math.min(best, cost);
    if (limits.stop?.()) break;
  }
  return search.run();
}

/** Each stock without limit filled with one item alone. */
function alikes({ lengths, demands, stocks }: LengthsProblem): LengthWay[] {
  return stocks.flatMap((stock, s) =>
    Array.from(lengths, (length, item): LengthWay => {
      const served = stock.limit === Infinity && stock.serves?.[item] !== false;
      const count = served ? Math.min(demands[item]!, Math.floor(stock.length / length)) : 0;
      return { stock: s, items: [item], counts: [count], payload: undefined };
    }).filter(way => way.counts[0]! > 0),
  );
}

/** About how many steps a quick filling of everything takes: one search for each length filled. */
function stepsOfTrial({ lengths, demands, stocks }: LengthsProblem): number {
  const total = lengths.reduce((sum, length, i) => sum + length * demands[i]!, 0);
  return FILL_STEPS * Math.max(1, total / Math.max(...stocks.map(stock => stock.length)));
}

function quickBound({ lengths, demands, stocks }: LengthsProblem): number {
  const [only, ...others] = stocks;
  return only && others.length === 0 ? only.cost * boundL2(lengths, demands, only.length) : 0;
}

/** Like ways together. */
function tallied(ways: readonly LengthWay[]): Chosen<undefined>[] {
  return ways.map(way => ({ way, times: 1 }));
}

class LengthPricer implements Pricer<undefined> {
  private readonly caps: Int32Array;
  private readonly problem: LengthsProblem;
  private readonly quick: QuickLengths;
  private readonly stop: (() => boolean) | undefined;
  readonly start: Float64Array;
  readonly exchanges: readonly (readonly [number, number])[];

  constructor(problem: LengthsProblem, quick: QuickLengths, stop?: () => boolean) {
    this.stop = stop;
    const { lengths, stocks } = problem;
    const cheapest = Math.min(...stocks.map(stock => stock.cost / stock.length));
    const dearest = Math.max(...stocks.map(stock => stock.cost));
    this.start = Float64Array.from(lengths, length => (length * cheapest) / dearest);
    // Where a longer piece lies, the next shorter one can, if every stock that serves the one serves the other.
    this.exchanges = Array.from(
      { length: Math.max(0, lengths.length - 1) },
      (_, i) => [i, i + 1] as const,
    ).filter(([i, j]) => stocks.every(({ serves }) => !serves || serves[j] || !serves[i]));
    this.problem = problem;
    this.quick = quick;
    this.caps = new Int32Array(problem.lengths.length);
  }

  price(worth: Float64Array, caps: Int32Array, above: readonly number[]): Priced<undefined> {
    const { lengths, stocks } = this.problem;
    const whole = worth.map(value => value * WORTH_STEPS);
    const most: number[] = [];
    const ways: LengthWay[] = [];
    stocks.forEach((stock, s) => {
      if (above[s] === Infinity) {
        most.push(0);
        return;
      }
      for (let i = 0; i < caps.length; i++) this.caps[i] = stock.serves?.[i] === false ? 0 : caps[i]!;
      const wanted = Math.ceil(above[s]! * WORTH_STEPS * (1 + 1e-8));
      const answer = knapsack(lengths, whole, this.caps, stock.length, wanted, PRICE_STEPS);
      most.push(answer.most / WORTH_STEPS);
      for (const fill of answer.fills) ways.push(wayOf(s, fill.counts));
    });
    return { ways, most };
  }

  /** Like lengths only: is the bound enough of them, or is one more needed? */
  decide(worth: Float64Array, bound: number, nodes: number): { ways?: LengthWay[]; bound?: number } {
    const { lengths, demands, stocks } = this.problem;
    const [stock, ...others] = stocks;
    if (!stock || others.length > 0 || stock.limit < Infinity || stock.serves?.includes(false)) return {};
    const target = Math.round(bound / stock.cost);
    const near = nearWays(lengths, demands, stock.length, worth, target, NEAR_WAYS);
    if (!near) return {};
    const stop = this.stop;
    const limits = { nodes: Math.min(nodes, DECIDE_NODES), ...(stop ? { stop } : {}) };
    const decision = decideCount(near.ways, near.core, demands, target, limits);
    if (decision.answer === 'no') return { bound: (target + 1) * stock.cost };
    const ways = decision.answer === 'yes' ? withRest(this.problem, decision.ways) : undefined;
    return ways ? { ways } : {};
  }

  complete(left: Int32Array, stockLeft: readonly number[], trial: number): LengthWay[] | undefined {
    return this.quick.complete(left, stockLeft, trial % 3);
  }
}

/** Small pieces go into what room the ways leave, the longest first; undefined when they do not all fit. */
function withRest(
  { lengths, demands, stocks }: LengthsProblem,
  ways: readonly Int32Array[],
): LengthWay[] | undefined {
  const left = demands.slice();
  const bars = ways.map(way => {
    const counts = new Int32Array(lengths.length);
    let room = stocks[0]!.length;
    for (let k = 0; k < way.length; k += 2) {
      const item = way[k]!;
      const count = Math.min(left[item]!, way[k + 1]!);
      counts[item] = count;
      left[item]! -= count;
      room -= count * lengths[item]!;
    }
    return { counts, room };
  });
  for (let i = 0; i < lengths.length; i++)
    for (; left[i]! > 0; left[i]! -= 1) {
      const fits = bars.filter(bar => bar.room >= lengths[i]!);
      if (fits.length === 0) return undefined;
      const bar = fits.reduce((best, other) => (other.room < best.room ? other : best));
      bar.counts[i]! += 1;
      bar.room -= lengths[i]!;
    }
  return bars.map(bar => wayOf(0, bar.counts));
}

function wayOf(stock: number, all: Int32Array): LengthWay {
  const items: number[] = [];
  const counts: number[] = [];
  for (let i = 0; i < all.length; i++)
    if (all[i]! > 0) {
      items.push(i);
      counts.push(all[i]!);
    }
  return { stock, items, counts, payload: undefined };
}

/** Whole solutions by filling one stock after another. */
class QuickLengths {
  private readonly problem: LengthsProblem;
  private readonly random: Random;

  constructor(problem: LengthsProblem, seed: number) {
    this.problem = problem;
    this.random = seeded(seed);
  }

  /** Trial 0 fills each as full as can be, 1 takes the longest that fits, others leave a little at random. */
  complete(left: Int32Array, stockLeft: readonly number[], trial: number): LengthWay[] | undefined {
    const open = left.slice();
    const stock = [...stockLeft];
    const ways: LengthWay[] = [];
    let pieces = open.reduce((sum, n) => sum + n, 0);
    while (pieces > 0) {
      const way = this.next(open, stock, trial);
      if (!way) return undefined;
      let times = stock[way.stock]!;
      way.items.forEach((item, k) => {
        times = Math.min(times, Math.floor(open[item]! / way.counts[k]!));
      });
      if (trial > 0) times = 1;
      for (let t = 0; t < times; t++) ways.push(way);
      way.items.forEach((item, k) => {
        open[item]! -= times * way.counts[k]!;
        pieces -= times * way.counts[k]!;
      });
      stock[way.stock]! -= times;
    }
    return ways;
  }

  private next(open: Int32Array, stockLeft: readonly number[], trial: number): LengthWay | undefined {
    const { lengths, stocks } = this.problem;
    let best: LengthWay | undefined;
    let bestScore = Infinity;
    for (let s = 0; s < stocks.length; s++) {
      const stock = stocks[s]!;
      if (stockLeft[s]! <= 0) continue;
      const left = stock.serves ? open.map((n, i) => (stock.serves![i] ? n : 0)) : open;
      // From the third trial on, some pieces sit a round out.
      const seen = trial < 2 ? left : left.map(n => (n > 0 && this.random() < 0.1 ? n - 1 : n));
      const steps = trial === 1 ? lengths.length : FILL_STEPS;
      let fill = fullestFill(lengths, seen, stock.length, steps);
      if (fill.items.length === 0) fill = fullestFill(lengths, left, stock.length, steps);
      if (fill.items.length === 0) continue;
      const used = fill.items.reduce((sum, item, k) => sum + lengths[item]! * fill.counts[k]!, 0);
      const score = (stock.cost + 1e-9 * stock.length) / used;
      if (score < bestScore) {
        bestScore = score;
        best = { stock: s, items: fill.items, counts: fill.counts, payload: undefined };
      }
    }
    return best;
  }
}
