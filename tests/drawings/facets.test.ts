import { describe, expect, it } from 'vitest';
import { type Facet, facetsOf, tenonRemovals } from '../../src/drawings/facets.ts';
import { boxVolume, unionVolume } from '../../src/geometry/box.ts';
import { add, cross, dot, norm, scale, sub, vec } from '../../src/geometry/vector.ts';
import type { TenonCut } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Instance } from '../../src/results/piece.ts';
import { PIECE } from './bench-piece.ts';

const area = (f: Facet): number => {
  const sum = f.points.reduce(
    (s, p, i) => add(s, cross(p, f.points[(i + 1) % f.points.length]!)),
    vec(0, 0, 0),
  );
  return norm(sum) / 2;
};

/** Volume by the divergence theorem: a third of the sum of offset x area over a closed surface. */
const volume = (facets: readonly Facet[]): number =>
  facets
    .filter(f => f.kind !== 'hole')
    .reduce((sum, f) => sum + (dot(f.normal, f.points[0]!) * area(f)) / 3, 0);

const by = (id: string): Instance => PIECE.instances.find(i => i.id === id)!;

describe('the surface of a part', () => {
  it('of a plain board is its six faces', () => {
    const facets = facetsOf(by('seat_1'), 0);
    expect(facets).toHaveLength(6);
    expect(volume(facets)).toBeCloseTo((1380 * 380 * 27) / 3, 3);
    expect(facets.filter(f => f.kind === 'end')).toHaveLength(2);
  });

  it('closes round tenons, mortises, grooves and tapers: the volume is that of the cuts', () => {
    const rail = by('rail');
    const whole = { min: vec(0, 0, 0), max: vec(340, 80, 32) };
    const taken = rail.cuts.flatMap(c => (c.kind === 'tenon' ? tenonRemovals(c, rail.size) : []));
    expect(volume(facetsOf(rail, 0))).toBeCloseTo(boxVolume(whole) - unionVolume(taken, whole), 3);
    expect(volume(facetsOf(by('stretcher'), 0))).toBeCloseTo(1183 * 70 * 32 - 1183 * 9 * 10, 3);
    // Taper: a wedge 110 long, 9 deep at the foot, over the whole width; the mortise stands above it.
    const wedge = (110 * 9 * 45) / 2;
    expect(volume(facetsOf(by('leg'), 0))).toBeCloseTo(423 * 45 * 45 - 60 * 11 * 45 - wedge, 3);
  });

  it('closes round a bar', () => {
    const facets = facetsOf(by('bar'), 0);
    expect(volume(facets)).toBeGreaterThan(1183 * Math.PI * 64 * 0.97);
    expect(volume(facets)).toBeLessThan(1183 * Math.PI * 64);
  });

  it('keeps a haunch beside the tenon', () => {
    const cut: TenonCut = {
      id: 't',
      by: 't',
      stage: ON_PART,
      kind: 'tenon',
      end: 'end2',
      length: 30,
      y: { low: 0, high: 20 },
      z: { low: 5, high: 5 },
      cheeks: 'z',
      haunch: { side: 'high', width: 15, length: 10 },
      through: false,
    };
    const size = { length: 200, width: 80, thickness: 20 };
    const whole = { min: vec(0, 0, 0), max: vec(200, 80, 20) };
    const left = boxVolume(whole) - unionVolume(tenonRemovals(cut, size), whole);
    // Body, tenon, and the haunch of the tenon's own thickness.
    expect(left).toBeCloseTo(170 * 80 * 20 + 30 * 60 * 10 + 10 * 15 * 10, 6);
  });

  it('has outward normals of length one, and edges that lie on its faces', () => {
    for (const facet of PIECE.instances.flatMap((p, i) => facetsOf(p, i))) {
      expect(norm(facet.normal)).toBeCloseTo(1, 6);
      for (const point of facet.segments.flat())
        expect(Math.abs(dot(facet.normal, sub(point, facet.points[0]!)))).toBeLessThan(1e-3);
      const middle = scale(facet.points.reduce(add, vec(0, 0, 0)), 1 / facet.points.length);
      expect(Number.isFinite(middle.x)).toBe(true);
    }
  });
});
