import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineAmount, toMinor } from '../../src/money/amounts.ts';
import { taxPerRate, totals } from '../../src/money/tax.ts';

describe('whole minor units', () => {
  it.each([
    [0.5, 1],
    [1.5, 2],
    [2.49, 2],
    [-0.5, -1],
    [1.005 * 100, 101],
    [36512.5, 36513],
    [0, 0],
  ])('%f rounds to %i', (value, whole) => {
    expect(toMinor(value)).toBe(whole);
  });

  it('lies within half a unit of what it rounds, and the same on both sides of nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), value => {
        expect(Math.abs(toMinor(value) - value)).toBeLessThanOrEqual(0.5 + 2e-6);
        expect(toMinor(-value) + toMinor(value)).toBe(0);
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  it('prices a quantity of something sold by the dozen', () => {
    expect(lineAmount(132, 1524, 12)).toBe(16764);
  });
});

const anyLines = fc.array(
  fc.record({
    amount: fc.integer({ min: -100_000, max: 1_000_000 }),
    rate: fc.constantFrom(0, 0.05, 0.2, 0.21, 0.25),
  }),
  { maxLength: 20 },
);

describe('MON-5: tax on the sum of each rate', () => {
  it('keeps the sums and lies within half a unit of the exact tax', () => {
    fc.assert(
      fc.property(anyLines, fc.integer({ min: 0, max: 1000 }), (lines, paid) => {
        const rates = taxPerRate(lines);
        const all = totals(lines, paid);
        expect(rates.reduce((n, r) => n + r.taxable, 0)).toBe(all.net);
        expect(rates.filter(r => Math.abs(r.tax - r.taxable * r.rate) > 0.5 + 2e-6)).toEqual([]);
        expect(all.total).toBe(all.net + all.tax);
        expect(all.due).toBe(all.total - paid);
      }),
      { seed: 32, numRuns: 300 },
    );
  });

  it('does not depend on the order of the lines', () => {
    fc.assert(
      fc.property(anyLines, lines => {
        expect(totals([...lines].reverse()).tax).toBe(totals(lines).tax);
      }),
      { seed: 33, numRuns: 200 },
    );
  });
});
