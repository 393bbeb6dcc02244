import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { cutShapes } from '../../src/results/cut-shapes.ts';
import type { EndCut, HoleCut } from '../../src/results/cuts.ts';
import { pieceOf, proofOf, timber } from './piece.ts';

/** A stool of four legs splayed both ways with a rail between each two, placed only roughly. */
function stool(front: number, side: number, over: object = {}) {
  const leg = { length: 460, width: 36, thickness: 36, along: 'up', facing: 'front' };
  return pieceOf({
    parts: {
      leg: timber({
        ...leg,
        at: { centre_x: 60, centre_y: 50, bottom: 0 },
        turn: { y: `${front} deg`, x: `${-side} deg` },
        mirror: { x: 200, y: 150 },
      }),
      rail: timber({
        ...{ width: 60, thickness: 20, along: 'right', facing: 'front' },
        at: { left: 80, right: 320, centre_y: 50, centre_z: 230 },
        mirror: { y: 150 },
      }),
      end_rail: timber({
        ...{ width: 60, thickness: 20, along: 'back', facing: 'left' },
        at: { front: 70, back: 230, centre_x: 60, centre_z: 230 },
        mirror: { x: 200 },
      }),
    },
    joints: {
      long: { type: 'splayed-rail', from: 'rail', into: 'leg', count: 4 },
      short: { type: 'splayed-rail', from: 'end_rail', into: 'leg', count: 4, ...over },
    },
  });
}

const endCuts = (made: ReturnType<typeof stool>, id: string): EndCut[] =>
  made.instance(id).cuts.filter((c): c is EndCut => c.kind === 'end-cut');

describe('rails between splayed legs', () => {
  it('splayed one way the end is mitred by the splay, and the long point lies on the leg', () => {
    const made = stool(8, 0);
    expect(made.said).toEqual([]);
    const cuts = endCuts(made, 'rail');
    expect(cuts).toHaveLength(2);
    for (const cut of cuts) {
      expect(Math.abs(cut.mitre) + Math.abs(cut.bevel)).toBeCloseTo(8, 6);
      expect(cut.mitre * cut.bevel).toBe(0);
    }
    // Inner faces stand 2 (200 - 60) less the leg over the cosine apart in the middle, 30 tan 8 more at the long arris.
    const radians = (8 * Math.PI) / 180;
    const middle = 280 - 36 / Math.cos(radians);
    expect(made.instance('rail').size.length).toBeCloseTo(middle + 2 * 30 * Math.tan(radians), 3);
    // The other rails meet faces that lean only along them: square ends.
    expect(endCuts(made, 'end_rail')).toEqual([]);
  });

  it('splayed both ways the ends are compound, as two planes give them', () => {
    const made = stool(10, 6);
    expect(made.said).toEqual([]);
    const [cut] = endCuts(made, 'rail');
    // Leg turned about x by -6, then about y by 10: its side face looks along (cos 10, 0, -sin 10) of that order.
    const normal = made.instance('leg').frame;
    const face = [normal.y, normal.z, normal.x].find(v => Math.abs(v.x) > 0.9)!;
    const rail = made.instance('rail').frame;
    const local = [rail.x, rail.y, rail.z].map(k => k.x * face.x + k.y * face.y + k.z * face.z) as [
      number,
      number,
      number,
    ];
    const angle = (t: number): number => (Math.atan(Math.abs(t / local[0])) * 180) / Math.PI;
    expect(Math.abs(cut!.mitre)).toBeCloseTo(angle(local[1]), 6);
    expect(Math.abs(cut!.bevel)).toBeCloseTo(angle(local[2]), 6);
  });

  it('whatever the splay, rails and legs share no room and close on the leg without a gap', async () => {
    const kernel = await loadMeshKernel();
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: -12, max: 15 }),
        fc.integer({ min: -10, max: 12 }),
        async (front, side) => {
          const made = stool(front, side);
          expect(made.said).toEqual([]);
          expect((await proofOf(made)).overlaps).toEqual([]);
          // Moved 0.2 mm along itself the rail must run into a leg by its section times 0.2.
          const [rail, leg] = [made.instance('rail'), made.instance('leg')];
          const solid = (i: typeof rail) =>
            kernel.part(
              { size: i.size, round: i.round },
              i.cuts.filter(c => c.kind !== 'hole').flatMap(c => cutShapes(c, i.size)),
            );
          const [a, b] = [solid(rail), solid(leg)];
          const sign = rail.frame.x.x > 0 ? -1 : 1;
          const moved = {
            ...rail.frame,
            origin: { ...rail.frame.origin, x: rail.frame.origin.x + sign * 0.2 * Math.abs(rail.frame.x.x) },
          };
          const into = kernel.shared(a, moved, b, leg.frame);
          expect(into / (0.2 * 60 * 20)).toBeGreaterThan(0.97);
          expect(into / (0.2 * 60 * 20)).toBeLessThan(1.03);
          a.free();
          b.free();
        },
      ),
      { seed: 12, numRuns: 25 },
    );
  });

  it('dowels run along the rail: both holes lie on one line in the world', () => {
    const made = stool(10, 6);
    const rail = made.instance('rail');
    const leg = made.instance('leg');
    const world = (i: typeof rail, p: { x: number; y: number; z: number }, move: boolean) => {
      const { frame: f } = i;
      const on = (k: 'x' | 'y' | 'z') =>
        f.x[k] * p.x + f.y[k] * p.y + f.z[k] * p.z + (move ? f.origin[k] : 0);
      return { x: on('x'), y: on('y'), z: on('z') };
    };
    const holes = leg.cuts.filter((c): c is HoleCut => c.kind === 'hole' && c.by === 'long');
    expect(holes).toHaveLength(2);
    for (const hole of holes) {
      const mate = rail.cuts.find(c => c.id === hole.mate?.cut) as HoleCut;
      const [p, q] = [world(leg, hole.at, true), world(rail, mate.at, true)];
      const way = world(leg, hole.direction, false);
      expect(Math.abs(way.x)).toBeCloseTo(1, 9);
      expect([p.y - q.y, p.z - q.z].every(d => Math.abs(d) < 1e-6)).toBe(true);
    }
  });

  it('a rail out of the middle is told, with what mends it', () => {
    const made = pieceOf({
      parts: {
        leg: timber({
          ...{ length: 460, width: 36, thickness: 36, along: 'up', facing: 'front' },
          ...{ at: { centre_x: 60, front: 0, bottom: 0 }, turn: { y: '8 deg' }, mirror: { x: 200 } },
        }),
        rail: timber({
          ...{ width: 60, thickness: 20, along: 'right', facing: 'front' },
          at: { left: 80, right: 300, front: 8, centre_z: 230 },
        }),
      },
      joints: { j: { type: 'splayed-rail', from: 'rail', into: 'leg' } },
    });
    expect(made.said.join()).toContain('reaches');
  });
});
