/**
 * Prices ways to cut a plate: strips along either side filled by tables, what is left over filled with the
 * most worthy that fits; and free fills by worth. For strips only (two stages) it also gives the bound.
 */
import { type Priced, type Pricer, type Way, WORTH_STEPS } from '../columns/column-search.ts';
import { type FillWay, layoutOf, type SplitRule, tryFill } from '../fill.ts';
import type { CutItem, CutProblem, CutStock, Layout } from '../problem.ts';
import type { Random } from '../random.ts';
import { layRest } from '../search.ts';
import { buildStrips } from './build-strips.ts';
import type { Built } from './build-up.ts';
import { drawStrips } from './draw-strips.ts';
import { GuillotineTable, type Stages } from './guillotine-table.ts';
import { StripPlate } from './strip-plate.ts';
import { bestStrips, rowsFor, type Strip, type StripItem, stripTable, worthOfStrips } from './strips.ts';

export type PlateWay = Way<Layout>;

const LONGEST_TABLE = 6000;
/** Strips and plates kept of a size, and looked at in all, when plates of strips are built up. */
const BUILT_WIDTH = 12;
const BUILT_MOST = 50_000;
const RULES: readonly SplitRule[] = ['rip', 'cross', 'large rest', 'short side'];

export class PlatePricer implements Pricer<Layout> {
  private readonly problem: CutProblem;
  private readonly stages: Stages;
  private readonly random: Random;
  /** Sizes are counted in this many units, to keep the tables short. */
  private readonly unit: number;
  /** False when that rounds sizes: then the tables give no bound. */
  private readonly exact: boolean;
  private readonly tables = new Map<number, GuillotineTable>();
  private readonly stripPlates = new Map<number, StripPlate>();

  constructor(problem: CutProblem, stages: Stages, random: Random) {
    this.problem = problem;
    this.stages = stages;
    this.random = random;
    const { unit, exact } = unitOf(problem);
    this.unit = unit;
    this.exact = exact;
  }

  price(worth: Float64Array, caps: Int32Array, above: readonly number[]): Priced<Layout> {
    const ways: PlateWay[] = [];
    const most: number[] = [];
    this.problem.stocks.forEach((_, s) => {
      if (above[s] === Infinity) {
        most.push(0);
        return;
      }
      const priced = this.stock(s, worth, caps, above[s]! * (1 + 1e-8));
      ways.push(...priced.ways);
      most.push(priced.most);
    });
    return { ways, most };
  }

  private stock(
    s: number,
    worth: Float64Array,
    caps: Int32Array,
    above: number,
  ): { ways: PlateWay[]; most: number } {
    const layouts: Layout[] = [];
    let most = Infinity;
    // Timber is cross-cut first (CUT-7): its strips run across.
    const timber = this.problem.stocks[s]!.crossFirst;
    if (this.stages !== 'strips across' && !timber) most = this.strips(s, worth, caps, true, layouts);
    if (this.stages !== 'strips along') most = this.strips(s, worth, caps, false, layouts);
    if (this.stages === 'free') {
      layouts.push(...this.freeFills(s, worth, caps));
      most = Infinity;
    }
    const ways = layouts
      .map(layout => ({ layout, value: worthOf(layout, worth) }))
      .filter(({ value }) => value > above)
      .sort((a, b) => b.value - a.value)
      .slice(0, 4)
      .map(({ layout }) => wayOf(layout));
    if (ways.length === 0 && this.stages === 'free') most = this.table(s).most(worth);
    if (ways.length === 0 && this.stages !== 'free' && most > above) {
      const built = this.built(s, worth, caps, above);
      if (built.layout) ways.push(wayOf({ ...built.layout, stock: s }));
      if (built.complete) most = built.layout ? built.value / WORTH_STEPS : above;
    }
    return { ways, most: most + 1 / WORTH_STEPS };
  }

  /**
   * A plate of strips worth more than `above`, built up with pieces no more often than there are: where the
   * tables, which repeat a strip as often as wished, promise more than can be drawn of them.
   */
  private built(s: number, worth: Float64Array, caps: Int32Array, above: number): Built {
    const part: CutProblem = {
      stocks: [this.problem.stocks[s]!],
      items: this.problem.items.map(item => ({ ...item, lies: [item.lies[s]!] })),
    };
    const plate = this.stripPlates.get(s) ?? new StripPlate(part, this.stages === 'strips along');
    this.stripPlates.set(s, plate);
    // Worths are whole multiples of one step.
    const whole = worth.map(value => Math.round(value * WORTH_STEPS));
    return buildStrips(part, plate, {
      worth: whole,
      priced: whole,
      caps,
      above: Math.floor(above * WORTH_STEPS),
      width: BUILT_WIDTH,
      most: BUILT_MOST,
    });
  }

  /** Bound on a plate; asked only when no way is found any more, for it takes its time. */
  private table(s: number): GuillotineTable {
    const table = this.tables.get(s) ?? new GuillotineTable(this.problem, s);
    this.tables.set(s, table);
    return table;
  }

