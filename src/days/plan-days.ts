import type { DayPlan, LocalTime } from '../results/days.ts';
import type { Operation } from '../results/operations.ts';
import type { SetUpPlan } from '../results/setups.ts';
import type { Effort } from '../results/solver.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { lowerBound } from './bound.ts';
import { calmed } from './calm.ts';
import { isoDate, minuteOf } from './civil.ts';
import { better, firstOrders, holdUp, improve } from './improve.ts';
import { network, type Reading, wholeMinutes } from './network.ts';
import { type Fixed, type Placement, place, type Shop } from './place.ts';
import { keepOrder, type Progress, ticked } from './progress.ts';
import { daysOf, deadlineOf, entriesOf, waitsOf } from './report.ts';
import { dropHopelessWindows, missed, type Trouble, tooLong } from './trouble.ts';
import { NoWorkingHours, type WorkingTime, workingTime } from './working-time.ts';

export interface DayOptions {
  start: LocalTime;
  /** ISO date on which the piece is to be ready. */
  deadline?: string;
  /** What is done by now; the rest is planned again with as few moves as can be. */
  progress?: Progress;
}

/** Orders tried before the plan is shown at once. */
export const FIRST_EFFORT: Effort = { seed: 1, iterations: 24 };

/**
 * Lays the operations into the working calendar of one maker with one pair of hands.
 * Hands-on work lies in working hours only; waits run on through nights and days off; what must not be
 * broken off lies in one span; a machine is made ready once for each time its set-up is taken. The finish
 * is the end of the last work and the last wait. Minutes are whole.
 * @returns a plan with its bound; status `none` with the reason in `trouble` when nothing can be laid.
 */
export function planDays(
  operations: Operation[],
  setUps: SetUpPlan,
  workshop: Workshop,
  options: DayOptions,
  effort: Effort,
): DayPlan {
  const start = minuteOf(options.start);
  const now = options.progress ? minuteOf(options.progress.now) : start;
  if (start === undefined || now === undefined)
    return nothing(options.start, 'the start is no date', 'write it as 2026-11-25T08:00');
  const beyond = operations.find(o => !isPlannable(o));
  if (beyond)
    return nothing(
      options.start,
      `"${beyond.title}" has no length of time that can be planned`,
      'mend its sizes, minutes or wait',
      beyond.id,
    );
  if (options.deadline !== undefined && minuteOf(options.deadline) === undefined)
    return nothing(options.start, 'the deadline is no date', 'write it as 2026-12-24');
  try {
    return plan(
      operations,
      setUps,
      workingTime(workshop.calendar, start),
      start,
      Math.max(start, now),
      options,
      effort,
    );
  } catch (error) {
    if (!(error instanceof NoWorkingHours)) throw error;
    return nothing(
      options.start,
      error.message,
      'enter working hours in the workshop file, or fewer days off',
    );
  }
}

/** Ten years: what is longer is a slip of the pen. */
const LONGEST_MINUTES = 10 * 366 * 1440;

function isPlannable({ handsOn, wait, window }: Operation): boolean {
  const spells = [handsOn.low, handsOn.likely, handsOn.high, wait?.minutes ?? 0, window?.minutes ?? 0];
  return spells.every(m => Number.isFinite(m) && m >= 0 && m <= LONGEST_MINUTES);
}

function nothing(start: LocalTime, what: string, mend: string, operation = ''): DayPlan {
  const day = start.slice(0, 10);
  return {
    status: 'none',
    value: 0,
    bound: 0,
    start,
    days: [],
    waits: [],
    finish: { low: day, likely: day, high: day },
    handsOnMinutes: { low: 0, likely: 0, high: 0 },
    critical: [],
    trouble: [{ operation, what, mend }],
  };
}

function plan(
  operations: readonly Operation[],
  setUps: SetUpPlan,
  time: WorkingTime,
  start: number,
  now: number,
  options: DayOptions,
  effort: Effort,
): DayPlan {
  const shopFor = (reading: Reading): { shop: Shop; trouble: Trouble[] } => {
    const net = network(operations, setUps, reading);
    const fixed: ReadonlyMap<number, Fixed> = options.progress
      ? ticked(net, time, options.progress)
      : new Map();
    const shop = { net, time, now, fixed };
    return { shop, trouble: [...tooLong(shop), ...dropHopelessWindows(shop, now)] };
  };
  const { shop, trouble } = shopFor('likely');
  const bound = lowerBound(shop);
  const { found, moved } = search(shop, bound, start, options, effort);

  const entries = entriesOf(shop, found);
  const finishDate = isoDate(found.finish);
  const other = (reading: Reading): { finish: number; minutes: number } => {
    const { shop: own } = shopFor(reading);
    const again = place(own, found.sequence);
    return { finish: again.finish, minutes: handsOn(operations, reading) + again.changeOvers };
  };
  const [low, high] = [other('low'), other('high')];
  const value = time.worked(found.finish);
  // A plan that misses a window may well be done before one that keeps it.
  const least =
    found.late.length > 0 ? Math.min(value, time.worked(bound.finish)) : time.worked(bound.finish);
  return {
    status: value <= least && found.late.length === 0 && trouble.length === 0 ? 'proved best' : 'within',
    value,
    bound: least,
    start: options.start,
    days: daysOf(shop, entries, start, found.finish),
    waits: waitsOf(shop.net, found, entries),
    finish: {
      // A shorter task can make a span close badly and the whole end later; the band never crosses.
      low: isoDate(Math.min(low.finish, found.finish)),
      likely: finishDate,
      high: isoDate(Math.max(high.finish, found.finish)),
    },
    handsOnMinutes: {
      low: low.minutes,
      likely: handsOn(operations, 'likely') + found.changeOvers,
      high: high.minutes,
    },
    ...(options.deadline ? { deadline: deadlineOf(finishDate, options.deadline) } : {}),
    critical: [...new Set(holdUp(shop, found).map(k => operations[shop.net.steps[k]!.operation]!.id))],
    ...(moved ? { moved } : {}),
    trouble: [
      ...shop.net.ring.map(index => ({
        operation: operations[index]!.id,
        what: 'waits for itself through other operations; it is left out',
        mend: 'see the fault that names the ring',
      })),
      ...trouble,
      ...missed(shop.net, found),
    ],
  };
}

function search(
  shop: Shop,
  bound: { finish: number; earliest: number[] },
  start: number,
  options: DayOptions,
  effort: Effort,
): { found: Placement; moved?: string[] } {
  if (options.progress?.order) {
    const deadline = options.deadline === undefined ? undefined : minuteOf(options.deadline.slice(0, 10));
    return keepOrder(shop, options.progress.order, deadline, bound.earliest, effort);
  }
  const begun = firstOrders(shop, bound.earliest).map(order => place(shop, order));
  const first = begun.reduce((a, b) => (better(b, a) < 0 ? b : a));
  return { found: calmed(shop, improve(shop, first, Math.max(start, bound.finish), effort), begun) };
}

const handsOn = (operations: readonly Operation[], reading: Reading): number =>
  operations.reduce((sum, operation) => sum + wholeMinutes(operation.handsOn, reading), 0);
