import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decideCount } from '../../src/cutting/lengths/decide-count.ts';
import { nearWays } from '../../src/cutting/lengths/near-ways.ts';

/** Fewest lengths by trying everything. */
function fewest(lengths: Int32Array, demands: Int32Array, capacity: number): number {
  const pieces = Array.from(lengths).flatMap((length, i) =>
    Array.from({ length: demands[i]! }, () => length),
  );
  const rooms: number[] = [];
  let best = pieces.length;
  const visit = (at: number): void => {
    if (rooms.length >= best) return;
    if (at === pieces.length) {
      best = rooms.length;
      return;
    }
    const length = pieces[at]!;
    const tried = new Set<number>();
    rooms.forEach((room, r) => {
      if (room < length || tried.has(room)) return;
      tried.add(room);
      rooms[r] = room - length;
      visit(at + 1);
      rooms[r] = room;
    });
    rooms.push(capacity - length);
    visit(at + 1);
    rooms.pop();
  };
  visit(0);
  return best;
}

const CAPACITY = 100;
const jobs = fc
  .uniqueArray(
    fc.record({
      length: fc.integer({ min: 9, max: 71 }),
      demand: fc.integer({ min: 1, max: 2 }),
      noise: fc.integer({ min: 0, max: 3 }),
    }),
    { minLength: 2, maxLength: 6, selector: row => row.length },
  )
  .map(rows => {
    const falling = [...rows].sort((a, b) => b.length - a.length);
    return {
      lengths: Int32Array.from(falling, row => row.length),
      demands: Int32Array.from(falling, row => row.demand),
      noise: falling.map(row => row.noise),
    };
  });

test('a number of lengths suffices exactly when trying everything says so', () => {
  let no = 0;
  fc.assert(
    fc.property(jobs, ({ lengths, demands }) => {
      const least = fewest(lengths, demands, CAPACITY);
      const worth = Float64Array.from(lengths, length => length / CAPACITY);
      for (const target of [least - 1, least]) {
        const near = nearWays(lengths, demands, CAPACITY, worth, target, 100_000)!;
        const decision = decideCount(near.ways, near.core, demands, target, { nodes: 5000 });
        expect(decision.answer).toBe(target < least ? 'no' : 'yes');
        if (decision.answer === 'no') no += 1;
        if (decision.answer !== 'yes') continue;
        expect(decision.ways.length).toBeLessThanOrEqual(target);
        const cut = new Int32Array(lengths.length);
        for (const way of decision.ways) {
          let used = 0;
          for (let k = 0; k < way.length; k += 2) {
            cut[way[k]!]! += way[k + 1]!;
            used += way[k + 1]! * lengths[way[k]!]!;
          }
          expect(used).toBeLessThanOrEqual(CAPACITY);
        }
        expect([...cut]).toEqual([...demands]);
      }
    }),
    { seed: 31, numRuns: 250 },
  );
  expect(no).toBeGreaterThan(200);
});

test('poor prices leave out pieces or keep too many ways, but never say no to a number that suffices', () => {
  fc.assert(
    fc.property(jobs, ({ lengths, demands, noise }) => {
      const least = fewest(lengths, demands, CAPACITY);
      const worth = Float64Array.from(lengths, (length, i) => (length * noise[i]!) / CAPACITY);
      const near = nearWays(lengths, demands, CAPACITY, worth, least, 100_000);
      if (!near) return;
      expect(decideCount(near.ways, near.core, demands, least, { nodes: 5000 }).answer).toBe('yes');
    }),
    { seed: 32, numRuns: 250 },
  );
});

test('too many ways, too large a table, no prices: nothing is said', () => {
  const lengths = Int32Array.from([40, 30, 20]);
  const demands = Int32Array.from([3, 3, 3]);
  const worth = Float64Array.from([0.4, 0.3, 0.2]);
  expect(nearWays(lengths, demands, 100, worth, 5, 3)).toBeUndefined();
  expect(nearWays(lengths, demands, 10_000_000, worth, 5, 1000)).toBeUndefined();
  expect(nearWays(lengths, demands, 100, new Float64Array(3), 5, 1000)).toBeUndefined();
});

test('out of programmes: not known', () => {
  const lengths = Int32Array.from([51, 26, 23]);
  const demands = Int32Array.from([2, 2, 2]);
  const near = nearWays(lengths, demands, 100, Float64Array.from([0.51, 0.26, 0.23]), 2, 1000)!;
  expect(decideCount(near.ways, near.core, demands, 2, { nodes: 0 }).answer).toBe('not known');
  expect(decideCount(near.ways, near.core, demands, 2, { nodes: 100 }).answer).toBe('yes');
});
