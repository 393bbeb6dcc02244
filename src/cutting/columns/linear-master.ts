/**
 * A small linear programme for column generation: minimise cost x subject to A x >= b, x >= 0, columns
 * added as they are found. Revised simplex with an explicit inverse of the basis; sparse columns.
 * Every row has a surplus column and an artificial one (what is missing, at a cost nobody would pay).
 */
import { BasisInverse } from './basis-inverse.ts';
import { type SparseColumn, SparseColumns } from './sparse-columns.ts';

const ZERO = 1e-9;
const PIVOT = 1e-7;
/** Pivots between two fresh computations of levels and prices. */
const REFRESH = 120;
/** Columns kept at hand from one look at all of them. */
const HAND = 24;

export class LinearMaster {
  readonly rows: number;
  private readonly columns = new SparseColumns();
  private readonly inverse: BasisInverse;
  /** Row in which a column is basic, or -1. */
  private place = new Int32Array(1024);
  /** Columns that may enter. */
  private open: number[] = [];
  private stale = false;
  private readonly basis: Int32Array;
  private readonly level: Float64Array;
  private readonly price: Float64Array;
  private readonly right: Float64Array;
  private readonly alpha: Float64Array;
  private pivots = 0;

  /** @param missing cost of one unit missing in a row */
  constructor(right: ArrayLike<number>, missing: number) {
    const m = right.length;
    this.rows = m;
    this.right = Float64Array.from(right);
    this.level = Float64Array.from(right);
    this.basis = new Int32Array(m);
    this.inverse = new BasisInverse(m);
    this.price = new Float64Array(m).fill(missing);
    this.alpha = new Float64Array(m);
    for (let i = 0; i < m; i++) this.put({ rows: [i], values: [-1], cost: 0 });
    for (let i = 0; i < m; i++) {
      const artificial = this.put({ rows: [i], values: [1], cost: missing });
      this.basis[i] = artificial;
      this.place[artificial] = i;
    }
  }

  private put(column: SparseColumn): number {
    const j = this.columns.put(column);
    if (j >= this.place.length) {
      const place = new Int32Array(2 * this.place.length);
      place.set(this.place);
      this.place = place;
    }
    this.place[j] = -1;
    this.open.push(j);
    return j;
  }

  /** Adds a column and returns its number. */
  add(column: SparseColumn): number {
    return this.put(column) - 2 * this.rows;
  }

  get count(): number {
    return this.columns.size - 2 * this.rows;
  }

  /** Bars columns: they cost `barredCost` while they are still in use and may not come in again. */
  bar(isBarred: (column: number) => boolean, costOf: (column: number) => number, barredCost: number): void {
    const own = 2 * this.rows;
    const { cost, size } = this.columns;
    this.open.length = own;
    for (let j = own; j < size; j++) {
      const barred = isBarred(j - own);
      if (!barred) this.open.push(j);
      cost[j] = barred ? barredCost : costOf(j - own);
    }
    this.stale = true;
  }

  /** Begins from a basis of columns with one entry each, where there is one for a row. */
  beginWith(singles: readonly number[]): void {
    const { from, rowOf } = this.columns;
    for (const column of singles) {
      const j = column + 2 * this.rows;
      const row = rowOf[from[j]!]!;
      if (this.basis[row]! !== this.rows + row) continue;
      this.inverse.image(this.columns, j, this.alpha);
      this.pivot(j, row);
    }
  }

  setRight(right: ArrayLike<number>): void {
    this.right.set(right);
    this.inverse.times(this.right, this.level);
  }

  /** Worth of one unit of each row. */
  get duals(): Float64Array {
    return this.price;
  }

  /** Level of each column added. */
  levels(): Float64Array {
    const levels = new Float64Array(this.count);
    for (let i = 0; i < this.rows; i++) {
      const column = this.basis[i]! - 2 * this.rows;
      if (column >= 0) levels[column] = Math.max(0, this.level[i]!);
    }
    return levels;
  }

  /** Units that no column supplies. */
  missing(): number {
    let sum = 0;
    for (let i = 0; i < this.rows; i++)
      if (this.basis[i]! >= this.rows && this.basis[i]! < 2 * this.rows) sum += Math.max(0, this.level[i]!);
    return sum;
  }

  objective(): number {
    let sum = 0;
    for (let i = 0; i < this.rows; i++) sum += this.columns.cost[this.basis[i]!]! * this.level[i]!;
    return sum;
  }

  /** What the present basis would cost for other right-hand sides. */
  objectiveAt(right: ArrayLike<number>): number {
    let sum = 0;
    for (let i = 0; i < this.rows; i++) sum += this.price[i]! * right[i]!;
    return sum;
  }

  /**
   * Optimises over the columns so far. Levels below zero (after `setRight`) are driven out first.
   * @param pivots changes of basis after which it leaves off, with a basis that serves but is not the best
   * @returns `lost` when it gave up: the levels may then be worthless
   */
  solve(stop?: () => boolean, pivots = Infinity): 'optimal' | 'short' | 'lost' {
    if (this.stale) this.freshPrices();
    this.stale = false;
    if (!this.restore(stop)) {
      if (stop?.()) return 'lost';
      this.begin();
      if (!this.restore(stop)) return 'lost';
    }
    return this.improve(pivots, stop);
  }

  private freshPrices(): void {
    const costs = Float64Array.from(this.basis, j => this.columns.cost[j]!);
    this.inverse.timesLeft(costs, this.price);
  }

