import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipRuns, clipSegment, hull } from '../../src/drawings/clip.ts';
import { dayNumber, isoDay, minutesOf, weekday } from '../../src/drawings/clock.ts';
import { fold } from '../../src/drawings/fold.ts';
import { diagonals, endGrain, layersOf, longGrain } from '../../src/drawings/hatch.ts';
import type { Point } from '../../src/drawings/list.ts';
import { layered, materialOf } from '../../src/drawings/material.ts';
import { sawOrder, sawStepText } from '../../src/drawings/saw-order.ts';
import { seeded, seedOf } from '../../src/drawings/seeded.ts';
import { signedArea } from '../../src/geometry/polygon.ts';
import { DERIVED } from './bench-derived.ts';

const SQUARE: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const point = fc.tuple(fc.integer({ min: -20, max: 30 }), fc.integer({ min: -20, max: 30 }));

describe('clipping', () => {
  it('keeps what is inside, whichever way round the area is given', () => {
    expect(clipSegment([-5, 5], [15, 5], SQUARE)).toEqual([
      [0, 5],
      [10, 5],
    ]);
    expect(clipSegment([-5, 5], [15, 5], SQUARE.toReversed())).toEqual([
      [0, 5],
      [10, 5],
    ]);
    expect(clipSegment([-5, 12], [15, 12], SQUARE)).toBeUndefined();
  });

  it('never leaves the area', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), line => {
        for (const [x, y] of clipRuns([line], SQUARE).flat()) {
          expect(x).toBeGreaterThanOrEqual(-1e-9);
          expect(x).toBeLessThanOrEqual(10 + 1e-9);
          expect(y).toBeGreaterThanOrEqual(-1e-9);
          expect(y).toBeLessThanOrEqual(10 + 1e-9);
        }
      }),
      { seed: 8 },
    );
  });

  it('wraps points in their hull', () => {
    expect(hull([...SQUARE, [5, 5], [2, 7]])).toHaveLength(4);
    expect(Math.abs(signedArea(hull(SQUARE)))).toBe(100);
  });
});

describe('hatch', () => {
  const field = {
    corner: [0, 0] as Point,
    along: [100, 0] as Point,
    across: [0, 30] as Point,
    seed: 5,
    gap: 5,
  };

  it('is the same for the same seed, another for another', () => {
    expect(longGrain(field)).toEqual(longGrain(field));
    expect(longGrain(field)).not.toEqual(longGrain({ ...field, seed: 6 }));
    expect(endGrain(field)).toEqual(endGrain(field));
  });

  it('stays on its face', () => {
    for (const items of [
      longGrain(field),
      endGrain(field),
      endGrain(field, false),
      diagonals(SQUARE, 2, 'metal'),
    ])
      for (const item of items) {
        if (item.kind !== 'path') throw new Error('a hatch is a path');
        const xs = item.d.flatMap(c => (c[0] === 'M' || c[0] === 'L' ? [c[1]] : []));
        expect(xs.length).toBeGreaterThan(3);
        expect(Math.min(...xs)).toBeGreaterThanOrEqual(-1e-6);
        expect(Math.max(...xs)).toBeLessThanOrEqual(100 + 1e-6);
      }
  });

  it('leaves a sliver bare', () => {
    expect(longGrain({ ...field, across: [0, 1] })).toEqual([]);
  });

  it('lays sheets in odd layers', () => {
    expect([4, 9, 18, 40].map(layersOf)).toEqual([3, 7, 13, 13]);
  });

  it('draws from the id and nothing else', () => {
    expect(seedOf('leg_x')).toBe(seedOf('leg_x'));
    const random = seeded(1);
    const drawn = Array.from({ length: 1000 }, random);
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...drawn)).toBeLessThan(1);
    expect(drawn.reduce((a, b) => a + b, 0) / 1000).toBeCloseTo(0.5, 1);
  });
});

describe('a broken measure', () => {
  it('shortens long stretches only', () => {
    const folded = fold([0, 10, 1000, 1010], 100, 30);
    expect(folded.breaks).toEqual([{ from: 10, to: 1000 }]);
    expect([0, 10, 505, 1000, 1010, 1015].map(folded.at)).toEqual([0, 10, 25, 40, 50, 55]);
    expect(folded.total).toBe(50);
  });

  it('never runs backwards', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -100, max: 2000 }), { minLength: 1, maxLength: 12 }), marks => {
        const folded = fold(marks, 120, 40);
        const places = [...marks].sort((a, b) => a - b).map(folded.at);
        for (let i = 1; i < places.length; i++) expect(places[i]!).toBeGreaterThanOrEqual(places[i - 1]!);
      }),
      { seed: 9 },
    );
  });
});

describe('days and clocks', () => {
  it('count on the shop wall', () => {
    expect(isoDay(dayNumber('2026-11-25T23:59'))).toBe('2026-11-25');
    expect(weekday(dayNumber('2026-11-25'))).toBe(3);
    expect(weekday(dayNumber('2026-11-29'))).toBe(7);
    expect(minutesOf('2026-11-26T00:10') - minutesOf('2026-11-25T23:50')).toBe(20);
    expect(minutesOf('soon')).toBeNaN();
  });
});

describe('the order of sawing', () => {
  const show = { unit: 'mm' as const, currency: 'GBP' };
  const steps = DERIVED.cutting.materials
    .flatMap(m => m.uses)
    .map(use => sawOrder(use, show).map(sawStepText));

  it('is told in few words', () => {
    expect(steps[0]).toEqual(['Cross-cut 1440; 1400', 'Rip 132, four times']);
    expect(steps[2]).toEqual(['Saw off 1193']);
    expect(steps[3]).toEqual(['Trim the edge 615', 'Rip 120', 'Square the end 1240', 'Cross-cut 605']);
  });

  it('tells every cut once', () => {
    for (const use of DERIVED.cutting.materials.flatMap(m => m.uses))
      expect(
        sawOrder(use, show)
          .flatMap(s => s.orders)
          .sort((a, b) => a - b),
      ).toEqual(use.cuts.map(c => c.order));
  });
});

describe('materials by their keys', () => {
  it.each([
    ['brass', 'sheet', 'brass'],
    ['stainless-304', 'bar', 'metal'],
    ['aluminium', 'sheet', 'metal'],
    ['birch-plywood', 'sheet', 'board'],
    ['ash-european', 'timber', 'timber'],
  ])('%s as %s is hatched as %s', (key, kind, material) => {
    expect(materialOf(key, kind)).toBe(material);
  });

  it('shows layers only in the edge of what is laid up', () => {
    expect(['birch-plywood', 'blockboard', 'mdf', 'particleboard', 'hardboard'].map(layered)).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});
