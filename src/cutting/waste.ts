/** What of the stock used is neither blank nor offcut to keep. */
import type { StockUse } from '../results/cutting.ts';

const meanWidth = (use: StockUse): number =>
  use.narrow ? (use.narrow.near + use.narrow.far) / 2 : use.width;

/** Share of the volume of stock used that is neither in a blank nor back on the rack. */
export function wasteShare(uses: readonly StockUse[]): number {
  let used = 0;
  let kept = 0;
  for (const use of uses) {
    used += use.length * meanWidth(use) * use.thickness;
    for (const part of use.placed) kept += part.length * part.width * use.thickness;
    for (const left of use.left)
      if (left.fate === 'back to the rack') kept += left.length * (left.narrow ?? left.width) * use.thickness;
  }
  return used === 0 ? 0 : Math.max(0, 1 - kept / used);
}
