import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LinearMaster } from '../../src/cutting/columns/linear-master.ts';
import { knapsack } from '../../src/cutting/lengths/knapsack.ts';
import { boundL2 } from '../../src/cutting/lengths/length-bounds.ts';
import { type LengthsProblem, solveLengths } from '../../src/cutting/lengths/solve-lengths.ts';

/** Cheapest cost by trying everything: each piece in turn onto every open or new stock. */
function exhaustive({ lengths, demands, stocks }: LengthsProblem): number {
  const pieces: number[] = [];
  lengths.forEach((_, i) => {
    for (let k = 0; k < demands[i]!; k++) pieces.push(i);
  });
  const open: { stock: number; room: number }[] = [];
  const used = stocks.map(() => 0);
  let best = Infinity;
  const visit = (at: number, cost: number): void => {
    if (cost >= best) return;
    if (at === pieces.length) {
      best = cost;
      return;
    }
    const length = lengths[pieces[at]!]!;
    for (const bar of open) {
      if (bar.room < length || stocks[bar.stock]!.serves?.[pieces[at]!] === false) continue;
      bar.room -= length;
      visit(at + 1, cost);
      bar.room += length;
    }
    stocks.forEach((stock, s) => {
      if (used[s]! >= stock.limit || stock.length < length || stock.serves?.[pieces[at]!] === false) return;
      used[s]! += 1;
      open.push({ stock: s, room: stock.length - length });
      visit(at + 1, cost + stock.cost);
      open.pop();
      used[s]! -= 1;
    });
  };
  visit(0, 0);
  return best;
}

const problems = fc
  .record({
    rows: fc.uniqueArray(
      fc.record({ length: fc.integer({ min: 10, max: 99 }), demand: fc.integer({ min: 1, max: 2 }) }),
      {
        minLength: 1,
        maxLength: 5,
        selector: row => row.length,
      },
    ),
    stocks: fc.array(
      fc.record({
        length: fc.integer({ min: 60, max: 200 }),
        cost: fc.integer({ min: 1, max: 12 }),
        limit: fc.constantFrom(1, 2, Infinity),
      }),
      { maxLength: 3 },
    ),
    main: fc.record({ length: fc.integer({ min: 100, max: 200 }), cost: fc.integer({ min: 1, max: 12 }) }),
  })
  .map(({ rows, stocks, main }): LengthsProblem => {
    const falling = [...rows].sort((a, b) => b.length - a.length);
    return {
      lengths: Int32Array.from(falling, row => row.length),
      demands: Int32Array.from(falling, row => row.demand),
      stocks: [...stocks, { ...main, limit: Infinity }],
    };
  });

test('small problems: the bound never exceeds the true least cost, the value never lies below it', () => {
  let proved = 0;
  fc.assert(
    fc.property(problems, problem => {
      const least = exhaustive(problem);
      const found = solveLengths(problem, { seed: 1, trials: 4, nodes: 60 });
      expect(found.value).toBeGreaterThanOrEqual(least);
      expect(found.bound).toBeLessThanOrEqual(least);
      const cut = new Int32Array(problem.lengths.length);
      for (const { way, times } of found.chosen) {
        const used = way.items.reduce((sum, item, k) => sum + problem.lengths[item]! * way.counts[k]!, 0);
        expect(used).toBeLessThanOrEqual(problem.stocks[way.stock]!.length);
        way.items.forEach((item, k) => {
          cut[item]! += times * way.counts[k]!;
        });
      }
      problem.demands.forEach((demand, i) => {
        expect(cut[i]!).toBeGreaterThanOrEqual(demand);
      });
      if (found.status === 'proved best') {
        proved += 1;
        expect(found.value).toBe(least);
      }
    }),
    { seed: 11, numRuns: 200 },
  );
  expect(proved).toBeGreaterThan(150);
});

test('the best fill, against every fill', () => {
  const rows = fc.array(
    fc.record({
      length: fc.integer({ min: 1, max: 30 }),
      worth: fc.integer({ min: -3, max: 40 }),
      most: fc.integer({ min: 0, max: 3 }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  fc.assert(
    fc.property(rows, fc.integer({ min: 5, max: 80 }), (items, capacity) => {
      const every = (at: number, room: number): number => {
        const item = items[at];
        if (!item) return 0;
        let best = 0;
        for (let k = 0; k <= item.most && k * item.length <= room; k++)
          best = Math.max(best, k * item.worth + every(at + 1, room - k * item.length));
        return best;
      };
      const lengths = Int32Array.from(items, item => item.length);
      const worth = Float64Array.from(items, item => item.worth);
      const most = Int32Array.from(items, item => item.most);
      const least = every(0, capacity);
      // A capacity drawn out a thousandfold is beyond the table and goes by search.
      for (const times of [1, 1_000_000]) {
        const stretched = lengths.map(length => length * times);
        const answer = knapsack(stretched, worth, most, capacity * times, 0, 100_000);
        expect(answer.most).toBe(least);
        if (least > 0) expect(answer.fills[0]?.worth).toBe(least);
      }
    }),
    { seed: 12, numRuns: 200 },
  );
});

test('bound L2: three pieces over half stand alone; a sum decides the rest', () => {
  expect(boundL2(Int32Array.from([60, 50, 20]), Int32Array.from([3, 1, 1]), 100)).toBe(4);
  expect(boundL2(Int32Array.from([30]), Int32Array.from([7]), 100)).toBe(3);
});

test('the master programme: optimum, prices and a change of demand', () => {
  // min x + y + z with 2x + y >= 4, x + 3z >= 6: x = 2, z = 4/3.
  const master = new LinearMaster([4, 6], 20);
  master.add({ rows: [0, 1], values: [2, 1], cost: 1 });
  master.add({ rows: [0], values: [1], cost: 1 });
  master.add({ rows: [1], values: [3], cost: 1 });
  expect(master.solve()).toBe('optimal');
  expect(master.objective()).toBeCloseTo(2 + 4 / 3, 9);
  expect([...master.levels()]).toEqual([2, 0, expect.closeTo(4 / 3, 9)]);
  expect(4 * master.duals[0]! + 6 * master.duals[1]!).toBeCloseTo(2 + 4 / 3, 9);
  master.setRight([4, 1]);
  expect(master.solve()).toBe('optimal');
  expect(master.objective()).toBeCloseTo(2, 9);
  expect(master.missing()).toBe(0);
});
