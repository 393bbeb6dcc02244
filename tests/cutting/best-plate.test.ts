import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestPlate } from '../../src/cutting/plates/best-plate.ts';
import { buildUp } from '../../src/cutting/plates/build-up.ts';
import { fitAll } from '../../src/cutting/plates/fit-all.ts';
import { GuillotineTable } from '../../src/cutting/plates/guillotine-table.ts';
import { PackedCounts } from '../../src/cutting/plates/packed-counts.ts';
import type { Layout, Slab } from '../../src/cutting/problem.ts';
import { everyPlate, problemOf, type Small, small } from './small-plates.ts';

const few = small.map(job => ({
  ...job,
  pieces: job.pieces.slice(0, 3).map(piece => ({ ...piece, n: Math.min(piece.n, 2) })),
}));

/** Counts pieces in the slabs again, each inside its slab and each slab inside its parent, parted by the kerf. */
function counted(layout: Layout, job: Small, turn: boolean): number[] {
  const made = job.pieces.map(() => 0);
  const walk = (slab: Slab): void => {
    expect(slab.x + slab.l).toBeLessThanOrEqual(job.l);
    expect(slab.y + slab.w).toBeLessThanOrEqual(job.w);
    if (slab.item !== undefined && slab.lie) {
      const { l, w } = job.pieces[slab.item]!;
      expect(slab.lie.turned ? turn : true).toBe(true);
      expect([slab.lie.l, slab.lie.w]).toEqual(slab.lie.turned ? [w, l] : [l, w]);
      expect(slab.lie.l).toBeLessThanOrEqual(slab.l);
      expect(slab.lie.w).toBeLessThanOrEqual(slab.w);
      expect(slab.cut).toBeUndefined();
      made[slab.item]! += 1;
    }
    if (slab.kept && slab.rest) {
      const apart =
        slab.cut === 'cross'
          ? slab.rest.x - slab.kept.x - slab.kept.l
          : slab.rest.y - slab.kept.y - slab.kept.w;
      expect(apart).toBe(job.kerf);
    }
    if (slab.kept) walk(slab.kept);
    if (slab.rest) walk(slab.rest);
  };
  walk(layout.slab);
  return made;
}

const worthOf = (counts: number[], job: Small): number =>
  counts.reduce((sum, n, i) => sum + n * job.pieces[i]!.worth, 0);

for (const stages of ['free', 'strips along'] as const)
  for (const turn of [false, true])
    test(`the best plate is the best of all, ${stages}${turn ? ', pieces turned' : ''}`, () => {
      fc.assert(
        fc.property(few, job => {
          const truth = Math.max(0, ...everyPlate(job, stages, turn).map(counts => worthOf(counts, job)));
          const found = bestPlate(
            problemOf(job, turn),
            Float64Array.from(job.pieces, piece => piece.worth),
            { seed: 1, rounds: 40, stages },
          );
          expect(found.value).toBe(truth);
          expect(found.bound).toBe(truth);
          const made = found.layout ? counted(found.layout, job, turn) : job.pieces.map(() => 0);
          expect(made.every((n, i) => n <= job.pieces[i]!.n)).toBe(true);
          expect(worthOf(made, job)).toBe(truth);
        }),
        { seed: 34, numRuns: 120 },
      );
    });

test('strips across are strips along of the plate laid over', () => {
  fc.assert(
    fc.property(few, job => {
      const over = {
        ...job,
        l: job.w,
        w: job.l,
        pieces: job.pieces.map(piece => ({ ...piece, l: piece.w, w: piece.l })),
      };
      const worth = Float64Array.from(job.pieces, piece => piece.worth);
      const across = bestPlate(problemOf(job), worth, { seed: 1, rounds: 40, stages: 'strips across' });
      const along = bestPlate(problemOf(over), worth, { seed: 1, rounds: 40, stages: 'strips along' });
      expect(across.value).toBe(along.value);
      if (across.layout) expect(worthOf(counted(across.layout, job, false), job)).toBe(across.value);
    }),
    { seed: 35, numRuns: 80 },
  );
});

test('all pieces on one plate: yes and no, never wrong', () => {
  const met = { feasible: 0, infeasible: 0, unknown: 0 };
  fc.assert(
    fc.property(few, fc.boolean(), (job, turn) => {
      const wanted = job.pieces.map(piece => piece.n).join();
      const truth = everyPlate(job, 'free', turn).some(counts => counts.join() === wanted);
      const found = fitAll(problemOf(job, turn), { seed: 1, most: 100_000 });
      met[found.answer] += 1;
      expect(found.answer).toBe(truth ? 'feasible' : 'infeasible');
      if (found.layout) expect(counted(found.layout, job, turn).join()).toBe(wanted);
    }),
    { seed: 36, numRuns: 250 },
  );
  expect(Math.min(met.feasible, met.infeasible)).toBeGreaterThan(30);
});

test('a search cut short does not claim to have missed nothing', () => {
  fc.assert(
    fc.property(few, fc.integer({ min: 1, max: 3 }), (job, width) => {
      const problem = problemOf(job);
      const truth = Math.max(0, ...everyPlate(job).map(counts => worthOf(counts, job)));
      const worth = Float64Array.from(job.pieces, piece => piece.worth);
      const caps = Int32Array.from(job.pieces, piece => piece.n);
      const table = new GuillotineTable(problem, 0);
      const built = buildUp(problem, table, { worth, priced: worth, caps, above: 0, width, most: 10_000 });
      expect(built.value).toBeLessThanOrEqual(truth);
      if (built.complete) expect(built.value).toBe(truth);
    }),
    { seed: 37, numRuns: 150 },
  );
});

test('packed counts come up exactly when a limit is passed', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ most: fc.nat(9), a: fc.nat(9), b: fc.nat(9) }), { minLength: 1, maxLength: 40 }),
      items => {
        const packed = new PackedCounts(items.map(item => item.most));
        const store = new Int32Array(2 * packed.words);
        items.forEach(({ most, a, b }, i) => {
          packed.add(store, 0, i, Math.min(a, most));
          packed.add(store, packed.words, i, Math.min(b, most));
        });
        const fits = items.every(({ most, a, b }) => Math.min(a, most) + Math.min(b, most) <= most);
        expect(packed.together(store, 0, packed.words)).toBe(fits);
      },
    ),
    { seed: 38, numRuns: 300 },
  );
});
