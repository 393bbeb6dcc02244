import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { cutShapes } from '../../src/results/cut-shapes.ts';
import { type Cut, ON_PART } from '../../src/results/cuts.ts';
import type { StockShape } from '../../src/results/kernel.ts';
import { partCentre, partVolume } from '../../src/results/part-volume.ts';

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
  expect(partVolume({ size, round: false, wall: 2 }, ends(45, 0))).toBeCloseTo(304 * 360, 6);
});

test.each<[string, Omit<StockShape, 'size'>, number, number]>([
  ['square tube', { round: false, wall: 2 }, 30, 20],
  ['round tube', { round: true, wall: 2 }, 45, 0],
  ['round bar', { round: true }, 20, 35],
  ['angle', { round: false, wall: 4, section: 'angle' }, 45, 0],
  ['angle, other hand', { round: false, wall: 4, section: 'angle', mirrored: true }, 45, 0],
  ['angle, compound', { round: false, wall: 4, section: 'angle' }, 30, -20],
  ['channel', { round: false, wall: 3, section: 'channel' }, 20, 35],
])('%s with mitred ends agrees with its solid in volume and centre', async (_, section, mitre, bevel) => {
  const stock: StockShape = { ...section, size: { length: 300, width: 40, thickness: 40 } };
  const { size, round } = stock;
  const cuts = ends(mitre, bevel);
  const kernel = await loadMeshKernel();
  const solid = kernel.part(
    stock,
    cuts.flatMap(c => cutShapes(c, size)),
  );
  // A turn of 32 chords lacks 0.64 % of the circle.
  expect(Math.abs(partVolume(stock, cuts) / solid.volume() - 1)).toBeLessThan(round ? 7e-3 : 1e-6);
  const [closed, meshed] = [partCentre(stock, cuts), solid.centre()];
  for (const k of ['x', 'y', 'z'] as const)
    expect(Math.abs(closed[k] - meshed[k])).toBeLessThan(round ? 0.02 : 1e-3);
  solid.free();
});

test.each<[string, Omit<StockShape, 'size'>, 'face' | 'faceEdge', number]>([
  ['square tube, through both walls', { round: false, wall: 3 }, 'face', 6],
  ['angle, through the leg on its back', { round: false, wall: 4, section: 'angle' }, 'face', 4],
  ['angle, along its other leg', { round: false, wall: 4, section: 'angle', mirrored: true }, 'faceEdge', 4],
  ['channel, through its web', { round: false, wall: 3, section: 'channel' }, 'face', 3],
  ['solid bar', { round: false }, 'face', 40],
])('a hole in a %s takes only the metal it meets', async (_, section, face, metal) => {
  const stock: StockShape = { ...section, size: { length: 300, width: 40, thickness: 40 } };
  const hole: Cut = {
    id: 'h',
    by: 'm',
    stage: ON_PART,
    kind: 'hole',
    role: 'plain',
    face,
    at: face === 'face' ? { x: 100, y: 25, z: 40 } : { x: 100, y: 40, z: 25 },
    direction: face === 'face' ? { x: 0, y: 0, z: -1 } : { x: 0, y: -1, z: 0 },
    diameter: 8,
    depth: 40,
    through: true,
  };
  const gone = partVolume(stock, []) - partVolume(stock, [hole]);
  expect(gone).toBeCloseTo(Math.PI * 16 * metal, 6);
  const kernel = await loadMeshKernel();
  const solids = [kernel.part(stock, []), kernel.part(stock, cutShapes(hole, stock.size))];
  const meshed = solids[0]!.volume() - solids[1]!.volume();
  expect(Math.abs(meshed / gone - 1)).toBeLessThan(7e-3);
  for (const solid of solids) solid.free();
});
