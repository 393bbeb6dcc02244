/**
 * Layouts of one problem: many orders and ways of cutting, then taking a few layouts apart and laying
 * their pieces anew, keeping what is no worse. Deterministic for a seed and a count of trials.
 */
import { type ChooseRule, type FillWay, layoutOf, type SplitRule, tryFill } from './fill.ts';
import { fillMeasured } from './measured-boards.ts';
import type { CutItem, CutProblem, CutStock, Layout, Solution } from './problem.ts';
import { type Random, seeded } from './random.ts';

const SPLITS: readonly SplitRule[] = ['rip', 'large rest', 'cross', 'short side'];
const CHOICES: readonly ChooseRule[] = ['area', 'side'];

/** Order keys, greatest first. */
const KEYS: readonly ((item: CutItem) => number)[] = [
  item => item.area,
  item => longest(item) * 1e6 + shortest(item),
  item => shortest(item) * 1e6 + longest(item),
  item => longest(item) + shortest(item),
];

const firstLie = (item: CutItem): { l: number; w: number } => item.lies.find(lies => lies.length > 0)![0]!;
const longest = (item: CutItem): number => Math.max(firstLie(item).l, firstLie(item).w);
const shortest = (item: CutItem): number => Math.min(firstLie(item).l, firstLie(item).w);

interface State {
  problem: CutProblem;
  /** How many of each stock are still to be had. */
  stockLeft: number[];
  left: Int32Array;
}

/** Best solution found. `bound` lets it stop as soon as nothing can be better. */
export function search(problem: CutProblem, trials: number, seed: number, bound: number): Solution {
  const random = seeded(seed);
  let best: Solution | undefined;
  let spent = 0;
  for (const split of problem.stocks.every(stock => stock.single || stock.crossFirst)
    ? ['rip' as const]
    : SPLITS)
    for (const choose of CHOICES)
      for (const key of KEYS) {
        if (best && spent >= trials) return best;
        const order = byKey(problem, item => key(problem.items[item]!));
        const found = build(problem, { order, split, choose }, [], 1);
        spent += 1;
        if (!best || better(found, best)) best = found;
      }
  let at = best!;
  while (spent < trials && at.layouts.length > 0 && !noBetter(best!, bound)) {
    const found = relay(problem, at, random);
    spent += 1;
    if (!better(at, found)) at = found;
    if (better(at, best!)) best = at;
  }
  return best!;
}

const noBetter = (solution: Solution, bound: number): boolean =>
  solution.cost <= bound && solution.missing.every(missing => missing === 0);

function byKey(problem: CutProblem, key: (item: number) => number): number[] {
  const keys = problem.items.map((_, i) => key(i));
  return problem.items.map((_, i) => i).sort((a, b) => keys[b]! - keys[a]! || a - b);
}

/** Takes one to four layouts apart and lays their pieces in a disturbed order. */
function relay(problem: CutProblem, from: Solution, random: Random): Solution {
  const count = Math.min(from.layouts.length, 1 + Math.floor(random() * 4));
  const out = new Set<number>();
  // The emptiest goes first in every second trial: it is the one to be rid of.
  if (random() < 0.5) out.add(emptiest(problem, from));
  while (out.size < count) out.add(Math.floor(random() * from.layouts.length));
  const keep = from.layouts.filter((_, i) => !out.has(i));
  // A few kinds of stock a trial, those just taken apart among them, keep a trial short.
  const stocks = new Set([...out].map(i => from.layouts[i]!.stock));
  const kinds = problem.stocks.length;
  while (stocks.size < Math.min(kinds, count + 3)) stocks.add(Math.floor(random() * kinds));
  const way = disturbed(problem, random);
  return build(problem, way, keep, 0.85 + 0.3 * random(), stocks);
}

/** A way of filling with its order shaken. */
function disturbed(problem: CutProblem, random: Random): FillWay {
  const key = KEYS[Math.floor(random() * KEYS.length)]!;
  const noise = random() * 0.6;
  return {
    order: byKey(problem, item => key(problem.items[item]!) * (1 + noise * (random() - 0.5))),
    split: SPLITS[Math.floor(random() * SPLITS.length)]!,
    choose: CHOICES[Math.floor(random() * CHOICES.length)]!,
  };
}

function emptiest(problem: CutProblem, solution: Solution): number {
  let at = 0;
  solution.layouts.forEach((layout, i) => {
    if (fullness(problem, layout) < fullness(problem, solution.layouts[at]!)) at = i;
  });
  return at;
}

const fullness = (problem: CutProblem, layout: Layout): number =>
  layout.area / stockArea(problem.stocks[layout.stock]!);
const stockArea = (stock: CutStock): number => stock.l * stock.w;

/**
 * Keeps `keep` and lays the rest, choosing each time the stock that costs least for the area it takes up.
 * @param pull above 1 favours full large stock, below 1 cheap small stock
 */
function build(
  problem: CutProblem,
  way: FillWay,
  keep: readonly Layout[],
  pull: number,
  among?: ReadonlySet<number>,
): Solution {
  return lay(begin(problem, keep), keep, way, pull, among);
}

