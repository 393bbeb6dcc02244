import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bondedCurvature, bow, type Layer } from '../../src/timber/bonded-sheet.ts';

const layer: fc.Arbitrary<Layer> = fc.record({
  thicknessMm: fc.double({ min: 0.3, max: 25, noNaN: true }),
  stiffnessMPa: fc.double({ min: 500, max: 210000, noNaN: true }),
  freeGrowth: fc.double({ min: -0.01, max: 0.01, noNaN: true }),
});
const seeded = { seed: 13, numRuns: 300 };
const scale = (layers: readonly Layer[]) => layers.reduce((sum, one) => sum + one.thicknessMm, 0);

/** Timoshenko 1925, Eq 4: two layers, m = t1/t2, n = E1/E2. */
function bimetal(first: Layer, second: Layer): number {
  const m = first.thicknessMm / second.thicknessMm;
  const n = first.stiffnessMPa / second.stiffnessMPa;
  const h = first.thicknessMm + second.thicknessMm;
  const grown = second.freeGrowth - first.freeGrowth;
  return (6 * grown * (1 + m) ** 2) / (h * (3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n))));
}

describe('bonded layers', () => {
  it('of two are a bimetal strip', () => {
    fc.assert(
      fc.property(layer, layer, (first, second) => {
        const height = scale([first, second]);
        expect(bondedCurvature([first, second]) * height).toBeCloseTo(bimetal(first, second) * height, 9);
      }),
      seeded,
    );
  });

  it('stay flat when the lay-up is the same from both faces', () => {
    fc.assert(
      fc.property(layer, layer, layer, (face, glue, core) => {
        const layers = [face, glue, core, glue, face];
        expect(bondedCurvature(layers) * scale(layers)).toBeCloseTo(0, 9);
      }),
      seeded,
    );
  });

  it('bow the other way when turned over, and not at all when all grow alike', () => {
    fc.assert(
      fc.property(fc.array(layer, { minLength: 2, maxLength: 6 }), layers => {
        const height = scale(layers);
        expect(bondedCurvature([...layers].reverse()) * height).toBeCloseTo(
          -bondedCurvature(layers) * height,
          9,
        );
        const alike = layers.map(one => ({ ...one, freeGrowth: 0.004 }));
        expect(bondedCurvature(alike) * height).toBeCloseTo(0, 9);
      }),
      seeded,
    );
  });

  it('show why a brass face wants a brass back: 0.9 on 4 MDF, the MDF 3 % damper', () => {
    const brass = { thicknessMm: 0.9, stiffnessMPa: 103400, freeGrowth: 0 };
    const mdf = { thicknessMm: 4, stiffnessMPa: 2500, freeGrowth: 0.0005 * 3 };
    expect(bow(bondedCurvature([brass, mdf]), 529)).toBeGreaterThan(10);
    expect(Math.abs(bow(bondedCurvature([brass, mdf, brass]), 529))).toBeLessThan(1e-9);
  });

  it('rise by k L squared over 8', () => {
    // A radius of 1 m over a chord of 100 mm: 1.251 mm by the circle, 1.250 by the parabola.
    expect(bow(1 / 1000, 100)).toBeCloseTo(1.25, 9);
  });
});