  /** Primal simplex. A few columns that gain are kept at hand and tried again before all are looked at. */
  private improve(pivots: number, stop?: () => boolean): 'optimal' | 'short' | 'lost' {
    const limit = 400 + 60 * this.rows;
    let hand: number[] = [];
    for (let round = 0; round < limit; round++) {
      if (round >= pivots) return 'short';
      // Bland's rule after a long stall: the first that gains.
      const patient = round < limit / 2;
      let enter = patient ? this.bestOf(hand) : -1;
      if (enter < 0) {
        if (stop?.()) return 'lost';
        hand = patient ? this.gainers() : [];
        enter = patient ? (hand[0] ?? -1) : this.firstGainer();
      }
      if (enter < 0) return 'optimal';
      this.inverse.image(this.columns, enter, this.alpha);
      const leave = this.leaving();
      if (leave < 0) return 'lost';
      this.pivot(enter, leave);
    }
    return 'lost';
  }

  private bestOf(hand: readonly number[]): number {
    let enter = -1;
    let best = -ZERO;
    for (const j of hand) {
      if (this.place[j]! >= 0) continue;
      const gain = this.columns.reduced(j, this.price);
      if (gain < best) {
        best = gain;
        enter = j;
      }
    }
    return enter;
  }

  /** The columns that gain most, best first. */
  private gainers(): number[] {
    const { columns, place, price } = this;
    const hand: number[] = [];
    const gains: number[] = [];
    let bar = -ZERO;
    for (const j of this.open) {
      if (place[j]! >= 0) continue;
      const gain = columns.reduced(j, price);
      if (gain >= bar) continue;
      let at = hand.length;
      while (at > 0 && gains[at - 1]! > gain) at -= 1;
      hand.splice(at, 0, j);
      gains.splice(at, 0, gain);
      if (hand.length > HAND) {
        hand.pop();
        gains.pop();
        bar = gains[HAND - 1]!;
      }
    }
    return hand;
  }

  private firstGainer(): number {
    for (const j of this.open)
      if (this.place[j]! < 0 && this.columns.reduced(j, this.price) < -ZERO) return j;
    return -1;
  }

  private leaving(): number {
    let leave = -1;
    let least = Infinity;
    for (let i = 0; i < this.rows; i++) {
      const a = this.alpha[i]!;
      if (a <= PIVOT) continue;
      const ratio = Math.max(0, this.level[i]!) / a;
      if (ratio < least - 1e-11 || (ratio <= least + 1e-11 && a > this.alpha[leave]!)) {
        least = Math.min(least, ratio);
        leave = i;
      }
    }
    return leave;
  }

  /** Dual simplex, until no level is below zero. Prices may be slightly off; `improve` follows. */
  private restore(stop?: () => boolean): boolean {
    const m = this.rows;
    for (let round = 0; round < 200 + 20 * m; round++) {
      let leave = -1;
      let worst = -1e-8;
      for (let i = 0; i < m; i++)
        if (this.level[i]! < worst) {
          worst = this.level[i]!;
          leave = i;
        }
      if (leave < 0) return true;
      if (stop?.()) return false;
      const enter = this.entering(this.inverse.readRow(leave));
      if (enter < 0) return false;
      this.inverse.image(this.columns, enter, this.alpha);
      this.pivot(enter, leave);
    }
    return false;
  }

  /** Column that may take the place of the one with this row of the inverse, in the dual simplex. */
  private entering(row: Float64Array): number {
    const { columns, place, price } = this;
    const { from, rowOf, entryOf } = columns;
    let enter = -1;
    let least = Infinity;
    let size = 0;
    for (const j of this.open) {
      if (place[j]! >= 0) continue;
      let a = 0;
      for (let k = from[j]!; k < from[j + 1]!; k++) a += row[rowOf[k]!]! * entryOf[k]!;
      if (a >= -PIVOT) continue;
      const ratio = Math.max(0, columns.reduced(j, price)) / -a;
      if (ratio < least - 1e-11 || (ratio <= least + 1e-11 && -a > size)) {
        least = Math.min(least, ratio);
        enter = j;
        size = -a;
      }
    }
    return enter;
  }

  private pivot(enter: number, leave: number): void {
    const m = this.rows;
    const { alpha, level, price } = this;
    const gain = this.columns.reduced(enter, price);
    const step = level[leave]! / alpha[leave]!;
    for (let i = 0; i < m; i++) level[i]! -= alpha[i]! * step;
    level[leave] = step;
    this.inverse.change(alpha, leave);
    const row = this.inverse.row;
    for (let k = 0; k < m; k++) price[k]! += gain * row[k]!;
    this.place[this.basis[leave]!] = -1;
    this.basis[leave] = enter;
    this.place[enter] = leave;
    this.pivots += 1;
    if (this.pivots % REFRESH === 0) this.refresh();
  }

  /** Levels and prices anew; the inverse too when they have drifted. */
  private refresh(): void {
    if (this.drift() > 1e-8) {
      if (!this.inverse.invert(this.columns, this.basis)) {
        this.begin();
        return;
      }
      this.inverse.times(this.right, this.level);
    }
    this.freshPrices();
  }

  /** Levels anew; the largest fault of A_B x_B = b. */
  private drift(): number {
    this.inverse.times(this.right, this.level);
    const { from, rowOf, entryOf } = this.columns;
    const residual = Float64Array.from(this.right);
    for (let i = 0; i < this.rows; i++) {
      const j = this.basis[i]!;
      for (let k = from[j]!; k < from[j + 1]!; k++) residual[rowOf[k]!]! -= entryOf[k]! * this.level[i]!;
    }
    return residual.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  }

  /** Back to the artificial basis, when the way on from this one is lost. */
  private begin(): void {
    const m = this.rows;
    this.inverse.begin();
    for (let i = 0; i < m; i++) this.place[this.basis[i]!] = -1;
    for (let i = 0; i < m; i++) {
      this.basis[i] = m + i;
      this.place[m + i] = i;
    }
    this.inverse.times(this.right, this.level);
    this.freshPrices();
  }
}
