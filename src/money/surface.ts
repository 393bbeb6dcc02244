/** Surface of the parts that a finish covers. */
import type { Instance } from '../results/piece.ts';

const MM2_PER_M2 = 1e6;

/**
 * Whole surface of a part at its cut size, m2: all six faces, or the round of a bar and its ends. Surfaces that
 * are glued or hidden are counted too, which leans to the safe side.
 */
export function surfaceM2(part: Instance): number {
  const { length, width, thickness } = part.size;
  const area = part.round
    ? Math.PI * width * length + (Math.PI * width * width) / 2
    : 2 * (length * width + length * thickness + width * thickness);
  return area / MM2_PER_M2;
}
