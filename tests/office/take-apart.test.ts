import { describe, expect, test } from 'vitest';
import { boxSize } from '../../src/geometry/box.ts';
import { offsetsAt, spreadBounds, takingApart } from '../../src/office/ink/take-apart.ts';
import { bench } from './fixtures/bench.ts';

const steps = takingApart(bench);

describe('taking apart', () => {
  test('goes backwards through the glue-ups', () => {
    expect(steps.map(s => s.name)).toEqual(['Bench', 'Seat', 'Right end frame', 'Left end frame']);
  });

  test('starts whole and ends with every leg out of its frame', () => {
    expect(offsetsAt(steps, 0).size).toBe(0);
    const all = offsetsAt(steps, 1);
    expect(all.get('leg')!.y).toBeLessThan(-100);
    expect(all.get('leg_y')!.y).toBeGreaterThan(100);
    expect(all.get('board_1')!.z).toBeGreaterThan(0);
  });

  test('one glue-up opens after another', () => {
    const half = offsetsAt(steps, 1 / steps.length);
    expect(half.get('board_1')).toEqual(half.get('board_2'));
    expect(half.get('leg')).toEqual(half.get('lowRail'));
  });

  test('nothing goes through the floor', () => {
    for (let share = 0; share <= 1; share += 0.05)
      for (const by of offsetsAt(steps, share).values()) expect(by.z).toBeGreaterThanOrEqual(0);
  });

  test('the sheet is told how much room it takes', () => {
    const closed = boxSize(bench.bounds);
    const open = boxSize(spreadBounds(bench, offsetsAt(steps, 1)));
    expect(open.x).toBeGreaterThan(closed.x);
    expect(spreadBounds(bench, new Map())).toEqual(bench.bounds);
  });

  test('a piece of one part cannot be taken apart', () => {
    const one = bench.instances.slice(0, 1);
    expect(takingApart({ ...bench, instances: one, assemblies: [], joints: [] })).toEqual([]);
  });

  test('loose parts without a glue-up come off first', () => {
    const loose = { ...bench, assemblies: bench.assemblies.slice(0, 2) };
    expect(takingApart(loose)[0]!.name).toBe('Loose parts');
  });
});
