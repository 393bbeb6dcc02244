import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from '../../src/drawings/spread.ts';

const sorted = fc
  .array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 1, maxLength: 30 })
  .map(list => [...list].sort((a, b) => a - b));

const cost = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, v, i) => sum + (v - b[i]!) ** 2, 0);

describe('labels along a rod', () => {
  it('leaves alone what is far enough apart', () => {
    expect(spreadLabels([0, 20, 60], 15)).toEqual([0, 20, 60]);
  });

  it('shares a crowd about its middle', () => {
    expect(spreadLabels([98.5, 105], 16)).toEqual([93.75, 109.75]);
    expect(spreadLabels([10, 10, 10], 6)).toEqual([4, 10, 16]);
  });

  it('keeps order and least distance', () => {
    fc.assert(
      fc.property(sorted, fc.double({ min: 1, max: 40, noNaN: true }), (wanted, least) => {
        const placed = spreadLabels(wanted, least);
        for (let i = 1; i < placed.length; i++)
          expect(placed[i]! - placed[i - 1]!).toBeGreaterThanOrEqual(least - 1e-6);
      }),
      { seed: 3 },
    );
  });

  it('moves labels as little as any other allowed placing', () => {
    fc.assert(
      fc.property(
        sorted,
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.array(fc.double({ min: -60, max: 60, noNaN: true }), { minLength: 30, maxLength: 30 }),
        (wanted, least, nudges) => {
          const placed = spreadLabels(wanted, least);
          // Any other placing that keeps the distance: nudge, then push apart from the left.
          const other: number[] = [];
          placed.forEach((p, i) => {
            const before = other.at(-1);
            const nudged = p + nudges[i]!;
            other.push(before === undefined ? nudged : Math.max(nudged, before + least));
          });
          expect(cost(placed, wanted)).toBeLessThanOrEqual(cost(other, wanted) + 1e-6);
        },
      ),
      { seed: 4 },
    );
  });

  it('stays between bounds when all labels fit, and overruns the high one rather than overlap', () => {
    fc.assert(
      fc.property(sorted, wanted => {
        const placed = spreadLabels(wanted, 10, -100, 300);
        expect(placed[0]!).toBeGreaterThanOrEqual(-100 - 1e-9);
        expect(placed.at(-1)!).toBeLessThanOrEqual(300 + 1e-9);
      }),
      { seed: 5 },
    );
    expect(spreadLabels([0, 1, 2], 10, 0, 5)).toEqual([0, 10, 20]);
  });
});
