import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { scale, unit, vec } from '../../src/geometry/vector.ts';
import { loadExactKernel } from '../../src/host/exact-kernel-node.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { cutShapes, type Primitive } from '../../src/results/cut-shapes.ts';
import type { StockShape } from '../../src/results/kernel.ts';
import { facetError } from '../../src/solids/facet-error.ts';
import { hasShape, solidKey } from '../../src/solids/shapes.ts';

const exact = await loadExactKernel();
const mesh = await loadMeshKernel();

/** Volumes by both kernels and the most by which they may differ. */
function compare(stock: StockShape, gone: Primitive[]) {
  const [one, two] = [exact.part(stock, gone), mesh.part(stock, gone)];
  const [right, near] = [one.volume(), two.volume()];
  one.free();
  two.free();
  return { right, near, most: facetError(stock, gone) + 1e-6 * right };
}

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const workshop = readWorkshopFile(example('workshop')).workshop!;

test.each(['porch-bench', 'writing-table', 'wall-cabinet'])(
  '%s: every part agrees in both kernels within the stated facet error',
  name => {
    const { piece } = deriveJob(readJobFile(example(name)).document!, workshop, {
      today: '2026-11-25',
    }).derived;
    const unlike = new Map(piece.instances.filter(hasShape).map(i => [solidKey(i), i]));
    expect(unlike.size).toBeGreaterThan(5);
    for (const i of unlike.values()) {
      const { right, near, most } = compare(
        { size: i.size, round: i.round, ...(i.wall === undefined ? {} : { wall: i.wall }) },
        i.cuts.flatMap(c => cutShapes(c, i.size)),
      );
      expect(Math.abs(near - right), i.id).toBeLessThanOrEqual(most);
    }
  },
);

const size = { length: 400, width: 60, thickness: 40 };
/** The waste of a turning goes out past the corners of the square it is turned from. */
const reach = Math.hypot(60, 60) / 2 + 1;
const within = (low: number, high: number) => fc.integer({ min: low * 4, max: high * 4 }).map(n => n / 4);
const inPart = fc.tuple(within(-5, 405), within(-5, 65), within(-5, 45)).map(([x, y, z]) => vec(x, y, z));
const length = within(2, 60);
const primitive: fc.Arbitrary<Primitive> = fc.oneof(
  fc.tuple(inPart, length, length, length).map(
    ([p, a, b, c]): Primitive => ({
      shape: 'box',
      box: box(p.x, p.y, p.z, p.x + a, p.y + b, p.z + c),
    }),
  ),
  fc
    .tuple(inPart, fc.tuple(within(-3, 3), within(-3, 3), within(1, 3)), length, within(2, 12))
    .map(([from, [x, y, z], deep, radius]): Primitive => {
      const to = scale(unit(vec(x, y, z)), deep);
      return { shape: 'cylinder', from, to: vec(from.x + to.x, from.y + to.y, from.z + to.z), radius };
    }),
  fc.tuple(fc.constantFrom('x', 'y', 'z'), within(0, 30), within(0, 30), length, length, length).map(
    ([axis, u, v, a, b, drawn]): Primitive => ({
      shape: 'prism',
      axis: axis as 'x',
      from: 3,
      to: 3 + drawn,
      polygon: [
        [u, v],
        [u + a, v],
        [u, v + b],
      ],
    }),
  ),
  fc.tuple(within(-1, 1), within(-1, 1), within(300, 390)).map(([y, z, x]): Primitive => {
    const normal = unit(vec(3, y, z));
    return { shape: 'beyond', normal, offset: normal.x * x };
  }),
  fc.tuple(within(4, 20), within(4, 20), within(4, 20)).map(
    ([a, b, c]): Primitive => ({
      shape: 'turned',
      profile: [
        [50, a],
        [120, b],
        [120, c],
        [200, a],
      ],
      centre: [30, 20],
      reach,
      section: 2400,
    }),
  ),
);

test('random parts agree in both kernels within the stated facet error', () => {
  fc.assert(
    fc.property(fc.array(primitive, { maxLength: 6 }), fc.boolean(), (gone, round) => {
      const stock = round ? { size: { ...size, thickness: 60 }, round } : { size, round };
      const axis: [number, number] = [30, stock.size.thickness / 2];
      const { right, near, most } = compare(
        stock,
        gone.map(p => (p.shape === 'turned' ? { ...p, centre: axis } : p)),
      );
      expect(Math.abs(near - right)).toBeLessThanOrEqual(most);
    }),
    { numRuns: 30, seed: 20261125 },
  );
});
