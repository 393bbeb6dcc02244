/**
 * The sequential ordering problem: every node once, from node 0, at least total cost of the steps between
 * neighbours, some nodes before others. Costs are whole or not, never negative infinity; a step that may not be
 * taken costs `NEVER`.
 */
export interface Sop {
  n: number;
  /** Row by row: from i to j at i * n + j. */
  cost: Float64Array;
  /** Nodes that must come before each node; node 0 is before all without being listed. */
  before: readonly (readonly number[])[];
}

export const NEVER = 1e12;

/** Precedence closed and thinned: what the search reads over and over. */
export interface Precedence {
  words: number;
  /** `reach[v * words + w]`: bit set of all that must come after v. */
  reach: Uint32Array;
  /** Direct successors and predecessors, transitive ones left out; node 0 left out. */
  next: number[][];
  prev: number[][];
}

export class Contradiction extends Error {
  constructor(readonly loop: number[]) {
    super(`the order of work runs in a circle: ${loop.join(' before ')}`);
  }
}

export const mustPrecede = (p: Precedence, a: number, b: number): boolean =>
  ((p.reach[a * p.words + (b >>> 5)]! >>> (b & 31)) & 1) === 1;

/**
 * Closure by bit sets over a topological order.
 * @throws Contradiction with the loop when the precedences contradict each other
 */
export function closePrecedence(n: number, before: Sop['before']): Precedence {
  const words = (n + 31) >>> 5;
  const reach = new Uint32Array(n * words);
  const after: number[][] = Array.from({ length: n }, () => []);
  const waiting = new Int32Array(n);
  for (let v = 0; v < n; v++)
    for (const u of new Set(before[v])) {
      after[u]!.push(v);
      waiting[v]!++;
    }
  const queue: number[] = [];
  for (let v = 0; v < n; v++) if (waiting[v] === 0) queue.push(v);
  for (let i = 0; i < queue.length; i++)
    for (const v of after[queue[i]!]!) if (--waiting[v]! === 0) queue.push(v);
  if (queue.length < n) throw new Contradiction(findLoop(n, before, waiting));
  for (let i = n - 1; i >= 0; i--) {
    const u = queue[i]!;
    for (const v of after[u]!) {
      reach[u * words + (v >>> 5)]! |= 1 << (v & 31);
      for (let w = 0; w < words; w++) reach[u * words + w]! |= reach[v * words + w]!;
    }
  }
  const next: number[][] = Array.from({ length: n }, () => []);
  const prev: number[][] = Array.from({ length: n }, () => []);
  for (let u = 0; u < n; u++)
    for (const v of after[u]!) {
      const indirect = after[u]!.some(
        w => w !== v && ((reach[w * words + (v >>> 5)]! >>> (v & 31)) & 1) === 1,
      );
      if (indirect || next[u]!.includes(v)) continue;
      next[u]!.push(v);
      prev[v]!.push(u);
    }
  return { words, reach, next, prev };
}

function findLoop(n: number, before: Sop['before'], waiting: Int32Array): number[] {
  const start = waiting.findIndex(w => w > 0);
  const seen = new Map<number, number>();
  const path: number[] = [];
  let at = start;
  while (!seen.has(at)) {
    seen.set(at, path.length);
    path.push(at);
    at = before[at]!.find(u => u < n && waiting[u]! > 0) ?? start;
  }
  return path.slice(seen.get(at)).reverse();
}

/**
 * Steps that no feasible order can take are set to `NEVER`: backwards along a precedence, and from u to v when
 * something must come between them.
 */
export function sharpen(sop: Sop, precedence: Precedence): Sop {
  const { n } = sop;
  const cost = Float64Array.from(sop.cost);
  const { words, reach } = precedence;
  const from = new Uint32Array(n * words);
  for (let u = 0; u < n; u++)
    for (let v = 0; v < n; v++)
      if (mustPrecede(precedence, u, v)) from[v * words + (u >>> 5)]! |= 1 << (u & 31);
  for (let u = 0; u < n; u++) {
    cost[u * n + u] = NEVER;
    cost[u * n] = NEVER;
    for (let v = 1; v < n; v++) {
      if (u === v) continue;
      if (mustPrecede(precedence, v, u)) cost[u * n + v] = NEVER;
      else if (u === 0 && precedence.prev[v]!.some(p => p !== 0)) cost[v] = NEVER;
      else if (mustPrecede(precedence, u, v))
        for (let w = 0; w < words; w++)
          if ((reach[u * words + w]! & from[v * words + w]!) !== 0) {
            cost[u * n + v] = NEVER;
            break;
          }
    }
  }
  return { n, cost, before: sop.before };
}
