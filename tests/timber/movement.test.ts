import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TimberSpecies } from '../../src/reference/timber-row.ts';
import { TIMBERS, timberSpecies } from '../../src/reference/timber-species.ts';
import {
  coefficientFromShrinkage,
  movement,
  movementCoefficient,
  movementFromShrinkage,
  seasonalMovement,
  shrinkageTo,
  withinCoefficientRange,
} from '../../src/timber/movement.ts';

const size = fc.double({ min: 1, max: 3000, noNaN: true });
const moisture = fc.double({ min: 0, max: 29, noNaN: true });
const coefficient = fc.double({ min: 0.0005, max: 0.005, noNaN: true });
const shrinkage = fc.double({ min: 1, max: 13, noNaN: true });
const seeded = { seed: 5, numRuns: 300 };

function species(key: string): TimberSpecies {
  const row = timberSpecies(key);
  if (!row) throw new Error(`no timber ${key}`);
  return row;
}

describe('movement by coefficient', () => {
  it('is linear in the size, and turns round with the moistures', () => {
    fc.assert(
      fc.property(size, coefficient, moisture, moisture, (d, c, from, to) => {
        expect(movement(2 * d, c, from, to)).toBeCloseTo(2 * movement(d, c, from, to), 9);
        expect(movement(d, c, from, to)).toBeCloseTo(-movement(d, c, to, from), 9);
        expect(movement(d, c, from, from)).toBe(0);
      }),
      seeded,
    );
  });

  it('says where the handbook stops', () => {
    expect(withinCoefficientRange(6, 14)).toBe(true);
    expect(withinCoefficientRange(5.9, 8)).toBe(false);
    expect(withinCoefficientRange(8, 15)).toBe(false);
  });
});

describe('movement by shrinkage', () => {
  it('there and back again leaves the size as it was', () => {
    fc.assert(
      fc.property(size, shrinkage, moisture, moisture, (d, s, from, to) => {
        const moved = d + movementFromShrinkage(d, s, from, to);
        expect(moved + movementFromShrinkage(moved, s, to, from)).toBeCloseTo(d, 6);
      }),
      seeded,
    );
  });

  it('from green to oven dry is the shrinkage itself', () => {
    fc.assert(
      fc.property(size, shrinkage, (d, s) => {
        expect(-movementFromShrinkage(d, s, 30, 0)).toBeCloseTo((d * s) / 100, 6);
        expect(shrinkageTo(0, s)).toBeCloseTo(s, 9);
        expect(shrinkageTo(30, s)).toBeCloseTo(0, 9);
      }),
      seeded,
    );
  });

  it('agrees with Eq 4-9 on the way down from green', () => {
    fc.assert(
      fc.property(shrinkage, moisture, (s, m) => {
        expect(-movementFromShrinkage(100, s, 30, m)).toBeCloseTo(shrinkageTo(m, s), 9);
      }),
      seeded,
    );
  });

  it('does nothing above fibre saturation', () => {
    expect(movementFromShrinkage(100, 8, 60, 30)).toBeCloseTo(0, 12);
    expect(movementFromShrinkage(100, 8, 60, 12)).toBeCloseTo(movementFromShrinkage(100, 8, 30, 12), 12);
  });

  it('near 10 % is the movement of the coefficient it gives', () => {
    fc.assert(
      fc.property(shrinkage, fc.double({ min: 6, max: 14, noNaN: true }), (s, to) => {
        const c = coefficientFromShrinkage(s);
        expect(movementFromShrinkage(1000, s, 10, to)).toBeCloseTo(movement(1000, c, 10, to), 6);
      }),
      seeded,
    );
  });
});

describe('the handbook tables of shrinkage and of coefficients', () => {
  // FPL-GTR-190 (2010): Table 13-5 against Table 4-3. Rows that carry the printed coefficient of a group are left out.
  const printed = TIMBERS.rows.flatMap(row =>
    row.specificGravity12 && !row.movementTangential?.note
      ? (
          [
            [row.key, 'tangential', row.movementTangential, row.shrinkageTangentialPct],
            [row.key, 'radial', row.movementRadial, row.shrinkageRadialPct],
          ] as const
        ).flatMap(([key, direction, c, s]) =>
          c && s ? [[`${key} ${direction}`, c.low, s.low] as const] : [],
        )
      : [],
  );

  it('are compared over many timbers', () => {
    expect(printed.length).toBeGreaterThan(30);
  });

  it.each(printed)('agree within 3 %% for %s', (_, c, s) => {
    expect(Math.abs(coefficientFromShrinkage(s) / c - 1)).toBeLessThan(0.03);
  });
});

describe('the coefficient of a board', () => {
  it('is tangential for flat-sawn, radial for quarter-sawn', () => {
    const oak = species('white-oak-american');
    expect(movementCoefficient(oak, 'flat-sawn')).toMatchObject({ usual: 0.00365, direction: 'tangential' });
    expect(movementCoefficient(oak, 'quarter-sawn')).toMatchObject({ usual: 0.0018, direction: 'radial' });
  });

  it('of a mixed board spans both and reckons with the worse', () => {
    const oak = species('white-oak-american');
    expect(movementCoefficient(oak, 'mixed')).toMatchObject({
      low: 0.0018,
      high: 0.00365,
      usual: 0.00365,
      direction: 'between',
    });
  });

  it('comes from the shrinkage where none was measured, and says so', () => {
    const chestnut = movementCoefficient(species('chestnut-sweet'), 'flat-sawn');
    expect(chestnut?.low).toBeCloseTo(coefficientFromShrinkage(6.5), 12);
    expect(chestnut?.source.basis).toBe('computed');
    expect(chestnut?.source.text).toContain('20 S/3000');
  });

  it('is unknown where nothing is published', () => {
    expect(movementCoefficient(species('meranti-dark-red'), 'flat-sawn')).toBeUndefined();
    expect(movementCoefficient(species('meranti-dark-red'), 'mixed')).toBeUndefined();
  });
});

describe('a board through the year', () => {
  it('swells and shrinks from where it was made, and travels the sum', () => {
    fc.assert(
      fc.property(size, coefficient, fc.double({ min: 8, max: 12, noNaN: true }), (width, c, made) => {
        const year = seasonalMovement(width, c, made, { low: 7, high: 13 });
        expect(year.swellMm + year.shrinkMm).toBeCloseTo(year.travelMm, 9);
        expect(year.withinRange).toBe(true);
      }),
      seeded,
    );
  });

  it('made drier than the place ever is does not shrink', () => {
    const year = seasonalMovement(500, 0.003, 6, { low: 9, high: 15 });
    expect(year.shrinkMm).toBe(0);
    expect(year.swellMm).toBeCloseTo(13.5, 9);
    expect(year.withinRange).toBe(false);
  });
});
