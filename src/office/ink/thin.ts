/** Lets the quietest and most crowded go until the rest fit in `room` at the least distance. */
export function thinned<T extends { px: number; rank: number }>(
  list: readonly T[],
  least: number,
  room: number,
): T[] {
  const left = [...list];
  while (left.length > 1 && (left.length - 1) * least > room) {
    let [worst, cost] = [-1, Number.POSITIVE_INFINITY];
    left.forEach((t, i) => {
      if (t.rank >= 3) return;
      const before = i > 0 ? t.px - left[i - 1]!.px : 1e4;
      const after = i + 1 < left.length ? left[i + 1]!.px - t.px : 1e4;
      const price = before + after + t.rank * 1e5;
      if (price < cost) [worst, cost] = [i, price];
    });
    if (worst < 0) break;
    left.splice(worst, 1);
  }
  return left;
}
