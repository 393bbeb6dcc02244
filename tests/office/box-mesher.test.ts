import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Box, box, intersectBoxes, unionVolume } from '../../src/geometry/box.ts';
import { cross, dot, sub, type Vec3 } from '../../src/geometry/vector.ts';
import { analyse } from '../../src/office/ink/analyse.ts';
import { boxMesh, tenonWaste } from '../../src/office/ink/box-mesher.ts';
import { corner, type SolidMesh } from '../../src/office/ink/part-mesh.ts';
import { type Cut, ON_PART, type TenonCut } from '../../src/results/cuts.ts';
import type { Instance } from '../../src/results/piece.ts';
import { instances } from './fixtures/bench.ts';

const plain = (cuts: Cut[], more: Partial<Instance> = {}): Instance => ({
  ...instances.find(i => i.id === 'board_1')!,
  frame: {
    origin: { x: 5, y: 6, z: 7 },
    x: { x: 1, y: 0, z: 0 },
    y: { x: 0, y: 1, z: 0 },
    z: { x: 0, y: 0, z: 1 },
  },
  size: { length: 100, width: 40, thickness: 20 },
  cuts,
  ...more,
});

const pocketOf = (b: Box): Cut => ({
  kind: 'mortise',
  id: 'm',
  by: 'm',
  stage: ON_PART,
  face: 'face',
  box: b,
  run: 'x',
  through: false,
  corner: 'square',
});

/** Volume inside a closed surface (divergence theorem): a sixth of the sum of the triple products. */
function volume(mesh: SolidMesh): number {
  let six = 0;
  for (let t = 0; t < mesh.indices.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map(k => corner(mesh, mesh.indices[t + k]!)) as [Vec3, Vec3, Vec3];
    six += dot(a, cross(b, c));
  }
  return six / 6;
}

/** Every edge is walked once each way by an equal number of triangles: nothing is open, nothing is turned. */
function isClosed(mesh: SolidMesh): boolean {
  const walked = new Map<string, number>();
  for (let t = 0; t < mesh.indices.length; t += 3)
    for (let k = 0; k < 3; k++) {
      const [p, q] = [mesh.indices[t + k]!, mesh.indices[t + ((k + 1) % 3)]!];
      const key = p < q ? `${p} ${q}` : `${q} ${p}`;
      walked.set(key, (walked.get(key) ?? 0) + (p < q ? 1 : -1));
    }
  return [...walked.values()].every(n => n === 0);
}

const whole = box(0, 0, 0, 100, 40, 20);
const coordinate = (most: number) => fc.integer({ min: -5, max: most + 5 });
const anyBox = fc
  .tuple(coordinate(100), coordinate(40), coordinate(20), coordinate(100), coordinate(40), coordinate(20))
  .map(([a, b, c, d, e, f]) => box(a, b, c, d, e, f));

describe('surface of a part from boxes', () => {
  test('is closed and holds the envelope less its pockets, whatever the pockets', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 7 }), pockets => {
        const inside = pockets.filter(b => intersectBoxes(b, whole) !== undefined);
        const mesh = boxMesh(plain(inside.map(pocketOf)));
        expect(isClosed(mesh)).toBe(true);
        expect(volume(mesh)).toBeCloseTo(100 * 40 * 20 - unionVolume(inside, whole), 1);
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  test('a tenon leaves its core, a haunch stands beside it', () => {
    const tenon: TenonCut = {
      kind: 'tenon',
      id: 't',
      by: 't',
      stage: ON_PART,
      end: 'end2',
      length: 30,
      y: { low: 12, high: 6 },
      z: { low: 5, high: 5 },
      cheeks: 'z',
      through: false,
    };
    const core = 30 * 22 * 10;
    expect(volume(boxMesh(plain([tenon])))).toBeCloseTo(70 * 40 * 20 + core, 1);
    for (const side of ['low', 'high'] as const) {
      const haunched = { ...tenon, haunch: { side, width: 6, length: 8 } };
      expect(volume(boxMesh(plain([haunched])))).toBeCloseTo(70 * 40 * 20 + core + 6 * 8 * 10, 1);
    }
    expect(tenonWaste(tenon, { length: 100, width: 40, thickness: 20 })).toHaveLength(4);
  });

  test('a taper takes a wedge', () => {
    const taper: Cut = {
      kind: 'taper',
      id: 'w',
      by: 'w',
      stage: ON_PART,
      face: 'face',
      from: 40,
      to: 100,
      amount: 6,
    };
    const mesh = boxMesh(plain([taper]));
    expect(isClosed(mesh)).toBe(true);
    expect(volume(mesh)).toBeCloseTo(100 * 40 * 20 - (60 * 6 * 40) / 2, 1);
  });

  test('a bar is a prism of 32 sides, a tube is hollow', () => {
    const size = { length: 100, width: 20, thickness: 20 };
    const polygon = (r: number): number => 16 * r * r * Math.sin((2 * Math.PI) / 32);
    const bar = boxMesh(plain([], { size, round: true }));
    const tube = boxMesh(plain([], { size, round: true, wall: 2 }));
    expect(isClosed(bar)).toBe(true);
    expect(isClosed(tube)).toBe(true);
    expect(volume(bar)).toBeCloseTo(100 * polygon(10), 1);
    expect(volume(tube)).toBeCloseTo(100 * (polygon(10) - polygon(8)), 1);
  });

  test('a mirrored frame does not turn the surface inside out', () => {
    const instance = plain([pocketOf(box(10, 10, 10, 20, 20, 20))]);
    const mirrored = { ...instance, frame: { ...instance.frame, y: { x: 0, y: -1, z: 0 } } };
    expect(volume(boxMesh(mirrored))).toBeCloseTo(volume(boxMesh(instance)), 1);
  });
});

describe('faces and edges of a surface', () => {
  test('a plain board has six faces and twelve edges, each one stroke', () => {
    const found = analyse(plain([]), boxMesh(plain([])));
    expect(found.faceCount).toBe(6);
    expect(found.edges).toHaveLength(12);
    expect(found.edges.every(e => e.kind === 'crease')).toBe(true);
  });

  test('a mortise does not break the long edges of its part into pieces', () => {
    const instance = plain([pocketOf(box(30, 10, 10, 60, 30, 20))]);
    const found = analyse(instance, boxMesh(instance));
    expect(found.faceCount).toBe(6 + 5);
    expect(found.edges).toHaveLength(12 + 12);
    const lengths = found.edges.map(e => Math.hypot(...Object.values(sub(e.b, e.a))));
    expect(lengths.filter(l => Math.abs(l - 100) < 1e-3)).toHaveLength(4);
  });

  test('the mantle of a bar is one smooth face', () => {
    const bar = instances.find(i => i.id === 'bar')!;
    const found = analyse(bar, boxMesh(bar));
    expect(found.faceCount).toBe(3);
    expect(found.edges.filter(e => e.kind === 'smooth')).toHaveLength(32);
  });
});
