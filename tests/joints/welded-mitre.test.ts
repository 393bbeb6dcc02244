import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { pieceOf } from '../setting-out/piece.ts';

/** A frame of angle, heels outside and below: two posts, and two rails mitred between them. */
const angle = (wall: number, over: object) => ({
  kind: 'bar',
  section: 'angle',
  material: 'mild-steel',
  width: 40,
  thickness: 40,
  wall,
  ...over,
});
const frame = (wall: number) => ({
  parts: {
    // The back leg lies below; the second leg on the back edge stands outside.
    front: angle(wall, { length: 600, along: 'right', facing: 'up', at: { left: 0, front: 0, bottom: 0 } }),
    side: angle(wall, { length: 400, along: 'back', facing: 'up', at: { right: 600, front: 0, bottom: 0 } }),
  },
  joints: { corner: { type: 'welded-mitre', from: 'front', into: 'side' } },
});

test.each([
  [3, 0],
  [5, 2],
  [4, 2],
])('a mitred corner of angle with a wall of %d mm stands %d mm open for the weld', async (wall, gap) => {
  const { piece, faults } = pieceOf(frame(wall));
  expect(faults).toEqual([]);
  const [front, side] = ['front', 'side'].map(id => piece.instances.find(i => i.id === id)!);
  const kernel = await loadMeshKernel();
  const cache = new SolidCache(kernel);
  const [a, b] = [cache.of(front!), cache.of(side!)];
  expect(kernel.shared(a, front!.frame, b, side!.frame)).toBeLessThan(1e-3);
  expect(kernel.gap(a, front!.frame, b, side!.frame, 20)).toBeCloseTo(gap, 6);
  // Sawn from 40 x 40: the bar is set back along its length by the gap over the sine of 45 degrees.
  expect(front!.size.length).toBeCloseTo(600 - gap * Math.SQRT2, 9);
  cache.keep([]);
});

test('timber is not welded', () => {
  const { faults } = pieceOf({
    ...frame(3),
    parts: {
      ...frame(3).parts,
      side: {
        kind: 'timber',
        material: 'ash-european',
        length: 400,
        width: 40,
        thickness: 40,
        along: 'back',
        facing: 'up',
        at: { right: 600, front: 0, bottom: 0 },
      },
    },
  });
  expect(faults.map(f => f.mend)).toEqual(['weld metal to metal; screw or bolt timber to it']);
});
