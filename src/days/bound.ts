import type { Network, Step } from './network.ts';
import { firstStart, type Shop } from './place.ts';

/** What no plan can beat. */
export interface Bound {
  /** Earliest possible end of all work and waits, wall minutes. */
  finish: number;
  /** Earliest start of each step, other work on the way to it counted. */
  earliest: number[];
}

/** Between two lags this far apart, minutes, a set of its own is looked at: a wait lies between them. */
const STEP_OF_LAG = 120;

/**
 * A lower bound on the finish. Each step starts no sooner than (a) the end and wait of every step before
 * it, laid through the calendar, and (b) for sets of steps that lead to it over a lag of at least q minutes:
 * the moment at which one pair of hands can have done the set, breaking off at will, plus q. The hands take
 * the work in order of its earliest start (the preemptive one-machine relaxation with heads, J. R. Jackson
 * 1955, and with tails, J. Carlier 1982), with one change-over for each set-up touched. The finish is the same
 * question asked of a last step after all others.
 */
export function lowerBound(shop: Shop): Bound {
  const { net } = shop;
  const anyTime = net.setUps.map(() => shop.now);
  const { earliest } = boundWith(shop, anyTime);
  // A machine is made ready when the first step of its set-up can begin: known now, so asked again with it.
  const begins = net.setUps.map(() => Number.POSITIVE_INFINITY);
  for (const { setUp, index } of net.steps)
    if (setUp >= 0) begins[setUp] = Math.min(begins[setUp]!, earliest[index]!);
  return boundWith(shop, begins);
}

function boundWith(shop: Shop, begins: readonly number[]): Bound {
  const { net } = shop;
  const count = net.steps.length;
  const earliest = new Array<number>(count).fill(shop.now);
  const byEarliest: number[] = [];
  const lags: Int32Array[] = [];
  let finish = shop.now;

  for (const step of net.steps) {
    const lag = lagsInto(net, lags, step.needs, count);
    lags.push(lag);
    const fixed = shop.fixed.get(step.index);
    let start = shop.now;
    for (const b of step.needs) start = Math.max(start, endOf(shop, earliest, b) + net.steps[b]!.wait);
    if (!fixed) {
      start = Math.max(start, handsBound(shop, earliest, byEarliest, begins, lag));
      start = soonest(shop, step, start);
    }
    earliest[step.index] = fixed ? fixed.start : start;
    insert(byEarliest, step.index, earliest);
    finish = Math.max(finish, endOf(shop, earliest, step.index) + step.wait);
  }
  const all = net.steps.map(step => step.index);
  const toTheEnd = lagsInto(net, lags, all, count);
  return { finish: Math.max(finish, handsBound(shop, earliest, byEarliest, begins, toTheEnd)), earliest };
}

/**
 * Longest way, in minutes of waits and work without breaks, from the end of each step to the start of one
 * that needs `needs`; -1 for a step that does not lead to it.
 */
function lagsInto(
  net: Network,
  lags: readonly Int32Array[],
  needs: readonly number[],
  count: number,
): Int32Array {
  const into = new Int32Array(count).fill(-1);
  for (const b of needs) {
    const { wait, minutes } = net.steps[b]!;
    into[b] = Math.max(into[b]!, wait);
    const before = lags[b]!;
    for (let k = 0; k < b; k++) {
      if (before[k]! >= 0) into[k] = Math.max(into[k]!, before[k]! + minutes + wait);
    }
  }
  return into;
}

function endOf(shop: Shop, earliest: readonly number[], index: number): number {
  const fixed = shop.fixed.get(index);
  if (fixed) return fixed.end;
  const { minutes } = shop.net.steps[index]!;
  return minutes === 0 ? earliest[index]! : shop.time.end(earliest[index]!, minutes);
}

/** The greatest, over the lags that stand apart, of: the steps with at least that lag done, plus the lag. */
function handsBound(
  shop: Shop,
  earliest: readonly number[],
  byEarliest: readonly number[],
  begins: readonly number[],
  lag: Int32Array,
): number {
  const leading = byEarliest.filter(k => lag[k]! >= 0 && isWork(shop, shop.net.steps[k]!));
  if (leading.length === 0) return shop.now;
  const sizes = leading.map(k => lag[k]!).sort((a, b) => b - a);
  let bound = shop.now;
  sizes.forEach((size, at) => {
    const next = sizes[at + 1];
    if (next !== undefined && size - next < STEP_OF_LAG) return;
    const chosen = leading.filter(k => lag[k]! >= size);
    const worked = handsFree(shop, earliest, chosen, begins);
    bound = Math.max(bound, shop.time.wallOf(worked) + size);
  });
  return bound;
}

const isWork = ({ fixed }: Shop, step: Step): boolean => step.minutes > 0 && !fixed.has(step.index);

/** Worked minutes at which one pair of hands can have done the chosen steps, each not before its earliest start. */
function handsFree(
  { net, time, fixed, now }: Shop,
  earliest: readonly number[],
  chosen: readonly number[],
  begins: readonly number[],
): number {
  // A machine may still stand in the set-up of something that is done.
  const ready = new Set([...fixed.keys()].map(k => net.steps[k]!.setUp)).add(-1);
  const setUps = new Set(chosen.map(k => net.steps[k]!.setUp).filter(setUp => !ready.has(setUp)));
  // Any step of the set-up may have had the machine made ready, not only a chosen one.
  const jobs = [
    ...[...setUps].map(k => ({ from: begins[k]!, minutes: Math.round(net.setUps[k]!.changeOver) })),
    ...chosen.map(k => ({ from: earliest[k]!, minutes: net.steps[k]!.minutes })),
  ].sort((a, b) => a.from - b.from);
  let done = time.worked(now);
  for (const { from, minutes } of jobs) done = Math.max(done, time.worked(from)) + minutes;
  return done;
}

/**
 * The window ahead counts only where no change-over comes into it: a longer step may end where a shorter
 * one would find its window shut.
 */
function soonest(shop: Shop, step: Step, from: number): number {
  let at: Step | undefined = step;
  while (at && at.setUp < 0) at = at.window && shop.net.steps[at.window.next];
  const { window: _window, ...alone } = step;
  return firstStart(shop, at ? alone : step, from) ?? from;
}

function insert(sorted: number[], index: number, key: readonly number[]): void {
  let k = sorted.length;
  while (k > 0 && key[sorted[k - 1]!]! > key[index]!) k--;
  sorted.splice(k, 0, index);
}
