import { expect, test } from 'vitest';
import type { Frame } from '../../src/geometry/frame.ts';
import { vec } from '../../src/geometry/vector.ts';
import { loadExactKernel } from '../../src/host/exact-kernel-node.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import type { StockShape } from '../../src/results/kernel.ts';
import { readStep } from './read-step.ts';

const kernel = await loadExactKernel();
const BOARD: StockShape = { size: { length: 500, width: 40, thickness: 30 }, round: false };
const at = (x: number): Frame => ({
  origin: vec(x, 0, 0),
  x: vec(1, 0, 0),
  y: vec(0, 1, 0),
  z: vec(0, 0, 1),
});

test('volumes are those of the closed forms: bore, countersink, wedge', () => {
  const solid = kernel.part(BOARD, [
    { shape: 'cylinder', from: vec(100, 20, 0), to: vec(100, 20, 30), radius: 5 },
    { shape: 'cone', from: vec(100, 20, 30), to: vec(100, 20, 25), radiusFrom: 10, radiusTo: 5 },
    {
      shape: 'prism',
      axis: 'y',
      from: 0,
      to: 40,
      polygon: [
        [0, 0],
        [5, 0],
        [0, 5],
      ],
    },
  ]);
  const countersink = (Math.PI * 5 * (100 + 50 + 25)) / 3 - Math.PI * 25 * 5;
  expect(solid.volume()).toBeCloseTo(600_000 - Math.PI * 25 * 30 - countersink - 12.5 * 40, 6);
});

test('a tube, a turned cone and a slanting end', () => {
  const size = { length: 200, width: 30, thickness: 30 };
  expect(kernel.part({ size, round: true, wall: 3 }, []).volume()).toBeCloseTo(
    Math.PI * (225 - 144) * 200,
    6,
  );
  expect(kernel.part({ size, round: false, wall: 3 }, []).volume()).toBeCloseTo((900 - 576) * 200, 6);
  const cone = kernel.part({ size, round: false }, [
    {
      shape: 'turned',
      profile: [
        [0, 15],
        [200, 5],
      ],
      centre: [15, 15],
      reach: 30,
      section: 900,
    },
  ]);
  expect(cone.volume()).toBeCloseTo((Math.PI * 200 * (225 + 75 + 25)) / 3, 5);
  // Centroid of a frustum: h (R2 + 2 R r + 3 r2) / (4 (R2 + R r + r2)) from the wide end.
  expect(cone.centre().x).toBeCloseTo((200 * (225 + 150 + 75)) / (4 * 325), 6);
  const ended = kernel.part({ size, round: false }, [
    {
      shape: 'beyond',
      normal: vec(Math.SQRT1_2, 0, Math.SQRT1_2),
      offset: 200 * Math.SQRT1_2,
    },
  ]);
  expect(ended.volume()).toBeCloseTo(900 * 200 - 450 * 30, 6);
});

test('both kernels tell shared room and gap of placed solids alike', async () => {
  for (const one of [kernel, await loadMeshKernel()]) {
    const board = one.part(BOARD, []);
    expect(one.shared(board, at(0), board, at(499)), one.name).toBeCloseTo(1200, 6);
    expect(one.shared(board, at(0), board, at(500)), one.name).toBe(0);
    expect(one.gap(board, at(0), board, at(503), 10), one.name).toBeCloseTo(3, 6);
    expect(one.gap(board, at(0), board, at(600), 10), one.name).toBe(10);
    expect(one.gap(board, at(0), board, at(490), 10), one.name).toBe(0);
    const { x, y, z } = board.centre();
    expect([x, y, z].map(k => Math.round(k * 1e3) / 1e3)).toEqual([250, 20, 15]);
    board.free();
  }
});

test('triangles close round the solid within the chord', () => {
  const bar = kernel.part({ size: { length: 100, width: 20, thickness: 20 }, round: true }, []);
  const { positions, indices } = bar.triangles();
  const p = (n: number) => [0, 1, 2].map(k => positions[3 * n + k]!) as [number, number, number];
  let six = 0;
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [p(indices[t]!), p(indices[t + 1]!), p(indices[t + 2]!)];
    six +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) +
      a[1] * (b[2] * c[0] - b[0] * c[2]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  expect(six / 6 / bar.volume()).toBeGreaterThan(0.985);
  expect(six / 6).toBeLessThan(bar.volume());
});

test('a size of nothing is refused, with the size', () => {
  expect(() => kernel.part({ ...BOARD, size: { length: 500, width: 0, thickness: 30 } }, [])).toThrow(
    '500 x 0 x 30 mm is no solid',
  );
});

test('STEP holds each solid once, its copies by reference, and the names', async () => {
  const board = kernel.part(BOARD, []);
  const bytes = kernel.step("Maker's bench", [
    {
      name: 'Füß „6“ a\\b',
      solid: board,
      at: [
        { name: 'leg_1', frame: at(0) },
        { name: 'leg_2', frame: at(600) },
      ],
    },
  ]);
  const text = new TextDecoder().decode(bytes);
  expect(text.match(/MANIFOLD_SOLID_BREP/g)).toHaveLength(1);
  expect(text.match(/NEXT_ASSEMBLY_USAGE_OCCURRENCE/g)).toHaveLength(2);
  const { solids, names } = await readStep(bytes);
  expect(solids.map(s => s.volume)).toEqual([expect.closeTo(600_000, 2), expect.closeTo(600_000, 2)]);
  expect(solids.map(s => Math.round(s.centre[0])).sort((a, b) => a - b)).toEqual([250, 850]);
  expect(names).toContain("Maker's bench");
});
