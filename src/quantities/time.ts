/** Spells of work in minutes: `45 min`, `2.5 h`, `3 d` (days of 24 h, for waits). */

import type { Parsed } from './length.ts';
import { roundTo } from './length.ts';

const PER: Record<string, number> = {
  min: 1,
  minutes: 1,
  h: 60,
  hours: 60,
  d: 1440,
  days: 1440,
  weeks: 10080,
};

export function parseMinutes(input: string): Parsed<number> {
  const match = /^(\d+(?:\.\d+)?)\s*(min|minutes|h|hours|d|days|weeks)?$/.exec(input.trim());
  return match
    ? { ok: true, value: Number(match[1]) * PER[match[2] ?? 'min']! }
    : {
        ok: false,
        fault: `"${input}" is not a length of time`,
        expected: 'a time such as 45 min, 2.5 h or 3 d',
      };
}

/** `45 min`, `3 h 20`, `2 d 4 h`. */
export function formatMinutes(minutes: number): string {
  const total = Math.round(minutes);
  if (total < 60) return `${total} min`;
  if (total < 48 * 60)
    return total % 60 === 0 ? `${total / 60} h` : `${Math.floor(total / 60)} h ${total % 60}`;
  const days = Math.floor(total / 1440);
  const hours = Math.round((total % 1440) / 60);
  return hours === 0 ? `${days} d` : `${days} d ${hours} h`;
}

export const formatHours = (minutes: number): string => `${roundTo(minutes / 60, 1)} h`;
