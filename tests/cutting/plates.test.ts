import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastCost } from '../../src/cutting/bound.ts';
import { GuillotineTable } from '../../src/cutting/plates/guillotine-table.ts';
import { layoutsOf, solvePlates } from '../../src/cutting/plates/solve-plates.ts';
import type { Slab } from '../../src/cutting/problem.ts';
import { search } from '../../src/cutting/search.ts';
import { problemOf, type Small, small } from './small-plates.ts';

/** Without the pieces that are too large for the plate. */
const fitting = (job: Small): Small => ({
  ...job,
  pieces: job.pieces.filter(piece => piece.l <= job.l && piece.w <= job.w),
});

/** Best worth of a plate by every cut at every whole position, pieces as often as wished. */
function everyCut(l: number, w: number, kerf: number, pieces: Small['pieces']): number {
  const known = new Map<number, number>();
  const best = (x: number, y: number): number => {
    if (x <= 0 || y <= 0) return 0;
    const key = x * 1000 + y;
    const held = known.get(key);
    if (held !== undefined) return held;
    let value = 0;
    for (const piece of pieces) if (piece.l <= x && piece.w <= y) value = Math.max(value, piece.worth);
    for (let a = 1; a < x; a++) value = Math.max(value, best(a, y) + best(x - a - kerf, y));
    for (let b = 1; b < y; b++) value = Math.max(value, best(x, b) + best(x, y - b - kerf));
    known.set(key, value);
    return value;
  };
  return best(l, w);
}

test('the worth of a plate, against every cut at every place', () => {
  fc.assert(
    fc.property(small, job => {
      const often = { ...job, pieces: job.pieces.map(piece => ({ ...piece, n: 40 })) };
      const problem = problemOf(fitting(often));
      fc.pre(problem.items.length > 0);
      const worth = Float64Array.from(
        job.pieces.filter(piece => piece.l <= job.l && piece.w <= job.w),
        piece => piece.worth,
      );
      expect(new GuillotineTable(problem, 0).most(worth)).toBe(everyCut(job.l, job.w, job.kerf, job.pieces));
    }),
    { seed: 31, numRuns: 150 },
  );
});

test('few points are quicker and looser, never below the truth', () => {
  fc.assert(
    fc.property(small, fc.integer({ min: 2, max: 9 }), (job, points) => {
      const problem = problemOf(fitting({ ...job, pieces: job.pieces.map(piece => ({ ...piece, n: 40 })) }));
      fc.pre(problem.items.length > 0);
      const worth = Float64Array.from(
        job.pieces.filter(piece => piece.l <= job.l && piece.w <= job.w),
        piece => piece.worth,
      );
      const truth = everyCut(job.l, job.w, job.kerf, job.pieces);
      expect(new GuillotineTable(problem, 0, points).most(worth)).toBeGreaterThanOrEqual(truth);
    }),
    { seed: 33, numRuns: 150 },
  );
});

test('sums too many to keep are thinned, and the answer stays an upper bound', () => {
  const sizes = [1013, 1271, 1499, 1733, 1987, 2203, 2531, 2879];
  const job = {
    l: 24400,
    w: 12200,
    kerf: 31,
    pieces: sizes.map((l, i) => ({ l, w: sizes[7 - i]!, worth: l * sizes[7 - i]!, n: 30 })),
  };
  const problem = problemOf(fitting(job));
  const most = new GuillotineTable(problem, 0).most(Float64Array.from(job.pieces, piece => piece.worth));
  const solution = search(problem, 20, 1, 0);
  const fullest = Math.max(...solution.layouts.map(layout => layout.area));
  expect(most).toBeGreaterThanOrEqual(fullest);
  expect(most).toBeLessThanOrEqual(1.03 * (job.l + job.kerf) * (job.w + job.kerf));
});

test('plates by columns: bound below value, every piece placed once, no slab beyond its plate', () => {
  fc.assert(
    fc.property(
      small,
      fc.constantFrom('free', 'strips along', 'strips across') as fc.Arbitrary<'free'>,
      (job, stages) => {
        const problem = problemOf(fitting(job));
        fc.pre(problem.items.length > 0);
        const found = solvePlates(problem, [], {
          seed: 1,
          nodes: 20,
          stages,
          bound: leastCost(problem, Infinity),
        });
        expect(found.bound).toBeLessThanOrEqual(found.value + 1e-9);
        // What any way of cutting needs at least, the free search may show to be wrong, never the bound.
        if (stages === 'free') {
          const other = search(problem, 40, 2, 0);
          expect(found.bound).toBeLessThanOrEqual(other.cost + 1e-9);
        }
        const placed = problem.items.map(() => 0);
        const walk = (slab: Slab): void => {
          if (slab.item !== undefined && slab.lie) {
            placed[slab.item]! += 1;
            expect(slab.lie.l).toBeLessThanOrEqual(slab.l);
            expect(slab.lie.w).toBeLessThanOrEqual(slab.w);
          }
          expect(slab.x + slab.l).toBeLessThanOrEqual(job.l);
          expect(slab.y + slab.w).toBeLessThanOrEqual(job.w);
          if (slab.kept) walk(slab.kept);
          if (slab.rest) walk(slab.rest);
        };
        for (const layout of layoutsOf(problem, found)) walk(layout.slab);
        expect(placed).toEqual(problem.items.map(item => item.demands.length));
      },
    ),
    { seed: 32, numRuns: 120 },
  );
});

test('strips whose table promises more than can be drawn are built up, and the bound comes near the value', () => {
  // By hand: six pieces share a plate with none of the four next in size, and those need two more.
  const job = {
    l: 250,
    w: 250,
    kerf: 0,
    pieces: [
      { l: 167, w: 184, worth: 1, n: 2 },
      { l: 114, w: 118, worth: 1, n: 2 },
      { l: 167, w: 152, worth: 1, n: 2 },
      { l: 83, w: 140, worth: 1, n: 2 },
      { l: 70, w: 86, worth: 1, n: 2 },
      { l: 143, w: 166, worth: 1, n: 2 },
      { l: 120, w: 160, worth: 1, n: 2 },
    ],
  };
  const problem = problemOf(job, true);
  const found = solvePlates(problem, [], { seed: 1, nodes: 30, stages: 'strips along', bound: 1 });
  expect(found.value).toBeGreaterThanOrEqual(leastCost(problem, Infinity));
  expect([found.value, found.bound]).toEqual([8, 8]);
});
