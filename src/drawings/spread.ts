/**
 * Places for labels that stand `least` apart at least, in the order given, nearest to where they belong.
 *
 * Minimises the sum of squared shifts: with z(i) = label(i) - i x least the order condition is
 * z(i) <= z(i+1), isotonic regression, solved exactly by pooling adjacent violators (Ayer, Brunk, Ewing, Reid and
 * Silverman, Annals of Mathematical Statistics 26, 1955, 641-647). Bounds clip the pooled values, which is
 * again exact. When the labels cannot all fit between the bounds they overrun `high` rather than overlap.
 *
 * @param wanted places in ascending order, any unit
 * @param least distance in the same unit
 */
export function spreadLabels(
  wanted: readonly number[],
  least: number,
  low = Number.NEGATIVE_INFINITY,
  high = Number.POSITIVE_INFINITY,
): number[] {
  const blocks: { sum: number; count: number }[] = [];
  wanted.forEach((value, i) => {
    blocks.push({ sum: value - i * least, count: 1 });
    while (blocks.length > 1) {
      const last = blocks.at(-1)!;
      const before = blocks.at(-2)!;
      if (before.sum / before.count <= last.sum / last.count) break;
      blocks.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  const top = Math.max(low, high - (wanted.length - 1) * least);
  const placed: number[] = [];
  for (const block of blocks) {
    const mean = Math.min(Math.max(block.sum / block.count, low), top);
    for (let k = 0; k < block.count; k++) placed.push(mean + placed.length * least);
  }
  return placed;
}
