import type { LocalTime } from '../results/days.ts';

const DAY = 1440;

/** Minutes since the first of January 1970 on the shop's own clock (no zone, no daylight saving). */
export function minutesOf(time: LocalTime): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/.exec(time);
  if (!match) return Number.NaN;
  const [, year, month, day, hour = '0', minute = '0'] = match;
  return Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute)) / 60_000;
}

export const dayNumber = (time: LocalTime): number => Math.floor(minutesOf(time) / DAY);

/** ISO date of a day number. */
export const isoDay = (day: number): string => new Date(day * DAY * 60_000).toISOString().slice(0, 10);

/** 1 Monday to 7 Sunday. */
export const weekday = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;

/** Share of the day, 0 to 1, at a local time. */
export const shareOfDay = (time: LocalTime): number => minutesOf(time) / DAY - dayNumber(time);
