/** Sawn boards measured one by one, checked from the plan and the rack alone. */
import type { StockUse } from '../results/cutting.ts';
import type { RackItem } from '../workshop/workshop.ts';

interface Rect {
  x: number;
  y: number;
  length: number;
  width: number;
}

/** mm: sizes are kept to 0.01. */
const TOLERANCE = 0.011;

export const widest = (item: RackItem): number =>
  item.kind === 'board' ? Math.max(item.width, item.widthFar ?? 0) : item.width;

/** The plan speaks of the board as it was measured. */
export function boardAsMeasured(use: StockUse, item: RackItem, faults: string[]): void {
  if (item.kind !== 'board') return;
  const far = item.widthFar ?? item.width;
  const near = use.narrow?.near ?? use.width;
  if (near !== item.width || (use.narrow?.far ?? near) !== far)
    faults.push(`${use.id}: the board was measured ${item.width} and ${far} wide`);
  if (JSON.stringify(use.avoid ?? []) !== JSON.stringify(item.avoid ?? []))
    faults.push(`${use.id}: the places to avoid are not those measured`);
}

const farEdge = (use: StockUse, x: number): number =>
  use.narrow ? use.narrow.near + ((use.narrow.far - use.narrow.near) * x) / use.length : use.width;

/** No blank on a defect or over the slanting edge, which keeps its trim. */
export function clearOfDefects(use: StockUse, faults: string[]): void {
  for (const placed of use.placed) {
    const top = placed.y + placed.width;
    const edge = Math.min(farEdge(use, placed.x), farEdge(use, placed.x + placed.length)) - use.trim.edge;
    if (use.narrow && top > edge + TOLERANCE)
      faults.push(`${use.id}: ${placed.instance} hangs over the slanting edge`);
    for (const bad of use.avoid ?? []) {
      const along = placed.x < bad.to - TOLERANCE && placed.x + placed.length > bad.from + TOLERANCE;
      const across =
        placed.y < (bad.high ?? Number.POSITIVE_INFINITY) - TOLERANCE && top > (bad.low ?? 0) + TOLERANCE;
      if (along && across) faults.push(`${use.id}: ${placed.instance} lies on a ${bad.what}`);
    }
  }
}

/** Width of wood at the narrower end of a piece left, mm. */
export function woodWidth(use: StockUse, left: Rect): number {
  const edge = Math.min(farEdge(use, left.x), farEdge(use, left.x + left.length));
  return use.narrow ? Math.max(0, Math.min(left.width, edge - left.y)) : left.width;
}

/** Width that makes the board's true area with its length. */
export const wholeWidth = (use: StockUse): number =>
  use.narrow ? (use.narrow.near + use.narrow.far) / 2 : use.width;
