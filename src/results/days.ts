import type { Solved } from './solver.ts';

/** Local wall-clock time of the shop, ISO 8601 without zone: `2026-11-25T08:00`. */
export type LocalTime = string;

export interface DayEntry {
  operation: string;
  title: string;
  start: LocalTime;
  end: LocalTime;
  minutes: number;
  /** A long operation is split over days: part k of n. */
  piece: { part: number; of: number };
  /** Set-up it runs in, and the minutes of this entry that make the machine ready for it. */
  setUp?: string;
  changeOver?: number;
  /** Done: a fact, not a plan. */
  done?: boolean;
}

export interface WaitEntry {
  operation: string;
  what: 'clamp' | 'dry' | 'cure' | 'rest' | 'delivery';
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
