import { NEVER, type Precedence, type Sop } from './sop.ts';

/**
 * Local search by exchanging two neighbouring stretches of the order, neither turned round:
 * `.. a [S1] [S2] z ..` becomes `.. a [S2] [S1] z ..`. Three steps change, directions stay, so costs that differ
 * by direction need no adding up again, and the exchange is allowed exactly when nothing in S1 must precede
 * anything in S2: when S2 ends before the first successor of S1 in the order.
 */
export class Exchange {
  readonly n: number;
  readonly order: Int32Array;
  readonly place: Int32Array;
  value: number;
  private readonly cost: Float64Array;
  private readonly near: Int32Array[];
  private readonly next: Int32Array[];
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private head = 0;
  private length = 0;
  private readonly buffer: Int32Array;
  /** Exchanges made since the last `mark`, three numbers each: start, split, finish. */
  private readonly log: number[] = [];
  private bestSplit = 0;
  private bestEnd = 0;
  private bestStart = 0;

  /** @param passing also looks for stretches that pass over one that ends with the node: see `passOver` */
  constructor(
    sop: Sop,
    precedence: Precedence,
    order: ArrayLike<number>,
    neighbours: number,
    private readonly passing = false,
  ) {
    this.n = sop.n;
    this.cost = sop.cost;
    this.order = Int32Array.from(order);
    this.place = new Int32Array(this.n);
    for (let i = 0; i < this.n; i++) this.place[this.order[i]!] = i;
    this.next = precedence.next.map(list => Int32Array.from(list));
    this.near = nearest(sop, neighbours);
    this.queue = new Int32Array(this.n);
    this.queued = new Uint8Array(this.n);
    this.buffer = new Int32Array(this.n);
    this.value = this.add();
  }

  private add(): number {
    let total = 0;
    for (let i = 0; i + 1 < this.n; i++) total += this.cost[this.order[i]! * this.n + this.order[i + 1]!]!;
    return total;
  }

  /** Puts an order in place of the present one. */
  load(order: ArrayLike<number>): void {
    for (let i = 0; i < this.n; i++) {
      this.order[i] = order[i]!;
      this.place[order[i]!] = i;
    }
    this.value = this.add();
    this.log.length = 0;
  }

  /** From here `undo` leads back. */
  mark(): void {
    this.log.length = 0;
  }

  /** Back to the mark, where the value was `value`. */
  undo(value: number): void {
    for (let i = this.log.length - 3; i >= 0; i -= 3) {
      const start = this.log[i]!;
      const split = this.log[i + 1]!;
      const end = this.log[i + 2]!;
      this.rotate(start, start + (end - split), end);
    }
    this.log.length = 0;
    this.value = value;
  }

  wake(node: number): void {
    if (this.queued[node] === 1 || this.length >= this.n) return;
    this.queued[node] = 1;
    this.queue[(this.head + this.length) % this.n] = node;
    this.length++;
  }

  wakeAll(): void {
    for (let i = 0; i < this.n; i++) this.wake(this.order[i]!);
  }

  /** First place from `from` on that holds a direct successor of the node; n when none. */
  private firstAfter(node: number, from: number): number {
    const list = this.next[node]!;
    let first = this.n;
    for (let k = 0; k < list.length; k++) {
      const p = this.place[list[k]!]!;
      if (p < first && p >= from) first = p;
    }
    return first;
  }

  /** Last place up to `to` that holds a direct successor of the node; -1 when none. */
  private lastWithin(node: number, to: number): number {
    const list = this.next[node]!;
    let last = -1;
    for (let k = 0; k < list.length; k++) {
      const p = this.place[list[k]!]!;
      if (p > last && p <= to) last = p;
    }
    return last;
  }

  /** Takes improving exchanges until none of the waked nodes has one. */
  improve(): void {
    while (this.length > 0) {
      const node = this.queue[this.head]!;
      this.head = (this.head + 1) % this.n;
      this.length--;
      this.queued[node] = 0;
      while (this.improveAt(node)) {
        // again, until this node has nothing more to give
      }
    }
  }

  private improveAt(a: number): boolean {
    const { n, cost, order, place } = this;
    const i = place[a]!;
    if (i + 1 >= n) return false;
    const x = order[i + 1]!;
    const out = cost[a * n + x]!;
    const near = this.near[a]!;
    for (let k = 0; k < near.length; k++) {
      const b = near[k]!;
      const gain = out - cost[a * n + b]!;
      if (gain <= 1e-9) return false;
      const j = place[b]!;
      if (j === i + 1) continue;
      let delta = j > i ? this.pullForward(i, j, gain) : j > 0 ? this.pushBack(i, j, gain) : 0;
      if (j > i && this.passing) delta = this.passOver(i, j, gain, delta);
      if (delta < -1e-9) {
        this.apply(this.bestStart, this.bestSplit, this.bestEnd, delta);
        return true;
      }
    }
    return false;
  }