  /** Adds plates of strips to `layouts`; returns the most that strips this way can be worth. */
  private strips(
    s: number,
    worth: Float64Array,
    caps: Int32Array,
    along: boolean,
    layouts: Layout[],
  ): number {
    const stock = this.problem.stocks[s]!;
    const length = this.whole((along ? stock.l : stock.w) + stock.kerf);
    const width = this.whole((along ? stock.w : stock.l) + stock.kerf);
    const pieces = this.pieces(s, along, this.stages === 'free' ? width : 0);
    const table = stripTable(rowsFor(pieces, worth, caps, length), length);
    const left = caps.slice();
    const strips: Strip[] = [];
    for (const index of bestStrips(table, width)) {
      const across = table.widths[index]!;
      const narrow = pieces.filter(piece => piece.across <= across);
      const again = stripTable(rowsFor(narrow, worth, left, length), length);
      if (again.widths.length === 0) continue;
      const strip = again.strip(again.widths.length - 1);
      strip.columns = strip.columns.filter(column => {
        const fits = left[column.item]! >= column.stack;
        if (fits) left[column.item]! -= column.stack;
        return fits;
      });
      if (strip.columns.length > 0)
        strips.push({ ...strip, across: Math.max(...strip.columns.map(c => c.across)) });
    }
    const order = this.stages === 'free' ? byWorth(this.problem.items, worth) : [];
    layouts.push(drawStrips(this.problem, s, strips, along, left, order));
    return this.exact ? worthOfStrips(table, width) : Infinity;
  }

  /** Every way an item may stand in a strip; stacks up to the width of the plate. */
  private pieces(s: number, along: boolean, stackTo: number): StripItem[] {
    const { kerf } = this.problem.stocks[s]!;
    return this.problem.items.flatMap((cut, item) =>
      cut.lies[s]!.flatMap(lie => {
        const side = Math.ceil(((along ? lie.l : lie.w) + kerf) / this.unit);
        const across = Math.ceil(((along ? lie.w : lie.l) + kerf) / this.unit);
        const most = Math.max(1, Math.min(cut.demands.length, Math.floor(stackTo / across), 4));
        return Array.from({ length: most }, (_, k) => ({
          item,
          lie,
          along: side,
          across: across * (k + 1),
          stack: k + 1,
        }));
      }),
    );
  }

  private whole(size: number): number {
    return Math.floor(size / this.unit);
  }

  private freeFills(s: number, worth: Float64Array, caps: Int32Array): Layout[] {
    const order = byWorth(this.problem.items, worth);
    const shuffled = byWorth(
      this.problem.items,
      worth.map(value => value * (0.8 + 0.4 * this.random())),
    );
    return RULES.flatMap(split =>
      [order, shuffled].map(items => {
        const way: FillWay = { order: items, split, choose: 'side' };
        return layoutOf(this.problem.stocks, tryFill(this.problem.items, this.problem.stocks, s, caps, way));
      }),
    );
  }

  complete(left: Int32Array, stockLeft: readonly number[]): PlateWay[] | undefined {
    if (this.stages !== 'free') return this.completeByStrips(left, stockLeft);
    const solution = layRest(this.problem, left, stockLeft, this.random);
    return solution.missing.some(n => n > 0) ? undefined : solution.layouts.map(wayOf);
  }

  /** One plate after another, each with the strips that take most area for their cost. */
  private completeByStrips(left: Int32Array, stockLeft: readonly number[]): PlateWay[] | undefined {
    const open = left.slice();
    const stock = [...stockLeft];
    const worth = Float64Array.from(this.problem.items, item => item.area * (0.9 + 0.2 * this.random()));
    const ways: PlateWay[] = [];
    while (open.some(n => n > 0)) {
      let best: Layout | undefined;
      let bestScore = Infinity;
      this.problem.stocks.forEach((on, s) => {
        if (stock[s]! <= 0) return;
        const layouts: Layout[] = [];
        this.strips(s, worth, open, this.stages === 'strips along', layouts);
        const [layout] = layouts;
        if (!layout || layout.area === 0 || on.cost / layout.area >= bestScore) return;
        best = layout;
        bestScore = on.cost / layout.area;
      });
      if (!best) return undefined;
      for (const [item, count] of best.counts) open[item]! -= count;
      stock[best.stock]! -= 1;
      ways.push(wayOf(best));
    }
    return ways;
  }
}

export function wayOf(layout: Layout): PlateWay {
  const items = [...layout.counts.keys()].sort((a, b) => a - b);
  return { stock: layout.stock, items, counts: items.map(item => layout.counts.get(item)!), payload: layout };
}

const worthOf = (layout: Layout, worth: Float64Array): number =>
  [...layout.counts].reduce((sum, [item, count]) => sum + count * worth[item]!, 0);

/** Items worth something, by worth for their area. */
function byWorth(items: readonly CutItem[], worth: ArrayLike<number>): number[] {
  return items
    .map((_, i) => i)
    .filter(i => worth[i]! > 0)
    .sort((a, b) => worth[b]! / items[b]!.area - worth[a]! / items[a]!.area || a - b);
}

/** Largest common measure of all grown sizes, or a coarser one when tables would be too long. */
function unitOf({ items, stocks }: CutProblem): { unit: number; exact: boolean } {
  const kerf = stocks[0]!.kerf;
  let unit = 0;
  for (const item of items)
    for (const lie of item.lies.flat()) unit = divisor(divisor(unit, lie.l + kerf), lie.w + kerf);
  const longest = Math.max(...stocks.map((stock: CutStock) => Math.max(stock.l, stock.w)));
  const coarsest = Math.ceil(longest / LONGEST_TABLE);
  return unit >= coarsest ? { unit, exact: true } : { unit: coarsest, exact: false };
}

function divisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
