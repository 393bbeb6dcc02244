import { NEVER, type Precedence, type Sop } from './sop.ts';

/**
 * A feasible order by always taking the cheapest step that precedence allows. Ties go to the lower node, so that it
 * is the same everywhere.
 */
export function construct(sop: Sop, precedence: Precedence): Int32Array {
  const { n, cost } = sop;
  const order = new Int32Array(n);
  const waiting = precedence.prev.map(list => list.filter(u => u !== 0).length);
  const done = new Uint8Array(n);
  done[0] = 1;
  let last = 0;
  for (let at = 1; at < n; at++) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let v = 1; v < n; v++) {
      if (done[v] === 1 || waiting[v]! > 0) continue;
      const step = Math.min(cost[last * n + v]!, NEVER);
      if (step < least) {
        best = v;
        least = step;
      }
    }
    order[at] = best;
    done[best] = 1;
    for (const v of precedence.next[best]!) waiting[v]!--;
    last = best;
  }
  return order;
}
