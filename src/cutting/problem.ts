/**
 * The cutting problem in whole hundredths of a millimetre, as the solvers see it.
 * Rounding is always the safe way: blanks up, stock down, kerf up.
 */
import type { Demand, StockUse } from '../results/cutting.ts';

export const UNITS_PER_MM = 100;

export const unitsUp = (mm: number): number => Math.ceil(mm * UNITS_PER_MM - 1e-6);
export const unitsDown = (mm: number): number => Math.floor(mm * UNITS_PER_MM + 1e-6);
export const toMm = (units: number): number => units / UNITS_PER_MM;

/** One way a blank may lie on a stock: `l` along the stock's length, `w` across it. */
export interface Lie {
  l: number;
  w: number;
  turned: boolean;
}

/** Like blanks, cut from the same stocks in the same ways. */
export interface CutItem {
  /** Word of the group that comes from one board. */
  oneBoard?: string;
  /** One for each piece wanted. */
  demands: Demand[];
  /** By stock index: the ways it may lie there; empty where that stock cannot serve. */
  lies: Lie[][];
  /** Least area it takes on any stock, for orders and bounds. */
  area: number;
}

/** The usable area of a measured board: its slanting far edge and the rectangles to keep out of. */
export interface MeasuredBoard {
  /** Usable width at the near end (0) and at the far end (`l`). */
  near: number;
  far: number;
  avoid: { x: number; y: number; l: number; w: number }[];
}

/** Like pieces of stock: one rack item or one supplier's item. */
export interface CutStock {
  use: Pick<
    StockUse,
    | 'from'
    | 'kind'
    | 'material'
    | 'label'
    | 'length'
    | 'width'
    | 'thickness'
    | 'round'
    | 'wall'
    | 'section'
    | 'trim'
    | 'kerf'
    | 'narrow'
    | 'avoid'
  >;
  /** Sawn boards measured one by one, in the coordinates of the usable area. */
  board?: MeasuredBoard;
  item: string;
  supplier?: string;
  /** Usable length and width after trim. */
  l: number;
  w: number;
  kerf: number;
  cost: number;
  /** Pieces of it there are; Infinity when it can be bought. */
  limit: number;
  /** Bars and tubes: nothing lies beside another. */
  single: boolean;
  /** Timber: cross-cut first (CUT-7). */
  crossFirst: boolean;
}

/** Items and stocks that have to do with each other and with nothing else. */
export interface CutProblem {
  items: CutItem[];
  stocks: CutStock[];
}

/**
 * A rectangle of a stock and what the saw does with it: divided by one cut edge to edge, or holding one
 * item at its lower left, or free. Coordinates are those of the usable area.
 */
export interface Slab {
  x: number;
  y: number;
  l: number;
  w: number;
  cut?: 'cross' | 'rip';
  /** What the cut keeps first, and what is left beyond the kerf (absent when the kerf takes it all). */
  kept?: Slab;
  rest?: Slab;
  item?: number;
  lie?: Lie;
}

/** One piece of stock laid out. */
export interface Layout {
  stock: number;
  slab: Slab;
  /** Pieces of each item on it. */
  counts: Map<number, number>;
  /** Area of the items on it. */
  area: number;
}

export interface Solution {
  layouts: Layout[];
  /** Pieces of each item for which stock ran out. */
  missing: number[];
  cost: number;
  /** Pieces of stock bought, not from the rack. */
  bought: number;
}
