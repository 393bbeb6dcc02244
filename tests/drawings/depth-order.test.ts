import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { depthOrder } from '../../src/drawings/depth-order.ts';
import { type Facet, facetsOf } from '../../src/drawings/facets.ts';
import { onPage, turned } from '../../src/drawings/projection.ts';
import { seeded } from '../../src/drawings/seeded.ts';
import { dot, vec } from '../../src/geometry/vector.ts';
import type { Instance } from '../../src/results/piece.ts';
import { PIECE } from './bench-piece.ts';

const view = turned(33, 17);
const toPage = onPage(view, 1, [0, 0]);

const block = (i: number, x: number, y: number, z: number, l: number, w: number, t: number): Instance => ({
  ...PIECE.instances[0]!,
  id: `block_${i}`,
  frame: { origin: vec(x, y, z), x: vec(1, 0, 0), y: vec(0, 1, 0), z: vec(0, 0, 1) },
  size: { length: l, width: w, thickness: t },
  body: { length: l, width: w, thickness: t },
  cuts: [],
  added: {},
});

/** Is the page point inside the convex facet, and how near the eye is the facet there? */
function nearness(facet: Facet, at: readonly [number, number]): number | undefined {
  const pts = facet.points.map(toPage);
  let side = 0;
  for (let i = 0; i < pts.length; i++) {
    const [a, b] = [pts[i]!, pts[(i + 1) % pts.length]!];
    const cross = (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0]);
    if (Math.abs(cross) < 1e-6) return undefined;
    if (side !== 0 && Math.sign(cross) !== side) return undefined;
    side = Math.sign(cross);
  }
  // The point of the facet's plane that falls on the page point: right.p = x, up.p = -y, normal.p = offset.
  const base = [view.right, view.up].map((u, k) => ({ u, v: k === 0 ? at[0] : -at[1] }));
  const p = vec(
    base.reduce((s, b) => s + b.u.x * b.v, 0),
    base.reduce((s, b) => s + b.u.y * b.v, 0),
    base.reduce((s, b) => s + b.u.z * b.v, 0),
  );
  return (dot(facet.normal, facet.points[0]!) - dot(facet.normal, p)) / dot(facet.normal, view.eye);
}

const facing = (instances: readonly Instance[]): Facet[] =>
  instances.flatMap((p, i) => facetsOf(p, i)).filter(f => dot(f.normal, view.eye) > 1e-6);

/** At seeded page points, what is painted last must be what lies nearest the eye. */
function check(instances: readonly Instance[], seed: number, points: number): number {
  const whole = facing(instances);
  const painted = depthOrder(whole);
  const random = seeded(seed);
  const all = whole.flatMap(f => f.points.map(toPage));
  const xs = all.map(p => p[0]);
  const ys = all.map(p => p[1]);
  const between = (list: number[]): number =>
    Math.min(...list) + random() * (Math.max(...list) - Math.min(...list));
  let seen = 0;
  for (let i = 0; i < points; i++) {
    const at = [between(xs), between(ys)] as const;
    const near = whole.map(f => nearness(f, at)).filter(d => d !== undefined);
    if (near.length === 0) continue;
    const last = painted.map(f => nearness(f, at)).findLast(d => d !== undefined);
    // A point on the cut between two pieces of one facet may fall to neither.
    if (last === undefined) continue;
    expect(last).toBeCloseTo(Math.max(...near), 2);
    seen++;
  }
  return seen;
}

describe('painting back to front', () => {
  it('shows the nearest face everywhere on the bench', () => {
    expect(check(PIECE.instances, 7, 600)).toBeGreaterThan(150);
  });

  it('shows the nearest face of any boxes, also where they run into each other', () => {
    const size = fc.integer({ min: 5, max: 60 });
    const place = fc.integer({ min: 0, max: 80 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, place, place, size, size, size), { minLength: 1, maxLength: 7 }),
        list => {
          check(
            list.map((b, i) => block(i, ...b)),
            11,
            40,
          );
        },
      ),
      { seed: 12, numRuns: 60 },
    );
  });
});
