import type { OpenSection, PartKind } from './piece.ts';
import type { Solved } from './solver.ts';

/** What the better face of timber is fit for, best first: free of knots, sound knots, hidden work. */
export const GRADES = ['clear', 'sound', 'rough'] as const;
export type Grade = (typeof GRADES)[number];

/** A rectangle of a board to keep out of, mm from end 1 and from the straighter edge; no bounds: right across. */
export interface ToAvoid {
  what: 'knot' | 'sapwood' | 'split' | 'wane' | 'rot' | 'stain' | 'other';
  from: number;
  to: number;
  low?: number | undefined;
  high?: number | undefined;
}

/** A blank to be found in stock. */
export interface Demand {
  /** Part mark, or `test ...`. */
  mark: string;
  instance: string;
  name: string;
  length: number;
  width: number;
  thickness: number;
  material: string;
  kind: PartKind;
  round: boolean;
  /** Wall of a tube, mm. */
  wall?: number;
  section?: OpenSection;
  /** Sheet parts: may it be turned? */
  turn: boolean;
  /** Sheet parts whose grain runs across them: they always lie turned. */
  across: boolean;
  purpose: 'part' | 'test piece' | 'spare';
  /** Timber: least grade it may come from. */
  grade?: Grade;
  /** All blanks with this word come from one board, for colour. */
  oneBoard?: string;
  /** Sheet parts whose grain runs on: the word of the run, the place in it, and how they lie to the grain. */
  run?: { word: string; at: number; lie: 'end to end' | 'side by side' };
  /** A run laid as one blank: its parts in their order. */
  members?: Demand[];
}

/** One length or sheet that the plan uses. Positions are in the stock's own frame, from the end you work from. */
export interface StockUse {
  /** Unique: rack item id (`<id>:2` for the second of its kind), or `buy:<supplier item id>:<n>`. */
  id: string;
  /** Id of the rack item or supplier's item itself. */
  item: string;
  /** Supplier id, where bought. */
  supplier?: string;
  label: string;
  from: 'rack' | 'buy';
  kind: 'planed length' | 'board' | 'sheet' | 'bar' | 'tube' | 'offcut';
  material: string;
  length: number;
  width: number;
  thickness: number;
  round: boolean;
  /** Tubes and open sections, as the stock is said to be. */
  wall?: number;
  section?: OpenSection;
  /** Sawn boards: width at the far end; `width` is then the wider end's. */
  narrow?: { near: number; far: number };
  /** Sawn boards: what the layout keeps out of. */
  avoid?: ToAvoid[];
  kerf: number;
  /** Accepted by the maker and kept whole; what no longer agrees with the setting-out, a sentence each. */
  kept?: { stale: string[]; done?: string };
  /** Taken off each factory end and edge before a part may touch it. */
  trim: { end: number; edge: number };
  price: number;
  placed: Placed[];
  /** Straight saw cuts in the order they are made. */
  cuts: SawCut[];
  left: Left[];
}

export interface Placed {
  mark: string;
  instance: string;
  x: number;
  y: number;
  length: number;
  width: number;
  turned: boolean;
  purpose: Demand['purpose'];
}

export interface SawCut {
  order: number;
  /** `cross` across the stock's length, `rip` along it. */
  kind: 'cross' | 'rip';
  /** The kept edge of the cut in stock coordinates; the kerf lies beyond it (before it when `trim`). */
  at: number;
  /** The span of the stock that this cut divides, in the other coordinate. */
  from: number;
  to: number;
  /** Fence or stop to set: distance from the edge worked from (for `trim`, the far edge). */
  setting: number;
  /** Takes off a factory end or edge: what is kept lies on the far side of the blade. */
  trim?: true;
}

export interface Left {
  x: number;
  y: number;
  length: number;
  width: number;
  /** Width at its narrower end, where the board's far edge runs slantwise. */
  narrow?: number;
  fate: 'back to the rack' | 'waste';
}

export interface MaterialPlan extends Solved {
  material: string;
  section: string;
  kind: PartKind;
  uses: StockUse[];
  /** Blanks that no stock can give, with the reason. */
  unplaced: { demand: Demand; reason: string; mend: string }[];
  /**
   * Cost of the stock used, minor units: what is bought at its price, what comes from the rack at its
   * value. `value` and `bound` count the same.
   */
  cost: number;
  /** Waste as a share of what is used, 0 to 1 (offcuts that go back to the rack are not waste). */
  waste: number;
  /** Plain words: `Two sheets; one cannot do.` */
  words: string;
  /** What was left out and why, e.g. a supplier's item without a price. */
  notes: string[];
}

export interface ShoppingLine {
  /** Supplier's item id. */
  id: string;
  /** Its label. */
  item: string;
  supplier: string;
  quantity: number;
  unitPrice: number;
  price: number;
}

/** What one supplier is paid: goods, carriage and what makes goods up to a least order; minor units. */
export interface SupplierOrder {
  supplier: string;
  goods: number;
  delivery: number;
  shortfall: number;
  total: number;
}

export interface CuttingPlan {
  materials: MaterialPlan[];
  buy: ShoppingLine[];
  /** One for each supplier something is bought from. */
  orders: SupplierOrder[];
  /** Minor units: rack stock at its value and what is bought at its price, without delivery. */
  cost: number;
}
