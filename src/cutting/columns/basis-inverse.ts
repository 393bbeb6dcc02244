/**
 * Inverse of the basis of a linear programme, held in full, column by column, so that an entering column
 * and the change of basis run along the memory. Change of basis by the product form; rows that the pivot
 * row does not touch are left alone.
 */
import type { SparseColumns } from './sparse-columns.ts';

export class BasisInverse {
  /** Entry (i, k) at `k * m + i`. */
  private readonly entries: Float64Array;
  private readonly m: number;
  /** The pivot row of the last `readRow`, and where it is not zero. */
  readonly row: Float64Array;

  private readonly nonzero: Int32Array;

  constructor(m: number) {
    this.nonzero = new Int32Array(m);
    this.m = m;
    this.entries = new Float64Array(m * m);
    this.row = new Float64Array(m);
    this.begin();
  }

  /** The unit matrix. */
  begin(): void {
    this.entries.fill(0);
    for (let i = 0; i < this.m; i++) this.entries[i * this.m + i] = 1;
  }

  /** Inverse times a column, into `image`. */
  image(columns: SparseColumns, j: number, image: Float64Array): void {
    const { m, entries } = this;
    image.fill(0);
    for (let e = columns.from[j]!; e < columns.from[j + 1]!; e++) {
      const at = columns.rowOf[e]! * m;
      const value = columns.entryOf[e]!;
      for (let i = 0; i < m; i++) image[i]! += entries[at + i]! * value;
    }
  }

  /** Row i, into `row`. */
  readRow(i: number): Float64Array {
    const { m, entries, row } = this;
    for (let k = 0, at = i; k < m; k++, at += m) row[k] = entries[at]!;
    return row;
  }

  /** The column whose image is `alpha` takes place `leave`; `row` becomes the new row there. */
  change(alpha: Float64Array, leave: number): void {
    const { m, entries, row } = this;
    this.readRow(leave);
    const by = alpha[leave]!;
    let used = 0;
    for (let i = 0; i < m; i++) if (alpha[i] !== 0) this.nonzero[used++] = i;
    const { nonzero } = this;
    for (let k = 0; k < m; k++) {
      const value = row[k]! / by;
      row[k] = value;
      if (value === 0) continue;
      const at = k * m;
      if (2 * used > m) for (let i = 0; i < m; i++) entries[at + i]! -= alpha[i]! * value;
      else
        for (let e = 0; e < used; e++) {
          const i = nonzero[e]!;
          entries[at + i]! -= alpha[i]! * value;
        }
      entries[at + leave] = value;
    }
  }

  /** Inverse times a vector, into `out`. */
  times(vector: Float64Array, out: Float64Array): void {
    const { m, entries } = this;
    out.fill(0);
    for (let k = 0; k < m; k++) {
      const value = vector[k]!;
      if (value === 0) continue;
      const at = k * m;
      for (let i = 0; i < m; i++) out[i]! += entries[at + i]! * value;
    }
  }

  /** A row vector times the inverse, into `out`. */
  timesLeft(vector: Float64Array, out: Float64Array): void {
    const { m, entries } = this;
    for (let k = 0; k < m; k++) {
      let sum = 0;
      const at = k * m;
      for (let i = 0; i < m; i++) sum += entries[at + i]! * vector[i]!;
      out[k] = sum;
    }
  }

  /** Computed anew by Gauss-Jordan with row choice. False, and nothing changed, when the basis is singular. */
  invert(columns: SparseColumns, basis: Int32Array): boolean {
    const { m } = this;
    // Rows of the transposed basis: what is row by row here comes out column by column.
    const work = new Float64Array(m * m);
    const inverse = new Float64Array(m * m);
    for (let i = 0; i < m; i++) {
      inverse[i * m + i] = 1;
      const j = basis[i]!;
      for (let e = columns.from[j]!; e < columns.from[j + 1]!; e++)
        work[i * m + columns.rowOf[e]!] = columns.entryOf[e]!;
    }
    for (let c = 0; c < m; c++) {
      let at = c;
      for (let i = c + 1; i < m; i++) if (Math.abs(work[i * m + c]!) > Math.abs(work[at * m + c]!)) at = i;
      const by = work[at * m + c]!;
      if (Math.abs(by) < 1e-11) return false;
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
    this.entries.set(inverse);
    return true;
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
