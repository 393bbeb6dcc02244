/**
 * The least a problem can cost: the cheapest handful of stock that passes every test a possible one must
 * pass. Tests that a handful must pass, with the kerf added to both pieces and stock (n pieces in a row
 * need n - 1 kerfs, so length + kerf adds up to stock + kerf):
 * area for every class of items and the stocks it may use; pieces of which no two lie on one stock.
 */
import type { CutItem, CutProblem, CutStock } from './problem.ts';

/** Steps of the search for the cheapest handful before it falls back to the bound by shares. */
const MOST_STEPS = 4000;

interface Test {
  /** Gives of each stock towards the test; a handful must reach `need`. */
  gives: number[];
  need: number;
}

/**
 * Lower bound on the cost of any solution.
 * @param upper cost of a known solution; the bound never exceeds it
 */
export function leastCost(problem: CutProblem, upper: number): number {
  const tests = testsOf(problem);
  const shares = Math.max(0, ...tests.map(test => byShares(problem.stocks, test)));
  const whole = byWholes(problem.stocks, tests, upper);
  return Math.min(upper, whole ?? Math.ceil(shares - 1e-6));
}

function testsOf(problem: CutProblem): Test[] {
  const sets = stockSets(problem);
  return sets.flatMap(set => {
    const inside = problem.items.filter(item =>
      item.lies.every((lies, s) => lies.length === 0 || set.has(s)),
    );
    const area = inside.reduce((sum, item) => sum + item.demands.length * grownArea(item, problem.stocks), 0);
    const byArea: Test = {
      gives: problem.stocks.map((stock, s) => (set.has(s) ? (stock.l + stock.kerf) * grownWidth(stock) : 0)),
      need: area,
    };
    const alone = inside.filter(item => neverPaired(item, problem.stocks));
    const byAlone: Test = {
      gives: problem.stocks.map((_, s) => (set.has(s) ? 1 : 0)),
      need: alone.reduce((sum, item) => sum + item.demands.length, 0),
    };
    return byAlone.need > 0 ? [byArea, byAlone] : [byArea];
  });
}

const grownWidth = (stock: CutStock): number => (stock.single ? 1 : stock.w + stock.kerf);

/** Least area with kerf that the item takes on any stock that serves it. */
function grownArea(item: CutItem, stocks: readonly CutStock[]): number {
  const areas = item.lies.flatMap((lies, s) =>
    lies.map(lie => (lie.l + stocks[s]!.kerf) * (stocks[s]!.single ? 1 : lie.w + stocks[s]!.kerf)),
  );
  return Math.min(...areas);
}

/** More than half of every stock both ways, however it lies: no two such pieces share a stock. */
function neverPaired(item: CutItem, stocks: readonly CutStock[]): boolean {
  return item.lies.every((lies, s) =>
    lies.every(lie => {
      const stock = stocks[s]!;
      return 2 * lie.l + stock.kerf > stock.l && (stock.single || 2 * lie.w + stock.kerf > stock.w);
    }),
  );
}

/** Distinct sets of stock that items are confined to, and all stock together. */
function stockSets(problem: CutProblem): Set<number>[] {
  const seen = new Map<string, Set<number>>();
  const add = (set: Set<number>): void => void seen.set([...set].sort((a, b) => a - b).join(), set);
  add(new Set(problem.stocks.map((_, s) => s)));
  for (const item of problem.items)
    add(new Set(item.lies.flatMap((lies, s) => (lies.length > 0 ? [s] : []))));
  return [...seen.values()].slice(0, 24);
}

/** Cheapest cover of one test by fractions of stock, the best value first. */
function byShares(stocks: readonly CutStock[], test: Test): number {
  let need = test.need;
  let cost = 0;
  for (const s of byWorth(stocks, test)) {
    if (need <= 0) break;
    const taken = Math.min(stocks[s]!.limit, need / test.gives[s]!);
    cost += taken * stocks[s]!.cost;
    need -= taken * test.gives[s]!;
  }
  return cost;
}

const byWorth = (stocks: readonly CutStock[], test: Test): number[] =>
  stocks
    .map((_, s) => s)
    .filter(s => test.gives[s]! > 0)
    .sort((a, b) => stocks[a]!.cost / test.gives[a]! - stocks[b]!.cost / test.gives[b]! || a - b);

/** Cheapest whole pieces that pass all tests, or undefined when the search is cut short. */
function byWholes(stocks: readonly CutStock[], tests: readonly Test[], upper: number): number | undefined {
  const order = byWorth(stocks, tests[0]!);
  let steps = 0;
  let best = upper;
  const need = tests.map(test => test.need);
  const visit = (at: number, cost: number): void => {
    steps += 1;
    if (steps > MOST_STEPS) return;
    if (need.every(left => left <= 1e-6)) {
      best = Math.min(best, cost);
      return;
    }
    if (at === order.length) return;
    const rest = tests.map((test, t) => restByShares(stocks, test, order, at, need[t]!));
    if (cost + Math.max(0, ...rest) >= best - 1e-6) return;
    const s = order[at]!;
    const most = Math.min(stocks[s]!.limit, useful(tests, need, s));
    for (let n = most; n >= 0; n--) {
      tests.forEach((test, t) => {
        need[t]! -= n * test.gives[s]!;
      });
      visit(at + 1, cost + n * stocks[s]!.cost);
      tests.forEach((test, t) => {
        need[t]! += n * test.gives[s]!;
      });
    }
  };
  visit(0, 0);
  return steps > MOST_STEPS ? undefined : best;
}

const useful = (tests: readonly Test[], need: readonly number[], s: number): number =>
  Math.max(
    0,
    ...tests.map((test, t) => (test.gives[s]! > 0 ? Math.ceil(need[t]! / test.gives[s]! - 1e-9) : 0)),
  );

/** Bound by shares over the stocks not yet decided; limits are ignored, which only lowers it. */
function restByShares(
  stocks: readonly CutStock[],
  test: Test,
  order: readonly number[],
  at: number,
  need: number,
): number {
  if (need <= 0) return 0;
  let least = Infinity;
  for (let i = at; i < order.length; i++) {
    const s = order[i]!;
    if (test.gives[s]! > 0) least = Math.min(least, stocks[s]!.cost / test.gives[s]!);
  }
  return least * need;
}
