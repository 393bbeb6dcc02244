/**
 * The most worthy way to cut one plate when pieces are limited. Prices are put on pieces used too often and
 * moved step by step (a Lagrangian), which gives a bound; plates are then built up under those prices, at
 * first keeping few rectangles of a size, then more, until the bound is met or nothing was left out.
 */
import type { CutProblem, Layout, Slab } from '../problem.ts';
import { seeded } from '../random.ts';
import { buildUp } from './build-up.ts';
import { parted } from './draw-strips.ts';
import { GuillotineTable, type Stages } from './guillotine-table.ts';

export interface BestPlate {
  layout: Layout | undefined;
  value: number;
  /** No plate is worth more. */
  bound: number;
}

export interface PlateSearch {
  seed: number;
  /** Times that plates are built up. */
  rounds: number;
  stages: Stages;
  /** Pieces as often as wished: the table alone decides. */
  endless?: boolean;
  stop?: () => boolean;
}

/** Sums kept along a side: beyond them pieces are rounded. */
const POINTS = 1000;
/** The same where one table is the whole answer. */
const ENDLESS_POINTS = 4000;
/** Above so many steps of the table, prices are settled first with fewer sums, pieces rounded. */
const MANY_STEPS = 500_000;
const ROUGH_POINTS = 80;
/** Steps of the prices in a round until they settle; steps without a clearly lower bound before they are halved. */
const PRICE_STEPS = 30;
const PATIENCE = 8;
const CLEAR = 1e-4;
/** Length of a step at first, as a share of the bound. */
const STEP_OF_BOUND = 0.05;
/** Rectangles kept in one run. */
const MOST_RECTANGLES = 3_000_000;
/** How much wider every second round is. */
const WIDER = 1.5;

/** @param worth whole numbers, by item; at most `demands.length` pieces of each */
export function bestPlate(problem: CutProblem, worth: Float64Array, limits: PlateSearch): BestPlate {
  const caps = Int32Array.from(problem.items, item => item.demands.length);
  const points = limits.endless ? ENDLESS_POINTS : POINTS;
  const table = new GuillotineTable(problem, 0, points, limits.stages);
  if (limits.endless && table.exact) {
    const value = table.most(worth);
    return { layout: drawTable(problem, table, worth), value, bound: value };
  }
  const prices = new Prices(problem, table, worth, caps);
  if (table.steps > MANY_STEPS) {
    const rough = new GuillotineTable(problem, 0, ROUGH_POINTS, limits.stages);
    prices.now = settledPrices(problem, rough, worth, caps, limits.stop);
  }
  const builder = table.exact ? table : new GuillotineTable(problem, 0, POINTS, limits.stages, 'larger');
  const random = seeded(limits.seed);
  let layout: Layout | undefined;
  let value = 0;
  let bound = Infinity;
  let width = 1;
  for (let round = 0; round < limits.rounds && value < bound; round++) {
    if (round > 0 && limits.stop?.()) break;
    prices.move(prices.settled ? 5 : PRICE_STEPS, value, limits.stop);
    bound = Math.min(bound, prices.bound);
    if (value >= bound) break;
    // Widths grow under the best prices; between, few rectangles under prices a little off.
    const wide = round % 2 === 0;
    const priced = wide ? prices.best : shaken(prices.best, worth, random);
    const built = buildUp(problem, builder, {
      worth,
      priced,
      caps,
      above: value,
      width: wide ? Math.floor(width) : Math.max(1, Math.floor(width / 2)),
      most: MOST_RECTANGLES,
      ...(limits.stop ? { stop: limits.stop } : {}),
    });
    if (built.layout) {
      layout = built.layout;
      value = built.value;
    }
    if (built.complete && builder.exact) bound = value;
    if (wide && prices.settled) width *= WIDER;
  }
  return { layout, value, bound: Math.max(bound, value) };
}

/** Prices a little off, taken off in part. */
function shaken(priced: Float64Array, worth: Float64Array, random: () => number): Float64Array {
  const share = random();
  return priced.map((one, i) =>
    Math.min(worth[i]!, (one + share * (worth[i]! - one)) * (0.9 + 0.2 * random())),
  );
}

