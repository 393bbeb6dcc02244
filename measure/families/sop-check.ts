/**
 * Counts a plan again from the two files alone: the instance as published and `{"order":[...]}`. It shares no code
 * with the solver nor with the reader the solver is fed by.
 * @param claimed the value and bound of the results' file
 * @returns what is wrong, or nothing
 */
export function faultOfPlan(
  instance: string,
  plan: string,
  claimed: { value: number; bound: number },
): string | undefined {
  const [size, ...matrix] = [
    ...instance.slice(instance.indexOf('EDGE_WEIGHT_SECTION')).matchAll(/-?\d+(\.\d+)?/g),
  ].map(match => Number(match[0]));
  const n = size!;
  const { order } = JSON.parse(plan) as { order: number[] };
  if (!Array.isArray(order)) return 'no order in the plan';
  if (order.length !== n) return `${order.length} nodes in the order, ${n} in the instance`;
  const seen = new Set<number>();
  for (const node of order) {
    if (!Number.isInteger(node) || node < 0 || node >= n) return `${node} is no node`;
    if (seen.has(node)) return `node ${node} comes twice`;
    // -1 at [node][other]: other comes before node.
    for (let other = 0; other < n; other++)
      if (matrix[node * n + other] === -1 && !seen.has(other)) return `${node} comes before ${other}`;
    seen.add(node);
  }
  const value = order.slice(1).reduce((sum, node, i) => sum + matrix[order[i]! * n + node]!, 0);
  if (value !== claimed.value) return `claimed ${claimed.value}, adds up to ${value}`;
  return claimed.bound > value ? `bound ${claimed.bound} above the value ${value}` : undefined;
}
