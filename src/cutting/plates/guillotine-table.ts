/**
 * The most that one plate can be worth, cut from edge to edge in any number of stages, each item as often
 * as wished: V(l, w) = max of the best single piece and of V(a, w) + V(l - a, w), V(l, b) + V(l, w - b)
 * over the sums a, b of piece sizes (P. C. Gilmore, R. E. Gomory, Operations Research 14 (1966); reduced
 * sets of sums after J. Terno, R. Lindemann, G. Scheithauer (1987)). Where there are too many sums, pieces
 * are taken a little too small, so that the answer stays an upper bound.
 */
import type { CutProblem, Lie } from '../problem.ts';
import { type Rounding, type Side, side } from './sums.ts';

/** Which strips a plate may have: along its length, across it, or whatever a saw can do. */
export type Stages = 'strips along' | 'strips across' | 'free';

/** Sums kept along a side; more are thinned by taking pieces smaller. */
const MOST_POINTS = 260;

/** A piece as it may lie, and where it first fits; -1 where it never does. */
export interface Spot {
  item: number;
  lie: Lie;
  /** First point of each side that holds the piece. */
  i: number;
  j: number;
}

export class GuillotineTable {
  readonly along: Side;
  readonly across: Side;
  readonly spots: readonly Spot[];
  private readonly lies: readonly { item: number; l: number; w: number; lie: Lie }[];
  private readonly value: Float64Array;
  private readonly columns: Float64Array;
  private readonly stages: Stages;
  /** Area of the grown plate. */
  private readonly area: number;

  /**
   * @param mostPoints sums kept along a side; fewer are quicker and looser
   * @param rounding where sums are too many, pieces are counted smaller for a bound, larger for a plate
   */
  constructor(
    problem: CutProblem,
    stock: number,
    mostPoints = MOST_POINTS,
    stages: Stages = 'free',
    rounding: Rounding = 'smaller',
  ) {
    this.stages = stages;
    const on = problem.stocks[stock]!;
    const sizes = problem.items.flatMap((item, i) =>
      item.lies[stock]!.map(lie => ({
        item: i,
        lie,
        l: lie.l + on.kerf,
        w: lie.w + on.kerf,
        most: item.demands.length,
      })),
    );
    this.along = side(
      sizes.map(size => ({ size: size.l, most: size.most })),
      on.l + on.kerf,
      mostPoints,
      rounding,
    );
    this.across = side(
      sizes.map(size => ({ size: size.w, most: size.most })),
      on.w + on.kerf,
      mostPoints,
      rounding,
    );
    this.spots = sizes.map(size => ({
      item: size.item,
      lie: size.lie,
      i: this.along.points.findIndex(point => point >= this.along.counted(size.l)),
      j: this.across.points.findIndex(point => point >= this.across.counted(size.w)),
    }));
    this.lies = sizes;
    this.area = (on.l + on.kerf) * (on.w + on.kerf);
    this.value = new Float64Array(this.along.points.length * this.across.points.length);
    this.columns = new Float64Array(this.value.length);
  }

  /** May a rectangle of this width be parted across? With strips across only one of the whole width. */
  mayCross(j: number): boolean {
    return this.stages !== 'strips across' || j === this.across.points.length - 1;
  }

  /** May a rectangle of this length be parted along? */
  mayRip(i: number): boolean {
    return this.stages !== 'strips along' || i === this.along.points.length - 1;
  }

  /** Steps of one answer, to decide whether it is worth asking. */
  get steps(): number {
    const p = this.along.points.length;
    const q = this.across.points.length;
    return (p * q * (p + q)) / 4;
  }

  /** Can the plate behind the last answer be read back? Not when pieces were taken too small. */
  get exact(): boolean {
    return this.along.exact && this.across.exact;
  }

  /**
   * The plate behind the last answer: `cut` is told of each division, in whole units of the grown plate, and
   * `put` of each piece.
   */
  read<S>(
    root: S,
    worth: Float64Array,
    cut: (slab: S, kind: 'cross' | 'rip', at: number) => [S, S | undefined],
    put: (slab: S, item: number, lie: Lie) => void,
  ): void {
    const q = this.across.points.length;
    const visit = (slab: S, i: number, j: number): void => {
      const value = this.value[i * q + j]!;
      if (value <= 0) return;
      const piece = this.lies.find((_, k) => {
        const spot = this.spots[k]!;
        return spot.i >= 0 && spot.j >= 0 && spot.i <= i && spot.j <= j && worth[spot.item]! >= value;
      });
      if (piece) {
        put(slab, piece.item, piece.lie);
        return;
      }
      const found = this.division(i, j);
      if (!found) return;
      const [kept, rest] = cut(slab, found.kind, found.at);
      visit(kept, found.first[0], found.first[1]);
      if (rest !== undefined && found.second[0] >= 0 && found.second[1] >= 0)
        visit(rest, found.second[0], found.second[1]);
    };
    visit(root, this.along.points.length - 1, q - 1);
  }

