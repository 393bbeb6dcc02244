import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type MachineOrder, orderMachines } from '../../src/setups/ordering/order-machines.ts';
import { rememberedOrder } from '../../src/setups/ordering/remembered-order.ts';

const LIMIT = { seed: 1, iterations: 60, rounds: 12, width: 50, states: 400 };

/** Set-ups on two machines, each change costing its own minutes, each set-up after some of those numbered below it. */
const problems = fc
  .integer({ min: 2, max: 8 })
  .chain(count =>
    fc.record({
      costs: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: count * count, maxLength: count * count }),
      first: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: count, maxLength: count }),
      machine: fc.array(fc.constantFrom('saw', 'drill'), { minLength: count, maxLength: count }),
      before: fc.array(fc.boolean(), { minLength: count * count, maxLength: count * count }),
    }),
  )
  .map(
    ({ costs, first, machine, before }): MachineOrder => ({
      count: machine.length,
      machine,
      change: (from, to) => (from < 0 ? first[to]! : costs[from * machine.length + to]!),
      before: machine.map((_, v) =>
        machine.flatMap((__, u) => (u < v && before[v * machine.length + u] ? [u] : [])),
      ),
    }),
  );

test('an order remembered is the one a new search gives, and what the caller does to it spoils nothing', () => {
  fc.assert(
    fc.property(fc.array(problems, { minLength: 1, maxLength: 6 }), list => {
      for (const problem of [...list, ...list]) {
        const fresh = orderMachines(problem, LIMIT);
        const found = rememberedOrder(problem, LIMIT);
        expect(found).toEqual(fresh);
        found.order.reverse();
        expect(rememberedOrder(problem, LIMIT)).toEqual(fresh);
      }
    }),
    { seed: 11, numRuns: 40 },
  );
});

test('one change-over, one precedence or one limit more is another question', () => {
  const two = (over: Partial<MachineOrder>): MachineOrder => ({
    count: 2,
    machine: ['saw', 'saw'],
    change: (from, to) => (from === 0 && to === 1 ? 5 : 1),
    before: [[], []],
    ...over,
  });
  expect(rememberedOrder(two({}), LIMIT)).toMatchObject({ order: [1, 0], value: 2 });
  expect(rememberedOrder(two({ before: [[], [0]] }), LIMIT)).toMatchObject({ order: [0, 1], value: 6 });
  expect(rememberedOrder(two({ change: () => 1 }), LIMIT).value).toBe(2);
  expect(() => rememberedOrder(two({ before: [[1], [0]] }), LIMIT)).toThrow(/circle/);
});
