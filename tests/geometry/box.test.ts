import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type Box,
  boundsOf,
  box,
  boxToLocal,
  boxToWorld,
  boxVolume,
  corners,
  intersectBoxes,
  unionVolume,
} from '../../src/geometry/box.ts';
import { type Frame, toLocal, toWorld } from '../../src/geometry/frame.ts';
import { rotateAbout, vec } from '../../src/geometry/vector.ts';

const n = fc.integer({ min: -300, max: 300 });
const boxes = fc.tuple(n, n, n, n, n, n).map(t => box(...t));
const frames = fc
  .tuple(n, n, n, fc.constantFrom(0, 30, 90, 180), fc.constantFrom(0, 90, 45), fc.constantFrom(0, 270))
  .map(([x, y, z, a, b, c]): Frame => {
    const turn = (v: ReturnType<typeof vec>) =>
      rotateAbout(
        rotateAbout(rotateAbout(v, 'x', (a * Math.PI) / 180), 'y', (b * Math.PI) / 180),
        'z',
        (c * Math.PI) / 180,
      );
    return { origin: vec(x, y, z), x: turn(vec(1, 0, 0)), y: turn(vec(0, 1, 0)), z: turn(vec(0, 0, 1)) };
  });
const close = (a: Box, b: Box): void => {
  for (const end of ['min', 'max'] as const)
    for (const k of ['x', 'y', 'z'] as const) expect(a[end][k]).toBeCloseTo(b[end][k], 6);
};

test('a box moved into another frame is the bounds of its eight corners there', () => {
  fc.assert(
    fc.property(boxes, frames, (b, f) => {
      close(boxToWorld(f, b), boundsOf(corners(b).map(p => toWorld(f, p))));
      close(boxToLocal(f, b), boundsOf(corners(b).map(p => toLocal(f, p))));
    }),
    { seed: 51, numRuns: 300 },
  );
});

test('the union of boxes is what a slow count of unit cells finds', () => {
  const small = fc.integer({ min: 0, max: 6 });
  const cells = fc.array(
    fc.tuple(small, small, small, small, small, small).map(t => box(...t)),
    { maxLength: 5 },
  );
  fc.assert(
    fc.property(cells, list => {
      const within = box(0, 0, 0, 6, 6, 6);
      let counted = 0;
      for (let x = 0; x < 6; x++)
        for (let y = 0; y < 6; y++)
          for (let z = 0; z < 6; z++)
            if (
              list.some(
                b =>
                  x >= b.min.x && x < b.max.x && y >= b.min.y && y < b.max.y && z >= b.min.z && z < b.max.z,
              )
            )
              counted++;
      expect(unionVolume(list, within)).toBe(counted);
    }),
    { seed: 52, numRuns: 200 },
  );
});

test('boxes that only touch share nothing', () => {
  expect(intersectBoxes(box(0, 0, 0, 1, 1, 1), box(1, 0, 0, 2, 1, 1))).toBeUndefined();
  expect(boxVolume(intersectBoxes(box(0, 0, 0, 4, 4, 4), box(2, 2, 2, 9, 9, 9))!)).toBe(8);
});