  /** A division that gives the value at (i, j). */
  private division(
    i: number,
    j: number,
  ): { kind: 'cross' | 'rip'; at: number; first: [number, number]; second: [number, number] } | undefined {
    const { value, along, across } = this;
    const p = along.points.length;
    const q = across.points.length;
    const wanted = value[i * q + j]! * (1 - 1e-12);
    for (let a = 0; a < i; a++) {
      const b = this.mayCross(j) ? along.below[i * p + a]! : -1;
      const sum = value[a * q + j]! + (b >= 0 ? value[b * q + j]! : 0);
      if (sum >= wanted)
        return {
          kind: 'cross',
          at: along.points[a]! * along.unit,
          first: [a, j],
          second: [b, j],
        };
    }
    for (let a = 0; a < j; a++) {
      const b = this.mayRip(i) ? across.below[j * q + a]! : -1;
      const sum = value[i * q + a]! + (b >= 0 ? value[i * q + b]! : 0);
      if (sum >= wanted)
        return {
          kind: 'rip',
          at: across.points[a]! * across.unit,
          first: [i, a],
          second: [i, b],
        };
    }
    return undefined;
  }

  /** Upper bound on the worth of a plate. */
  most(worth: Float64Array): number {
    const { value, along, across } = this;
    const p = along.points.length;
    const q = across.points.length;
    value.fill(0);
    // A piece counted as nothing could be cut without end: then only its share of the plate bounds it.
    if (along.coarse || across.coarse) return this.mostByArea(worth);
    for (const { item, i, j } of this.spots)
      if (i >= 0 && j >= 0) value[i * q + j] = Math.max(value[i * q + j]!, worth[item]!);
    // The same values by columns, so that both divisions read along the memory.
    const { columns } = this;
    for (let i = 0; i < p; i++) {
      const rip = this.mayRip(i);
      for (let j = 0; j < q; j++) {
        let best = value[i * q + j]!;
        if (i > 0) best = Math.max(best, columns[j * p + i - 1]!);
        if (j > 0) best = Math.max(best, value[i * q + j - 1]!);
        if (this.mayCross(j)) best = bestDivision(columns, j * p, along, i, best);
        if (rip) best = bestDivision(value, i * q, across, j, best);
        value[i * q + j] = best;
        columns[j * p + i] = best;
      }
    }
    return value[p * q - 1]!;
  }

  /**
   * After `most`: the most that can still be added around a rectangle of each size (index i * across + j)
   * until it is the whole plate (K. V. Viswanathan, A. Bagchi, Operations Research 41 (1993)); -Infinity
   * where no rectangle of that size can be part of a plate worth `needed`.
   */
  around(needed: number): Float64Array {
    const { value, columns, along, across } = this;
    const p = along.points.length;
    const q = across.points.length;
    const rows = new Float64Array(p * q).fill(-Infinity);
    const more = new Float64Array(p * q).fill(-Infinity);
    rows[p * q - 1] = 0;
    for (let i = p - 1; i >= 0; i--) {
      const rip = this.mayRip(i);
      for (let j = q - 1; j >= 0; j--) {
        const here = Math.max(rows[i * q + j]!, more[j * p + i]!);
        if (here + value[i * q + j]! < needed) {
          rows[i * q + j] = -Infinity;
          continue;
        }
        rows[i * q + j] = here;
        pushDivisions(more, columns, j * p, along, i, here, this.mayCross(j));
        pushDivisions(rows, value, i * q, across, j, here, rip);
      }
    }
    return rows;
  }

  /** No plate is worth more than its area filled with what is worth most for its own. */
  private mostByArea(worth: Float64Array): number {
    const rates = this.lies.map(({ item, l, w }) => worth[item]! / (l * w));
    return Math.max(0, ...rates) * this.area;
  }
}

/** The most of two parts of one row of values, or `best` if that is more. */
function bestDivision(row: Float64Array, start: number, side: Side, i: number, best: number): number {
  const { points, below } = side;
  const n = points.length;
  const size = points[i]!;
  let most = best;
  for (let a = 0; a < i && 2 * points[a]! <= size; a++) {
    const b = below[i * n + a]!;
    if (b < 0) continue;
    const sum = row[start + a]! + row[start + b]!;
    if (sum > most) most = sum;
  }
  return most;
}

/** What lies around the parts of a rectangle: what lies around it, and the other part. */
function pushDivisions(
  more: Float64Array,
  row: Float64Array,
  start: number,
  side: Side,
  i: number,
  here: number,
  divided: boolean,
): void {
  const n = side.points.length;
  for (let a = 0; a < i; a++) {
    const b = divided ? side.below[i * n + a]! : -1;
    const sum = b >= 0 ? here + row[start + b]! : here;
    if (sum > more[start + a]!) more[start + a] = sum;
  }
}
