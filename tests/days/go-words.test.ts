import { describe, expect, it } from 'vitest';
import { type DayEntry, goWords } from '../../src/results/days.ts';

const entry = (piece: DayEntry['piece']): DayEntry => ({
  operation: 'cut',
  title: 'Cut',
  start: '2026-11-30T08:00',
  end: '2026-11-30T08:10',
  minutes: 10,
  piece,
});

describe('words for one go of an operation', () => {
  it('says nothing of one done at a time', () => {
    expect(goWords(entry({ part: 1, of: 1, marks: ['A1'] }))).toBe('');
  });
  it('names what is run in it', () => {
    expect(goWords(entry({ part: 1, of: 3, marks: ['A1', 'A2'] }))).toBe('A1, A2');
    expect(goWords(entry({ part: 1, of: 3, marks: ['A', 'B', 'C', 'D', 'E', 'F', 'G'] }))).toBe(
      'A, B, C, D, E and 2 more',
    );
  });
  it('counts where no mark is known', () => {
    expect(goWords(entry({ part: 2, of: 3 }))).toBe('part 2 of 3');
  });
});
