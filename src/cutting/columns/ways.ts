/** Ways to cut one piece of stock, and what a search over them asks for and gives back. */

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
  /**
   * Another way to a better solution or a better bound than `bound`, if there is one, from the prices of the
   * first programme. Asked once, when the first dives have not closed the matter.
   * @param nodes linear programmes it may solve
   */
  decide?(worth: Float64Array, bound: number, nodes: number): { ways?: Way<P>[]; bound?: number };
  /** A fair guess at the worth of one piece of each item, in units of the dearest stock. */
  start?: Float64Array;
  /**
   * Pairs of items, the first of which can give up its place to the second in any way. They keep prices in
   * order while the first programme settles, which saves most of its rounds (T. Gschwind, S. Irnich,
   * INFORMS J. Computing 28 (2016)).
   */
  exchanges?: readonly (readonly [number, number])[];
}

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

/** Worths are whole multiples of 1 / WORTH_STEPS, so that sums of them are exact. */
export const WORTH_STEPS = 2 ** 30;

/** Differences of cost below this share of the dearest stock are noise. */
export const NEAR = 1e-6;

/** What is left to cut at a point of the search, and what has been fixed. */
export interface SearchNode<P> {
  left: Int32Array;
  stockLeft: number[];
  fixed: Chosen<P>[];
  cost: number;
}

export const copyNode = <P>(node: SearchNode<P>): SearchNode<P> => ({
  left: node.left.slice(),
  stockLeft: [...node.stockLeft],
  fixed: [...node.fixed],
  cost: node.cost,
});
