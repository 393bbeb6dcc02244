/** Bounds on the number of like lengths, quick ones. */

/**
 * Bound L2 for pieces cut from lengths of `capacity`: pieces over half a length stand alone, those between
 * a threshold and half fill what room is left. S. Martello, P. Toth, Discrete Applied Math. 28 (1990).
 * @param lengths falling; with their demands
 */
export function boundL2(lengths: Int32Array, demands: Int32Array, capacity: number): number {
  let total = 0;
  for (let i = 0; i < lengths.length; i++) total += lengths[i]! * demands[i]!;
  let best = Math.ceil(total / capacity);
  const half = capacity / 2;
  const thresholds = [...new Set([0, ...lengths.filter(length => length <= half)])];
  for (const threshold of thresholds) {
    let large = 0;
    let middle = 0;
    let middleSum = 0;
    let smallSum = 0;
    for (let i = 0; i < lengths.length; i++) {
      const length = lengths[i]!;
      const n = demands[i]!;
      if (length > capacity - threshold) large += n;
      else if (length > half) {
        middle += n;
        middleSum += n * length;
      } else if (length >= threshold) smallSum += n * length;
    }
    const over = smallSum - (middle * capacity - middleSum);
    best = Math.max(best, large + middle + Math.max(0, Math.ceil(over / capacity)));
  }
  return best;
}
