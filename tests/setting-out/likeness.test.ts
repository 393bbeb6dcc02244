import fc from 'fast-check';
import { expect, test } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import type { Cut, Size } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Instance } from '../../src/results/piece.ts';
import { shapeOf, turnings } from '../../src/setting-out/likeness.ts';
import { mirrorCut } from '../../src/setting-out/mirror-cut.ts';

const part = (size: Size, cuts: Cut[]): Instance => ({
  id: 'p',
  part: 'p',
  name: 'P',
  kind: 'timber',
  material: 'oak-european',
  round: false,
  frame: WORLD,
  body: size,
  size,
  added: {},
  cuts,
  loose: false,
  mirrored: false,
  grain: 'length',
  show: true,
});
const pocket = (b: ReturnType<typeof box>): Cut => ({
  id: 'c.1',
  by: 'c',
  stage: ON_PART,
  kind: 'mortise',
  face: 'face',
  box: b,
  run: 'x',
  through: false,
  corner: 'square',
});

const SIZE: Size = { length: 400, width: 60, thickness: 40 };
const pockets = fc.array(
  fc
    .tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 20 }))
    .map(([x, y, z]) => box(x, y, z, x + 50, y + 12, z + 15)),
  { minLength: 1, maxLength: 4 },
);
const turnAbout = (b: ReturnType<typeof box>, s: Size, flips: 'xy' | 'xz' | 'yz') => {
  const f = (k: 'x' | 'y' | 'z', whole: number, low: number, high: number): [number, number] =>
    flips.includes(k) ? [whole - high, whole - low] : [low, high];
  const [x, y, z] = [
    f('x', s.length, b.min.x, b.max.x),
    f('y', s.width, b.min.y, b.max.y),
    f('z', s.thickness, b.min.z, b.max.z),
  ];
  return box(x[0], y[0], z[0], x[1], y[1], z[1]);
};

test('a part turned end for end or about is the same part', () => {
  fc.assert(
    fc.property(pockets, fc.constantFrom<'xy' | 'xz' | 'yz'>('xy', 'xz', 'yz'), (boxes, flips) => {
      const own = part(SIZE, boxes.map(pocket));
      const turned = part(
        SIZE,
        boxes.map(b => pocket(turnAbout(b, SIZE, flips))),
      );
      expect(turnings(own).same.has(shapeOf(turned))).toBe(true);
      expect([...turnings(own).same].sort()).toEqual([...turnings(turned).same].sort());
    }),
    { seed: 3, numRuns: 200 },
  );
});

test('the mirror image is the other hand, and its mirror image is the part again', () => {
  fc.assert(
    fc.property(pockets, boxes => {
      const cuts = boxes.map(pocket);
      const own = part(SIZE, cuts);
      const other = part(
        SIZE,
        cuts.map(c => mirrorCut(c, SIZE)),
      );
      expect(turnings(own).mirror.has(shapeOf(other))).toBe(true);
      expect(turnings(other).mirror.has(shapeOf(own))).toBe(true);
      expect(cuts.map(c => mirrorCut(mirrorCut(c, SIZE), SIZE))).toEqual(cuts);
    }),
    { seed: 4, numRuns: 200 },
  );
});

test('a square section may also be turned by a quarter', () => {
  const square: Size = { length: 400, width: 45, thickness: 45 };
  const one = part(square, [pocket(box(10, 15, 25, 60, 25, 45))]);
  const quarter = part(square, [pocket(box(10, 25, 20, 60, 45, 30))]);
  expect(turnings(one).same.has(shapeOf(quarter)) || turnings(one).mirror.has(shapeOf(quarter))).toBe(true);
  const flat = part(SIZE, [pocket(box(10, 15, 25, 60, 25, 40))]);
  const flatQuarter = part(SIZE, [pocket(box(10, 25, 15, 60, 40, 25))]);
  expect(turnings(flat).same.has(shapeOf(flatQuarter))).toBe(false);
});
