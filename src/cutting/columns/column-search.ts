/**
 * Column generation with dives: ways to cut one piece of stock are priced as they are needed, the linear
 * programme over them gives the bound, and ways are fixed one after another, each time pricing anew for
 * what is left. Works for any kind of stock for which somebody can price a way to cut it.
 */
import { Relaxation } from './relaxation.ts';
import {
  type Chosen,
  copyNode,
  type Found,
  NEAR,
  type Pricer,
  type SearchLimits,
  type SearchNode,
  type StockTerms,
  type Way,
} from './ways.ts';

export type { Chosen, Found, Priced, Pricer, SearchLimits, StockTerms, Way } from './ways.ts';
export { WORTH_STEPS } from './ways.ts';

/** Levels so near to whole are whole. */
const LEVEL = 1e-3;

/** Dives with so small a budget come before the pricer is asked to decide. */
const DECIDE_AT = 1;

export class ColumnSearch<P> {
  private readonly demands: Int32Array;
  private readonly stocks: readonly StockTerms[];
  private readonly pricer: Pricer<P>;
  private readonly limits: SearchLimits;
  private readonly relaxation: Relaxation<P>;
  private readonly step: number;
  /** The item that may lie in the place of another. */
  private readonly gives: ReadonlyMap<number, number>;
  private best: Chosen<P>[] | undefined;
  private bestValue = Infinity;
  private bound: number;
  private nodes = 0;
  private trial = 0;

  constructor(demands: Int32Array, stocks: readonly StockTerms[], pricer: Pricer<P>, limits: SearchLimits) {
    this.demands = demands;
    this.stocks = stocks;
    this.pricer = pricer;
    this.limits = limits;
    this.gives = new Map(pricer.exchanges);
    this.step = commonStep(stocks.map(stock => stock.cost));
    this.bound = limits.bound ?? 0;
    const scale = Math.max(...stocks.map(stock => stock.cost), NEAR);
    const stop = limits.stop ?? (() => false);
    this.relaxation = new Relaxation(demands, stocks, pricer, scale, stop);
  }

  /** Takes in a whole solution found elsewhere. */
  offer(solution: readonly Chosen<P>[]): void {
    for (const { way } of solution) this.relaxation.add(way);
    const value = solution.reduce((sum, { way, times }) => sum + times * this.stocks[way.stock]!.cost, 0);
    if (value < this.bestValue - NEAR * this.step) {
      this.bestValue = value;
      this.best = [...solution];
    }
  }

  /** Ways of one item each on stock without limit, from which the linear programme begins. */
  beginWith(ways: readonly Way<P>[]): void {
    this.relaxation.beginWith(ways);
  }

  run(): Found<P> {
    const root: SearchNode<P> = {
      left: this.demands.slice(),
      stockLeft: this.stocks.map(stock => stock.limit),
      fixed: [],
      cost: 0,
    };
    if (!this.done()) {
      const solved = this.generate(root, true);
      // Out of time before the programme settled: what it has so far is still better rounded than left.
      if (solved === 'stopped')
        this.finish(root, this.relaxation.levels(), this.pricer.exchanges !== undefined);
      const prices = this.relaxation.centre?.worth.slice();
      for (let budget = 0; solved === 'open' && budget < 6 && !this.done(); budget++) {
        if (budget === DECIDE_AT && prices) this.decide(prices);
        this.dive(root, budget, budget > 0);
      }
    }
    const proved = this.bestValue <= this.bound + NEAR * this.step;
    return {
      chosen: this.best ?? [],
      value: this.bestValue,
      bound: Math.min(this.bound, this.bestValue),
      status: proved ? 'proved best' : this.bound > 0 ? 'within' : 'stopped',
    };
  }

  private decide(prices: Float64Array): void {
    const found = this.pricer.decide?.(prices, this.bound, this.limits.nodes - this.nodes);
    if (found?.ways) this.offer(found.ways.map(way => ({ way, times: 1 })));
    this.bound = Math.max(this.bound, Math.min(found?.bound ?? 0, this.bestValue));
  }

  private done(): boolean {
    return (
      this.bestValue <= this.bound + NEAR * this.step ||
      this.nodes >= this.limits.nodes ||
      (this.limits.stop?.() ?? false)
    );
  }

  /** Next attainable cost at or above `value`. */
  private roundUp(value: number): number {
    return Math.ceil(value / this.step - NEAR) * this.step;
  }

