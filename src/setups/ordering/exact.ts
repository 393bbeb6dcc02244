import { NEVER, type Precedence, type Sop } from './sop.ts';

export interface ExactLimit {
  /** States kept in one layer; what is dropped lowers the bound honestly. */
  width: number;
  /** States looked at in all. */
  states: number;
  stop?: () => boolean;
}

export interface ExactResult {
  order?: number[];
  value: number;
  bound: number;
  /** States looked at. */
  looked: number;
}

/** Open addressing over (set, last); the set is two 32-bit words. */
class Layer {
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly last: Uint8Array;
  readonly cost: Float64Array;
  readonly floor: Float64Array;
  readonly parent: Int32Array;
  size = 0;
  private readonly slots: Int32Array;
  private readonly mask: number;

  constructor(readonly capacity: number) {
    this.low = new Int32Array(capacity);
    this.high = new Int32Array(capacity);
    this.last = new Uint8Array(capacity);
    this.cost = new Float64Array(capacity);
    this.floor = new Float64Array(capacity);
    this.parent = new Int32Array(capacity);
    let slots = 16;
    while (slots < capacity * 2) slots *= 2;
    this.slots = new Int32Array(slots).fill(-1);
    this.mask = slots - 1;
  }

  /** Empty again, for the next layer. */
  reset(): void {
    this.size = 0;
    this.slots.fill(-1);
  }

  /** Index of the state, new or old; -1 when full. `isNew` tells which. */
  isNew = false;
  find(low: number, high: number, last: number): number {
    let h =
      (Math.imul(low, 0x9e3779b1) ^ Math.imul(high, 0x85ebca6b) ^ Math.imul(last + 1, 0xc2b2ae35)) >>> 0;
    h = (h ^ (h >>> 15)) & this.mask;
    for (;;) {
      const at = this.slots[h]!;
      if (at === -1) {
        if (this.size >= this.capacity) return -1;
        const index = this.size++;
        this.slots[h] = index;
        this.low[index] = low;
        this.high[index] = high;
        this.last[index] = last;
        this.isNew = true;
        return index;
      }
      if (this.low[at] === low && this.high[at] === high && this.last[at] === last) {
        this.isNew = false;
        return at;
      }
      h = (h + 1) & this.mask;
    }
  }
}

/**
 * Dynamic programme over (what is done, what was last), layer by layer, at most 64 nodes. A state is dropped when
 * its cost and a bound on the rest reach `upper`. Exact while no layer overflows; beyond that the cheapest states
 * are kept and the bound is the least that was dropped.
 * @param charge what steps out of each node are charged (from the Lagrangian bound)
 * @param grain the least difference between two values (1 for whole costs)
 */
