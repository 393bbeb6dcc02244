import { describe, expect, test } from 'vitest';
import { pieceOf, timber } from './piece.ts';

const made = (feature: object) =>
  pieceOf({
    parts: {
      board: timber({
        length: 400,
        width: 60,
        thickness: 20,
        along: 'right',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
    },
    features: { it: { on: 'board', ...feature } },
  });

describe('a shape that does not go into its part is told at its figure, with the one that would', () => {
  test.each([
    // atan(60 / 20) is 71.565 degrees.
    [
      { type: 'bevel', edge: 'top', face: 'front', angle: 80 },
      'angle',
      'takes 113.43 mm',
      '71.5 deg or less',
    ],
    [{ type: 'rounded-corner', end: 'end1', edge: 'top', size: 70 }, 'size', 'radius 70 mm', '60 mm or less'],
    [
      { type: 'curve', face: 'top', depth: 55, from: 100, to: 200 },
      'depth',
      'half its chord of 100',
      '50 mm or less',
    ],
    [{ type: 'curve', face: 'top', depth: 65 }, 'depth', 'leaves nothing of 60', 'less than 60 mm'],
    [{ type: 'curve', face: 'top', depth: 0 }, 'depth', 'depth comes to 0 mm', 'above 0'],
    [
      { type: 'cut-out', face: 'front', along: 10, across: 10, width: 500, size: 20 },
      'along',
      'from 10 to 510 mm, the part from 0 to 400',
      '400 mm or less',
    ],
    [
      { type: 'cut-out', face: 'front', along: 100, across: 50, diameter: 30 },
      'across',
      'from 35 to 65 mm, the part from 0 to 60',
      'give 15 to 45 mm',
    ],
    [
      { type: 'hole', face: 'front', along: 50, across: 30, diameter: 8, depth: 30 },
      'depth',
      'deeper than the part, 20',
      'less than 20 mm',
    ],
  ])('%j', (feature, field, fault, mend) => {
    const { faults, instance } = made(feature);
    expect(faults).toHaveLength(1);
    expect(faults[0]!.place).toBe(`features.it.${field}`);
    expect(faults[0]!.fault).toContain(fault);
    expect(faults[0]!.mend).toContain(mend);
    expect(instance('board').cuts).toEqual([]);
  });

  test.each([
    { type: 'bevel', edge: 'top', face: 'front', angle: 71.5 },
    { type: 'rounded-corner', end: 'end1', edge: 'top', size: 60 },
    { type: 'curve', face: 'top', depth: 50, from: 100, to: 200 },
    { type: 'cut-out', face: 'front', along: 100, across: 45, diameter: 30 },
  ])('the figure that would work does: %j', feature => {
    expect(made(feature).faults).toEqual([]);
  });
});

test('a round window is its circle within 0.1 %, and so is a hollow half circle', () => {
  const area = (feature: object): number => {
    const cut = made(feature).instance('board').cuts[0]!;
    if (!('polygon' in cut)) throw new Error('no outline');
    const ring = cut.polygon;
    return Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [p, q] = ring[(i + 1) % ring.length]!;
        return sum + (x * q - p * y) / 2;
      }, 0),
    );
  };
  const circle = Math.PI * 20 * 20;
  const round = area({ type: 'cut-out', face: 'front', along: 200, across: 30, diameter: 40 });
  expect(1 - round / circle).toBeGreaterThan(0);
  expect(1 - round / circle).toBeLessThan(0.001);
  const hollow = area({ type: 'curve', face: 'top', depth: 20, from: 100, to: 140 });
  expect(1 - hollow / (circle / 2)).toBeGreaterThan(0);
  expect(1 - hollow / (circle / 2)).toBeLessThan(0.001);
});
