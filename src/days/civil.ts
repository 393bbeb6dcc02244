/** Wall-clock time of the shop as whole minutes, without time zones: minute 0 is 1970-01-01T00:00. */

export const DAY_MINUTES = 1440;

const LOCAL = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::\d{2})?)?$/;

/** Minutes of `2026-11-25T08:00` or of midnight on `2026-11-25`; undefined when it is no date of the calendar. */
export function minuteOf(text: string): number | undefined {
  const match = LOCAL.exec(text.trim());
  if (!match) return undefined;
  const [year, month, day, hour, minute] = match.slice(1).map(digits => Number(digits ?? 0));
  const minutes = Date.UTC(year!, month! - 1, day!, hour!, minute!) / 60_000;
  // The calendar rolls 31 February over to March; a date that does not come back as it went in is none.
  return localTime(minutes).startsWith(text.trim().slice(0, 16)) ? minutes : undefined;
}

/** `2026-11-25T08:00`. */
export const localTime = (minute: number): string => new Date(minute * 60_000).toISOString().slice(0, 16);

/** `2026-11-25`. */
export const isoDate = (minute: number): string => localTime(minute).slice(0, 10);

export const dayNumber = (minute: number): number => Math.floor(minute / DAY_MINUTES);

/** 1 Monday to 7 Sunday. Day 0 of the count was a Thursday. */
export const weekday = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1;
