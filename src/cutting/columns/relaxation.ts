/** The linear programme over ways to cut, solved for a node by pricing ways until none gains. */
import { LinearMaster } from './linear-master.ts';
import {
  NEAR,
  type Priced,
  type Pricer,
  type SearchNode,
  type StockTerms,
  type Way,
  WORTH_STEPS,
} from './ways.ts';

/** Worth of a piece of each item, and what a place on limited stock costs beyond its price. */
export interface Prices {
  worth: Float64Array;
  rent: number[];
}

/** Costs, in units of the dearest stock, that no plan would pay. */
const MISSING = 20;
const BARRED = 50;
/** Share of the old prices in smoothed ones. */
const SMOOTHING = 0.6;
/** Changes of basis between two rounds of pricing, beyond the number of new ways. */
const PIVOTS = 12;

/**
 * Pieces that demands are raised by while ways are priced, against standing still at one corner of the
 * programme (A. Charnes, Econometrica 20 (1952)). Bounds are computed from the demands as they are.
 */
const SPREAD = 2e-4;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

const quantised = (value: number): number => Math.floor(value * WORTH_STEPS) / WORTH_STEPS;

const between = (old: Prices, now: Prices, share: number): Prices => ({
  worth: now.worth.map((value, i) =>
    value === 0 && old.worth[i] === 0 ? 0 : quantised(share * old.worth[i]! + (1 - share) * value),
  ),
  rent: now.rent.map((value, s) => share * old.rent[s]! + (1 - share) * value),
});

export interface Settled {
  /** `closed` when no plan worth having can come of the node. */
  outcome: 'open' | 'closed' | 'stopped';
  /** Least cost of what is left, in money; not rounded. */
  least: number;
}

export class Relaxation<P> {
  readonly ways: Way<P>[] = [];
  /** Prices that gave the best bound when the last node was solved. */
  centre: Prices | undefined;
  private readonly demands: Int32Array;
  private readonly stocks: readonly StockTerms[];
  private readonly pricer: Pricer<P>;
  private readonly stop: () => boolean;
  private readonly master: LinearMaster;
  private readonly known = new Set<string>();
  private readonly limited: number[];
  private readonly scale: number;
  private readonly exchanges: number;

  constructor(
    demands: Int32Array,
    stocks: readonly StockTerms[],
    pricer: Pricer<P>,
    scale: number,
    stop: () => boolean,
  ) {
    this.demands = demands;
    this.stocks = stocks;
    this.pricer = pricer;
    this.scale = scale;
    this.stop = stop;
    this.limited = stocks.map((_, s) => s).filter(s => stocks[s]!.limit < Infinity);
    this.master = new LinearMaster([...demands, ...this.limited.map(s => -stocks[s]!.limit)], MISSING);
    const exchanges = pricer.exchanges ?? [];
    for (const [from, to] of exchanges) this.master.add({ rows: [from, to], values: [-1, 1], cost: 0 });
    this.exchanges = exchanges.length;
  }

  add(way: Way<P>): void {
    const key = `${way.stock}:${way.items.map((item, k) => `${item}x${way.counts[k]}`).join()}`;
    if (this.known.has(key)) return;
    this.known.add(key);
    this.ways.push(way);
    const at = this.limited.indexOf(way.stock);
    const rows = at < 0 ? way.items : [...way.items, this.demands.length + at];
    const values = at < 0 ? way.counts : [...way.counts, -1];
    this.master.add({ rows, values, cost: this.stocks[way.stock]!.cost / this.scale });
  }

  /** The linear programme begins with these ways, each of one item on stock without limit. */
  beginWith(ways: readonly Way<P>[]): void {
    const first = this.master.count;
    for (const way of ways) this.add(way);
    this.master.beginWith(Array.from({ length: this.master.count - first }, (_, k) => first + k));
  }

  /** How often each way is used, give or take `SPREAD`. */
  levels(): Float64Array {
    return this.master.levels().subarray(this.exchanges);
  }

