import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metal } from '../../src/reference/metals.ts';
import { deflection } from '../../src/timber/deflection.ts';
import { massKg } from '../../src/timber/mass.ts';
import { rectangle, rectangularTube, round, roundTube } from '../../src/timber/sections.ts';
import { type BeamLoad, simpleBeam } from '../../src/timber/simple-beam.ts';
import { shearStress, strengthAtAngle, strengthAtMoisture } from '../../src/timber/stress.ts';

const seeded = { seed: 9, numRuns: 200 };
const SPAN = 1000;
const beam = (loads: readonly BeamLoad[]) =>
  simpleBeam({ spanMm: SPAN, stiffnessMPa: 10000, secondMomentMm4: 1e6, loads });
const load: fc.Arbitrary<BeamLoad> = fc.oneof(
  fc.record({
    kind: fc.constant('point' as const),
    atMm: fc.double({ min: 0, max: SPAN, noNaN: true }),
    forceN: fc.double({ min: 0, max: 1000, noNaN: true }),
  }),
  fc
    .tuple(
      fc.double({ min: 0, max: SPAN, noNaN: true }),
      fc.double({ min: 0, max: SPAN, noNaN: true }),
      fc.double({ min: 0, max: 2, noNaN: true }),
    )
    .map(([a, b, forceNPerMm]) => ({
      kind: 'spread' as const,
      fromMm: Math.min(a, b),
      toMm: Math.max(a, b),
      forceNPerMm,
    })),
);
const loads = fc.array(load, { minLength: 1, maxLength: 5 });
const mirrored = (one: BeamLoad): BeamLoad =>
  one.kind === 'point'
    ? { ...one, atMm: SPAN - one.atMm }
    : { ...one, fromMm: SPAN - one.toMm, toMm: SPAN - one.fromMm };

describe('sections', () => {
  it('of a tube are the outside less the bore', () => {
    expect(roundTube(20, 10).secondMomentMm4).toBeCloseTo(round(20).secondMomentMm4, 9);
    expect(rectangularTube(40, 20, 2).secondMomentMm4).toBeCloseTo((40 * 20 ** 3 - 36 * 16 ** 3) / 12, 9);
    expect(rectangularTube(40, 20, 2).areaMm2).toBe(224);
    expect(rectangularTube(30, 30, 2).modulusMm3).toBeCloseTo(
      rectangularTube(30, 30, 2).secondMomentMm4 / 15,
      9,
    );
  });
});

