import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayStretches } from '../../src/drawings/day-stretches.ts';
import type { DayEntry } from '../../src/results/days.ts';

const clock = (minute: number): string =>
  `2026-11-30T${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;

/** Entries one after another from 8:00, each `[operation, minutes]`. */
function day(...work: [string, number][]): DayEntry[] {
  let at = 480;
  return work.map(([operation, minutes]) => {
    const start = at;
    at += minutes;
    const of = work.filter(([o]) => o === operation).length;
    return {
      operation,
      title: `Do ${operation}`,
      start: clock(start),
      end: clock(at),
      minutes,
      piece: { part: 1, of, marks: ['A'] },
    };
  });
}

describe('stretches of a day', () => {
  it('are the entries as they stand while they fit, a go by itself with what is run in it', () => {
    expect(dayStretches(day(['a', 10], ['b', 5], ['a', 20]), 3).map(s => s.title)).toEqual([
      'Do a, A',
      'Do b',
      'Do a, A',
    ]);
  });
  it('put goes of one operation together, then the shortest neighbours', () => {
    expect(dayStretches(day(['a', 10], ['a', 20], ['b', 5], ['c', 7]), 3)).toMatchObject([
      { title: 'Do a', minutes: 30, start: clock(480), end: clock(510) },
      { title: 'Do b', minutes: 5 },
      { title: 'Do c', minutes: 7 },
    ]);
    expect(dayStretches(day(['a', 60], ['b', 5], ['c', 7], ['d', 90]), 3).map(s => s.title)).toEqual([
      'Do a',
      'Do b and 1 more',
      'Do d',
    ]);
  });
  it('keep every minute, in order, in no more than asked for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom('a', 'b', 'c', 'd'), fc.integer({ min: 1, max: 9 })), {
          minLength: 1,
          maxLength: 40,
        }),
        fc.integer({ min: 1, max: 12 }),
        (work, most) => {
          const entries = day(...work);
          const rows = dayStretches(entries, most);
          expect(rows.length).toBeLessThanOrEqual(most);
          expect(rows.reduce((n, r) => n + r.minutes, 0)).toBe(entries.reduce((n, e) => n + e.minutes, 0));
          expect(rows[0]!.start).toBe(entries[0]!.start);
          rows.slice(1).forEach((row, i) => {
            expect(row.start >= rows[i]!.end).toBe(true);
          });
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});