  /**
   * Solves the programme of a node. Prices are smoothed towards those that gave the best bound, which saves
   * rounds (P. Wentges, Int. Trans. Oper. Res. 4 (1997)).
   * @param root the first programme of all: exchanges of items may be used until it settles
   * @param reached told each better bound; true when the node cannot give anything worth having any more
   * @param rounded next attainable cost at or above a value
   */
  settle(
    node: SearchNode<P>,
    root: boolean,
    reached: (least: number) => boolean,
    rounded: (cost: number) => number,
  ): Settled {
    let least = 0;
    const end = (outcome: Settled['outcome']): Settled => ({ outcome, least: least * this.scale });
    let exchanging = root && this.exchanges > 0;
    this.bar(node, exchanging);
    this.master.setRight(this.right(node, SPREAD));
    let centre: Prices | undefined;
    if (root && this.pricer.start) {
      centre = { worth: this.pricer.start.map(quantised), rent: this.stocks.map(() => 0) };
      this.centre = centre;
      const priced = this.priced(node, centre);
      least = this.farley(node, centre.worth, priced.most);
      for (const way of priced.ways) this.add(way);
    }
    let pivots = PIVOTS;
    for (let round = 0; round < 20_000; round++) {
      if (this.stop() && !(root && round === 0)) return end('stopped');
      const solved = this.master.solve(this.stop, pivots);
      if (solved === 'lost') return end('stopped');
      const exact = this.pricesOf(node);
      let prices = centre ? between(centre, exact, SMOOTHING) : exact;
      let fresh: Way<P>[];
      for (;;) {
        const priced = this.priced(node, prices);
        const bound = this.farley(node, prices.worth, priced.most);
        if (bound > least || !centre) {
          least = Math.max(least, bound);
          centre = prices;
          this.centre = prices;
        }
        fresh = priced.ways.filter(way => this.gains(way, exact));
        if (fresh.length > 0 || prices === exact) break;
        prices = exact;
      }
      if (reached(least * this.scale)) return end('closed');
      const before = this.ways.length;
      for (const way of fresh) this.add(way);
      const optimal = solved === 'optimal';
      const objective = this.master.objectiveAt(this.right(node, 0)) * this.scale;
      const near = rounded(least * this.scale) >= rounded(objective) - NEAR * this.scale;
      const settled = this.ways.length === before || (near && this.master.missing() < NEAR);
      pivots = settled ? 10 * PIVOTS : PIVOTS + this.ways.length - before;
      if (!settled || !optimal) continue;
      if (!exchanging) return end(this.master.missing() > 0.01 ? 'closed' : 'open');
      exchanging = false;
      this.bar(node, false);
    }
    return end('open');
  }

  /** Demands and limits, each a very little more by a share of its own: no two ways then run out together. */
  private right(node: SearchNode<P>, spread: number): number[] {
    const demands = Array.from(node.left, (left, i) =>
      left > 0 ? left + spread * (1 + ((i * GOLDEN) % 1)) : 0,
    );
    return [...demands, ...this.limited.map(s => -node.stockLeft[s]!)];
  }

  private pricesOf(node: SearchNode<P>): Prices {
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

  private priced(node: SearchNode<P>, { worth, rent }: Prices): Priced<P> {
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
  private farley(node: SearchNode<P>, worth: Float64Array, most: readonly number[]): number {
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
  private bar(node: SearchNode<P>, exchanging: boolean): void {
    const { ways, stocks, scale, exchanges } = this;
    this.master.bar(
      w => {
        if (w < exchanges) return !exchanging;
        const way = ways[w - exchanges]!;
        if (node.stockLeft[way.stock]! <= 0) return true;
        for (let k = 0; k < way.items.length; k++)
          if (way.counts[k]! > node.left[way.items[k]!]!) return true;
        return false;
      },
      w => (w < exchanges ? 0 : stocks[ways[w - exchanges]!.stock]!.cost / scale),
      BARRED,
    );
  }
}
