/**
 * Column generation with dives: ways to cut one piece of stock are priced as they are needed, the linear
 * programme over them gives the bound, and ways are fixed one after another, each time pricing anew for
 * what is left. Works for any kind of stock for which somebody can price a way to cut it.
 */
import { LinearMaster } from './linear-master.ts';

/** One way to cut one piece of stock; `payload` is whatever the pricer needs to draw it. */
export interface Way<P> {
  stock: number;
  items: readonly number[];
  counts: readonly number[];
  payload: P;
}

export interface StockTerms {
  cost: number;
  limit: number;
}

export interface Priced<P> {
  ways: Way<P>[];
  /** By stock: no way to cut it is worth more than this; Infinity when not known. */
  most: number[];
}

export interface Pricer<P> {
  /**
   * Ways worth more than `above[stock]`, at most `caps[i]` of an item each.
   * @param worth of one piece of each item
   */
  price(worth: Float64Array, caps: Int32Array, above: readonly number[]): Priced<P>;
  /** A quick whole solution for what is left, or undefined when there is none. */
  complete(left: Int32Array, stockLeft: readonly number[], trial: number): Way<P>[] | undefined;
}

/** Worth of a piece of each item, and what a place on limited stock costs beyond its price. */
interface Prices {
  worth: Float64Array;
  rent: number[];
}

/** Share of the old prices in smoothed ones. */
const SMOOTHING = 0.6;
const quantised = (value: number): number => Math.floor(value * WORTH_STEPS) / WORTH_STEPS;

const between = (old: Prices, now: Prices, share: number): Prices => ({
  worth: now.worth.map((value, i) =>
    value === 0 && old.worth[i] === 0 ? 0 : quantised(share * old.worth[i]! + (1 - share) * value),
  ),
  rent: now.rent.map((value, s) => share * old.rent[s]! + (1 - share) * value),
});

export interface Chosen<P> {
  way: Way<P>;
  times: number;
}

export interface Found<P> {
  chosen: Chosen<P>[];
  value: number;
  bound: number;
  status: 'proved best' | 'within' | 'stopped';
}

export interface SearchLimits {
  /** Linear programmes solved in dives. */
  nodes: number;
  /** Asked often; true ends the search with what there is. */
  stop?: () => boolean;
  /** A bound known beforehand. */
  bound?: number;
}

interface Node {
  left: Int32Array;
  stockLeft: number[];
  fixed: Chosen<unknown>[];
  cost: number;
}

const NEAR = 1e-6;
/** Costs, in units of the dearest stock, that no plan would pay. */
const MISSING = 20;
const BARRED = 50;
/** Worths are whole multiples of 1 / WORTH_STEPS, so that sums of them are exact. */
export const WORTH_STEPS = 2 ** 30;

