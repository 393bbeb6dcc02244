import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  besideHole,
  distanceBetween,
  holeBox,
  type Line,
  wayThrough,
  woodBehindHole,
} from '../../src/checks/solid.ts';
import { add, norm, scale, sub, unit, type Vec3, vec } from '../../src/geometry/vector.ts';
import { hole, part } from './fixtures.ts';

const coordinate = fc.integer({ min: -50, max: 50 });
const point = fc.record({ x: coordinate, y: coordinate, z: coordinate });
const line = fc.record({ from: point, to: point });

/** By trying many points of both lines: slow, and never less than the truth. */
function tried(a: Line, b: Line, steps: number): number {
  const on = (l: Line, s: number): Vec3 => add(l.from, scale(sub(l.to, l.from), s));
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    for (let j = 0; j <= steps; j++) least = Math.min(least, norm(sub(on(a, i / steps), on(b, j / steps))));
  }
  return least;
}

describe('distances inside a part', () => {
  it('finds the least distance of two lines with ends, against trying many points', () => {
    fc.assert(
      fc.property(line, line, (a, b) => {
        const found = distanceBetween(a, b);
        const slow = tried(a, b, 60);
        expect(found).toBeLessThanOrEqual(slow + 1e-9);
        // A step along each line is at most a sixtieth of it, so the truth is at most that much nearer.
        expect(slow - found).toBeLessThanOrEqual((norm(sub(a.to, a.from)) + norm(sub(b.to, b.from))) / 60);
        expect(distanceBetween(b, a)).toBeCloseTo(found, 9);
      }),
      { seed: 41, numRuns: 60 },
    );
  });

  it('leaves a part where it should, and never sooner behind the hole than in it', () => {
    const inside = fc.record({
      x: fc.double({ min: 1, max: 399, noNaN: true }),
      y: fc.double({ min: 1, max: 44, noNaN: true }),
      z: fc.double({ min: 1, max: 44, noNaN: true }),
    });
    const block = part('block', { size: [400, 45, 45] });
    fc.assert(
      fc.property(inside, inside, fc.double({ min: 0, max: 30, noNaN: true }), (from, to, depth) => {
        fc.pre(norm(sub(to, from)) > 1e-3);
        const direction = unit(sub(to, from));
        const way = wayThrough(block.size, from, direction);
        const out = add(from, scale(direction, way));
        const onFace = [out.x, out.x - 400, out.y, out.y - 45, out.z, out.z - 45].some(
          d => Math.abs(d) < 1e-6,
        );
        expect(onFace).toBe(true);
        expect(way).toBeGreaterThanOrEqual(norm(sub(to, from)) - 1e-9);
        const drilled = hole({ id: 'h.1', at: from, direction, depth });
        if (!besideHole(block, drilled).length)
          expect(woodBehindHole(block, drilled)).toBeCloseTo(way - depth, 9);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it('boxes a square hole exactly', () => {
    const drilled = hole({
      id: 'h.1',
      at: vec(100, 20, 45),
      direction: vec(0, 0, -1),
      diameter: 8,
      depth: 30,
    });
    expect(holeBox(drilled, { length: 400, width: 45, thickness: 45 })).toEqual({
      min: vec(96, 16, 15),
      max: vec(104, 24, 45),
    });
  });
});
