import type { Solved } from './solver.ts';

/** Local wall-clock time of the shop, ISO 8601 without zone: `2026-11-25T08:00`. */
export type LocalTime = string;

export interface DayEntry {
  operation: string;
  title: string;
  start: LocalTime;
  end: LocalTime;
  minutes: number;
  /** An operation done in several goes (over days, or from set-up to set-up): go k of n, and what is run in it. */
  piece: { part: number; of: number; marks?: string[] };
  /** Set-up it runs in, and the minutes of this entry that make the machine ready for it. */
  setUp?: string;
  changeOver?: number;
  /** Done: a fact, not a plan. */
  done?: boolean;
}

export interface WaitEntry {
  operation: string;
  what: 'clamp' | 'dry' | 'cure' | 'rest' | 'delivery' | 'outwork';
  start: LocalTime;
  end: LocalTime;
  /** Operations that can be done meanwhile. */
  meanwhile: string[];
}

export interface Day {
  /** ISO date. */
  date: string;
  working: { from: LocalTime; to: LocalTime }[];
  entries: DayEntry[];
}

/** Value and bound are working minutes from start to finish; the dates of `finish` are ISO dates. */
export interface DayPlan extends Solved {
  start: LocalTime;
  days: Day[];
  waits: WaitEntry[];
  finish: { low: string; likely: string; high: string };
  handsOnMinutes: { low: number; likely: number; high: number };
  deadline?: { date: string; kept: boolean; daysLate: number };
  critical: string[];
  /** Operations that changed their place among the rest when the plan was made again. */
  moved?: string[];
  /** Windows that the calendar cannot keep, and what would keep them. */
  trouble: { operation: string; what: string; mend: string }[];
}

/** Which go of an operation an entry is, in few words; empty where it is done in one. */
export function goWords({ piece }: DayEntry): string {
  if (piece.of === 1) return '';
  const { marks } = piece;
  if (!marks || marks.length === 0) return `part ${piece.part} of ${piece.of}`;
  return marks.length <= 6
    ? marks.join(', ')
    : `${marks.slice(0, 5).join(', ')} and ${marks.length - 5} more`;
}
