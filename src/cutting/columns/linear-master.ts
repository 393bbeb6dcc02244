/**
 * A small linear programme for column generation: minimise cost x subject to A x >= b, x >= 0, columns
 * added as they are found. Revised simplex with an explicit inverse of the basis; sparse columns.
 * Every row has a surplus column and an artificial one (what is missing, at a cost nobody would pay).
 */
export interface SparseColumn {
  rows: readonly number[];
  values: readonly number[];
  cost: number;
}

const ZERO = 1e-9;
const PIVOT = 1e-7;
/** Pivots between two fresh computations of the inverse. */
const REFRESH = 120;

export class LinearMaster {
  readonly rows: number;
  /** All columns end to end: column j holds entries `from[j]` to `from[j + 1]`. */
  private from = new Int32Array(1024);
  private cost = new Float64Array(1024);
  private rowOf = new Int32Array(8192);
  private entryOf = new Float64Array(8192);
  private size = 0;
  /** Row in which a column is basic, or -1. */
  private place = new Int32Array(1024);
  /** Columns that may enter. */
  private open: number[] = [];
  private stale = false;
  private readonly basis: Int32Array;
  private readonly inverse: Float64Array;
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
    this.inverse = new Float64Array(m * m);
    this.price = new Float64Array(m).fill(missing);
    this.alpha = new Float64Array(m);
    for (let i = 0; i < m; i++) this.put({ rows: [i], values: [-1], cost: 0 });
    for (let i = 0; i < m; i++) {
      const artificial = this.put({ rows: [i], values: [1], cost: missing });
      this.basis[i] = artificial;
      this.place[artificial] = i;
      this.inverse[i * m + i] = 1;
    }
  }

  private put(column: SparseColumn): number {
    const j = this.size;
    const start = this.from[j]!;
    const end = start + column.rows.length;
    if (j + 2 > this.from.length) {
      this.from = grown(this.from, new Int32Array(2 * this.from.length));
      this.cost = grown(this.cost, new Float64Array(2 * this.cost.length));
      this.place = grown(this.place, new Int32Array(2 * this.place.length));
    }
    while (end > this.rowOf.length) {
      this.rowOf = grown(this.rowOf, new Int32Array(2 * this.rowOf.length));
      this.entryOf = grown(this.entryOf, new Float64Array(2 * this.entryOf.length));
    }
    this.rowOf.set(column.rows, start);
    this.entryOf.set(column.values, start);
    this.from[j + 1] = end;
    this.cost[j] = column.cost;
    this.place[j] = -1;
    this.open.push(j);
    this.size += 1;
    return j;
  }

  /** Adds a column and returns its number. */
  add(column: SparseColumn): number {
    return this.put(column) - 2 * this.rows;
  }

  get count(): number {
    return this.size - 2 * this.rows;
  }

  /** Bars columns: they cost `barredCost` while they are still in use and may not come in again. */
  bar(isBarred: (column: number) => boolean, costOf: (column: number) => number, barredCost: number): void {
    const own = 2 * this.rows;
    this.open.length = own;
    for (let j = own; j < this.size; j++) {
      const barred = isBarred(j - own);
      if (!barred) this.open.push(j);
      this.cost[j] = barred ? barredCost : costOf(j - own);
    }
    this.stale = true;
  }

  setRight(right: ArrayLike<number>): void {
    this.right.set(right);
    this.freshLevels();
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
    for (let i = 0; i < this.rows; i++) sum += this.cost[this.basis[i]!]! * this.level[i]!;
    return sum;
  }

  /**
   * Optimises over the columns so far. Levels below zero (after `setRight`) are driven out first.
   * @returns false when it gave up: the levels may then be worthless
   */
  solve(): boolean {
    if (this.stale) this.freshPrices();
    this.stale = false;
    return this.restore() && this.improve();
  }

  private freshLevels(): void {
    const m = this.rows;
    for (let i = 0; i < m; i++) {
      let sum = 0;
      for (let k = 0; k < m; k++) sum += this.inverse[i * m + k]! * this.right[k]!;
      this.level[i] = sum;
    }
  }

  private freshPrices(): void {
    const m = this.rows;
    this.price.fill(0);
    for (let i = 0; i < m; i++) {
      const cost = this.cost[this.basis[i]!]!;
      if (cost === 0) continue;
      for (let k = 0; k < m; k++) this.price[k]! += cost * this.inverse[i * m + k]!;
    }
  }

  private reduced(j: number): number {
    const { rowOf, entryOf, price } = this;
    let sum = this.cost[j]!;
    for (let k = this.from[j]!; k < this.from[j + 1]!; k++) sum -= price[rowOf[k]!]! * entryOf[k]!;
    return sum;
  }

  /** Primal simplex. */
  private improve(): boolean {
    const limit = 200 + 60 * this.rows;
    for (let round = 0; round < limit; round++) {
      let enter = -1;
      let best = -ZERO;
      for (const j of this.open) {
        if (this.place[j]! >= 0) continue;
        const gain = this.reduced(j);
        // Bland's rule after a long stall: the first that gains.
        if (gain < best) {
          best = gain;
          enter = j;
          if (round > limit / 2) break;
        }
      }
      if (enter < 0) return true;
      this.image(enter);
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
      if (leave < 0) return false;
      this.pivot(enter, leave);
    }
    return false;
  }

  /** Dual simplex, until no level is below zero. Prices may be slightly off; `improve` follows. */
  private restore(): boolean {
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
      let enter = -1;
      let least = Infinity;
      let size = 0;
      const { rowOf, entryOf, inverse, place } = this;
      const row = leave * m;
      for (const j of this.open) {
        if (place[j]! >= 0) continue;
        let a = 0;
        for (let k = this.from[j]!; k < this.from[j + 1]!; k++) a += inverse[row + rowOf[k]!]! * entryOf[k]!;
        if (a >= -PIVOT) continue;
        const ratio = Math.max(0, this.reduced(j)) / -a;
        if (ratio < least - 1e-11 || (ratio <= least + 1e-11 && -a > size)) {
          least = Math.min(least, ratio);
          enter = j;
          size = -a;
        }
      }
      if (enter < 0) return false;
      this.image(enter);
      this.pivot(enter, leave);
    }
    return false;
  }

  /** Entering column in terms of the basis, into `alpha`. */
  private image(enter: number): void {
    const m = this.rows;
    this.alpha.fill(0);
    for (let k = this.from[enter]!; k < this.from[enter + 1]!; k++) {
      const row = this.rowOf[k]!;
      const value = this.entryOf[k]!;
      for (let i = 0; i < m; i++) this.alpha[i]! += this.inverse[i * m + row]! * value;
    }
  }

  private pivot(enter: number, leave: number): void {
    const m = this.rows;
    const { inverse, alpha, level, price } = this;
    const gain = this.reduced(enter);
    const by = alpha[leave]!;
    const row = leave * m;
    for (let k = 0; k < m; k++) inverse[row + k]! /= by;
    level[leave]! /= by;
    for (let i = 0; i < m; i++) {
      const a = alpha[i]!;
      if (i === leave || Math.abs(a) < 1e-13) continue;
      const at = i * m;
      for (let k = 0; k < m; k++) inverse[at + k]! -= a * inverse[row + k]!;
      level[i]! -= a * level[leave]!;
    }
    for (let k = 0; k < m; k++) price[k]! += gain * inverse[row + k]!;
    this.place[this.basis[leave]!] = -1;
    this.basis[leave] = enter;
    this.place[enter] = leave;
    this.pivots += 1;
    if (this.pivots % REFRESH === 0) this.refresh();
  }

  /** Levels and prices anew; the inverse too when they have drifted. */
  private refresh(): void {
    if (this.drift() > 1e-8) this.invert();
    this.freshLevels();
    this.freshPrices();
  }

  /** Largest fault of A_B x_B = b. */
  private drift(): number {
    this.freshLevels();
    const residual = Float64Array.from(this.right);
    for (let i = 0; i < this.rows; i++) {
      const j = this.basis[i]!;
      for (let k = this.from[j]!; k < this.from[j + 1]!; k++)
        residual[this.rowOf[k]!]! -= this.entryOf[k]! * this.level[i]!;
    }
    return residual.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  }

  /** Gauss-Jordan with row choice. A singular basis falls back to the artificial one. */
  private invert(): void {
    const m = this.rows;
    const work = new Float64Array(m * m);
    const inverse = new Float64Array(m * m);
    for (let i = 0; i < m; i++) {
      inverse[i * m + i] = 1;
      const j = this.basis[i]!;
      for (let k = this.from[j]!; k < this.from[j + 1]!; k++) work[this.rowOf[k]! * m + i] = this.entryOf[k]!;
    }
    for (let c = 0; c < m; c++) {
      let at = c;
      for (let i = c + 1; i < m; i++) if (Math.abs(work[i * m + c]!) > Math.abs(work[at * m + c]!)) at = i;
      const by = work[at * m + c]!;
      if (Math.abs(by) < 1e-11) {
        this.begin();
        return;
      }
      if (at !== c) swapRows(work, inverse, at, c, m);
      for (let k = 0; k < m; k++) {
        work[c * m + k]! /= by;
        inverse[c * m + k]! /= by;
      }
      for (let i = 0; i < m; i++) {
        const a = work[i * m + c]!;
        if (i === c || a === 0) continue;
        for (let k = 0; k < m; k++) {
          work[i * m + k]! -= a * work[c * m + k]!;
          inverse[i * m + k]! -= a * inverse[c * m + k]!;
        }
      }
    }
    this.inverse.set(inverse);
  }

  private begin(): void {
    const m = this.rows;
    this.inverse.fill(0);
    for (let i = 0; i < m; i++) {
      this.place[this.basis[i]!] = -1;
      this.inverse[i * m + i] = 1;
    }
    for (let i = 0; i < m; i++) {
      this.basis[i] = m + i;
      this.place[m + i] = i;
    }
  }
}

function swapRows(work: Float64Array, inverse: Float64Array, a: number, b: number, m: number): void {
  for (const matrix of [work, inverse])
    for (let k = 0; k < m; k++) {
      const held = matrix[a * m + k]!;
      matrix[a * m + k] = matrix[b * m + k]!;
      matrix[b * m + k] = held;
    }
}

function grown<A extends Int32Array | Float64Array>(held: A, larger: A): A {
  larger.set(held);
  return larger;
}
