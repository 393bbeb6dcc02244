import type { Sop } from './sop.ts';

/**
 * The separate checker: counts and adds for itself, from the costs and precedences as they were given.
 * Returns what is wrong, or nothing, and the value it found.
 */
export function checkOrder(
  sop: Sop,
  order: readonly number[],
  claimed?: number,
): { value: number; wrong: string[] } {
  const wrong: string[] = [];
  const place = new Map<number, number>();
  order.forEach((node, i) => {
    if (!Number.isInteger(node) || node < 0 || node >= sop.n) wrong.push(`${node} is no node`);
    else if (place.has(node)) wrong.push(`node ${node} comes twice`);
    else place.set(node, i);
  });
  for (let node = 0; node < sop.n; node++) if (!place.has(node)) wrong.push(`node ${node} is missing`);
  if (order[0] !== 0) wrong.push('node 0 does not come first');
  sop.before.forEach((list, node) => {
    for (const earlier of list)
      if ((place.get(earlier) ?? 0) > (place.get(node) ?? Number.POSITIVE_INFINITY))
        wrong.push(`node ${node} comes before node ${earlier}`);
  });
  let value = 0;
  let last = -1;
  for (const node of order) {
    if (last >= 0) value += sop.cost[last * sop.n + node] ?? Number.NaN;
    last = node;
  }
  if (claimed !== undefined && Math.abs(claimed - value) > 1e-6)
    wrong.push(`claimed ${claimed}, adds up to ${value}`);
  return { value, wrong };
}
