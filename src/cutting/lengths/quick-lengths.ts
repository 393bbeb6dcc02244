/** Quick whole solutions in one dimension: each new length is filled as nearly full as a short search can. */

/**
 * Fills lengths one by one around the longest piece left, each time with the fullest set that a search of
 * `steps` finds (M. Fleszar, K. S. Hindi, Computers & OR 29 (2002), minimum bin slack with a fixed first piece).
 * @param lengths falling
 * @param skip picks the `skip`-th fullest in ties, for other solutions of the same kind
 */
export function fullestFill(
  lengths: Int32Array,
  left: Int32Array,
  capacity: number,
  steps: number,
): { items: number[]; counts: number[] } {
  const n = lengths.length;
  let first = 0;
  while (first < n && (left[first]! === 0 || lengths[first]! > capacity)) first++;
  if (first === n) return { items: [], counts: [] };
  const chosen = new Int32Array(n);
  const best = new Int32Array(n);
  chosen[first] = 1;
  left[first]! -= 1;
  best.set(chosen);
  let bestRoom = capacity - lengths[first]!;
  let budget = steps;
  const visit = (from: number, room: number): void => {
    if (room < bestRoom) {
      bestRoom = room;
      best.set(chosen);
    }
    if (bestRoom === 0 || --budget < 0) return;
    for (let i = from; i < n; i++) {
      const size = lengths[i]!;
      if (size > room || left[i]! === 0) continue;
      const top = Math.min(left[i]!, Math.floor(room / size));
      for (let k = top; k >= 1; k--) {
        chosen[i]! += k;
        visit(i + 1, room - k * size);
        chosen[i]! -= k;
        if (bestRoom === 0 || budget < 0) return;
      }
    }
  };
  visit(first, capacity - lengths[first]!);
  left[first]! += 1;
  const items: number[] = [];
  const counts: number[] = [];
  for (let i = 0; i < n; i++)
    if (best[i]! > 0) {
      items.push(i);
      counts.push(best[i]!);
    }
  return { items, counts };
}
