/**
 * The best way to fill one length: items with a whole-number worth, each at most so often.
 * Exact: by table over the capacity when that is short, else by search along falling worth per length.
 */
export interface Fill {
  worth: number;
  /** Copies of each item. */
  counts: Int32Array;
}

export interface KnapsackAnswer {
  /** Best fills found, best first; none is worth `above` or less. */
  fills: Fill[];
  /** No fill is worth more than this. */
  most: number;
}

/** Table cells that are worth filling before search is tried instead. */
const TABLE_CELLS = 4_000_000;
/** Steps of search after which it leaves off with the fills it has, and with none goes on to a table. */
const SHORT_SEARCH = 30_000;

/**
 * Maximises worth with total length within `capacity`.
 * @param worth whole numbers, up to 2^40; items with worth 0 or less are left out
 * @param above only fills worth more than this are wanted
 */
export function knapsack(
  lengths: Int32Array,
  worth: Float64Array,
  most: Int32Array,
  capacity: number,
  above: number,
  steps: number,
): KnapsackAnswer {
  const items: number[] = [];
  for (let i = 0; i < lengths.length; i++)
    if (worth[i]! > 0 && most[i]! > 0 && lengths[i]! <= capacity) items.push(i);
  const rounds = items.reduce(
    (sum, i) => sum + Math.ceil(Math.log2(1 + Math.min(most[i]!, Math.floor(capacity / lengths[i]!)))),
    0,
  );
  if (rounds * capacity <= TABLE_CELLS / 8) return byTable(lengths, worth, most, capacity, above, items);
  const tabled = rounds * capacity <= 16 * TABLE_CELLS;
  const searched = bySearch(lengths, worth, most, capacity, above, items, tabled ? SHORT_SEARCH : steps);
  if (searched.most < Infinity || searched.fills.length > 0 || !tabled) return searched;
  return byTable(lengths, worth, most, capacity, above, items);
}

interface Bundle {
  item: number;
  copies: number;
  length: number;
  worth: number;
}

/** Bundles of 1, 2, 4 ... copies and a rest, so that every count up to the limit can be made. */
function bundles(
  lengths: Int32Array,
  worth: Float64Array,
  most: Int32Array,
  capacity: number,
  items: readonly number[],
): Bundle[] {
  const made: Bundle[] = [];
  for (const item of items) {
    let left = Math.min(most[item]!, Math.floor(capacity / lengths[item]!));
    for (let copies = 1; left > 0; copies *= 2) {
      const taken = Math.min(copies, left);
      made.push({ item, copies: taken, length: taken * lengths[item]!, worth: taken * worth[item]! });
      left -= taken;
    }
  }
  return made;
}

function byTable(
  lengths: Int32Array,
  worth: Float64Array,
  most: Int32Array,
  capacity: number,
  above: number,
  items: readonly number[],
): KnapsackAnswer {
  const rows = bundles(lengths, worth, most, capacity, items);
  const best = new Float64Array(capacity + 1);
  const width = capacity + 1;
  const taken = new Uint8Array(rows.length * width);
  rows.forEach((row, r) => {
    const { length, worth: gain } = row;
    const base = r * width;
    for (let c = capacity; c >= length; c--) {
      const with_ = best[c - length]! + gain;
      if (with_ > best[c]!) {
        best[c] = with_;
        taken[base + c] = 1;
      }
    }
  });
  const ends = topEnds(best, above);
  const fills = ends.map(end => readBack(rows, taken, width, end, best[end]!, lengths.length));
  const top = fills[0]?.worth;
  return { fills, most: top ?? above };
}

/** Capacities with the highest worth, a few different ones. */
function topEnds(best: Float64Array, above: number): number[] {
  let at = -1;
  let top = above;
  for (let c = 0; c < best.length; c++)
    if (best[c]! > top) {
      top = best[c]!;
      at = c;
    }
  if (at < 0) return [];
  const ends = [at];
  for (let c = best.length - 1; c > 0 && ends.length < 4; c--)
    if (c !== at && best[c]! > above && best[c]! > best[c - 1]! && best[c]! < top) ends.push(c);
  return ends;
}

function readBack(
  rows: readonly Bundle[],
  taken: Uint8Array,
  width: number,
  end: number,
  worth: number,
  n: number,
): Fill {
  const counts = new Int32Array(n);
  let c = end;
  for (let r = rows.length - 1; r >= 0; r--)
    if (taken[r * width + c] === 1) {
      counts[rows[r]!.item]! += rows[r]!.copies;
      c -= rows[r]!.length;
    }
  return { worth, counts };
}

function bySearch(
  lengths: Int32Array,
  worth: Float64Array,
  most: Int32Array,
  capacity: number,
  above: number,
  items: readonly number[],
  steps: number,
): KnapsackAnswer {
  const order = [...items].sort(
    (a, b) => worth[b]! * lengths[a]! - worth[a]! * lengths[b]! || lengths[b]! - lengths[a]!,
  );
  const n = order.length;
  const length = order.map(i => lengths[i]!);
  const gain = order.map(i => worth[i]!);
  const limit = order.map(i => most[i]!);
  const shortest = new Float64Array(n + 1).fill(Infinity);
  for (let i = n - 1; i >= 0; i--) shortest[i] = Math.min(shortest[i + 1]!, length[i]!);
  const counts = new Int32Array(n);
  const fills: Fill[] = [];
  let best = above;
  let left = steps;
  const keep = (value: number): void => {
    best = value;
    const full = new Int32Array(lengths.length);
    for (let i = 0; i < n; i++) full[order[i]!] = counts[i]!;
    fills.unshift({ worth: value, counts: full });
    if (fills.length > 4) fills.pop();
  };
  const visit = (from: number, room: number, value: number): void => {
    if (value > best) keep(value);
    left -= 1;
    if (fills.length > 0 && steps - left > SHORT_SEARCH) left = -1;
    if (left < 0) return;
    for (let i = from; i < n; i++) {
      if (room < shortest[i]!) return;
      if (value + bound(i, room) <= best) return;
      if (length[i]! > room) continue;
      const top = Math.min(limit[i]!, Math.floor(room / length[i]!));
      for (let k = top; k >= 1; k--) {
        counts[i] = k;
        visit(i + 1, room - k * length[i]!, value + k * gain[i]!);
        if (left < 0) return;
      }
      counts[i] = 0;
    }
  };
  /** Fractional fill from item `i` on, which no real fill exceeds. */
  const bound = (i: number, room: number): number => {
    let value = 0;
    let space = room;
    for (let k = i; k < n && space > 0; k++) {
      const fit = Math.min(limit[k]!, space / length[k]!);
      const whole = fit < limit[k]! ? Math.floor(fit) : fit;
      value += whole * gain[k]!;
      space -= whole * length[k]!;
      if (whole < limit[k]!) return value + Math.floor((space * gain[k]!) / length[k]! + 1e-6);
    }
    return value;
  };
  visit(0, capacity, 0);
  return { fills, most: left < 0 ? Infinity : best };
}
