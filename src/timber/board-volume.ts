/** Volumes as timber is sold by. */

/** One board foot: 1 in x 12 in x 12 in, in mm3. */
const BOARD_FOOT_MM3 = 25.4 * 304.8 * 304.8;

/** Board feet of a board, sizes in mm. Source: definition of the trade, 144 cubic inches. */
export function boardFeet(thicknessMm: number, widthMm: number, lengthMm: number): number {
  return (thicknessMm * widthMm * lengthMm) / BOARD_FOOT_MM3;
}

/**
 * What must be bought so that `net` is left when `wasteShare` of the bought goes to waste: net/(1 - share).
 * Waste is a share of what is bought: adding 30 % to the net leaves too little.
 * @throws RangeError when the share is not at least 0 and under 1
 */
export function toBuy(net: number, wasteShare: number): number {
  if (!(wasteShare >= 0 && wasteShare < 1)) {
    throw new RangeError(`waste share ${wasteShare} must be at least 0 and under 1`);
  }
  return net / (1 - wasteShare);
}
