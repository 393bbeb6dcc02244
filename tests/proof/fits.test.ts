import { expect, test } from 'vitest';
import { loadExactKernel } from '../../src/host/exact-kernel-node.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { confirmOverlaps } from '../../src/proof/confirm.ts';
import { fitChecks } from '../../src/proof/fit-check.ts';
import { prove } from '../../src/proof/prove.ts';
import type { HoleCut, TenonCut } from '../../src/results/cuts.ts';
import { pieceOf, timber } from '../setting-out/piece.ts';

/** A rail between two legs, tenoned. */
const rail = (set: object = {}) =>
  pieceOf({
    parts: {
      leg: timber({
        length: 700,
        width: 60,
        thickness: 60,
        along: 'up',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
        mirror: { x: 500 },
      }),
      rail: timber({
        width: 90,
        thickness: 24,
        along: 'right',
        facing: 'front',
        at: { left: 'leg.right', right: 'leg_x.left', centre_y: 'leg.centre_y', bottom: 300 },
      }),
    },
    joints: { cross: { type: 'mortise-and-tenon', from: 'rail', into: 'leg', count: 2, set } },
  });

const mesh = await loadMeshKernel();
const checks = (made: ReturnType<typeof pieceOf>) => {
  const proved = prove(made, mesh);
  return fitChecks(proved, made.piece.instances, made.piece.joints);
};

test('a joint set out closed lies within its fit', () => {
  const made = rail();
  expect(made.said).toEqual([]);
  const { fits } = prove(made, mesh);
  expect(fits.map(f => [f.joint, f.a, f.b])).toEqual([
    ['cross', 'rail', 'leg'],
    ['cross', 'rail', 'leg_x'],
  ]);
  for (const { found, wanted } of fits) {
    expect(found).toBeCloseTo(0, 5);
    expect(wanted).toBeGreaterThan(0);
  }
  expect(checks(made).map(c => c.severity)).toEqual(['pass']);
});

test('a tenon cut 0.6 mm thinner is loose: the joint, the gap and the fit are named', () => {
  const made = rail();
  const part = made.instance('rail');
  const thin = part.cuts.find((c): c is TenonCut => c.kind === 'tenon')!;
  thin.z = { low: thin.z.low + 0.2, high: thin.z.high + 0.4 };
  const [check, ...more] = checks(made);
  expect(more).toEqual([]);
  expect([check!.severity, check!.subject, check!.limit]).toEqual(['attend', 'cross', thin.clearance]);
  expect(check!.figure).toBeCloseTo(0.6, 4);
});

test('mates that stand apart do not meet', () => {
  const made = rail();
  const part = made.instance('rail');
  part.frame = { ...part.frame, origin: { ...part.frame.origin, z: part.frame.origin.z + 300 } };
  expect(checks(made).map(c => [c.severity, c.figure])).toEqual([['attend', null]]);
});

test('an overlap is measured again by the exact kernel: facets alone are none', async () => {
  const exact = await loadExactKernel();
  const bar = (diameter: number) => {
    const made = pieceOf({
      parts: {
        post: timber({
          length: 300,
          width: 60,
          thickness: 60,
          along: 'up',
          facing: 'front',
          at: { left: 0, front: 0, bottom: 0 },
        }),
        bar: {
          kind: 'bar',
          material: 'stainless-304',
          length: 200,
          diameter: 16,
          along: 'right',
          facing: 'front',
          at: { left: 'post.right', centre_y: 'post.centre_y', centre_z: 'post.centre_z' },
        },
      },
      joints: { rest: { type: 'bar-in-hole', from: 'bar', into: 'post' } },
    });
    const hole = made.instance('post').cuts.find((c): c is HoleCut => c.kind === 'hole')!;
    hole.diameter = diameter;
    // Turned by half a facet the corners of the meshed bar stand where the flats of the bore are.
    const part = made.instance('bar');
    const half = Math.PI / 32;
    const { y, z } = part.frame;
    const turned = (c: number, s: number) => ({
      x: c * y.x + s * z.x,
      y: c * y.y + s * z.y,
      z: c * y.z + s * z.z,
    });
    const centre = { y: part.size.width / 2, z: part.size.thickness / 2 };
    const ny = turned(Math.cos(half), Math.sin(half));
    const nz = turned(-Math.sin(half), Math.cos(half));
    const o = part.frame.origin;
    const shift = (k: 'x' | 'y' | 'z') => (y[k] - ny[k]) * centre.y + (z[k] - nz[k]) * centre.z;
    part.frame = {
      ...part.frame,
      y: ny,
      z: nz,
      origin: { x: o.x + shift('x'), y: o.y + shift('y'), z: o.z + shift('z') },
    };
    const proved = prove(made, mesh);
    return { proved, sure: confirmOverlaps(proved, made.piece.instances, exact), made };
  };
  const close = bar(16);
  expect(close.made.said).toEqual([]);
  expect(close.proved.overlaps).toHaveLength(1);
  expect(close.sure.overlaps).toEqual([]);
  const tight = bar(15.8);
  const deep = tight.made.instance('post').cuts.find((c): c is HoleCut => c.kind === 'hole')!.depth;
  expect(tight.sure.overlaps).toHaveLength(1);
  const ring = (Math.PI / 4) * (16 ** 2 - 15.8 ** 2);
  expect(tight.sure.overlaps[0]!.volume).toBeLessThanOrEqual(ring * deep + 1e-6);
  expect(tight.sure.overlaps[0]!.volume).toBeGreaterThan(ring * (deep - 4));
});
