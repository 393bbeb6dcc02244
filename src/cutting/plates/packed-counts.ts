/**
 * How often each item is used, packed into 30-bit words so that two counts are added, and held against the
 * limits, a word at a time: each item has a field with one bit to spare, which comes up when the limit is
 * passed.
 */
const WORD_BITS = 30;

export class PackedCounts {
  /** Words that one set of counts takes. */
  readonly words: number;
  /** Added to a sum, sets the spare bit of every item used too often. */
  private readonly bias: Int32Array;
  private readonly spare: Int32Array;
  private readonly fields: { word: number; shift: number }[] = [];

  /** @param limits most pieces of each item */
  constructor(limits: ArrayLike<number>) {
    const bias: number[] = [0];
    const spare: number[] = [0];
    let shift = 0;
    for (let i = 0; i < limits.length; i++) {
      const bits = 32 - Math.clz32(limits[i]!) + 1;
      if (shift + bits > WORD_BITS) {
        bias.push(0);
        spare.push(0);
        shift = 0;
      }
      const word = bias.length - 1;
      this.fields.push({ word, shift });
      bias[word]! += (2 ** (bits - 1) - 1 - limits[i]!) * 2 ** shift;
      spare[word]! += 2 ** (bits - 1 + shift);
      shift += bits;
    }
    this.words = bias.length;
    this.bias = Int32Array.from(bias);
    this.spare = Int32Array.from(spare);
  }

  /** Adds pieces of an item to the counts at `to`; no more than the limit. */
  add(store: Int32Array, to: number, item: number, count: number): void {
    const { word, shift } = this.fields[item]!;
    store[to + word]! += count * 2 ** shift;
  }

  /** May the pieces at `a` and at `b` lie on one plate? */
  together(store: Int32Array, a: number, b: number): boolean {
    const { bias, spare, words } = this;
    for (let k = 0; k < words; k++)
      if (((store[a + k]! + store[b + k]! + bias[k]!) & spare[k]!) !== 0) return false;
    return true;
  }
}
