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
/** Steps of the prices in a round; those without a lower bound before the steps are halved. */
const PRICE_STEPS = 100;
const PATIENCE = 8;
/** Rectangles kept in one run. */
const MOST_RECTANGLES = 3_000_000;
/** How much wider every second round is. */
const WIDER = 1.5;

/** @param worth whole numbers, by item; at most `demands.length` pieces of each */
export function bestPlate(problem: CutProblem, worth: Float64Array, limits: PlateSearch): BestPlate {
  const caps = Int32Array.from(problem.items, item => item.demands.length);
  const table = new GuillotineTable(problem, 0, POINTS, limits.stages);
  if (limits.endless && table.exact) {
    const value = table.most(worth);
    return { layout: drawTable(problem, table, worth), value, bound: value };
  }
  const prices = new Prices(problem, table, worth, caps);
  const builder = table.exact ? table : new GuillotineTable(problem, 0, POINTS, limits.stages, 'larger');
  const random = seeded(limits.seed);
  let layout: Layout | undefined;
  let value = 0;
  let bound = Infinity;
  let width = 1;
  for (let round = 0; round < limits.rounds && value < bound; round++) {
    if (round > 0 && limits.stop?.()) break;
    prices.move(round === 0 ? PRICE_STEPS : 10, value, limits.stop);
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
      width: wide ? Math.floor(width) : Math.max(1, Math.floor(width / 4)),
      most: MOST_RECTANGLES,
      ...(limits.stop ? { stop: limits.stop } : {}),
    });
    if (built.layout) {
      layout = built.layout;
      value = built.value;
    }
    if (built.complete && builder.exact) bound = value;
    if (wide) width *= WIDER;
  }
  return { layout, value, bound: Math.max(bound, value) };
}

const shaken = (priced: Float64Array, worth: Float64Array, random: () => number): Float64Array =>
  priced.map((one, i) => Math.min(worth[i]!, one * (0.9 + 0.2 * random())));

/** Worths less prices, moved so that the bound of the table falls (subgradient steps). */
class Prices {
  best: Float64Array;
  bound = Infinity;
  private readonly problem: CutProblem;
  private readonly table: GuillotineTable;
  private readonly worth: Float64Array;
  private readonly caps: Int32Array;
  private now: Float64Array;
  private share = 1;
  private idle = 0;

  constructor(problem: CutProblem, table: GuillotineTable, worth: Float64Array, caps: Int32Array) {
    this.problem = problem;
    this.table = table;
    this.worth = worth;
    this.caps = caps;
    this.best = worth.slice();
    this.now = worth.slice();
  }

  move(steps: number, value: number, stop?: () => boolean): void {
    const { worth, caps, table } = this;
    let lowest = Infinity;
    for (let step = 0; step < steps && value < this.bound; step++) {
      if (step > 0 && stop?.()) return;
      let least = table.most(this.now);
      for (let i = 0; i < caps.length; i++) least += caps[i]! * (worth[i]! - this.now[i]!);
      if (least < lowest - 1e-9) {
        if (least < this.exactBound - 1e-9) {
          this.exactBound = least;
          this.best = this.now.slice();
          this.bound = Math.floor(least + 1e-6);
        }
        lowest = least;
        this.idle = 0;
      } else if (++this.idle >= PATIENCE) {
        this.idle = 0;
        this.share /= 2;
        this.now = this.best.slice();
        if (this.share < 1e-3) {
          this.share = 0.1;
          return;
        }
        continue;
      }
      if (!this.step(Math.max(1, least - Math.max(value, 0.95 * least)))) return;
    }
  }

  private exactBound = Infinity;

  /** One step along what the table's plate uses too often or not at all; false when that is nothing. */
  private step(gap: number): boolean {
    const { problem, table, worth, caps, now } = this;
    const used = new Int32Array(caps.length);
    for (const [item, count] of drawTable(problem, table, now).counts) used[item] = count;
    let norm = 0;
    for (let i = 0; i < caps.length; i++)
      if (used[i]! > caps[i]! || now[i]! < worth[i]!) norm += (used[i]! - caps[i]!) ** 2;
    if (norm === 0) return false;
    const move = (this.share * gap) / norm;
    for (let i = 0; i < caps.length; i++)
      now[i] = Math.max(0, Math.min(worth[i]!, now[i]! - move * (used[i]! - caps[i]!)));
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
