import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDays } from '../../src/days/check-days.ts';
import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { orderOf } from '../../src/days/progress.ts';
import type { Operation } from '../../src/results/operations.ts';
import { operation, setUp, setUps, workshop } from './making.ts';

const START = '2026-11-23T08:00';

const jobs = fc
  .array(
    fc.record({
      minutes: fc.integer({ min: 1, max: 150 }),
      wait: fc.option(fc.integer({ min: 1, max: 2000 }), { nil: undefined }),
      whole: fc.boolean(),
      needs: fc.array(fc.nat(), { maxLength: 2 }),
    }),
    { minLength: 2, maxLength: 16 },
  )
  .map(list =>
    list.map(
      (o, k): Operation =>
        operation(`o${k}`, o.minutes, {
          kind: o.whole ? 'glue up' : 'cut',
          after: k === 0 ? [] : [...new Set(o.needs.map(n => `o${n % k}`))],
          ...(o.wait === undefined ? {} : { wait: o.wait }),
        }),
    ),
  );

const cutsIn = (operations: readonly Operation[], from: number): string[] =>
  operations.filter((o, k) => o.kind === 'cut' && k % 2 === from).map(o => o.id);

describe('ticks at random', () => {
  it('give plans the checker accepts, in the old order when there is no deadline to save', () => {
    fc.assert(
      fc.property(jobs, fc.nat(), fc.array(fc.integer({ min: -20, max: 60 })), (operations, cut, drift) => {
        const machine = setUps(setUp(1, 10, cutsIn(operations, 0)), setUp(2, 5, cutsIn(operations, 1)));
        const first = planDays(operations, machine, workshop(), { start: START }, FIRST_EFFORT);
        const order = orderOf(first);
        const ended = new Map<string, string>();
        for (const e of first.days.flatMap(day => day.entries)) ended.set(e.operation, e.end);
        const count = cut % order.length;
        const done = order.slice(0, count).map((id, k) => ({
          operation: id,
          end: ended.get(id)!,
          minutes: Math.max(1, operations.find(o => o.id === id)!.handsOn.likely + (drift[k] ?? 0)),
        }));
        const now =
          done
            .map(d => d.end)
            .sort()
            .at(-1) ?? START;
        const asked = { start: START, progress: { now, done, order } };
        const again = planDays(operations, machine, workshop(), asked, FIRST_EFFORT);
        expect(checkDays(operations, machine, workshop(), asked, again)).toEqual([]);
        expect(again.value).toBeGreaterThanOrEqual(again.bound);
        const left = (plan: typeof again) => orderOf(plan).filter(id => !done.some(d => d.operation === id));
        for (const id of again.moved ?? []) expect(left(again)).toContain(id);
        if (done.length === 0) expect(left(again)).toEqual(order);
      }),
      { numRuns: 150, seed: 20261129 },
    );
  });
});
