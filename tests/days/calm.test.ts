import { describe, expect, it } from 'vitest';
import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { operation, setUp, setUps, workshop } from './making.ts';

const START = { start: '2026-11-23T08:00' };

const order = (...of: Parameters<typeof planDays>): string[] =>
  planDays(...of).days.flatMap(day => day.entries.map(e => e.operation));

describe('like work', () => {
  it('stands together where the finish allows it', () => {
    const operations = ['a', 'b', 'c'].flatMap(part => [
      operation(`mark ${part}`, 10, { kind: 'mark out' }),
      operation(`cut ${part}`, 10, { kind: 'cut', after: [`mark ${part}`] }),
    ]);
    expect(order(operations, setUps(), workshop(), START, FIRST_EFFORT)).toEqual([
      'mark a',
      'mark b',
      'mark c',
      'cut a',
      'cut b',
      'cut c',
    ]);
  });

  it('of one set-up is run before the machine is changed', () => {
    const operations = ['a', 'b', 'c', 'd'].map(id => operation(id, 10));
    const machine = setUps(setUp(1, 5, ['a', 'd']), setUp(2, 5, ['b', 'c']));
    expect(order(operations, machine, workshop(), START, FIRST_EFFORT)).toEqual(['a', 'd', 'b', 'c']);
  });

  it('gives way to what feeds a long wait', () => {
    const operations = [
      operation('mark a', 200, { kind: 'mark out' }),
      operation('mark b', 200, { kind: 'mark out' }),
      operation('coat', 30, { kind: 'finish', wait: 6 * 1440 }),
      operation('pack', 30, { kind: 'pack', after: ['coat', 'mark a', 'mark b'] }),
    ];
    expect(order(operations, setUps(), workshop(), START, FIRST_EFFORT)[0]).toBe('coat');
  });
});