export function layered(
  sop: Sop,
  precedence: Precedence,
  end: number,
  charge: Float64Array,
  upper: number,
  grain: number,
  limit: ExactLimit,
): ExactResult {
  const { n, cost } = sop;
  const needLow = new Int32Array(n);
  const needHigh = new Int32Array(n);
  for (let v = 0; v < n; v++)
    for (const u of precedence.prev[v]!) {
      if (u < 32) needLow[v]! |= 1 << u;
      else needHigh[v]! |= 1 << (u - 32);
    }
  const ceiling = upper - grain + 1e-6;
  const layers: Layer[] = [];
  let layer = new Layer(1);
  layer.find(1, 0, 0);
  layers.push(layer);
  let dropped = Number.POSITIVE_INFINITY;
  let looked = 0;
  const open = new Int32Array(n);
  const next = new Layer(Math.min(limit.width * 4, 16 * limit.states));
  for (let depth = 1; depth < n; depth++) {
    next.reset();
    for (let s = 0; s < layer.size; s++) {
      looked++;
      if (looked > limit.states || ((looked & 255) === 0 && limit.stop?.())) {
        for (let r = s; r < layer.size; r++) dropped = Math.min(dropped, layer.floor[r]!);
        return { value: upper, bound: Math.min(upper, dropped, leastFloor(next)), looked };
      }
      const low = layer.low[s]!;
      const high = layer.high[s]!;
      const last = layer.last[s]!;
      let count = 0;
      for (let v = 1; v < n; v++) if (((v < 32 ? low >>> v : high >>> (v - 32)) & 1) === 0) open[count++] = v;
      for (let k = 0; k < count; k++) {
        const v = open[k]!;
        if ((needLow[v]! & ~low) !== 0 || (needHigh[v]! & ~high) !== 0) continue;
        const step = cost[last * n + v]!;
        if (step >= NEVER) continue;
        const value = layer.cost[s]! + step;
        if (value > ceiling) continue;
        const newLow = v < 32 ? low | (1 << v) : low;
        const newHigh = v < 32 ? high : high | (1 << (v - 32));
        const at = next.find(newLow, newHigh, v);
        if (at === -1) {
          dropped = Math.min(dropped, layer.floor[s]!);
          continue;
        }
        if (next.isNew) {
          next.cost[at] = value;
          next.parent[at] = s;
          next.floor[at] = restBound(n, cost, charge, end, open, count, v);
        } else if (value < next.cost[at]!) {
          next.cost[at] = value;
          next.parent[at] = s;
        }
      }
    }
    const kept = prune(next, ceiling, limit.width);
    dropped = Math.min(dropped, kept.dropped);
    layer = kept.layer;
    layers.push(layer);
    if (layer.size === 0) return { value: upper, bound: Math.min(upper, dropped), looked };
  }
  let best = 0;
  for (let s = 1; s < layer.size; s++) if (layer.cost[s]! < layer.cost[best]!) best = s;
  const order: number[] = [];
  let at = best;
  for (let depth = n - 1; depth >= 0; depth--) {
    order.push(layers[depth]!.last[at]!);
    at = layers[depth]!.parent[at]!;
  }
  const value = layer.cost[best]!;
  return { order: order.reverse(), value, bound: Math.min(value, dropped), looked };
}

const leastFloor = (layer: Layer): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let s = 0; s < layer.size; s++) least = Math.min(least, layer.cost[s]! + layer.floor[s]!);
  return least;
};

/** What the nodes still open must cost: each its cheapest charged step in, less the charges. `v` is done now. */
function restBound(
  n: number,
  cost: Float64Array,
  charge: Float64Array,
  end: number,
  open: Int32Array,
  count: number,
  v: number,
): number {
  let total = v === end ? 0 : -charge[v]!;
  for (let k = 0; k < count; k++) {
    const to = open[k]!;
    if (to === v) continue;
    let least = cost[v * n + to]! + charge[v]!;
    for (let m = 0; m < count; m++) {
      const from = open[m]!;
      if (from === v || from === to) continue;
      const c = cost[from * n + to]! + charge[from]!;
      if (c < least) least = c;
    }
    total += least - (to === end ? 0 : charge[to]!);
  }
  return total;
}

/** Drops what cannot lead below the ceiling, then all but the cheapest `width`; floors become whole values. */
function prune(next: Layer, ceiling: number, width: number): { layer: Layer; dropped: number } {
  const index: number[] = [];
  for (let s = 0; s < next.size; s++) {
    next.floor[s]! += next.cost[s]!;
    if (next.floor[s]! <= ceiling) index.push(s);
  }
  let dropped = Number.POSITIVE_INFINITY;
  if (index.length > width) {
    index.sort((a, b) => next.floor[a]! - next.floor[b]! || a - b);
    dropped = next.floor[index[width]!]!;
    index.length = width;
  }
  const layer = new Layer(Math.max(1, index.length));
  for (const s of index) {
    const at = layer.find(next.low[s]!, next.high[s]!, next.last[s]!);
    layer.cost[at] = next.cost[s]!;
    layer.floor[at] = next.floor[s]!;
    layer.parent[at] = next.parent[s]!;
  }
  return { layer, dropped };
}
