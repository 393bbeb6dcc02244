/**
 * Does a given number of lengths suffice, when every way that may be used is at hand? Search over the linear
 * programme: pairs of single pieces lie together or apart (D. M. Ryan, B. A. Foster (1981)), or a way is used
 * once more or no more. A node whose programme needs more lengths than are left is closed.
 */
import { LinearMaster } from '../columns/linear-master.ts';

export type Decision = { answer: 'yes'; ways: readonly Int32Array[] } | { answer: 'no' | 'not known' };

export interface DecideLimits {
  /** Linear programmes solved. */
  nodes: number;
  stop?: () => boolean;
}

const MISSING = 20;
const BARRED = 50;
const WHOLE = 1e-5;
const OVER = 1e-6;

/**
 * @param ways item and count by turns
 * @param demands of each item; only the `core` items count
 */
export function decideCount(
  ways: readonly Int32Array[],
  core: readonly number[],
  demands: Int32Array,
  target: number,
  limits: DecideLimits,
): Decision {
  return new CountSearch(ways, core, demands, limits).run(target);
}

class CountSearch {
  private readonly ways: readonly Int32Array[];
  private readonly core: readonly number[];
  private readonly left: Int32Array;
  private readonly limits: DecideLimits;
  private readonly master: LinearMaster;
  /** How many branches bar each way. */
  private readonly barred: Uint16Array;
  private readonly fixed: number[] = [];
  private nodes = 0;
  private gaveUp = false;
  private found: readonly Int32Array[] | undefined;

  constructor(
    ways: readonly Int32Array[],
    core: readonly number[],
    demands: Int32Array,
    limits: DecideLimits,
  ) {
    this.ways = ways;
    this.core = core;
    this.left = demands.slice();
    this.limits = limits;
    this.barred = new Uint16Array(ways.length);
    const rowOf = new Int32Array(demands.length);
    core.forEach((item, row) => {
      rowOf[item] = row;
    });
    this.master = new LinearMaster(this.right(), MISSING);
    for (const way of ways) {
      const rows: number[] = [];
      const values: number[] = [];
      for (let k = 0; k < way.length; k += 2) {
        rows.push(rowOf[way[k]!]!);
        values.push(way[k + 1]!);
      }
      this.master.add({ rows, values, cost: 1 });
    }
  }

  run(target: number): Decision {
    this.visit(target);
    if (this.found) return { answer: 'yes', ways: this.found };
    return { answer: this.gaveUp ? 'not known' : 'no' };
  }

  private right(): number[] {
    return this.core.map(item => Math.max(0, this.left[item]!));
  }

  private visit(target: number): void {
    this.nodes += 1;
    if (this.nodes > this.limits.nodes || this.limits.stop?.()) this.gaveUp = true;
    if (this.gaveUp || this.found) return;
    if (this.core.every(item => this.left[item]! <= 0)) {
      this.found = this.fixed.map(w => this.ways[w]!);
      return;
    }
    if (target <= 0) return;
    const { master, barred } = this;
    master.bar(
      w => barred[w]! > 0 || this.cutsTooMany(w),
      () => 1,
      BARRED,
    );
    master.setRight(this.right());
    if (master.solve(this.limits.stop) !== 'optimal') {
      this.gaveUp = true;
      return;
    }
    if (master.objective() > target + OVER) return;
    this.branch(master.levels(), target);
  }

  /** A plan cuts exactly what is wanted, so no way in it cuts more of an item than is left. */
  private cutsTooMany(w: number): boolean {
    const way = this.ways[w]!;
    for (let k = 0; k < way.length; k += 2) if (way[k + 1]! > this.left[way[k]!]!) return true;
    return false;
  }

  private branch(levels: Float64Array, target: number): void {
    const used: number[] = [];
    for (let w = 0; w < levels.length; w++) if (levels[w]! > WHOLE) used.push(w);
    const pair = this.splitPair(levels, used);
    if (pair) {
      const [a, b] = pair;
      this.barring(way => has(way, a) !== has(way, b), target);
      this.barring(way => has(way, a) && has(way, b), target);
      return;
    }
    const parts = used.filter(w => levels[w]! % 1 > WHOLE && levels[w]! % 1 < 1 - WHOLE);
    const most = (from: readonly number[]): number =>
      from.reduce((best, w) => (levels[w]! > levels[best]! ? w : best), from[0]!);
    const w = most(parts.length > 0 ? parts : used);
    this.using(w, target);
    this.barring((_, at) => at === w, target);
  }

  /** Two single pieces that lie together in part only, as near to half as can be. */
  private splitPair(levels: Float64Array, used: readonly number[]): [number, number] | undefined {
    const n = this.left.length;
    const together = new Map<number, number>();
    for (const w of used) {
      const way = this.ways[w]!;
      for (let k = 0; k < way.length; k += 2)
        for (let l = k + 2; l < way.length; l += 2) {
          const [a, b] = [way[k]!, way[l]!];
          if (this.left[a] !== 1 || this.left[b] !== 1) continue;
          together.set(a * n + b, (together.get(a * n + b) ?? 0) + levels[w]!);
        }
    }
    let best: [number, number] | undefined;
    let off = 0.5 - 1e-4;
    for (const [key, share] of together) {
      // Together first is the branch that leads somewhere: a little more than half is better than less.
      const distance = Math.abs(share - 0.6);
      if (share < 1e-4 || share > 1 - 1e-4 || distance >= off) continue;
      off = distance;
      best = [Math.floor(key / n), key % n];
    }
    return best;
  }

  private barring(isBarred: (way: Int32Array, at: number) => boolean, target: number): void {
    if (this.gaveUp || this.found) return;
    const { ways, barred } = this;
    const now: number[] = [];
    ways.forEach((way, w) => {
      if (isBarred(way, w)) now.push(w);
    });
    for (const w of now) barred[w]! += 1;
    this.visit(target);
    for (const w of now) barred[w]! -= 1;
  }

  private using(w: number, target: number): void {
    const way = this.ways[w]!;
    this.fixed.push(w);
    for (let k = 0; k < way.length; k += 2) this.left[way[k]!]! -= way[k + 1]!;
    this.visit(target - 1);
    for (let k = 0; k < way.length; k += 2) this.left[way[k]!]! += way[k + 1]!;
    this.fixed.pop();
  }
}

function has(way: Int32Array, item: number): boolean {
  for (let k = 0; k < way.length; k += 2) if (way[k] === item) return true;
  return false;
}
