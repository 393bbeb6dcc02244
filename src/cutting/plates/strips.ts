/**
 * The most worthy strip of every width, and the strips that go together on a plate. All sizes are grown by
 * one kerf, so that they add up. Strips run along one side of the plate; in a strip pieces stand side by
 * side on its low edge, like pieces stacked while the width allows.
 */
import type { Lie } from '../problem.ts';

/** An item in a strip: `along` the strip, `across` it, `stack` copies on one another. */
export interface StripItem {
  item: number;
  lie: Lie;
  along: number;
  across: number;
  stack: number;
}

export interface Strip {
  across: number;
  columns: StripItem[];
  worth: number;
}

interface Row {
  piece: StripItem;
  copies: number;
  length: number;
  worth: number;
}

/** Widest distinct strips first; a strip's width is that of its widest piece. */
export function rowsFor(
  pieces: readonly StripItem[],
  worth: Float64Array,
  caps: Int32Array,
  length: number,
): Row[] {
  const rows: Row[] = [];
  for (const piece of pieces) {
    const value = worth[piece.item]! * piece.stack;
    const most = Math.min(Math.floor(caps[piece.item]! / piece.stack), Math.floor(length / piece.along));
    let left = most;
    for (let copies = 1; left > 0 && value > 0; copies *= 2) {
      const taken = Math.min(copies, left);
      rows.push({ piece, copies: taken, length: taken * piece.along, worth: taken * value });
      left -= taken;
    }
  }
  return rows.sort((a, b) => a.piece.across - b.piece.across);
}

export interface StripTable {
  /** Distinct widths, rising, with the best worth of a strip of that width. */
  widths: number[];
  values: number[];
  strip: (index: number) => Strip;
}

/** Table over the length of the strip; items come in by rising width, so one pass serves every width. */
export function stripTable(rows: readonly Row[], length: number): StripTable {
  const best = new Float64Array(length + 1);
  const taken = new Uint8Array(rows.length * (length + 1));
  const widths: number[] = [];
  const values: number[] = [];
  const ends: number[] = [];
  rows.forEach((row, r) => {
    const base = r * (length + 1);
    for (let c = length; c >= row.length; c--) {
      const value = best[c - row.length]! + row.worth;
      if (value > best[c]!) {
        best[c] = value;
        taken[base + c] = 1;
      }
    }
    if (rows[r + 1]?.piece.across !== row.piece.across) {
      widths.push(row.piece.across);
      values.push(best[length]!);
      ends.push(r);
    }
  });
  const strip = (index: number): Strip => {
    const columns: StripItem[] = [];
    let c = length;
    for (let r = ends[index]!; r >= 0; r--)
      if (taken[r * (length + 1) + c] === 1) {
        for (let k = 0; k < rows[r]!.copies; k++) columns.push(rows[r]!.piece);
        c -= rows[r]!.length;
      }
    return { across: widths[index]!, columns, worth: values[index]! };
  };
  return { widths, values, strip };
}

/** Widths of strips that fill `width` with most worth, each as often as wished. Indices into the table. */
export function bestStrips(table: StripTable, width: number): number[] {
  const best = new Float64Array(width + 1);
  const choice = new Int32Array(width + 1).fill(-1);
  for (let c = 1; c <= width; c++) {
    best[c] = best[c - 1]!;
    for (let i = 0; i < table.widths.length && table.widths[i]! <= c; i++) {
      const value = best[c - table.widths[i]!]! + table.values[i]!;
      if (value > best[c]!) {
        best[c] = value;
        choice[c] = i;
      }
    }
  }
  const chosen: number[] = [];
  for (let c = width; c > 0; )
    if (choice[c]! < 0) c -= 1;
    else {
      chosen.push(choice[c]!);
      c -= table.widths[choice[c]!]!;
    }
  return chosen;
}

/** Upper bound on the worth of any two-stage plate with strips this way, each item as often as wished. */
export function worthOfStrips(table: StripTable, width: number): number {
  return bestStrips(table, width).reduce((sum, i) => sum + table.values[i]!, 0);
}
