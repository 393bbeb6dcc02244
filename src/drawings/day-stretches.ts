import { type DayEntry, goWords, type LocalTime } from '../results/days.ts';
import { minutesOf } from './clock.ts';

/** Work on one end of a day's rod: one go of an operation, or several that follow each other. */
export interface DayStretch {
  title: string;
  start: LocalTime;
  end: LocalTime;
  /** Minutes of hands' time in it. */
  minutes: number;
  /** Operations in it, each once, in order. */
  operations: string[];
}

/**
 * A day's entries as at most `most` stretches: goes of one operation that follow each other stand together; while
 * there are more, the two neighbours that are shortest together, first those without a rest between them.
 *
 * @param entries in order of time
 */
export function dayStretches(entries: readonly DayEntry[], most: number): DayStretch[] {
  const rows: DayEntry[][] = [];
  for (const entry of entries) {
    const last = rows.at(-1);
    if (last && last[0]!.operation === entry.operation) last.push(entry);
    else rows.push([entry]);
  }
  while (rows.length > Math.max(1, most)) {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i + 1 < rows.length; i++) {
      const rest = minutesOf(rows[i + 1]![0]!.start) - minutesOf(rows[i]!.at(-1)!.end);
      const cost = minutesIn(rows[i]!) + minutesIn(rows[i + 1]!) + (rest > 0 ? 1440 : 0);
      if (cost < least) [best, least] = [i, cost];
    }
    rows.splice(best, 2, [...rows[best]!, ...rows[best + 1]!]);
  }
  return rows.map(row => {
    const operations = [...new Set(row.map(e => e.operation))];
    const [first] = row;
    const go = row.length === 1 ? goWords(first!) : '';
    const others = operations.length - 1;
    return {
      title: `${first!.title}${go ? `, ${go}` : ''}${others > 0 ? ` and ${others} more` : ''}`,
      start: first!.start,
      end: row.at(-1)!.end,
      minutes: minutesIn(row),
      operations,
    };
  });
}

const minutesIn = (row: readonly DayEntry[]): number => row.reduce((n, e) => n + e.minutes, 0);
