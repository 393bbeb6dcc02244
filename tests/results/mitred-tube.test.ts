import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { cutShapes } from '../../src/results/cut-shapes.ts';
import { type Cut, ON_PART } from '../../src/results/cuts.ts';
import { partVolume } from '../../src/results/part-volume.ts';

const ends = (mitre: number, bevel: number): Cut[] =>
  (['end1', 'end2'] as const).map(end => ({
    id: end,
    by: 'm',
    stage: ON_PART,
    kind: 'end-cut',
    end,
    mitre,
    bevel,
  }));

test('a square tube 40 x 40 x 2 mitred at both ends weighs its walls: 304 x 360 mm3', () => {
  const size = { length: 400, width: 40, thickness: 40 };
  expect(partVolume(size, ends(45, 0), false, 2)).toBeCloseTo(304 * 360, 6);
});

test.each([
  ['square tube', false, 2, 30, 20],
  ['round tube', true, 2, 45, 0],
  ['round bar', true, undefined, 20, 35],
])('%s with mitred ends agrees with its solid', async (_, round, wall, mitre, bevel) => {
  const size = { length: 300, width: 40, thickness: 40 };
  const cuts = ends(mitre, bevel);
  const kernel = await loadMeshKernel();
  const solid = kernel.part(
    { size, round, ...(wall === undefined ? {} : { wall }) },
    cuts.flatMap(c => cutShapes(c, size)),
  );
  // A turn of 32 chords lacks 0.64 % of the circle.
  expect(Math.abs(partVolume(size, cuts, round, wall) / solid.volume() - 1)).toBeLessThan(
    round ? 7e-3 : 1e-6,
  );
  solid.free();
});