describe('a bar on two supports', () => {
  it('holds its loads in balance', () => {
    fc.assert(
      fc.property(loads, all => {
        const answer = beam(all);
        const total = all.reduce(
          (sum, one) => sum + (one.kind === 'point' ? one.forceN : one.forceNPerMm * (one.toMm - one.fromMm)),
          0,
        );
        expect(answer.leftN + answer.rightN).toBeCloseTo(total, 6);
        expect(answer.momentAt(0)).toBeCloseTo(0, 6);
        expect(answer.momentAt(SPAN) / SPAN).toBeCloseTo(0, 6);
        expect(answer.deflectionAt(0)).toBeCloseTo(0, 9);
        expect(answer.deflectionAt(SPAN)).toBeCloseTo(0, 9);
      }),
      seeded,
    );
  });

  it('bends the same seen from the other side', () => {
    fc.assert(
      fc.property(loads, fc.double({ min: 0, max: SPAN, noNaN: true }), (all, x) => {
        const here = beam(all);
        const there = beam(all.map(mirrored));
        expect(there.deflectionAt(SPAN - x)).toBeCloseTo(here.deflectionAt(x), 6);
        expect(there.rightN).toBeCloseTo(here.leftN, 6);
      }),
      seeded,
    );
  });

  it('bends by the sum of what each load does', () => {
    fc.assert(
      fc.property(load, load, fc.double({ min: 0, max: SPAN, noNaN: true }), (a, b, x) => {
        const apart = beam([a]).deflectionAt(x) + beam([b]).deflectionAt(x);
        expect(beam([a, b]).deflectionAt(x)).toBeCloseTo(apart, 6);
      }),
      seeded,
    );
  });

  it('is nowhere deeper, nor more strained, than where it says', () => {
    fc.assert(
      fc.property(loads, fc.double({ min: 0, max: SPAN, noNaN: true }), (all, x) => {
        const answer = beam(all);
        expect(answer.deflectionAt(x)).toBeLessThanOrEqual(answer.greatestDeflection.value + 1e-6);
        expect(answer.momentAt(x)).toBeLessThanOrEqual(answer.greatestMoment.value + 1e-2);
      }),
      seeded,
    );
  });

  it('agrees with the handbook constants in the usual cases', () => {
    const section = rectangle(20, 30);
    const bar = { loadN: 100, spanMm: 800, section, stiffnessMPa: 11000 };
    const by = (all: readonly BeamLoad[]) =>
      simpleBeam({
        spanMm: 800,
        stiffnessMPa: 11000,
        secondMomentMm4: section.secondMomentMm4,
        loads: all,
      }).deflectionAt(400);
    expect(by([{ kind: 'spread', fromMm: 0, toMm: 800, forceNPerMm: 100 / 800 }])).toBeCloseTo(
      deflection('uniform, simply supported', bar).totalMm,
      9,
    );
    expect(by([{ kind: 'point', atMm: 400, forceN: 100 }])).toBeCloseTo(
      deflection('point at middle, simply supported', bar).totalMm,
      9,
    );
    expect(
      by([
        { kind: 'point', atMm: 200, forceN: 50 },
        { kind: 'point', atMm: 600, forceN: 50 },
      ]),
    ).toBeCloseTo(deflection('quarter points, simply supported', bar).totalMm, 9);
  });

  it('clamped at both ends sags a fifth as much under a spread load, a quarter under one in the middle', () => {
    const bar = { loadN: 100, spanMm: 800, section: rectangle(20, 30), stiffnessMPa: 11000 };
    expect(
      deflection('uniform, simply supported', bar).totalMm /
        deflection('uniform, both ends fixed', bar).totalMm,
    ).toBeCloseTo(5, 9);
    expect(
      deflection('point at middle, simply supported', bar).totalMm /
        deflection('point at middle, both ends fixed', bar).totalMm,
    ).toBeCloseTo(4, 9);
  });

  it('of stainless under wet boots: 16 mm holds where 12 mm sags', () => {
    const sag = (diameterMm: number) =>
      deflection('uniform, simply supported', {
        loadN: 10 * 9.81,
        spanMm: 1183,
        section: round(diameterMm),
        stiffnessMPa: metal('stainless-304')?.stiffnessMPa?.low ?? Number.NaN,
      }).totalMm;
    expect(sag(16)).toBeCloseTo(3.3, 1);
    expect(sag(12)).toBeCloseTo(10.4, 1);
  });
});

describe('strength', () => {
  it('along the grain is P, across it Q, and falls between', () => {
    expect(strengthAtAngle(46.6, 7, 0)).toBeCloseTo(46.6, 9);
    expect(strengthAtAngle(46.6, 7, 90)).toBeCloseTo(7, 9);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 89, noNaN: true }), angle => {
        expect(strengthAtAngle(46.6, 7, angle + 1)).toBeLessThan(strengthAtAngle(46.6, 7, angle));
      }),
      seeded,
    );
  });

  it('rises as the timber dries, passes through the 12 % value and stays at the green one', () => {
    expect(strengthAtMoisture(103, 66, 12, 24)).toBeCloseTo(103, 9);
    expect(strengthAtMoisture(103, 66, 24, 24)).toBe(66);
    expect(strengthAtMoisture(103, 66, 60, 24)).toBe(66);
    expect(strengthAtMoisture(103, 66, 23.999999, 24)).toBeCloseTo(66, 4);
    expect(strengthAtMoisture(103, 66, 8)).toBeGreaterThan(103);
  });

  it('in shear is three halves of the mean for a bar, twice it for a thin tube', () => {
    expect(shearStress(1000, rectangle(10, 20))).toBeCloseTo(7.5, 9);
    expect(shearStress(1000, roundTube(20, 1))).toBeCloseTo((2 * 1000) / roundTube(20, 1).areaMm2, 9);
  });
});

describe('mass', () => {
  it('of the bench: 4.0 kg for two bars of 16 mm and 1221 mm', () => {
    const bar = massKg(round(16).areaMm2 * 1221, metal('stainless-304')?.densityKgM3.low ?? Number.NaN);
    expect(2 * bar).toBeCloseTo(3.93, 2);
  });
});