function settledPrices(
  problem: CutProblem,
  table: GuillotineTable,
  worth: Float64Array,
  caps: Int32Array,
  stop?: () => boolean,
): Float64Array {
  const prices = new Prices(problem, table, worth, caps);
  prices.move(10 * PRICE_STEPS, 0, stop);
  return prices.best;
}

/** Worths less prices, moved so that the bound of the table falls (subgradient steps). */
class Prices {
  best: Float64Array;
  bound = Infinity;
  settled = false;
  private readonly problem: CutProblem;
  private readonly table: GuillotineTable;
  private readonly worth: Float64Array;
  private readonly caps: Int32Array;
  now: Float64Array;
  /** Mean of the directions so far, the latest weighing most. */
  private readonly way: Float64Array;
  private least = Infinity;
  private share = 1;
  private idle = 0;

  constructor(problem: CutProblem, table: GuillotineTable, worth: Float64Array, caps: Int32Array) {
    this.problem = problem;
    this.table = table;
    this.worth = worth;
    this.caps = caps;
    this.best = worth.slice();
    this.now = worth.slice();
    this.way = new Float64Array(worth.length);
  }

  move(steps: number, value: number, stop?: () => boolean): void {
    const { worth, caps, table, now } = this;
    for (let step = 0; step < steps && value < this.bound; step++) {
      if (step > 0 && stop?.()) return;
      let least = table.most(now);
      for (let i = 0; i < caps.length; i++) least += caps[i]! * (worth[i]! - now[i]!);
      this.idle = least < this.least * (1 - CLEAR) ? 0 : this.idle + 1;
      if (least < this.least) {
        this.least = least;
        this.best = now.slice();
        this.bound = Math.floor(least + 1e-6);
      }
      if (this.idle >= PATIENCE) {
        this.idle = 0;
        this.share /= 2;
        if (this.share < 1e-3) {
          this.share = 0.1;
          this.settled = true;
          return;
        }
      }
      if (!this.step(Math.max(1, STEP_OF_BOUND * least))) {
        this.settled = true;
        return;
      }
    }
  }

  /** One step along what the table's plates use too often or too seldom; false when that is nothing. */
  private step(gap: number): boolean {
    const { problem, table, worth, caps, now, way } = this;
    const used = new Int32Array(caps.length);
    for (const [item, count] of drawTable(problem, table, now).counts) used[item] = count;
    let norm = 0;
    for (let i = 0; i < caps.length; i++) {
      way[i] = 0.5 * (used[i]! - caps[i]!) + 0.5 * way[i]!;
      if (now[i]! >= worth[i]! && way[i]! < 0) way[i] = 0;
      norm += way[i]! ** 2;
    }
    if (norm === 0) return false;
    const move = (this.share * gap) / norm;
    for (let i = 0; i < caps.length; i++) now[i] = Math.max(0, Math.min(worth[i]!, now[i]! - move * way[i]!));
    return true;
  }
}

/** The plate behind the table's last answer, whatever the limits. */
function drawTable(problem: CutProblem, table: GuillotineTable, worth: Float64Array): Layout {
  const on = problem.stocks[0]!;
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const counts = new Map<number, number>();
  let area = 0;
  table.read<Slab>(
    root,
    worth,
    (slab, kind, at) => {
      const whole = kind === 'cross' ? slab.l : slab.w;
      return parted(slab, kind, Math.min(at - on.kerf, whole), on.kerf);
    },
    (slab, item, lie) => {
      const [row] = parted(slab, 'cross', Math.min(lie.l, slab.l), on.kerf);
      const [piece] = parted(row, 'rip', Math.min(lie.w, slab.w), on.kerf);
      piece.item = item;
      piece.lie = lie;
      counts.set(item, (counts.get(item) ?? 0) + 1);
      area += lie.l * lie.w;
    },
  );
  return { stock: 0, slab: root, counts, area };
}
