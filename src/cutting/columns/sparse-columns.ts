/** Sparse columns of a linear programme, end to end in typed arrays that grow. */
export interface SparseColumn {
  rows: readonly number[];
  values: readonly number[];
  cost: number;
}

export class SparseColumns {
  /** Column j holds entries `from[j]` to `from[j + 1]`. */
  from = new Int32Array(1024);
  cost = new Float64Array(1024);
  rowOf = new Int32Array(8192);
  entryOf = new Float64Array(8192);
  size = 0;

  put({ rows, values, cost }: SparseColumn): number {
    const j = this.size;
    const start = this.from[j]!;
    const end = start + rows.length;
    if (j + 2 > this.from.length) {
      this.from = grown(this.from, new Int32Array(2 * this.from.length));
      this.cost = grown(this.cost, new Float64Array(2 * this.cost.length));
    }
    while (end > this.rowOf.length) {
      this.rowOf = grown(this.rowOf, new Int32Array(2 * this.rowOf.length));
      this.entryOf = grown(this.entryOf, new Float64Array(2 * this.entryOf.length));
    }
    this.rowOf.set(rows, start);
    this.entryOf.set(values, start);
    this.from[j + 1] = end;
    this.cost[j] = cost;
    this.size += 1;
    return j;
  }

  /** Cost of a column less what its entries are worth at these prices. */
  reduced(j: number, price: Float64Array): number {
    const { rowOf, entryOf } = this;
    const end = this.from[j + 1]!;
    let sum = this.cost[j]!;
    for (let k = this.from[j]!; k < end; k++) sum -= price[rowOf[k]!]! * entryOf[k]!;
    return sum;
  }
}

function grown<A extends Int32Array | Float64Array>(held: A, larger: A): A {
  larger.set(held);
  return larger;
}
