import type { Calendar } from '../workshop/workshop.ts';
import { DAY_MINUTES, dayNumber, isoDate, weekday } from './civil.ts';

/**
 * Two scales of time over one calendar, both in whole minutes: the wall clock, on which waits run, and
 * worked minutes since the plan's start, on which hands run. Spans are laid out as far as asked for.
 */
export interface WorkingTime {
  /** Minutes worked from the start of the plan until `wall`, if every working minute is used. */
  worked(wall: number): number;
  /** The earliest working moment at or after `wall`. */
  open(wall: number): number;
  /** The earliest moment at or after `wall` from which `minutes` fit before the next break. */
  openFor(wall: number, minutes: number): number;
  /** When `minutes` of work begun at `wall` end, breaks left out. */
  end(wall: number, minutes: number): number;
  /** The moment at which so many minutes have been worked. */
  wallOf(worked: number): number;
  /** The latest start from which `minutes` of work end by `wall`; `whole` keeps them in one span. */
  latestStart(wall: number, minutes: number, whole: boolean): number;
  /** Longest stretch without a break in the working week. */
  longestSpan: number;
  /** Working spans of one civil day. */
  spansOf(day: number): Span[];
  /** The end of the span in which `wall` lies. */
  spanEnd(wall: number): number;
}

export interface Span {
  from: number;
  to: number;
}

/** Beyond this many days without an answer the calendar is taken to hold no work at all. */
const LONGEST_PLAN_DAYS = 20_000;

export class NoWorkingHours extends Error {}

/** Spans of a weekday in order, overlapping or touching ones joined. */
function tidy(spans: readonly Span[]): Span[] {
  const kept: Span[] = [];
  for (const span of spans.filter(s => s.to > s.from).sort((a, b) => a.from - b.from)) {
    const last = kept.at(-1);
    if (last && span.from <= last.to) last.to = Math.max(last.to, span.to);
    else kept.push({ from: Math.max(0, span.from), to: Math.min(DAY_MINUTES, span.to) });
  }
  return kept;
}

/**
 * @throws NoWorkingHours when the week holds no working minute, or when days off use up every day asked for.
 */
export function workingTime(calendar: Calendar, start: number): WorkingTime {
  const week = [1, 2, 3, 4, 5, 6, 7].map(day => tidy(calendar.week[day] ?? []));
  const off = new Set(calendar.daysOff);
  const longestSpan = Math.max(0, ...week.flat().map(s => s.to - s.from));
  if (longestSpan === 0) throw new NoWorkingHours('the working week has no hours');

  const firstDay = dayNumber(start);
  const from: number[] = [];
  const to: number[] = [];
  /** Minutes worked before each span. */
  const before: number[] = [];
  /** Index of the first span on or after each day. */
  const spanOfDay: number[] = [];
  let total = 0;

  const spansOf = (day: number): Span[] => {
    const spans = week[weekday(day) - 1]!;
    if (spans.length === 0 || off.has(isoDate(day * DAY_MINUTES))) return [];
    return spans.map(s => ({ from: day * DAY_MINUTES + s.from, to: day * DAY_MINUTES + s.to }));
  };

  function addDay(): void {
    const day = firstDay + spanOfDay.length;
    if (spanOfDay.length > LONGEST_PLAN_DAYS) throw new NoWorkingHours('no working hours are left');
    spanOfDay.push(from.length);
    for (const span of spansOf(day)) {
      const begin = Math.max(span.from, start);
      if (begin >= span.to) continue;
      from.push(begin);
      to.push(span.to);
      before.push(total);
      total += span.to - begin;
    }
  }

  /** Index of the first span that ends after `wall`. */
  function spanAt(wall: number): number {
    const day = Math.max(0, dayNumber(wall) - firstDay);
    while (spanOfDay.length <= day) addDay();
    let index = spanOfDay[day]!;
    for (;;) {
      while (index >= from.length) addDay();
      if (to[index]! > wall) return index;
      index++;
    }
  }

  /** Index of the span in which the given worked minute is reached (not merely begun). */
  function spanWorked(worked: number): number {
    while (total < worked) addDay();
    let low = 0;
    let high = from.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (before[middle]! < worked) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  const open = (wall: number): number => Math.max(wall, from[spanAt(wall)]!);
  const worked = (wall: number): number => {
    const index = spanAt(wall);
    return before[index]! + Math.max(0, wall - from[index]!);
  };
  const wallOf = (minutes: number): number => {
    if (minutes <= 0) return start;
    const index = spanWorked(minutes);
    return from[index]! + minutes - before[index]!;
  };

  return {
    worked,
    open,
    openFor(wall, minutes) {
      if (minutes > longestSpan) return open(wall);
      let index = spanAt(wall);
      for (;;) {
        const begin = Math.max(wall, from[index]!);
        if (begin + minutes <= to[index]!) return begin;
        index++;
        while (index >= from.length) addDay();
      }
    },
    end(wall, minutes) {
      const index = spanAt(wall);
      const begin = Math.max(wall, from[index]!);
      return begin + minutes <= to[index]! ? begin + minutes : wallOf(worked(wall) + minutes);
    },
    wallOf,
    latestStart(wall, minutes, whole) {
      const until = worked(wall);
      if (until < minutes) return start;
      if (!whole || minutes > longestSpan) return open(wallOf(until - minutes));
      for (let k = spanWorked(until); k >= 0; k--) {
        const close = Math.min(wall, to[k]!);
        if (close - minutes >= from[k]!) return close - minutes;
      }
      return start;
    },
    longestSpan,
    spansOf,
    spanEnd: wall => to[spanAt(wall)]!,
  };
}
