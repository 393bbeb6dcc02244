import { describe, expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { JOINTS } from '../../src/joints/index.ts';
import { found, SIZES, tryJoint } from './table.ts';

describe.each(JOINTS.map(j => j.type))('%s', type => {
  test.each(SIZES)('at %i mm: the gaps of the solids are those that the figures state', async t => {
    const tried = tryJoint(await loadMeshKernel(), type, t);
    expect(tried.faults).toEqual([]);
    expect(tried.overlap).toBe(0);
    const gaps = found(tried.gaps);
    for (const gap of gaps)
      expect([gap, tried.stated.some(s => Math.abs(s - gap) < 0.03)]).toEqual([gap, true]);
    for (const gap of tried.stated)
      expect([gap, gaps.some(g => Math.abs(g - gap) < 0.03)]).toEqual([gap, true]);
  });

  test.each(SIZES)('at %i mm: 0.2 mm too big, the overlap is told as area times 0.2', async t => {
    const { told, expected } = tryJoint(await loadMeshKernel(), type, t).spoiled;
    expect(expected).toBeGreaterThan(2);
    expect(told / expected).toBeGreaterThan(0.985);
    expect(told / expected).toBeLessThan(1.015);
  });
});

test('faces and overlaps against closed forms: a tenon 7 x 47 x 26 mm in a post of 40', async () => {
  const { gaps, spoiled } = tryJoint(await loadMeshKernel(), 'mortise-and-tenon', 20);
  const area = (way: string, gap: number): number | undefined =>
    gaps.find(g => g.way === way && Math.abs(g.gap - gap) < 0.01)?.area;
  // Rail 60 x 20: a tenon of a third, 7; shoulders of 6.5, so 47 wide; two thirds of 40 deep, 26.
  expect(area('+y', 0)).toBeCloseTo(47 * 26, 0);
  expect(area('-z', 0)).toBeCloseTo(7 * 26, 0);
  expect(area('-x', 2)).toBeCloseTo(47 * 7, 0);
  expect(area('-x', 0)).toBeCloseTo(60 * 20 - 47 * 7, 0);
  expect(spoiled.told).toBeCloseTo(0.2 * 47 * 26, 0);
});
