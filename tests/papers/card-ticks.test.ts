import { describe, expect, it } from 'vitest';
import { boxesOf, tickRows } from '../../src/papers/card-ticks.ts';
import { instanceMarks } from '../../src/papers/names.ts';
import { DERIVED } from '../drawings/bench-derived.ts';

describe('boxes to tick', () => {
  it('are one for each lay, however many passes it takes', () => {
    expect(boxesOf(['face', 'face, pass 2', 'face, pass 3', 'turned', 'turned, pass 2'])).toEqual([
      'face, 3 passes',
      'turned, 2 passes',
    ]);
    expect(boxesOf(['face side', 'turned', 'turned', 'turned'])).toEqual([
      'face side',
      'turned',
      'turned',
      'turned',
    ]);
    expect(boxesOf(['end 1, back edge', 'end 1, face edge'])).toEqual([
      'end 1, back edge',
      'end 1, face edge',
    ]);
  });

  it('stand in a row for each end of each part, cuts at one place told together', () => {
    const [, cheeks] = DERIVED.setups.setups;
    const marks = instanceMarks(DERIVED.piece);
    expect(tickRows(cheeks!, marks).map(r => r.label)).toEqual([
      'C1, end 1',
      'C1, end 2',
      'C2, end 1',
      'C2, end 2',
    ]);
    const twice = { ...cheeks!, runs: [...cheeks!.runs, cheeks!.runs[0]!] };
    expect(tickRows(twice, marks)[0]!.label).toBe('C1, end 1, 2 cuts');
  });
});
