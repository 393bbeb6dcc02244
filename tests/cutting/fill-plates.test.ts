import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastCost } from '../../src/cutting/bound.ts';
import { canFill, fillPlates } from '../../src/cutting/plates/fill-plates.ts';
import { improvePlates } from '../../src/cutting/plates/solve-plates.ts';
import type { CutProblem, Slab, Solution } from '../../src/cutting/problem.ts';
import { search } from '../../src/cutting/search.ts';
import { everyPlate, problemOf, type Small, small } from './small-plates.ts';

const fitting = (job: Small): Small => ({
  ...job,
  pieces: job.pieces.filter(piece => piece.l <= job.l && piece.w <= job.w),
});

/** Two kinds of plate, one of them dearer, larger, and to be had once only. */
function mixed(job: Small): CutProblem {
  const problem = problemOf(fitting(job), true);
  const [one] = problem.stocks;
  const larger = { ...one!, item: 'large', l: job.l + 5, w: job.w + 3, cost: 2, limit: 1 };
  return {
    stocks: [one!, larger],
    items: problem.items.map(item => ({ ...item, lies: [item.lies[0]!, item.lies[0]!] })),
  };
}

/** Pieces counted again from the slabs, each inside its plate and parted from the next by the kerf. */
function expectHolds(problem: CutProblem, { layouts, missing, cost }: Solution): void {
  const placed = problem.items.map(() => 0);
  for (const { stock, slab } of layouts) {
    const on = problem.stocks[stock]!;
    const walk = (at: Slab): void => {
      expect(at.x + at.l).toBeLessThanOrEqual(on.l);
      expect(at.y + at.w).toBeLessThanOrEqual(on.w);
      if (at.item !== undefined && at.lie) {
        placed[at.item]! += 1;
        expect(problem.items[at.item]!.lies[stock]).toContainEqual(at.lie);
        expect(at.lie.l).toBeLessThanOrEqual(at.l);
        expect(at.lie.w).toBeLessThanOrEqual(at.w);
      }
      if (at.kept && at.rest) {
        const [kept, rest] = [at.kept, at.rest];
        expect(at.cut === 'cross' ? rest.x - kept.x - kept.l : rest.y - kept.y - kept.w).toBe(on.kerf);
      }
      if (at.kept) walk(at.kept);
      if (at.rest) walk(at.rest);
    };
    walk(slab);
  }
  expect(placed).toEqual(problem.items.map((item, i) => item.demands.length - missing[i]!));
  expect(cost).toBe(layouts.reduce((sum, layout) => sum + problem.stocks[layout.stock]!.cost, 0));
  problem.stocks.forEach((stock, s) => {
    expect(layouts.filter(layout => layout.stock === s).length).toBeLessThanOrEqual(stock.limit);
  });
}

describe('plates filled one after another', () => {
  test('every piece lies once, within limits; never worse than what it began with, never below the bound', () => {
    let cheaper = 0;
    fc.assert(
      fc.property(small, job => {
        const problem = mixed(job);
        fc.pre(problem.items.length > 0);
        const from = search(problem, 1, 1, 0);
        const bound = leastCost(problem, Infinity);
        const limits = { seed: 2, steps: 1_500_000, bound };
        const found = fillPlates(problem, from, limits);
        expectHolds(problem, found);
        expect(found.missing.every(n => n === 0)).toBe(true);
        expect(found.cost).toBeLessThanOrEqual(from.cost);
        expect(found.cost).toBeGreaterThanOrEqual(bound - 1e-9);
        if (found.cost < from.cost) cheaper += 1;
        expect(fillPlates(problem, from, limits)).toEqual(found);
        expectHolds(problem, fillPlates(problem, undefined, limits));
      }),
      { seed: 51, numRuns: 100 },
    );
    expect(cheaper).toBeGreaterThan(3);
  });

  test('where one plate holds all, and a count of all plates says so, one is found', () => {
    let met = 0;
    fc.assert(
      fc.property(small, job => {
        const few = { ...job, pieces: job.pieces.slice(0, 3).map(p => ({ ...p, n: Math.min(2, p.n) })) };
        const wanted = few.pieces.map(piece => piece.n).join();
        fc.pre(everyPlate(few, 'free', false).some(counts => counts.join() === wanted));
        met += 1;
        const problem = problemOf(few);
        expect(fillPlates(problem, undefined, { seed: 1, steps: 3_000_000, bound: 1 }).cost).toBe(1);
      }),
      { seed: 52, numRuns: 60 },
    );
    expect(met).toBeGreaterThan(20);
  });

  test('bars and timber that is cross-cut first are left to others', () => {
    const problem = problemOf({ l: 20, w: 10, kerf: 1, pieces: [{ l: 9, w: 4, worth: 1, n: 3 }] });
    expect(canFill(problem)).toBe(true);
    for (const over of [{ single: true }, { crossFirst: true }])
      expect(canFill({ ...problem, stocks: [{ ...problem.stocks[0]!, ...over }] })).toBe(false);
  });

  test('a stop is heeded, and what there is stands', () => {
    const pieces = [3, 5, 7, 9].map(l => ({ l, w: l + 2, worth: 1, n: 20 }));
    const problem = problemOf({ l: 30, w: 30, kerf: 1, pieces });
    const from = search(problem, 4, 1, 0);
    const found = fillPlates(problem, from, { seed: 1, steps: Infinity, bound: 0, stop: () => true });
    expect(found).toBe(from);
    const improved = improvePlates(problem, from, {
      seed: 1,
      nodes: 5,
      steps: Infinity,
      bound: leastCost(problem, Infinity),
      stop: () => true,
    });
    expectHolds(problem, improved.solution);
    expect(improved.bound).toBeLessThanOrEqual(improved.solution.cost);
  });
});
