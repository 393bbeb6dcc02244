import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { screw } from '../../src/reference/screws.ts';
import { boardFeet, toBuy } from '../../src/timber/board-volume.ts';
import { clampCount } from '../../src/timber/clamps.ts';
import { finishLitres } from '../../src/timber/coverage.ts';
import { bucklingFactor, depthFactor } from '../../src/timber/design-strength.ts';
import { screwLateral } from '../../src/timber/fasteners.ts';
import {
  chooseScrew,
  counterboreDepth,
  countersinkDepth,
  longestScrew,
  pocketDistance,
  slotLength,
} from '../../src/timber/screwing.ts';

const seeded = { seed: 17, numRuns: 300 };

describe('the length of a screw', () => {
  const stack = { throughMm: 27, intoMm: 45, sunkMm: 1, coverMm: 5 };

  it('leaves the cover', () => {
    expect(longestScrew(stack)).toBe(66);
    expect(chooseScrew(stack, screw('4.0')?.lengthsMm ?? [])).toEqual({
      lengthMm: 65,
      holdMm: 39,
      leftMm: 6,
    });
  });

  it('is none when every screw sold comes through, or none reaches', () => {
    expect(chooseScrew({ throughMm: 4, intoMm: 8, sunkMm: 0, coverMm: 3 }, [12, 16, 20])).toBeUndefined();
    expect(chooseScrew({ throughMm: 80, intoMm: 40, sunkMm: 0, coverMm: 3 }, [12, 16, 20])).toBeUndefined();
    expect(chooseScrew(stack, [])).toBeUndefined();
  });

  it('never comes through, and no longer one sold would do', () => {
    const mm = fc.double({ min: 0, max: 60, noNaN: true });
    const lengths = screw('4.0')?.lengthsMm ?? [];
    fc.assert(
      fc.property(
        mm,
        mm,
        fc.double({ min: 0, max: 5, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        (throughMm, intoMm, sunkMm, coverMm) => {
          const one = { throughMm, intoMm, sunkMm, coverMm };
          const chosen = chooseScrew(one, lengths);
          if (!chosen) return;
          expect(chosen.leftMm).toBeGreaterThanOrEqual(coverMm - 1e-9);
          const longer = lengths.filter(length => length > chosen.lengthMm);
          for (const length of longer) expect(length).toBeGreaterThan(longestScrew(one));
        },
      ),
      seeded,
    );
  });
});

describe('holes and pockets', () => {
  it('are as deep as the cone, the counterbore, the slant ask', () => {
    expect(countersinkDepth(8, 4.5)).toBeCloseTo(1.75, 9);
    expect(counterboreDepth(92, 40, 16)).toBe(68);
    expect(counterboreDepth(20, 40, 16)).toBe(0);
    expect(pocketDistance(22, 15)).toBeCloseTo(41.05, 2);
    expect(slotLength(4, 2.5)).toBe(7.5);
  });
});

describe('a screw loaded sideways', () => {
  it('is silent where the table has no group', () => {
    expect(screwLateral('hardwood', 0.9, 4)).toBeUndefined();
    expect(screwLateral('softwood', 0.475, 4)).toBeCloseTo(36.4 * 16, 9);
  });
});

describe('buying', () => {
  it('leaves the net after the waste', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (net, share) => {
          expect(toBuy(net, share) * (1 - share)).toBeCloseTo(net, 9);
          expect(toBuy(net, share)).toBeGreaterThanOrEqual(net);
        },
      ),
      seeded,
    );
    expect(() => toBuy(1, 1)).toThrow('waste share 1 must be at least 0 and under 1');
    expect(() => toBuy(1, -0.1)).toThrow(RangeError);
  });

  it('counts a board foot as 144 cubic inches', () => {
    expect(boardFeet(25.4, 304.8, 304.8)).toBeCloseTo(1, 12);
  });

  it('takes a tenth more finish than the tin says', () => {
    expect(finishLitres(10, 2, 20)).toBeCloseTo(1.1, 12);
  });
});

describe('clamps', () => {
  it('stand no further apart than asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 120, max: 3000, noNaN: true }),
        fc.double({ min: 100, max: 400, noNaN: true }),
        (length, spacing) => {
          const count = clampCount(length, 50, spacing);
          expect((length - 100) / Math.max(1, count - 1)).toBeLessThanOrEqual(spacing + 1e-9);
        },
      ),
      seeded,
    );
    expect(clampCount(60, 50, 250)).toBe(1);
  });
});

describe('design factors', () => {
  it('end where the standard ends them', () => {
    expect(bucklingFactor(0.3)).toBe(1);
    expect(bucklingFactor(0.3001)).toBeCloseTo(1, 3);
    expect(depthFactor(20)).toBe(1.3);
    expect(depthFactor(300)).toBe(1);
  });

  it('leave less to a more slender leg', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.31, max: 4, noNaN: true }), relative => {
        expect(bucklingFactor(relative + 0.1)).toBeLessThan(bucklingFactor(relative));
      }),
      seeded,
    );
  });
});
