import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { cutShapes } from '../../src/results/cut-shapes.ts';
import { partCentre, partVolume } from '../../src/results/part-volume.ts';
import type { Instance } from '../../src/results/piece.ts';
import { turnings } from '../../src/setting-out/likeness.ts';
import { fairCurve, hollowArc } from '../../src/setting-out/shaped-wastes.ts';
import { pieceOf, timber } from './piece.ts';

const SIZES = { length: 400, width: 90, thickness: 30 };
const board = (feature: object, over: object = {}) =>
  pieceOf({
    parts: {
      rail: timber({
        ...SIZES,
        along: 'right',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
        ...over,
      }),
    },
    features: { it: { on: 'rail', ...feature } },
  });

const FEATURES: Record<string, object> = {
  'a hollow arc under a rail': { type: 'curve', face: 'bottom', depth: 30, from: 40, to: 360 },
  'a fair curve through points': {
    type: 'curve',
    face: 'top',
    points: [
      [0, 20],
      [100, 0],
      [250, 35],
      [400, 10],
    ],
  },
  'a curve at an end': { type: 'curve', face: 'end2', depth: 12 },
  'an edge scribed to a wall': {
    type: 'scribe',
    face: 'top',
    points: [
      [0, 3],
      [120, 7.5],
      [400, 0],
    ],
  },
  'a window with round corners': {
    type: 'cut-out',
    face: 'front',
    along: 60,
    across: 20,
    width: 120,
    size: 40,
    radius: 8,
  },
  'a round window': { type: 'cut-out', face: 'front', along: 200, across: 45, diameter: 50 },
  'a bevelled edge': { type: 'bevel', face: 'front', edge: 'top', angle: 20 },
  'a rounded corner': { type: 'rounded-corner', end: 'end1', edge: 'top', size: 35 },
  'a stopped chamfer': { type: 'chamfer', edges: [['front', 'top']], size: 8, from: 60, to: 300 },
  'a compound end': { type: 'mitre', end: 'end2', face: 'top', angle: 30, tilt: 25 },
};

const solidOf = async (i: Instance) => {
  const kernel = await loadMeshKernel();
  const solid = kernel.part(
    { size: i.size, round: i.round },
    i.cuts.flatMap(c => cutShapes(c, i.size)),
  );
  const { positions, indices } = solid.triangles();
  const volume = solid.volume();
  // Centre of gravity by signed tetrahedra from the origin.
  const at = (k: number) => [positions[k * 3]!, positions[k * 3 + 1]!, positions[k * 3 + 2]!] as const;
  const sum = [0, 0, 0];
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [at(indices[t]!), at(indices[t + 1]!), at(indices[t + 2]!)];
    const six =
      a[0] * (b[1] * c[2] - b[2] * c[1]) -
      a[1] * (b[0] * c[2] - b[2] * c[0]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
    for (const k of [0, 1, 2]) sum[k]! += (six / 24) * (a[k]! + b[k]! + c[k]!);
  }
  solid.free();
  return { volume, centre: sum.map(v => v / volume) };
};

