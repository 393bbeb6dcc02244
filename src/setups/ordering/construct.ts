import type { Precedence, Sop } from './sop.ts';
import { NEVER } from './sop.ts';

/**
 * A feasible order by always taking the cheapest step that precedence allows; with `random`, among steps within
 * `looseness` of the cheapest. Ties go to the lower node, so that it is the same everywhere.
 */
export function construct(
  sop: Sop,
  precedence: Precedence,
  random?: () => number,
  looseness = 0,
): Int32Array {
  const { n, cost } = sop;
  const order = new Int32Array(n);
  const waiting = precedence.prev.map(list => list.filter(u => u !== 0).length);
  const done = new Uint8Array(n);
  done[0] = 1;
  let last = 0;
  for (let at = 1; at < n; at++) {
    let best = -1;
    let bestScore = Number.POSITIVE_INFINITY;
    for (let v = 1; v < n; v++) {
      if (done[v] === 1 || waiting[v]! > 0) continue;
      const step = cost[last * n + v]!;
      const score = (step >= NEVER ? NEVER : step) * (1 + (random ? random() * looseness : 0));
      if (score < bestScore) {
        best = v;
        bestScore = score;
      }
    }
    order[at] = best;
    done[best] = 1;
    for (const v of precedence.next[best]!) waiting[v]!--;
    last = best;
  }
  return order;
}