export class ColumnSearch<P> {
  private readonly demands: Int32Array;
  private readonly stocks: readonly StockTerms[];
  private readonly pricer: Pricer<P>;
  private readonly limits: SearchLimits;
  private readonly master: LinearMaster;
  private readonly ways: Way<P>[] = [];
  private readonly known = new Set<string>();
  private readonly limited: number[];
  private readonly step: number;
  private readonly scale: number;
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
    this.limited = stocks.map((_, s) => s).filter(s => stocks[s]!.limit < Infinity);
    this.step = commonStep(stocks.map(stock => stock.cost));
    this.scale = Math.max(...stocks.map(stock => stock.cost), NEAR);
    this.bound = limits.bound ?? 0;
    const right = [...demands, ...this.limited.map(s => -stocks[s]!.limit)];
    this.master = new LinearMaster(right, MISSING);
  }

  /** Takes in a whole solution found elsewhere. */
  offer(solution: readonly Chosen<P>[]): void {
    for (const { way } of solution) this.addWay(way);
    const value = this.costOf(solution);
    if (value < this.bestValue - NEAR * this.step) {
      this.bestValue = value;
      this.best = [...solution];
    }
  }

  run(): Found<P> {
    const root: Node = {
      left: this.demands.slice(),
      stockLeft: this.stocks.map(stock => stock.limit),
      fixed: [],
      cost: 0,
    };
    if (!this.done()) {
      const solved = this.generate(root, true);
      for (let budget = 0; solved === 'open' && budget < 6 && !this.done(); budget++) {
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

  private done(): boolean {
    return (
      this.bestValue <= this.bound + NEAR * this.step ||
      this.nodes >= this.limits.nodes ||
      (this.limits.stop?.() ?? false)
    );
  }

  private costOf(chosen: readonly Chosen<P>[]): number {
    return chosen.reduce((sum, { way, times }) => sum + times * this.stocks[way.stock]!.cost, 0);
  }

  private addWay(way: Way<P>): void {
    const key = `${way.stock}:${way.items.map((item, k) => `${item}x${way.counts[k]}`).join()}`;
    if (this.known.has(key)) return;
    this.known.add(key);
    this.ways.push(way);
    const at = this.limited.indexOf(way.stock);
    const rows = at < 0 ? way.items : [...way.items, this.demands.length + at];
    const values = at < 0 ? way.counts : [...way.counts, -1];
    this.master.add({ rows, values, cost: this.stocks[way.stock]!.cost / this.scale });
  }

  /** Next attainable cost at or above `value`. */
  private roundUp(value: number): number {
    return Math.ceil(value / this.step - NEAR) * this.step;
  }

  /**
   * Solves the linear programme of a node. Prices are smoothed towards those that gave the best bound, which
   * saves rounds (P. Wentges, Int. Trans. Oper. Res. 4 (1997)).
   * @returns `closed` when nothing better than the best known can come of it
   */
  private generate(node: Node, root: boolean): 'open' | 'closed' | 'stopped' {
    this.bar(node);
    this.master.setRight([...node.left, ...this.limited.map(s => -node.stockLeft[s]!)]);
    this.nodes += 1;
    let least = 0;
    let centre: Prices | undefined;
    for (let round = 0; round < 4000; round++) {
      if (this.limits.stop?.() && !(root && round === 0)) return 'stopped';
      if (!this.master.solve()) return 'stopped';
      const exact = this.pricesOf(node);
      let prices = centre ? between(centre, exact, SMOOTHING) : exact;
      let fresh: Way<P>[];
      for (;;) {
        const priced = this.priced(node, prices);
        const bound = this.farley(node, prices.worth, priced.most);
        if (bound > least) {
          least = bound;
          centre = prices;
        }
        fresh = priced.ways.filter(way => this.gains(way, exact));
        if (fresh.length > 0 || prices === exact) break;
        prices = exact;
      }
      const floor = node.cost + this.roundUp(least * this.scale);
      if (root) this.bound = Math.max(this.bound, Math.min(floor, this.bestValue));
      if (floor >= this.bestValue - NEAR * this.step) return 'closed';
      const before = this.ways.length;
      for (const way of fresh) this.addWay(way);
      const objective = this.master.objective() * this.scale;
      const settled = this.roundUp(least * this.scale) >= this.roundUp(objective) - NEAR;
      if (this.ways.length === before || (settled && this.master.missing() < NEAR)) {
        return this.master.missing() > 0.01 ? 'closed' : 'open';
      }
    }
    return 'open';
  }

  private pricesOf(node: Node): Prices {
    const n = this.demands.length;
    const duals = this.master.duals;
    const worth = new Float64Array(n);
    for (let i = 0; i < n; i++) if (node.left[i]! > 0) worth[i] = quantised(Math.max(0, duals[i]!));
    const rent = this.stocks.map((_, s) => {
      const at = this.limited.indexOf(s);
      return at < 0 ? 0 : Math.max(0, duals[n + at]!);
    });
    return { worth, rent };
  }

  private priced(node: Node, { worth, rent }: Prices): Priced<P> {
    const above = this.stocks.map((stock, s) =>
      node.stockLeft[s]! > 0 ? stock.cost / this.scale + rent[s]! : Infinity,
    );
    return this.pricer.price(worth, node.left, above);
  }

  /** Would the way improve the programme at these prices? */
  private gains(way: Way<P>, { worth, rent }: Prices): boolean {
    let value = -this.stocks[way.stock]!.cost / this.scale - rent[way.stock]!;
    way.items.forEach((item, k) => {
      value += worth[item]! * way.counts[k]!;
    });
    return value > 1e-8;
  }

  /**
   * Bound from prices that may be a little too high: scaled down until no way to cut stock without limit is
   * worth more than it costs; limited stock pays the difference. A. A. Farley, Oper. Res. 38 (1990).
   */
  private farley(node: Node, worth: Float64Array, most: readonly number[]): number {
    let shrink = 1;
    this.stocks.forEach((stock, s) => {
      const value = most[s]!;
      if (node.stockLeft[s]! < Infinity || value <= 0) return;
      shrink = Math.min(shrink, stock.cost / this.scale / value);
    });
    let sum = 0;
    for (let i = 0; i < worth.length; i++) sum += node.left[i]! * worth[i]!;
    sum *= shrink;
    for (const s of this.limited)
      if (node.stockLeft[s]! > 0)
        sum += node.stockLeft[s]! * Math.min(0, this.stocks[s]!.cost / this.scale - shrink * most[s]!);
    return Number.isFinite(sum) ? sum : 0;
  }

  /** Ways that take more of an item than is left, or a stock that is used up, are barred. */
  private bar(node: Node): void {
    const { ways, stocks, scale } = this;
    this.master.bar(
      w => {
        const way = ways[w]!;
        if (node.stockLeft[way.stock]! <= 0) return true;
        for (let k = 0; k < way.items.length; k++)
          if (way.counts[k]! > node.left[way.items[k]!]!) return true;
        return false;
      },
      w => stocks[ways[w]!.stock]!.cost / scale,
      BARRED,
    );
  }

  /** One dive; `budget` counts the times the second or third choice may be taken instead. */
  private dive(node: Node, budget: number, again: boolean): void {
    if (this.done()) return;
    if (node.fixed.length > 0 || again) {
      const solved = this.generate(node, false);
      if (solved !== 'open') return;
    }
    const levels = this.master.levels();
    this.finish(node, levels);
    const choices = this.choices(levels);
    if (choices.length === 0 || this.done()) return;
    const sure = choices.filter(w => levels[w]! >= 1 - NEAR);
    if (sure.length > 0) {
      const next = copy(node);
      for (const w of sure) this.fix(next, w, Math.floor(levels[w]! + NEAR));
      this.dive(next, budget, false);
      return;
    }
    // What is nearly whole goes together: the programme hardly changes by it.
    const nearly = choices.filter(w => levels[w]! > 0.9);
    const first = nearly.length > 0 ? nearly : choices.slice(0, 1);
    const next = copy(node);
    for (const w of first) this.fix(next, w, 1);
    this.dive(next, budget, false);
    for (let k = 1; k <= budget && k < choices.length && !this.done(); k++) {
      const other = copy(node);
      this.fix(other, choices[k]!, 1);
      this.dive(other, budget - k, false);
    }
  }

  /** Ways in use, the most used first, then the ones that take most. */
  private choices(levels: Float64Array): number[] {
    const used: number[] = [];
    for (let w = 0; w < levels.length; w++) if (levels[w]! > 1e-5) used.push(w);
    return used.sort((a, b) => levels[b]! - levels[a]! || a - b);
  }

  private fix(node: Node, w: number, times: number): void {
    const way = this.ways[w]!;
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

  /** Completes a node by the pricer's quick way, from the whole part of the levels. */
  private finish(node: Node, levels: Float64Array): void {
    const rounded = copy(node);
    for (const w of this.choices(levels)) this.fix(rounded, w, Math.floor(levels[w]! + NEAR));
    for (const from of [rounded, node]) {
      if (from === node && rounded.fixed.length === node.fixed.length) break;
      this.trial += 1;
      const rest = from.left.some(left => left > 0)
        ? this.pricer.complete(from.left, from.stockLeft, this.trial)
        : [];
      if (!rest) continue;
      const solution = [...(from.fixed as Chosen<P>[]), ...rest.map(way => ({ way, times: 1 }))];
      this.offer(solution);
    }
  }
}

const copy = (node: Node): Node => ({
  left: node.left.slice(),
  stockLeft: [...node.stockLeft],
  fixed: [...node.fixed],
  cost: node.cost,
});

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
