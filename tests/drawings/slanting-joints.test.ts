import { expect, test } from 'vitest';
import { facetsOf } from '../../src/drawings/facets.ts';
import { add, cross, dot, scale, sub, vec } from '../../src/geometry/vector.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { PIECES } from '../joints/pieces/index.ts';
import { pieceOf } from '../setting-out/piece.ts';

/** Volume enclosed and how far the surface is from closed, by the divergence theorem. */
function measure(facets: ReturnType<typeof facetsOf>): { volume: number; open: number } {
  let volume = 0;
  let whole = vec(0, 0, 0);
  for (const { points, normal } of facets) {
    const [p, ...rest] = points;
    const twice = rest
      .slice(1)
      .reduce((sum, q, i) => add(sum, cross(sub(rest[i]!, p!), sub(q, p!))), vec(0, 0, 0));
    const area = Math.hypot(twice.x, twice.y, twice.z) / 2;
    volume += (dot(normal, p!) * area) / 3;
    whole = add(whole, scale(normal, area));
  }
  return { volume, open: Math.hypot(whole.x, whole.y, whole.z) };
}

test.each(['mitre-spline', 'mitre-keys', 'box-mitre', 'scarf', 'through-dovetail', 'sliding-dovetail'])(
  '%s as drawn: the surfaces are closed and hold what the solids do',
  async type => {
    const { parts, joint } = PIECES[type]!(20) as { parts: object; joint?: object };
    const made = pieceOf({ parts, joints: { j: { type, from: 'from', into: 'into', ...joint } } });
    const cache = new SolidCache(await loadMeshKernel());
    for (const id of ['from', 'into']) {
      const instance = made.instance(id);
      const { volume, open } = measure(facetsOf(instance, 0));
      expect(open).toBeLessThan(1e-3);
      expect(volume / cache.of(instance).volume()).toBeCloseTo(1, 4);
    }
    cache.keep([]);
  },
);

test('a slot in a sawn end opens in it: the face of the mitre is drawn on both sides of the spline only', () => {
  const { parts } = PIECES['mitre-spline']!(20) as { parts: object };
  const made = pieceOf({ parts, joints: { j: { type: 'mitre-spline', from: 'from', into: 'into' } } });
  const sawn = facetsOf(made.instance('from'), 0).filter(f => f.normal.x < -0.7 && f.normal.x > -0.72);
  const area = (points: readonly { x: number; y: number; z: number }[]): number => {
    const [p, ...rest] = points;
    const twice = rest
      .slice(1)
      .reduce((sum, q, i) => add(sum, cross(sub(rest[i]!, p!), sub(q, p!))), vec(0, 0, 0));
    return Math.hypot(twice.x, twice.y, twice.z) / 2;
  };
  // Mitred from 40 across, 20 thick, a spline of 5: the face less the slot, and the floor of the slot as wide.
  const line = 40 * Math.SQRT2;
  expect(sawn.reduce((sum, f) => sum + area(f.points), 0)).toBeCloseTo(line * 15 + line * 5, 6);
  expect(
    sawn.every(f => Math.min(...f.points.map(p => p.y)) > 12.4 || Math.max(...f.points.map(p => p.y)) < 12.6),
  ).toBe(true);
});

test('the top of a socket between pins is a line of the face it opens in, and of its own floor', () => {
  const { parts } = PIECES['through-dovetail']!(20) as { parts: object };
  const made = pieceOf({ parts, joints: { j: { type: 'through-dovetail', from: 'from', into: 'into' } } });
  const board = made.instance('into');
  // Sockets are as deep as the tail board is thick, 20, and open in both faces of this one, 20 thick.
  const lines = facetsOf(board, 0)
    .flatMap(f => f.segments)
    .filter(
      ([a, b]) =>
        Math.abs(a.z - 20) < 1e-6 &&
        Math.abs(b.z - 20) < 1e-6 &&
        Math.abs(a.x - 20) < 1e-6 &&
        Math.abs(b.x - 20) < 1e-6,
    );
  const length = lines.reduce((sum, [a, b]) => sum + Math.abs(a.y - b.y), 0);
  // Three sockets of 35 on this face (44.5 - 9.5), each told by the face and by the floor.
  expect(length).toBeCloseTo(2 * 3 * 35, 6);
});
