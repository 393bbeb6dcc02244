/** Rectangles built up so far and those thought of for one size, as columns of numbers. */
import type { PackedCounts } from './packed-counts.ts';

export const SIDE_BY_SIDE = 0;
export const ONE_ABOVE_ANOTHER = 1;
export const PIECE = 2;
/** A rectangle of the store that fits here too, with room to spare. */
const AGAIN = 3;

const FEW_SLOTS = 256;

const TYPED = ['packed', 'hash', 'first', 'second', 'kind', 'gain', 'value'] as const;

export class Rectangles {
  size = 0;
  readonly words: number;
  packed = new Int32Array(0);
  hash = new Int32Array(0);
  /** Worth with and without the prices on pieces used too often. */
  gain = new Float64Array(0);
  value = new Float64Array(0);
  /** The two it is made of; of a piece the index of its way to lie. */
  first = new Int32Array(0);
  second = new Int32Array(0);
  kind = new Uint8Array(0);

  constructor(words: number, capacity: number) {
    this.words = words;
    this.reserve(capacity);
  }

  reserve(capacity: number): void {
    if (capacity <= this.hash.length) return;
    const room = Math.max(capacity, 2 * this.hash.length);
    const grown = {
      packed: new Int32Array(room * this.words),
      hash: new Int32Array(room),
      first: new Int32Array(room),
      second: new Int32Array(room),
      kind: new Uint8Array(room),
      gain: new Float64Array(room),
      value: new Float64Array(room),
    };
    for (const key of TYPED) grown[key].set(this[key]);
    Object.assign(this, grown);
  }

  /** Copies row `row` of `other` to the end; returns its index. */
  take(other: Rectangles, row: number): number {
    this.reserve(this.size + 1);
    const at = this.size++;
    const { words } = this;
    for (let k = 0; k < words; k++) this.packed[at * words + k] = other.packed[row * words + k]!;
    this.hash[at] = other.hash[row]!;
    this.first[at] = other.first[row]!;
    this.second[at] = other.second[row]!;
    this.kind[at] = other.kind[row]!;
    this.gain[at] = other.gain[row]!;
    this.value[at] = other.value[row]!;
    return at;
  }
}

/** The best rectangles of one size, each set of pieces once. */
export class Picks {
  /** Less gain than this is not kept. */
  floor = 0;
  private readonly store: Rectangles;
  private readonly counts: PackedCounts;
  private readonly width: number;
  private readonly rows: Rectangles;
  private slots = new Int32Array(FEW_SLOTS).fill(-1);

  /** @param width rectangles kept */
  constructor(store: Rectangles, counts: PackedCounts, width: number) {
    this.store = store;
    this.counts = counts;
    this.width = width;
    this.rows = new Rectangles(store.words, 64);
  }

  begin(floor: number): void {
    this.floor = floor;
    this.rows.size = 0;
    if (this.slots.length > FEW_SLOTS) this.slots = new Int32Array(FEW_SLOTS);
    this.slots.fill(-1);
  }

  get size(): number {
    return this.rows.size;
  }

  again(id: number): void {
    const { store, rows } = this;
    if (store.gain[id]! <= this.floor) return;
    const at = rows.take(store, id);
    rows.kind[at] = AGAIN;
    rows.first[at] = id;
    this.settle(at);
  }

  piece(item: number, spot: number, hash: number, gain: number, value: number): void {
    this.set([item], spot, hash, gain, value);
  }

  /** Pieces that are one thing here, `made` telling which; no more of any than there are. */
  set(items: readonly number[], made: number, hash: number, gain: number, value: number): void {
    if (gain <= this.floor) return;
    const { rows } = this;
    rows.reserve(rows.size + 1);
    const at = rows.size++;
    rows.packed.fill(0, at * rows.words, (at + 1) * rows.words);
    for (const item of items) this.counts.add(rows.packed, at * rows.words, item, 1);
    this.fill(at, hash, made, 0, PIECE, gain, value);
  }

  /** The two together, if there are pieces enough; the caller has seen to the gain. */
  pair(a: number, b: number, kind: number): void {
    const { store, rows, counts } = this;
    const { words } = store;
    if (!counts.together(store.packed, a * words, b * words)) return;
    rows.reserve(rows.size + 1);
    const at = rows.size++;
    for (let k = 0; k < words; k++)
      rows.packed[at * words + k] = store.packed[a * words + k]! + store.packed[b * words + k]!;
    const hash = (store.hash[a]! + store.hash[b]!) | 0;
    this.fill(at, hash, a, b, kind, store.gain[a]! + store.gain[b]!, store.value[a]! + store.value[b]!);
  }

  /** Writes what is kept to the store, most gain first, and tells the index of each. */
  keep(tell: (id: number) => void): void {
    for (const row of this.sorted().slice(0, this.width))
      tell(this.rows.kind[row] === AGAIN ? this.rows.first[row]! : this.store.take(this.rows, row));
  }

  private fill(
    at: number,
    hash: number,
    first: number,
    second: number,
    kind: number,
    gain: number,
    value: number,
  ): void {
    const { rows } = this;
    rows.hash[at] = hash;
    rows.first[at] = first;
    rows.second[at] = second;
    rows.kind[at] = kind;
    rows.gain[at] = gain;
    rows.value[at] = value;
    this.settle(at);
  }

  /** Takes the last row out again when its pieces are there already; thins the rows when there are many. */
  private settle(at: number): void {
    if (!this.enter(at)) {
      this.rows.size -= 1;
      return;
    }
    if (this.rows.size >= 2 * this.width + 32) this.thin();
    else if (2 * this.rows.size > this.slots.length) this.spread(2 * this.slots.length);
  }

  private enter(at: number): boolean {
    const { rows, slots } = this;
    const { words } = rows;
    const mask = slots.length - 1;
    let slot = Math.imul(rows.hash[at]!, 0x9e3779b1) & mask;
    for (;;) {
      const other = slots[slot]!;
      if (other < 0) break;
      if (rows.hash[other] === rows.hash[at]) {
        let k = 0;
        while (k < words && rows.packed[other * words + k] === rows.packed[at * words + k]) k += 1;
        if (k === words) return false;
      }
      slot = (slot + 1) & mask;
    }
    slots[slot] = at;
    return true;
  }

  private spread(room: number): void {
    this.slots = new Int32Array(room).fill(-1);
    for (let at = 0; at < this.rows.size; at++) this.enter(at);
  }

  private sorted(): number[] {
    const { gain } = this.rows;
    return Array.from({ length: this.rows.size }, (_, at) => at).sort((a, b) => gain[b]! - gain[a]! || a - b);
  }

  private thin(): void {
    const kept = this.sorted().slice(0, this.width);
    this.floor = Math.max(this.floor, this.rows.gain[kept[kept.length - 1]!]!);
    const copy = new Rectangles(this.rows.words, kept.length);
    for (const row of kept) copy.take(this.rows, row);
    this.rows.size = 0;
    for (let at = 0; at < copy.size; at++) this.rows.take(copy, at);
    this.spread(this.slots.length);
  }
}
