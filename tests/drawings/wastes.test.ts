import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facetsOf } from '../../src/drawings/facets.ts';
import { slabs } from '../../src/drawings/wastes.ts';
import { polygonArea } from '../../src/geometry/polygon.ts';
import { add, cross, dot, scale, sub, vec } from '../../src/geometry/vector.ts';
import { partVolume } from '../../src/results/part-volume.ts';
import { pieceOf, timber } from '../setting-out/piece.ts';

const boardWith = (...features: object[]) => {
  const made = pieceOf({
    parts: {
      rail: timber({
        ...{ length: 400, width: 90, thickness: 30, along: 'right', facing: 'front' },
        at: { left: 0, front: 0, bottom: 0 },
      }),
    },
    features: Object.fromEntries(features.map((f, i) => [`f${i}`, { on: 'rail', ...f }])),
  });
  expect(made.said).toEqual([]);
  return made.instance('rail');
};

const arc = { type: 'curve', face: 'bottom', depth: 30, from: 40, to: 360 };
const window = { type: 'cut-out', face: 'front', along: 60, across: 40, width: 120, size: 40, radius: 8 };
const scribe = {
  type: 'scribe',
  face: 'top',
  points: [
    [0, 3],
    [120, 7.5],
    [400, 1],
  ],
};
const bevel = { type: 'bevel', face: 'front', edge: 'top', angle: 20 };
const corner = { type: 'rounded-corner', end: 'end1', edge: 'top', size: 35 };
const groove = { type: 'groove', face: 'back', width: 8, depth: 10, across: 60 };

/** Volume and area vector of a closed surface: a third of the sum of height times area. */
function measure(facets: ReturnType<typeof facetsOf>): { volume: number; open: number } {
  let volume = 0;
  let whole = vec(0, 0, 0);
  for (const f of facets) {
    const [p, ...rest] = f.points;
    const twice = rest
      .slice(1)
      .reduce((sum, q, i) => add(sum, cross(sub(rest[i]!, p!), sub(q, p!))), vec(0, 0, 0));
    const area = Math.hypot(twice.x, twice.y, twice.z) / 2;
    volume += (dot(f.normal, p!) * area) / 3;
    whole = add(whole, scale(f.normal, area));
  }
  return { volume, open: Math.hypot(whole.x, whole.y, whole.z) };
}

describe('surfaces with shaped wastes', () => {
  it.each([
    ['an arc', [arc]],
    ['a window', [window]],
    ['a scribed edge', [scribe]],
    ['a bevel', [bevel]],
    ['a rounded corner', [corner]],
    ['an arc and a scribed edge', [arc, scribe]],
    ['an arc and a groove clear of it', [arc, groove]],
    ['a window and a corner', [window, corner]],
  ])('%s: the surface is closed and holds what the figures say', (_, features) => {
    const rail = boardWith(...features);
    const { volume, open } = measure(facetsOf(rail, 0));
    expect(open).toBeLessThan(1e-3);
    expect(volume / partVolume(rail, rail.cuts)).toBeCloseTo(1, 6);
  });

  it('an arc is seen from the front as one line, and from below without lines across it', () => {
    const facets = facetsOf(boardWith(arc), 0);
    const front = facets.filter(f => f.normal.y < -0.99).flatMap(f => f.segments);
    const length = front.reduce((sum, [a, b]) => sum + Math.hypot(a.x - b.x, a.z - b.z), 0);
    // Top, two ends, two straights below, and the arc of radius 441.7 over 320.
    const radius = (160 * 160 + 30 * 30) / 60;
    const along = 2 * radius * Math.asin(160 / radius);
    expect(length).toBeCloseTo(400 + 2 * 90 + 2 * 40 + along, 0);
    const across = facets.flatMap(f => f.segments).filter(([a, b]) => Math.abs(a.y - b.y) > 29);
    // Eight at the corners of the part told by both faces, and the two where the arc begins, by two each.
    expect(across.every(([a]) => a.x < 41 || a.x > 359)).toBe(true);
  });

  it('slabs cover a polygon exactly, each of them convex', () => {
    const ring = fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 30 })), {
      minLength: 3,
      maxLength: 12,
    });
    fc.assert(
      fc.property(ring, steps => {
        // A line of depths over rising stations, closed along its foot: a simple polygon, seldom convex.
        let u = 0;
        const top = steps.map(([du, v]): [number, number] => {
          u += du;
          return [u, v];
        });
        const polygon: [number, number][] = [[top[0]![0], 0], ...top, [u, 0]];
        const parts = slabs(polygon);
        expect(parts.reduce((sum, p) => sum + polygonArea(p), 0)).toBeCloseTo(polygonArea(polygon), 6);
        for (const p of parts) expect(p.length).toBeLessThanOrEqual(4);
      }),
      { seed: 11 },
    );
  });
});