  /** b at j comes to stand right after a at i: S1 = i+1..j-1, S2 = j..end. Returns the best change. */
  private pullForward(i: number, j: number, gain: number): number {
    const { n, cost, order } = this;
    let limit = n;
    for (let p = i + 1; p < j; p++) {
      const first = this.firstAfter(order[p]!, j);
      if (first < limit) {
        if (first === j) return 0;
        limit = first;
      }
    }
    const x = order[i + 1]!;
    const y = order[j - 1]!;
    const base = -gain - cost[y * n + order[j]!]!;
    let best = 0;
    for (let end = j; end < limit; end++) {
      const e = order[end]!;
      let delta = base + cost[e * n + x]!;
      if (end + 1 < n) delta += cost[y * n + order[end + 1]!]! - cost[e * n + order[end + 1]!]!;
      if (delta < best - 1e-9) {
        best = delta;
        this.bestStart = i + 1;
        this.bestSplit = j;
        this.bestEnd = end + 1;
      }
    }
    return best;
  }

  /**
   * a at i comes to stand right before b at j > i, too, when what lies between them goes ahead of a stretch that ends
   * with a: S1 = start..i, S2 = i+1..j-1. Returns the best change, `least` when none is better than that.
   */
  private passOver(i: number, j: number, gain: number, least: number): number {
    const { n, cost, order } = this;
    const f = order[i + 1]!;
    const l = order[j - 1]!;
    const base = -gain - cost[l * n + order[j]!]!;
    let best = least;
    for (let start = i; start > 0; start--) {
      const s = order[start]!;
      if (this.firstAfter(s, i + 1) < j) break;
      const p = order[start - 1]!;
      const delta = base + cost[p * n + f]! + cost[l * n + s]! - cost[p * n + s]!;
      if (delta < best - 1e-9) {
        best = delta;
        this.bestStart = start;
        this.bestSplit = i + 1;
        this.bestEnd = j;
      }
    }
    return best;
  }

  /** a at i comes to stand right before b at j < i: S1 = j..split-1, S2 = split..i. */
  private pushBack(i: number, j: number, gain: number): number {
    const { n, cost, order } = this;
    const p = order[j - 1]!;
    const b = order[j]!;
    const hasNext = i + 1 < n;
    const x = hasNext ? order[i + 1]! : -1;
    const base = -gain - cost[p * n + b]!;
    let best = 0;
    let latest = -1;
    for (let split = j + 1; split <= i; split++) {
      const e = order[split - 1]!;
      latest = Math.max(latest, this.lastWithin(e, i));
      if (latest >= split) continue;
      const f = order[split]!;
      let delta = base + cost[p * n + f]! - cost[e * n + f]!;
      if (hasNext) delta += cost[e * n + x]!;
      if (delta < best - 1e-9) {
        best = delta;
        this.bestStart = j;
        this.bestSplit = split;
        this.bestEnd = i + 1;
      }
    }
    return best;
  }

  private apply(start: number, split: number, end: number, delta: number): void {
    const { order, n } = this;
    if (start > 0) this.wake(order[start - 1]!);
    this.wake(order[start]!);
    this.wake(order[split - 1]!);
    this.wake(order[split]!);
    this.wake(order[end - 1]!);
    if (end < n) this.wake(order[end]!);
    this.rotate(start, split, end);
    this.log.push(start, split, end);
    this.value += delta;
  }

  /** Swaps [start, split) and [split, end). */
  private rotate(start: number, split: number, end: number): void {
    const { order, place, buffer } = this;
    const left = split - start;
    const right = end - split;
    if (left <= right) {
      for (let k = 0; k < left; k++) buffer[k] = order[start + k]!;
      order.copyWithin(start, split, end);
      for (let k = 0; k < left; k++) order[start + right + k] = buffer[k]!;
    } else {
      for (let k = 0; k < right; k++) buffer[k] = order[split + k]!;
      order.copyWithin(start + right, start, split);
      for (let k = 0; k < right; k++) order[start + k] = buffer[k]!;
    }
    for (let k = start; k < end; k++) place[order[k]!] = k;
  }

  /** One allowed exchange at random with stretches up to `reach`; false when the place allows none. */
  shake(random: () => number, reach: number): boolean {
    const { n, cost, order } = this;
    if (n < 4) return false;
    for (let attempt = 0; attempt < 20; attempt++) {
      const start = 1 + Math.floor(random() * (n - 2));
      const split = start + 1 + Math.floor(random() * Math.min(reach, n - 1 - start));
      let limit = n;
      for (let p = start; p < split; p++) limit = Math.min(limit, this.firstAfter(order[p]!, split));
      if (limit <= split) continue;
      const end = split + 1 + Math.floor(random() * Math.min(reach, limit - split));
      const p = order[start - 1]!;
      const b = order[start]!;
      const e = order[split - 1]!;
      const f = order[split]!;
      const l = order[end - 1]!;
      let delta = cost[p * n + f]! + cost[l * n + b]! - cost[p * n + b]! - cost[e * n + f]!;
      if (end < n) delta += cost[e * n + order[end]!]! - cost[l * n + order[end]!]!;
      if (delta >= NEVER / 2) continue;
      this.apply(start, split, end, delta);
      return true;
    }
    return false;
  }
}

/** The cheapest steps out of each node, allowed ones only. */
function nearest(sop: Sop, count: number): Int32Array[] {
  const { n, cost } = sop;
  return Array.from({ length: n }, (_, a) => {
    const list: number[] = [];
    for (let b = 1; b < n; b++) if (b !== a && cost[a * n + b]! < NEVER) list.push(b);
    list.sort((p, q) => cost[a * n + p]! - cost[a * n + q]! || p - q);
    return Int32Array.from(list.slice(0, count));
  });
}
