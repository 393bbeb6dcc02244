/**
 * Ways to fill a length that a plan with a given number of lengths can hold at all, told by prices: with
 * prices at which no fill is worth more than 1, a plan of `target` lengths for demands worth `sum` leaves
 * `target - sum` unpaid over all its lengths together, so no single fill may leave more than that
 * (reduced-cost fixing; e.g. M. Delorme, M. Iori, INFORMS J. Computing 32 (2020)).
 */
export interface NearWays {
  /** Items whose price is above nothing; the others are left out of the ways. */
  core: readonly number[];
  /** Item and count by turns. */
  ways: readonly Int32Array[];
}

/** Cells of the table that says what the rest of a length can still be worth. */
const CELLS = 6_000_000;
const NOISE = 1e-9;

/**
 * All of them, or undefined when there are more than `most` or the table would be too large.
 * @param worth price of one piece of each item; any prices of 0 or more serve, better ones leave fewer ways
 */
export function nearWays(
  lengths: Int32Array,
  demands: Int32Array,
  capacity: number,
  worth: Float64Array,
  target: number,
  most: number,
): NearWays | undefined {
  const core = Array.from(lengths, (_, i) => i).filter(i => worth[i]! > NOISE && lengths[i]! <= capacity);
  const n = core.length;
  const width = capacity + 1;
  if ((n + 1) * width > CELLS) return undefined;
  const rest = restWorth(core, lengths, demands, worth, width);
  const top = rest[capacity]!;
  if (top <= 0) return undefined;
  const sum = core.reduce((total, i) => total + worth[i]! * demands[i]!, 0) / top;
  const need = top * (1 - (target - sum)) - NOISE * top;
  const ways: Int32Array[] = [];
  const held: number[] = [];
  const visit = (k: number, room: number, value: number): void => {
    if (ways.length > most || value + rest[k * width + room]! < need) return;
    if (k === n) {
      if (held.length > 0) ways.push(Int32Array.from(held));
      return;
    }
    const i = core[k]!;
    for (let count = Math.min(demands[i]!, Math.floor(room / lengths[i]!)); count > 0; count--) {
      held.push(i, count);
      visit(k + 1, room - count * lengths[i]!, value + count * worth[i]!);
      held.length -= 2;
    }
    visit(k + 1, room, value);
  };
  visit(0, capacity, 0);
  return ways.length > most ? undefined : { core, ways };
}

/** At `k * width + room`: the most that items from the k-th on are worth in that room. */
function restWorth(
  core: readonly number[],
  lengths: Int32Array,
  demands: Int32Array,
  worth: Float64Array,
  width: number,
): Float64Array {
  const rest = new Float64Array((core.length + 1) * width);
  for (let k = core.length - 1; k >= 0; k--) {
    const i = core[k]!;
    const length = lengths[i]!;
    for (let room = 0; room < width; room++) {
      const top = Math.min(demands[i]!, Math.floor(room / length));
      let best = 0;
      for (let count = 0; count <= top; count++)
        best = Math.max(best, count * worth[i]! + rest[(k + 1) * width + room - count * length]!);
      rest[k * width + room] = best;
    }
  }
  return rest;
}
