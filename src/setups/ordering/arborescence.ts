/**
 * Least arborescence from a root (Chu and Liu 1965, Edmonds 1967): every other node gets one step in, no rings.
 * Every order is one, so it bounds the problem from below. Dense, O(n^2) for each round of drawing rings together.
 */
export interface Arborescence {
  value: number;
  /** The node from which each is reached; the root's is -1. */
  parent: Int32Array;
}

export function arborescence(n: number, root: number, cost: Float64Array): Arborescence {
  const parent = solve(n, root, cost);
  let value = 0;
  for (let v = 0; v < n; v++) if (v !== root) value += cost[parent[v]! * n + v]!;
  return { value, parent };
}

function solve(n: number, root: number, cost: Float64Array): Int32Array {
  const parent = new Int32Array(n).fill(-1);
  const into = new Float64Array(n).fill(Number.POSITIVE_INFINITY);
  for (let u = 0; u < n; u++) {
    const row = u * n;
    for (let v = 0; v < n; v++)
      if (u !== v && v !== root && cost[row + v]! < into[v]!) {
        into[v] = cost[row + v]!;
        parent[v] = u;
      }
  }
  const { group, groups, ring } = findRings(n, root, parent);
  if (groups === n) return parent;
  const small = new Float64Array(groups * groups).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(groups * groups);
  for (let u = 0; u < n; u++) {
    const gu = group[u]! * groups;
    for (let v = 0; v < n; v++) {
      const gv = group[v]!;
      if (group[u] === gv) continue;
      const c = ring[v] === 1 ? cost[u * n + v]! - into[v]! : cost[u * n + v]!;
      if (c < small[gu + gv]!) {
        small[gu + gv] = c;
        from[gu + gv] = u * n + v;
      }
    }
  }
  const above = solve(groups, group[root]!, small);
  for (let g = 0; g < groups; g++) {
    if (above[g] === -1) continue;
    const arc = from[above[g]! * groups + g]!;
    parent[arc % n] = Math.floor(arc / n);
  }
  return parent;
}

function findRings(
  n: number,
  root: number,
  parent: Int32Array,
): { group: Int32Array; groups: number; ring: Uint8Array } {
  const group = new Int32Array(n).fill(-1);
  const ring = new Uint8Array(n);
  const seen = new Int32Array(n).fill(-1);
  let groups = 0;
  for (let start = 0; start < n; start++) {
    let at = start;
    while (at !== -1 && at !== root && seen[at] === -1) {
      seen[at] = start;
      at = parent[at]!;
    }
    if (at === -1 || at === root || seen[at] !== start || group[at] !== -1) continue;
    let node = at;
    do {
      group[node] = groups;
      ring[node] = 1;
      node = parent[node]!;
    } while (node !== at);
    groups++;
  }
  for (let v = 0; v < n; v++) if (group[v] === -1) group[v] = groups++;
  return { group, groups, ring };
}