describe('shaped features', () => {
  it.each(Object.entries(FEATURES))(
    '%s: mass and centre of the figures are those of the solid',
    async (_, feature) => {
      const made = board(feature);
      expect(made.said).toEqual([]);
      const rail = made.instance('rail');
      const closed = partVolume(rail, rail.cuts);
      const { volume, centre } = await solidOf(rail);
      expect(closed).toBeLessThan(400 * 90 * 30 - 100);
      expect(Math.abs(closed - volume) / volume).toBeLessThan(2e-4);
      const c = partCentre(rail, rail.cuts);
      expect([c.x, c.y, c.z].map((v, k) => Math.abs(v - centre[k]!) < 0.02)).toEqual([true, true, true]);
    },
  );

  it.each(Object.entries(FEATURES))(
    '%s: the other hand is the mirror image, and alike when turned',
    (_, feature) => {
      const made = board(feature, { mirror: { x: 500 } });
      expect(made.said).toEqual([]);
      const [one, other] = made.piece.instances as [Instance, Instance];
      expect(partVolume(other, other.cuts)).toBeCloseTo(partVolume(one, one.cuts), 6);
      const own = [...turnings(one).same, ...turnings(one).mirror];
      expect([...turnings(other).same].some(text => own.includes(text))).toBe(true);
    },
  );

  it('a leg turned from the square keeps its square block and the exact mass of its cones', async () => {
    const made = board(
      {
        type: 'turned',
        points: [
          [100, 28],
          [100, 20],
          [180, 26],
          [400, 14],
        ],
      },
      { width: 30 },
    );
    expect(made.said).toEqual([]);
    const leg = made.instance('rail');
    const cone = (h: number, d: number, e: number): number => (Math.PI * h * (d * d + d * e + e * e)) / 12;
    expect(partVolume(leg, leg.cuts)).toBeCloseTo(100 * 900 + cone(80, 20, 26) + cone(220, 26, 14), 6);
    const { volume } = await solidOf(leg);
    // 32 chords to a turn: a facet lies inside the circle by sinc(2 pi / 32), 0.64 % of a round section.
    expect(Math.abs(volume - partVolume(leg, leg.cuts)) / volume).toBeLessThan(6.5e-3);
  });

  it('the arc meets its chord and its rise, and lies on one circle', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 2000 }), fc.integer({ min: 2, max: 49 }), (chord, percent) => {
        const rise = (chord * percent) / 100;
        const arc = hollowArc(50, 50 + chord, rise);
        const radius = (chord * chord) / 4 / (2 * rise) + rise / 2;
        expect(arc[0]![0]).toBeCloseTo(50, 6);
        expect(arc.at(-1)![0]).toBeCloseTo(50 + chord, 6);
        expect(Math.max(...arc.map(p => p[1]))).toBeCloseTo(rise, 6);
        for (const [x, d] of arc)
          expect(Math.hypot(x - 50 - chord / 2, d + radius - rise)).toBeCloseTo(radius, 5);
      }),
      { seed: 3 },
    );
  });

  it('a fair curve goes through its points and never swings beyond its neighbours', () => {
    const depths = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 3, maxLength: 9 });
    fc.assert(
      fc.property(depths, list => {
        const points = list.map((d, i): [number, number] => [i * 50, d]);
        const drawn = fairCurve(points);
        for (const [i, [x, d]] of points.entries()) expect(drawn[i * 8]).toEqual([x, expect.closeTo(d, 9)]);
        drawn.forEach(([, d], i) => {
          const span = Math.min(points.length - 2, Math.floor(Math.max(0, i - 1e-9) / 8));
          const [low, high] = [points[span]![1], points[span + 1]![1]].sort((a, b) => a - b) as [
            number,
            number,
          ];
          expect(d).toBeGreaterThanOrEqual(low - 1e-9);
          expect(d).toBeLessThanOrEqual(high + 1e-9);
        });
      }),
      { seed: 5 },
    );
  });

  it.each([
    [{ type: 'curve', face: 'bottom', depth: 95 }, 'leaves nothing of 90'],
    [{ type: 'curve', face: 'bottom' }, 'depth is not given'],
    [
      {
        type: 'curve',
        face: 'bottom',
        points: [
          [0, 1],
          [0, 2],
        ],
      },
      'do not rise',
    ],
    [{ type: 'scribe', face: 'top' }, 'no offsets'],
    [
      {
        type: 'scribe',
        face: 'top',
        points: [
          [0, 0],
          [400, 0],
        ],
      },
      'takes nothing off',
    ],
    [
      { type: 'cut-out', face: 'front', along: 60, across: 20, width: 120, size: 40, radius: 21 },
      'do not go into it',
    ],
    [
      { type: 'cut-out', face: 'front', along: 380, across: 20, width: 120, size: 40 },
      'reaches from 380 to 500 mm',
    ],
    [{ type: 'bevel', face: 'front', edge: 'top', angle: 0 }, 'cannot be cut'],
    [{ type: 'rounded-corner', end: 'end1', edge: 'top', size: 95 }, 'larger than the part'],
    [
      {
        type: 'turned',
        points: [
          [0, 20],
          [400, 31],
        ],
      },
      'does not come out of 30 mm',
    ],
  ])('a shape that cannot be is told at its field: %j', (feature, words) => {
    expect(board(feature).said.join('\n')).toContain(words);
  });
});