/** Lays only what is `left`, from the stock that is left, in a disturbed order. */
export function layRest(
  problem: CutProblem,
  left: Int32Array,
  stockLeft: readonly number[],
  random: Random,
): Solution {
  const state = { problem, stockLeft: [...stockLeft], left: left.slice() };
  return lay(state, [], disturbed(problem, random), 0.9 + 0.2 * random());
}

function lay(
  state: State,
  keep: readonly Layout[],
  way: FillWay,
  pull: number,
  among?: ReadonlySet<number>,
): Solution {
  const { problem } = state;
  const layouts = [...keep, ...matched(state, way, pull)];
  for (;;) {
    const next = cheapestFill(state, way, pull, among) ?? cheapestFill(state, way, pull);
    if (!next) break;
    take(state, next);
    layouts.push(next);
  }
  return {
    layouts,
    missing: [...state.left],
    cost: layouts.reduce((total, layout) => total + problem.stocks[layout.stock]!.cost, 0),
    bought: layouts.filter(layout => problem.stocks[layout.stock]!.use.from === 'buy').length,
  };
}

function take(state: State, layout: Layout): void {
  for (const [item, count] of layout.counts) state.left[item]! -= count;
  state.stockLeft[layout.stock]! -= 1;
}

/**
 * Blanks that are to come from one board are laid first, each group on the cheapest stock that holds all of
 * it (CUT-13), the rest of that stock filled with what else there is. A group that no stock holds is laid
 * like any other.
 */
function matched(state: State, way: FillWay, pull: number): Layout[] {
  const { items } = state.problem;
  const words = new Set(items.flatMap(item => item.oneBoard ?? []));
  const laid: Layout[] = [];
  for (const word of words) {
    const mine = items.map(item => item.oneBoard === word);
    const wanted = items.reduce((sum, _, i) => sum + (mine[i] ? state.left[i]! : 0), 0);
    if (wanted === 0) continue;
    const order = [...way.order.filter(i => mine[i]), ...way.order.filter(i => !items[i]!.oneBoard)];
    const holdsAll = (counts: ReadonlyMap<number, number>): boolean =>
      [...counts].reduce((sum, [item, n]) => sum + (mine[item] ? n : 0), 0) === wanted;
    const next = cheapestFill(state, { ...way, order }, pull, undefined, holdsAll);
    if (!next) continue;
    take(state, next);
    laid.push(next);
  }
  return laid;
}

function begin(problem: CutProblem, keep: readonly Layout[]): State {
  const left = Int32Array.from(problem.items, item => item.demands.length);
  const stockLeft = problem.stocks.map(stock => stock.limit);
  for (const layout of keep) {
    stockLeft[layout.stock]! -= 1;
    for (const [item, count] of layout.counts) left[item]! -= count;
  }
  return { problem, stockLeft, left };
}

function cheapestFill(
  { problem, stockLeft, left }: State,
  way: FillWay,
  pull: number,
  among?: ReadonlySet<number>,
  holds?: (counts: ReadonlyMap<number, number>) => boolean,
): Layout | undefined {
  let best: Laid | undefined;
  let bestScore = Infinity;
  for (let s = 0; s < problem.stocks.length; s++) {
    if (stockLeft[s]! <= 0 || (among && !among.has(s))) continue;
    const trial = laidOn(problem, s, left, way);
    if (!trial || (holds && !holds(trial.layout().counts))) continue;
    const stock = problem.stocks[s]!;
    // A hair of area stands for stock that costs nothing in the books.
    const score = (stock.cost + 1e-9 * stockArea(stock)) / trial.area ** pull;
    if (score < bestScore || (score === bestScore && stock.use.from === 'rack')) {
      best = trial;
      bestScore = score;
    }
  }
  return best?.layout();
}

/** A stock filled, its layout drawn only when asked for. */
interface Laid {
  area: number;
  layout(): Layout;
}

function laidOn({ items, stocks }: CutProblem, s: number, left: Int32Array, way: FillWay): Laid | undefined {
  if (stocks[s]!.board) {
    const layout = fillMeasured(items, stocks, s, left, way);
    return layout && { area: layout.area, layout: () => layout };
  }
  const trial = tryFill(items, stocks, s, left, way);
  return trial.area > 0 ? { area: trial.area, layout: () => layoutOf(stocks, trial) } : undefined;
}

/** Fewer missing, then cheaper, then less bought, then less stock, then emptier last pieces. */
export function better(a: Solution, b: Solution): boolean {
  const missing = sum(a.missing) - sum(b.missing);
  if (missing !== 0) return missing < 0;
  if (a.cost !== b.cost) return a.cost < b.cost;
  if (a.bought !== b.bought) return a.bought < b.bought;
  const of = (s: Solution): number => s.layouts.reduce((most, layout) => most + layout.area ** 2, 0);
  if (a.layouts.length !== b.layouts.length) return a.layouts.length < b.layouts.length;
  return of(a) > of(b);
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
