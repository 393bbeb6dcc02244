/**
 * Rectangles built up from pieces, side by side or one above another, until they fill the plate; each holds
 * no piece more often than there are. A rectangle is dropped when its worth and the most that can still be
 * added around it do not pass the worth wanted (P. Y. Wang, Operations Research 31 (1983);
 * K. V. Viswanathan, A. Bagchi, Operations Research 41 (1993)). With no limit on the rectangles kept of a
 * size the search misses nothing; with one it is quick and says so. Pieces used too often may carry a
 * price, which tightens the bound and steers what is kept.
 */
import type { CutProblem, Layout, Slab } from '../problem.ts';
import { seeded } from '../random.ts';
import { parted } from './draw-strips.ts';
import type { GuillotineTable } from './guillotine-table.ts';
import { PackedCounts } from './packed-counts.ts';
import { ONE_ABOVE_ANOTHER, PIECE, Picks, Rectangles, SIDE_BY_SIDE } from './rectangles.ts';

export interface BuildTerms {
  /** By item: what a piece is worth, and with the price on it taken off (none below zero). */
  worth: Float64Array;
  priced: Float64Array;
  /** Pieces of each item there are. */
  caps: Int32Array;
  /** Only plates worth more than this are looked for. */
  above: number;
  /** Rectangles kept of each size. */
  width: number;
  /** Rectangles kept in all. */
  most: number;
  stop?: () => boolean;
}

export interface Built {
  layout: Layout | undefined;
  value: number;
  /** Nothing was left out: without a layout no plate is worth more than `above`. */
  complete: boolean;
}

const EPS = 1e-6;

/** Pairs of rectangles between two questions whether to stop: some hundredths of a second. */
const PAIRS_BETWEEN = 50_000;

/** @param table of the problem's stock 0, exact */
export function buildUp(problem: CutProblem, table: GuillotineTable, terms: BuildTerms): Built {
  return new BuildUp(problem, table, terms).run();
}

class BuildUp {
  private readonly problem: CutProblem;
  private readonly table: GuillotineTable;
  private readonly terms: BuildTerms;
  private readonly around: Float64Array;
  private readonly store: Rectangles;
  private readonly picks: Picks;
  /** First place of each rectangle among the points of a side: it does not fit a smaller one. */
  private places = { i: new Int16Array(4096), j: new Int16Array(4096) };
  /** Rectangles that fit in each cell, most gain first: `lists[from[cell]]` on, `held[cell]` of them. */
  private lists = new Int32Array(8192);
  private listed = 0;
  private readonly from: Int32Array;
  private readonly held: Int32Array;
  private readonly top: Float64Array;
  private readonly needed: number;
  private readonly pieceHash: Int32Array;
  private best = -1;
  private bestValue: number;
  private complete = true;
  /** Pairs looked at since it was last asked whether to stop. */
  private looked = 0;
  private stopped = false;

  constructor(problem: CutProblem, table: GuillotineTable, terms: BuildTerms) {
    this.problem = problem;
    this.table = table;
    this.terms = terms;
    table.most(terms.priced);
    const cells = table.along.points.length * table.across.points.length;
    const counts = new PackedCounts(terms.caps);
    this.store = new Rectangles(counts.words, 4096);
    this.picks = new Picks(this.store, counts, terms.width);
    this.from = new Int32Array(cells);
    this.held = new Int32Array(cells);
    this.top = new Float64Array(cells).fill(-Infinity);
    const back = terms.caps.reduce((sum, cap, i) => sum + cap * (terms.worth[i]! - terms.priced[i]!), 0);
    // Worths are whole numbers: the next better plate is worth one more.
    this.needed = terms.above + 1 - back - EPS;
    this.around = table.around(this.needed);
    const random = seeded(1);
    this.pieceHash = Int32Array.from(terms.worth, () => Math.floor(random() * 2 ** 32) | 0);
    this.bestValue = terms.above;
  }

  run(): Built {
    const p = this.table.along.points.length;
    const q = this.table.across.points.length;
    const spots = this.spotsByCell(q);
    for (let i = 0; i < p; i++)
      for (let j = 0; j < q; j++) {
        const last = i === p - 1 && j === q - 1;
        this.cell(i, j, p, q, spots.get(i * q + j) ?? [], last);
        if (this.stopped || this.store.size > this.terms.most || ((j & 15) === 0 && this.terms.stop?.()))
          return { layout: undefined, value: this.terms.above, complete: false };
      }
    const layout = this.best < 0 ? undefined : this.draw();
    return { layout, value: this.bestValue, complete: this.complete };
  }

  private spotsByCell(q: number): Map<number, number[]> {
    const byCell = new Map<number, number[]>();
    this.table.spots.forEach((spot, k) => {
      if (spot.i < 0 || spot.j < 0 || this.terms.caps[spot.item] === 0) return;
      const cell = spot.i * q + spot.j;
      byCell.set(cell, [...(byCell.get(cell) ?? []), k]);
    });
    return byCell;
  }

