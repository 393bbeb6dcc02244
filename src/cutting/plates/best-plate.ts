/**
 * The most worthy way to cut one plate when pieces are limited. Prices are put on pieces used too often and
 * moved step by step (a Lagrangian), which gives a bound; plates are then built up under those prices, at
 * first keeping few rectangles of a size, then more, until the bound is met or nothing was left out.
 */
import type { CutProblem, Layout, Slab } from '../problem.ts';
import { seeded } from '../random.ts';
import { buildStrips } from './build-strips.ts';
import { type BuildTerms, type Built, buildUp } from './build-up.ts';
import { parted } from './draw-strips.ts';
import { GuillotineTable, type Stages } from './guillotine-table.ts';
import { type PricedPlate, Prices } from './prices.ts';
import { StripPlate } from './strip-plate.ts';

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
/** Steps of the prices in a round until they settle. */
const PRICE_STEPS = 30;
/** Rectangles kept in one run. */
const MOST_RECTANGLES = 3_000_000;
/** How much wider every second round is. */
const WIDER = 1.5;

interface Kernel {
  /** Without limits, for the bound; and rounded, quick, to settle the prices first. */
  plate: PricedPlate;
  rough?: PricedPlate;
  build: (terms: BuildTerms) => Built;
  /** When nothing was left out, there is nothing better. */
  exact: boolean;
}

/** @param worth whole numbers, by item; at most `demands.length` pieces of each */
export function bestPlate(problem: CutProblem, worth: Float64Array, limits: PlateSearch): BestPlate {
  if (limits.endless) {
    const table = new GuillotineTable(problem, 0, ENDLESS_POINTS, limits.stages);
    const value = table.most(worth);
    if (table.exact) return { layout: drawTable(problem, table, worth), value, bound: value };
  }
  const kernel = limits.stages === 'free' ? freeKernel(problem) : stripKernel(problem, limits.stages);
  const caps = Int32Array.from(problem.items, item => item.demands.length);
  const prices = new Prices(kernel.plate, worth, caps);
  if (kernel.rough) {
    const rough = new Prices(kernel.rough, worth, caps);
    rough.move(10 * PRICE_STEPS, 0, limits.stop);
    prices.now = rough.best;
  }
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
    const built = kernel.build({
      worth,
      priced: wide ? prices.best : shaken(prices.best, worth, random),
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
    if (built.complete && kernel.exact) bound = value;
    if (wide && prices.settled) width *= WIDER;
  }
  return { layout, value, bound: Math.max(bound, value) };
}

function freeKernel(problem: CutProblem): Kernel {
  const table = new GuillotineTable(problem, 0, POINTS);
  const builder = table.exact ? table : new GuillotineTable(problem, 0, POINTS, 'free', 'larger');
  return {
    plate: pricedPlate(problem, table),
    ...(table.steps > MANY_STEPS
      ? { rough: pricedPlate(problem, new GuillotineTable(problem, 0, ROUGH_POINTS)) }
      : {}),
    build: terms => buildUp(problem, builder, terms),
    exact: builder.exact,
  };
}

function stripKernel(problem: CutProblem, stages: 'strips along' | 'strips across'): Kernel {
  const plate = new StripPlate(problem, stages === 'strips along');
  return { plate, build: terms => buildStrips(problem, plate, terms), exact: true };
}

export const pricedPlate = (problem: CutProblem, table: GuillotineTable): PricedPlate => ({
  most: worth => table.most(worth),
  used: worth => {
    const used = new Int32Array(problem.items.length);
    for (const [item, count] of drawTable(problem, table, worth).counts) used[item] = count;
    return used;
  },
});

/** Prices a little off, taken off in part. */
function shaken(priced: Float64Array, worth: Float64Array, random: () => number): Float64Array {
  const share = random();
  return priced.map((one, i) =>
    Math.min(worth[i]!, (one + share * (worth[i]! - one)) * (0.9 + 0.2 * random())),
  );
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
