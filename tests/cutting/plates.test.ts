import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leastCost } from '../../src/cutting/bound.ts';
import { bestPlate } from '../../src/cutting/plates/best-plate.ts';
import { GuillotineTable } from '../../src/cutting/plates/guillotine-table.ts';
import { layoutsOf, solvePlates } from '../../src/cutting/plates/solve-plates.ts';
import type { CutProblem, Slab } from '../../src/cutting/problem.ts';
import { search } from '../../src/cutting/search.ts';
import { demand } from './shop.ts';

interface Small {
  l: number;
  w: number;
  kerf: number;
  pieces: { l: number; w: number; worth: number; n: number }[];
}

const small = fc.record({
  l: fc.integer({ min: 6, max: 30 }),
  w: fc.integer({ min: 6, max: 30 }),
  kerf: fc.integer({ min: 0, max: 2 }),
  pieces: fc.array(
    fc.record({
      l: fc.integer({ min: 2, max: 14 }),
      w: fc.integer({ min: 2, max: 14 }),
      worth: fc.integer({ min: 1, max: 50 }),
      n: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
});

function problemOf({ l, w, kerf, pieces }: Small): CutProblem {
  const use = {
    from: 'buy',
    kind: 'sheet',
    material: '',
    label: '',
    length: l,
    width: w,
    thickness: 1,
    round: false,
  } as const;
  return {
    stocks: [
      {
        use: { ...use, kerf, trim: { end: 0, edge: 0 } },
        item: 's',
        l,
        w,
        kerf,
        cost: 1,
        limit: Infinity,
        single: false,
        crossFirst: false,
      },
    ],
    items: pieces
      .filter(piece => piece.l <= l && piece.w <= w)
      .map(piece => ({
        demands: Array.from({ length: piece.n }, () => demand({})),
        lies: [[{ l: piece.l, w: piece.w, turned: false }]],
        area: piece.l * piece.w,
      })),
  };
}

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
      const problem = problemOf(often);
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
      const problem = problemOf({ ...job, pieces: job.pieces.map(piece => ({ ...piece, n: 40 })) });
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

/** Best worth of a plate by every cut and every division of the pieces, each no more often than given. */
function everyDivision(
  l: number,
  w: number,
  kerf: number,
  pieces: Small['pieces'],
  counts: number[],
): number {
  const known = new Map<string, number>();
  const best = (x: number, y: number, left: number[]): number => {
    if (x <= 0 || y <= 0) return 0;
    const key = `${x},${y},${left.join()}`;
    const held = known.get(key);
    if (held !== undefined) return held;
    let value = 0;
    pieces.forEach((piece, i) => {
      if (left[i]! > 0 && piece.l <= x && piece.w <= y) value = Math.max(value, piece.worth);
    });
    for (const part of divisions(left)) {
      const other = left.map((n, i) => n - part[i]!);
      for (const a of new Set(pieces.flatMap(piece => [piece.l, 2 * piece.l + kerf])))
        if (a < x) value = Math.max(value, best(a, y, part) + best(x - a - kerf, y, other));
      for (const b of new Set(pieces.flatMap(piece => [piece.w, 2 * piece.w + kerf])))
        if (b < y) value = Math.max(value, best(x, b, part) + best(x, y - b - kerf, other));
    }
    known.set(key, value);
    return value;
  };
  return best(l, w, counts);
}

const divisions = (counts: number[]): number[][] =>
  counts.reduce<number[][]>(
    (all, n) => all.flatMap(one => Array.from({ length: n + 1 }, (_, k) => [...one, k])),
    [[]],
  );

test('one plate with limited pieces: what is found is real, the bound holds', () => {
  let met = 0;
  const few = small.map(job => ({
    ...job,
    pieces: job.pieces.slice(0, 3).map(piece => ({ ...piece, n: Math.min(piece.n, 2) })),
  }));
  fc.assert(
    fc.property(few, job => {
      const pieces = job.pieces.filter(piece => piece.l <= job.l && piece.w <= job.w);
      fc.pre(pieces.length > 0);
      const problem = problemOf(job);
      const found = bestPlate(
        problem,
        Float64Array.from(pieces, piece => piece.worth),
        { seed: 1, rounds: 30, stages: 'free' },
      );
      // Cuts at sums of up to two pieces: a true plate, if not always the best of all.
      const truth = everyDivision(
        job.l,
        job.w,
        job.kerf,
        pieces,
        pieces.map(piece => piece.n),
      );
      expect(found.bound).toBeGreaterThanOrEqual(truth);
      expect(found.value).toBeLessThanOrEqual(found.bound);
      let worth = 0;
      for (const [item, count] of found.layout?.counts ?? []) {
        expect(count).toBeLessThanOrEqual(pieces[item]!.n);
        worth += count * pieces[item]!.worth;
      }
      expect(worth).toBe(found.value);
      if (found.value >= truth) met += 1;
    }),
    { seed: 34, numRuns: 60 },
  );
  expect(met).toBeGreaterThan(54);
});

test('sums too many to keep are thinned, and the answer stays an upper bound', () => {
  const sizes = [1013, 1271, 1499, 1733, 1987, 2203, 2531, 2879];
  const job = {
    l: 24400,
    w: 12200,
    kerf: 31,
    pieces: sizes.map((l, i) => ({ l, w: sizes[7 - i]!, worth: l * sizes[7 - i]!, n: 30 })),
  };
  const problem = problemOf(job);
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
        const problem = problemOf(job);
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