  private cell(i: number, j: number, p: number, q: number, spots: readonly number[], last: boolean): void {
    const { picks, store, terms } = this;
    const at = i * q + j;
    if (this.around[at] === -Infinity) return;
    const floor = Math.max(-EPS, this.needed - this.around[at]!);
    picks.begin(floor);
    if (i > 0) this.again(at - q);
    if (j > 0) this.again(at - 1);
    for (const k of spots) {
      const { item } = this.table.spots[k]!;
      if (terms.worth[item]! > 0)
        picks.piece(item, k, this.pieceHash[item]!, terms.priced[item]!, terms.worth[item]!);
    }
    const { along, across } = this.table;
    // Rectangles that both fit a smaller size have met there, where such a cut was allowed.
    const metBelow = this.table.mayCross(j - 1) ? j : 0;
    const metBefore = this.table.mayRip(i - 1) ? i : 0;
    const reachI = this.table.mayCross(j) ? along.points[i]! : 0;
    for (let a = 0; a < i && 2 * along.points[a]! <= reachI; a++) {
      const b = along.below[i * p + a]!;
      if (b >= 0) this.pairs(a * q + j, b * q + j, this.places.j, metBelow, SIDE_BY_SIDE);
    }
    const reachJ = this.table.mayRip(i) ? across.points[j]! : 0;
    for (let a = 0; a < j && 2 * across.points[a]! <= reachJ; a++) {
      const b = across.below[j * q + a]!;
      if (b >= 0) this.pairs(i * q + a, i * q + b, this.places.i, metBefore, ONE_ABOVE_ANOTHER);
    }
    if (picks.floor > floor || picks.size > terms.width) this.complete = false;
    this.from[at] = this.listed;
    const known = store.size;
    picks.keep(id => {
      if (id >= known) this.place(id, i, j);
      if (last && store.value[id]! > this.bestValue) {
        this.best = id;
        this.bestValue = store.value[id]!;
      }
      this.list(id);
    });
    this.held[at] = this.listed - this.from[at]!;
    if (this.held[at]! > 0) this.top[at] = store.gain[this.lists[this.from[at]!]!]!;
  }

  private again(cell: number): void {
    const end = this.from[cell]! + this.held[cell]!;
    for (let k = this.from[cell]!; k < end; k++) this.picks.again(this.lists[k]!);
  }

  /** Pairs of the two cells; those whose places are both below `place` have met. */
  private pairs(a: number, b: number, places: Int16Array, place: number, kind: number): void {
    const { picks, lists, top } = this;
    if (this.stopped || top[a]! + top[b]! <= picks.floor) return;
    const { gain } = this.store;
    const endA = this.from[a]! + this.held[a]!;
    const startB = this.from[b]!;
    const endB = startB + this.held[b]!;
    for (let k = this.from[a]!; k < endA; k++) {
      const one = lists[k]!;
      const gained = gain[one]!;
      if (gained + top[b]! <= picks.floor) return;
      const lower = places[one]! < place;
      this.looked += 1 + endB - startB;
      if (this.looked > PAIRS_BETWEEN) {
        this.looked = 0;
        this.stopped = this.terms.stop?.() ?? false;
        if (this.stopped) return;
      }
      for (let m = a === b ? k : startB; m < endB; m++) {
        const other = lists[m]!;
        if (gained + gain[other]! <= picks.floor) break;
        if (lower && places[other]! < place) continue;
        picks.pair(one, other, kind);
      }
    }
  }

  private place(id: number, i: number, j: number): void {
    if (id >= this.places.i.length) {
      const room = 2 * this.places.i.length;
      const grown = { i: new Int16Array(room), j: new Int16Array(room) };
      grown.i.set(this.places.i);
      grown.j.set(this.places.j);
      this.places = grown;
    }
    this.places.i[id] = i;
    this.places.j[id] = j;
  }

  private list(id: number): void {
    if (this.listed === this.lists.length) {
      const grown = new Int32Array(2 * this.lists.length);
      grown.set(this.lists);
      this.lists = grown;
    }
    this.lists[this.listed++] = id;
  }

  private draw(): Layout {
    const on = this.problem.stocks[0]!;
    const { store } = this;
    const counts = new Map<number, number>();
    let area = 0;
    /** Size of a rectangle without the kerf beyond it. */
    const sizes = new Map<number, { l: number; w: number }>();
    const sizeOf = (id: number): { l: number; w: number } => {
      const known = sizes.get(id);
      if (known) return known;
      let size: { l: number; w: number };
      if (store.kind[id] === PIECE) size = this.table.spots[store.first[id]!]!.lie;
      else {
        const a = sizeOf(store.first[id]!);
        const b = sizeOf(store.second[id]!);
        size =
          store.kind[id] === SIDE_BY_SIDE
            ? { l: a.l + on.kerf + b.l, w: Math.max(a.w, b.w) }
            : { l: Math.max(a.l, b.l), w: a.w + on.kerf + b.w };
      }
      sizes.set(id, size);
      return size;
    };
    const put = (slab: Slab, id: number): void => {
      const size = sizeOf(id);
      const [row] = parted(slab, 'cross', size.l, on.kerf);
      const [tight] = parted(row, 'rip', size.w, on.kerf);
      if (store.kind[id] === PIECE) {
        const { item, lie } = this.table.spots[store.first[id]!]!;
        tight.item = item;
        tight.lie = lie;
        counts.set(item, (counts.get(item) ?? 0) + 1);
        area += lie.l * lie.w;
        return;
      }
      const first = store.first[id]!;
      const [kept, rest] =
        store.kind[id] === SIDE_BY_SIDE
          ? parted(tight, 'cross', sizeOf(first).l, on.kerf)
          : parted(tight, 'rip', sizeOf(first).w, on.kerf);
      put(kept, first);
      if (rest) put(rest, store.second[id]!);
    };
    const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
    put(root, this.best);
    return { stock: 0, slab: root, counts, area };
  }
}
