import { arborescence } from './arborescence.ts';
import type { Sop } from './sop.ts';

export interface RootBound {
  value: number;
  /** What each node is charged for a step out of it; a step u to v costs c + charge[u]. */
  charge: Float64Array;
  /** Rounds gone. */
  rounds: number;
}

/**
 * Lower bound by Lagrangian relaxation: steps out of a node are charged so that the least arborescence goes out of
 * every node about once (Held and Karp's ascent, for directed paths). The last node must be known: `end` comes
 * after all. The sop must be sharpened.
 * @param upper value of a known order, for the step lengths
 */
export function lagrangianBound(
  sop: Sop,
  end: number,
  upper: number,
  rounds: number,
  stop?: () => boolean,
): RootBound {
  const { n } = sop;
  const charge = new Float64Array(n);
  const charged = new Float64Array(n * n);
  const degree = new Int32Array(n);
  let best = { value: Number.NEGATIVE_INFINITY, charge: Float64Array.from(charge) };
  let step = 1;
  let idle = 0;
  const last = new Float64Array(n);
  let round = 0;
  for (; round < rounds; round++) {
    let total = 0;
    for (let u = 0; u < n; u++) {
      const add = u === end ? 0 : charge[u]!;
      total += add;
      for (let v = 0; v < n; v++) charged[u * n + v] = sop.cost[u * n + v]! + add;
    }
    const tree = arborescence(n, 0, charged);
    const value = tree.value - total;
    if (value > best.value + 1e-9) {
      best = { value, charge: Float64Array.from(charge) };
      idle = 0;
    } else if (++idle >= 12) {
      step /= 2;
      idle = 0;
    }
    degree.fill(0);
    for (let v = 0; v < n; v++) if (v !== 0) degree[tree.parent[v]!]!++;
    let square = 0;
    for (let u = 0; u < n; u++) if (u !== end) square += (degree[u]! - 1) ** 2;
    if (square === 0 || step < 1e-4 || best.value >= upper - 1e-9 || stop?.()) break;
    const length = (step * Math.max(1e-6, upper * 1.001 - value)) / square;
    for (let u = 0; u < n; u++) {
      if (u === end) continue;
      const move = 0.7 * (degree[u]! - 1) + 0.3 * last[u]!;
      last[u] = degree[u]! - 1;
      charge[u] = charge[u]! + length * move;
    }
  }
  return { ...best, rounds: Math.min(rounds, round + 1) };
}
