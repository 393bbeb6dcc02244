import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PriceInput, priceJob, priceVariation } from '../../src/money/index.ts';
import type { Instance } from '../../src/results/piece.ts';
import { cuttingPlan, operation, part, pieceOf, stock, workshop } from '../checks/fixtures.ts';
import { job } from './fixtures.ts';

const parts = (length: number): Instance[] => [
  part('leg', { size: [length, 45, 45] }),
  part('leg_2', { size: [length, 45, 45] }),
  part('rail', { size: [340, 60, 45] }),
];
const placed = (instance: string, length: number, width: number) => ({
  mark: 'A',
  instance,
  x: 0,
  y: 0,
  length,
  width,
  turned: false,
  purpose: 'part' as const,
});
const operations = [
  operation('break down', { kind: 'break down', instances: ['leg', 'leg_2', 'rail'], handsOn: spell(30) }),
  operation('mortise', { kind: 'cut', instances: ['leg', 'leg_2'], handsOn: spell(40) }),
  operation('tenon', { kind: 'cut', instances: ['rail'], handsOn: spell(10) }),
];

function spell(likely: number) {
  return { low: likely, likely, high: likely, source: { text: 'work times', basis: 'memory' as const } };
}

const bench = (length: number, given: Partial<PriceInput> = {}) => {
  const input = job({
    piece: pieceOf(parts(length)),
    operations,
    cutting: cuttingPlan([
      stock({
        price: 3000,
        placed: [placed('leg', 400, 50), placed('leg_2', 400, 50), placed('rail', 400, 50)],
      }),
    ]),
    ...given,
  });
  return { input, price: priceJob(input) };
};
const fates = (of: ReturnType<typeof priceVariation>) => of.parts.map(p => [p.instance, p.fate]);

describe('MON-6: what a change costs when parts are begun', () => {
  it('is the change of the offer alone when nothing is begun, or nothing begun is touched', () => {
    const [before, after] = [bench(423), bench(383)];
    const none = priceVariation(before, after, new Set());
    expect([none.parts, none.lostMinutes, none.net]).toEqual([[], 0, after.price.net - before.price.net]);
    const tenoned = priceVariation(before, after, new Set(['tenon']));
    expect(tenoned.parts).toEqual([]);
  });

  it('cuts down a blank that is still uncut, and makes a jointed part again', () => {
    const blank = priceVariation(bench(423), bench(383), new Set(['break down']));
    expect(fates(blank)).toEqual([
      ['leg', 'can be cut down'],
      ['leg_2', 'can be cut down'],
    ]);
    expect(blank.lostMinutes + blank.lostStock).toBe(0);
    const jointed = priceVariation(bench(423), bench(383), new Set(['break down', 'mortise']));
    expect(fates(jointed)).toEqual([
      ['leg', 'is made again'],
      ['leg_2', 'is made again'],
    ]);
    // Each leg has a third of 30 and half of 40 minutes; two of them, at 44.00 an hour, and two thirds of the board.
    expect(jointed.lostMinutes).toBe(60);
    expect([jointed.lostWork, jointed.lostStock]).toEqual([4400, 2000]);
    expect(jointed.net).toBe(jointed.change.net + 6400);
  });

  it('cannot lengthen a blank', () => {
    expect(fates(priceVariation(bench(423), bench(450), new Set(['break down'])))).toEqual([
      ['leg', 'is made again'],
      ['leg_2', 'is made again'],
    ]);
  });

  it('counts parts that are no longer wanted', () => {
    const before = bench(423);
    const after = bench(423, { piece: pieceOf(parts(423).slice(0, 2)) });
    const dropped = priceVariation(before, after, new Set(['tenon']));
    expect(fates(dropped)).toEqual([['rail', 'is not wanted']]);
    expect([dropped.lostMinutes, dropped.lostStock]).toEqual([10, 1000]);
  });

  it('taxes the whole of it once where the maker is registered', () => {
    const registered = {
      workshop: workshop({ rates: { ...workshop().rates, tax: { registered: true, rate: 0.2 } } }),
    };
    const change = priceVariation(bench(423, registered), bench(383, registered), new Set(['mortise']));
    expect(change.tax).toBe(Math.round(change.net * 0.2));
    expect(change.total).toBe(change.net + change.tax);
  });

  it('loses no less when more has been done, and nothing when nothing changes', () => {
    const ids = operations.map(o => o.id);
    fc.assert(
      fc.property(
        fc.subarray(ids),
        fc.subarray(ids),
        fc.integer({ min: 300, max: 500 }),
        (some, more, length) => {
          const [before, after] = [bench(423), bench(length)];
          const less = priceVariation(before, after, new Set(some));
          const all = priceVariation(before, after, new Set([...some, ...more]));
          expect(all.lostMinutes).toBeGreaterThanOrEqual(less.lostMinutes);
          expect(all.net - all.change.net).toBe(all.lostWork + all.lostStock);
          expect(priceVariation(before, before, new Set(some)).net).toBe(0);
        },
      ),
      { seed: 61, numRuns: 100 },
    );
  });
});
