import type { Network } from './network.ts';
import { firstStart, type Shop } from './place.ts';
import type { WorkingTime } from './working-time.ts';

/** What no plan can beat. */
export interface Bound {
  /** Earliest possible end of all work and waits, wall minutes. */
  finish: number;
  /** Earliest start of each step, other work on the way to it counted. */
  earliest: number[];
}

/**
 * A lower bound on the finish. Each step starts no sooner than (a) the end and wait of every step before
 * it, laid through the calendar, and (b) the moment at which one pair of hands can have done everything
 * that must come before it, breaking off at will: work taken in order of its earliest start (Jackson's
 * preemptive schedule on one machine, J. R. Jackson 1955), with one change-over for each set-up touched.
 * The finish is the same question asked of a last step after all others.
 */
export function lowerBound(shop: Shop): Bound {
  const { net } = shop;
  const count = net.steps.length;
  const words = (count + 31) >> 5;
  const ancestors = net.steps.map(() => new Uint32Array(words));
  const earliest = new Array<number>(count).fill(shop.now);
  const byEarliest: number[] = [];
  let finish = shop.now;

  for (const step of net.steps) {
    const own = ancestors[step.index]!;
    for (const b of step.needs) {
      own[b >> 5]! |= 1 << (b & 31);
      const theirs = ancestors[b]!;
      for (let k = 0; k < words; k++) own[k]! |= theirs[k]!;
    }
    const fixed = shop.fixed.get(step.index);
    let start = shop.now;
    for (const b of step.needs) start = Math.max(start, endOf(shop, earliest, b) + net.steps[b]!.wait);
    if (!fixed) {
      start = Math.max(start, handsFree(shop, earliest, byEarliest, own));
      start = firstStart(shop, { ...step, setUp: -1 }, start) ?? start;
    }
    earliest[step.index] = fixed ? fixed.start : start;
    insert(byEarliest, step.index, earliest);
    finish = Math.max(finish, endOf(shop, earliest, step.index) + step.wait);
  }
  return { finish: Math.max(finish, handsFree(shop, earliest, byEarliest)), earliest };
}

function endOf(shop: Shop, earliest: readonly number[], index: number): number {
  const fixed = shop.fixed.get(index);
  if (fixed) return fixed.end;
  const { minutes } = shop.net.steps[index]!;
  return minutes === 0 ? earliest[index]! : shop.time.end(earliest[index]!, minutes);
}

/** When one pair of hands can have done the chosen steps (all without `among`), each not before its earliest start. */
function handsFree(
  { net, time, fixed }: { net: Network; time: WorkingTime; fixed: ReadonlyMap<number, unknown> },
  earliest: readonly number[],
  byEarliest: readonly number[],
  among?: Uint32Array,
): number {
  let done = 0;
  const charged = new Set<number>();
  for (const index of byEarliest) {
    if (among && !(among[index >> 5]! & (1 << (index & 31)))) continue;
    const step = net.steps[index]!;
    if (fixed.has(index) || step.minutes === 0) continue;
    let minutes = step.minutes;
    if (step.setUp >= 0 && !charged.has(step.setUp)) {
      charged.add(step.setUp);
      minutes += Math.round(net.setUps[step.setUp]!.changeOver);
    }
    done = Math.max(done, time.worked(earliest[index]!)) + minutes;
  }
  return time.wallOf(done);
}

function insert(sorted: number[], index: number, key: readonly number[]): void {
  let k = sorted.length;
  while (k > 0 && key[sorted[k - 1]!]! > key[index]!) k--;
  sorted.splice(k, 0, index);
}