  /** @returns `closed` when nothing better than the best known can come of the node */
  private generate(node: SearchNode<P>, root: boolean): 'open' | 'closed' | 'stopped' {
    this.nodes += 1;
    const reached = (least: number): boolean => {
      const floor = node.cost + this.roundUp(least);
      if (root) this.bound = Math.max(this.bound, Math.min(floor, this.bestValue));
      return floor >= this.bestValue - NEAR * this.step;
    };
    return this.relaxation.settle(node, root, reached, value => this.roundUp(value)).outcome;
  }

  /** One dive; `budget` counts the times the second or third choice may be taken instead. */
  private dive(node: SearchNode<P>, budget: number, again: boolean): void {
    if (this.done()) return;
    if ((node.fixed.length > 0 || again) && this.generate(node, false) !== 'open') return;
    const levels = this.relaxation.levels();
    this.finish(node, levels);
    const choices = this.choices(levels);
    if (choices.length === 0 || this.done()) return;
    const sure = choices.filter(w => levels[w]! >= 1 - LEVEL);
    if (sure.length > 0) {
      const next = copyNode(node);
      for (const w of sure) this.fix(next, w, Math.floor(levels[w]! + LEVEL));
      this.dive(next, budget, false);
      return;
    }
    // What is nearly whole goes together: the programme hardly changes by it.
    const nearly = choices.filter(w => levels[w]! > 0.9);
    const first = nearly.length > 0 ? nearly : choices.slice(0, 1);
    const next = copyNode(node);
    for (const w of first) this.fix(next, w, 1);
    this.dive(next, budget, false);
    for (let k = 1; k <= budget && k < choices.length && !this.done(); k++) {
      const other = copyNode(node);
      this.fix(other, choices[k]!, 1);
      this.dive(other, budget - k, false);
    }
  }

  /** Ways in use, the most used first, then the ones that take most. */
  private choices(levels: Float64Array): number[] {
    const used: number[] = [];
    for (let w = 0; w < levels.length; w++) if (levels[w]! > LEVEL) used.push(w);
    return used.sort((a, b) => levels[b]! - levels[a]! || a - b);
  }

  private fix(node: SearchNode<P>, w: number, times: number, exchanging = false): void {
    const way = exchanging ? this.exchanged(node, w) : this.relaxation.ways[w]!;
    for (let t = 0; t < times; t++) {
      if (node.stockLeft[way.stock]! <= 0) return;
      const counts = way.items.map((item, k) => Math.min(way.counts[k]!, node.left[item]!));
      if (counts.every(count => count === 0)) return;
      way.items.forEach((item, k) => {
        node.left[item]! -= counts[k]!;
      });
      node.stockLeft[way.stock]! -= 1;
      node.cost += this.stocks[way.stock]!.cost;
      node.fixed.push({ way, times: 1 });
    }
  }

  /** The way with items of which nothing is left given up for others that may lie in their place. */
  private exchanged(node: SearchNode<P>, w: number): Way<P> {
    const way = this.relaxation.ways[w]!;
    const next = this.gives;
    const counts = new Map<number, number>();
    way.items.forEach((item, k) => {
      for (let n = 0; n < way.counts[k]!; n++) {
        let to: number | undefined = item;
        while (to !== undefined && node.left[to]! <= (counts.get(to) ?? 0)) to = next.get(to);
        if (to !== undefined) counts.set(to, (counts.get(to) ?? 0) + 1);
      }
    });
    return { ...way, items: [...counts.keys()], counts: [...counts.values()] };
  }

  /** Completes a node by the pricer's quick way, from the whole part of the levels. */
  private finish(node: SearchNode<P>, levels: Float64Array, exchanging = false): void {
    const rounded = copyNode(node);
    for (const w of this.choices(levels))
      if (exchanging) for (let n = Math.floor(levels[w]! + LEVEL); n > 0; n--) this.fix(rounded, w, 1, true);
      else this.fix(rounded, w, Math.floor(levels[w]! + LEVEL));
    // The whole anew is not worth its time once time has run out.
    for (const from of exchanging ? [rounded] : [rounded, node]) {
      if (from === node && rounded.fixed.length === node.fixed.length) break;
      this.trial += 1;
      const rest = from.left.some(left => left > 0)
        ? this.pricer.complete(from.left, from.stockLeft, this.trial)
        : [];
      if (!rest) continue;
      this.offer([...from.fixed, ...rest.map(way => ({ way, times: 1 }))]);
    }
  }
}

/** Largest whole number that divides all costs; costs that are not whole give a step of almost nothing. */
function commonStep(costs: readonly number[]): number {
  if (costs.some(cost => !Number.isInteger(cost))) return 1e-6;
  const step = costs.reduce((a, b) => {
    let [x, y] = [a, b];
    while (y > 0) [x, y] = [y, x % y];
    return x;
  }, 0);
  return step || 1;
}
