import type { DayPlan, LocalTime } from '../results/days.ts';
import type { Effort } from '../results/solver.ts';
import { DAY_MINUTES, minuteOf } from './civil.ts';
import { generator } from './generator.ts';
import { better, firstOrders, improve, moved } from './improve.ts';
import type { Network } from './network.ts';
import { type Fixed, type Placement, place, type Shop } from './place.ts';
import type { WorkingTime } from './working-time.ts';

/** Ticks of the bench: what was done, when and how long it took. */
export interface Progress {
  now: LocalTime;
  done: Tick[];
  /** Operations in the order of the plan that was in force; what is left keeps it as far as it can. */
  order?: string[];
}

export interface Tick {
  operation: string;
  /** When the hands left it. */
  end: LocalTime;
  /** Actual minutes of hands-on work. */
  minutes: number;
}

/** The operations of a plan in the order in which they begin: what `Progress.order` asks for. */
export function orderOf(plan: DayPlan): string[] {
  const begins = new Map<string, string>();
  for (const entry of plan.days.flatMap(day => day.entries))
    if (!begins.has(entry.operation)) begins.set(entry.operation, entry.start);
  for (const wait of plan.waits) if (!begins.has(wait.operation)) begins.set(wait.operation, wait.start);
  return [...begins].sort((a, b) => (a[1] < b[1] ? -1 : a[1] > b[1] ? 1 : 0)).map(([id]) => id);
}

/** Steps that are over. An operation in several set-ups is ticked as one; its last step carries the time. */
export function ticked(net: Network, time: WorkingTime, progress: Progress): Map<number, Fixed> {
  const fixed = new Map<number, Fixed>();
  const ticks = new Map(progress.done.map(tick => [tick.operation, tick]));
  net.operations.forEach((operation, index) => {
    const tick = ticks.get(operation.id);
    const end = tick && minuteOf(tick.end);
    if (!tick || end === undefined || net.first[index]! < 0) return;
    const start = startOf(time, end, Math.round(tick.minutes));
    for (let k = net.first[index]!; k <= net.last[index]!; k++) {
      const lasts = k === net.last[index];
      fixed.set(k, lasts ? { start, end } : { start, end: start });
    }
  });
  return fixed;
}

/** Within working hours when it ended in them, else straight back from the end: people do work late. */
function startOf(time: WorkingTime, end: number, minutes: number): number {
  const inHours = time.spanEnd(end - 1) >= end && time.open(end - 1) === end - 1;
  return inHours && time.worked(end) >= minutes ? time.latestStart(end, minutes, false) : end - minutes;
}

/**
 * The rest in the order it had. Only where that misses a window or the deadline are steps moved, one at a
 * time, and only moves that gain are kept, so that the maker finds the plan as it was left.
 */
export function keepOrder(
  shop: Shop,
  wanted: readonly string[],
  deadline: number | undefined,
  earliest: readonly number[],
  effort: Effort,
): { found: Placement; moved: string[] } {
  const { net } = shop;
  const rank = new Map(wanted.map((id, k) => [id, k]));
  // What the old plan did not know goes where the slack rule would put it: before the first step it must precede.
  const order = net.steps
    .map(step => step.index)
    .sort((a, b) => placeIn(rank, net, a) - placeIn(rank, net, b) || a - b);
  const kept = place(shop, order);
  const limit = deadline === undefined ? Number.POSITIVE_INFINITY : deadline + DAY_MINUTES;
  const good = (plan: Placement): boolean => plan.late.length === 0 && plan.finish < limit;
  let found = kept;
  if (!good(kept)) {
    found = fewMoves(shop, kept, good, effort);
    if (!good(found)) {
      const fresh = firstOrders(shop, earliest).map(o => place(shop, o));
      const best = improve(
        shop,
        fresh.reduce((a, b) => (better(b, a) < 0 ? b : a)),
        0,
        effort,
      );
      if (better(best, found) < 0 && (good(best) || best.late.length < found.late.length)) found = best;
    }
  }
  return { found, moved: displaced(shop, wanted, found) };
}

function placeIn(rank: ReadonlyMap<string, number>, net: Network, step: number): number {
  const { operation } = net.steps[step]!;
  const own = rank.get(net.operations[operation]!.id);
  if (own !== undefined) return own;
  const after = net.steps[net.last[operation]!]!.following.map(
    next => rank.get(net.operations[net.steps[next]!.operation]!.id) ?? Number.POSITIVE_INFINITY,
  );
  return Math.min(rank.size, ...after) - 0.5;
}

/** Moves tried before the one that gains most is taken. */
const ROUND = 12;

/** The one move of a round that gains most, again and again, until the plan is good or the effort is spent. */
function fewMoves(
  shop: Shop,
  kept: Placement,
  good: (plan: Placement) => boolean,
  effort: Effort,
): Placement {
  let best = kept;
  const random = generator(effort.seed);
  for (let left = effort.iterations; left > 0 && !good(best); left -= ROUND) {
    const tries = Array.from({ length: Math.min(ROUND, left) }, () => place(shop, moved(shop, best, random)));
    const next = tries.reduce((a, b) => (better(b, a) < 0 ? b : a));
    if (better(next, best) < 0) best = next;
  }
  return best;
}

/**
 * Operations out of their old order: those outside a longest run that still stands in the old order
 * (longest increasing subsequence), so that one step moved far counts as one.
 */
function displaced({ net, fixed }: Shop, wanted: readonly string[], plan: Placement): string[] {
  const rank = new Map(wanted.map((id, k) => [id, k]));
  const begins = [
    ...new Set(
      plan.sequence
        .filter(k => !fixed.has(k))
        .sort((a, b) => plan.start[a]! - plan.start[b]!)
        .map(k => net.operations[net.steps[k]!.operation]!.id),
    ),
  ].filter(id => rank.has(id));
  const length: number[] = [];
  const from: number[] = [];
  begins.forEach((id, k) => {
    length[k] = 1;
    from[k] = -1;
    for (let j = 0; j < k; j++) {
      if (rank.get(begins[j]!)! < rank.get(id)! && length[j]! + 1 > length[k]!) {
        length[k] = length[j]! + 1;
        from[k] = j;
      }
    }
  });
  const keep = new Set<string>();
  let k = length.indexOf(Math.max(0, ...length));
  while (k >= 0) {
    keep.add(begins[k]!);
    k = from[k]!;
  }
  return begins.filter(id => !keep.has(id));
}
