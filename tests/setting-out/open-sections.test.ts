import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { pieceOf } from './piece.ts';

const bar = (over: object) => ({
  kind: 'bar',
  material: 'mild-steel',
  length: 1000,
  width: 40,
  thickness: 40,
  along: 'right',
  facing: 'up',
  at: { left: 0, front: 0, bottom: 0 },
  ...over,
});

test.each([
  // Outside checks by hand: (40 + 40 - 4) x 4 and (40 + 2 x 37) x 3 mm2, over a metre.
  ['angle', 4, 304_000],
  ['channel', 3, 342_000],
])('an open %s of 40 x 40 x %d has %d mm3 a metre', (section, wall, volume) => {
  const { piece, faults } = pieceOf({ parts: { a: bar({ section, wall }) } });
  expect(faults).toEqual([]);
  expect(piece.groups[0]!.volume).toBeCloseTo(volume, 6);
});

test('a mirrored angle is the other hand where its holes make it so, and its solid is the mirror image', async () => {
  const { piece, faults } = pieceOf({
    parts: { a: bar({ section: 'angle', wall: 4, mirror: { x: 1500 } }) },
    features: { h: { type: 'hole', on: 'a', face: 'top', along: 100, across: 25, diameter: 8 } },
  });
  expect(faults).toEqual([]);
  const [a, b] = piece.instances;
  const kernel = await loadMeshKernel();
  const cache = new SolidCache(kernel);
  expect(cache.of(a!).volume()).toBeCloseTo(cache.of(b!).volume(), 3);
  const [ca, cb] = [cache.of(a!).centre(), cache.of(b!).centre()];
  expect(cb.y).toBeCloseTo(40 - ca.y, 6);
  expect(piece.groups.map(g => g.mark)).toEqual(['A L', 'A R']);
  cache.keep([]);
});

test.each([
  [{ section: 'angle' }, 'parts.a.wall', 'an angle has no wall'],
  [{ section: 'angle', wall: 40 }, 'parts.a.wall', 'a wall of 40 mm leaves no hollow in an angle of 40 x 40'],
  [
    { section: 'channel', wall: 20 },
    'parts.a.wall',
    'a wall of 20 mm leaves no hollow in a channel of 40 x 40',
  ],
  [{ kind: 'tube', wall: 0 }, 'parts.a.wall', 'a wall of 0 mm leaves no hollow in a tube of 40 x 40'],
  [
    { kind: 'tube', section: 'angle', wall: 3 },
    'parts.a.section',
    'only a bar is an angle, and this is tube',
  ],
])('%j is refused', (over, place, fault) => {
  const { faults, piece } = pieceOf({ parts: { a: bar(over) } });
  expect(faults.filter(f => f.place === place).map(f => f.fault)).toEqual([fault]);
  expect(piece.groups[0]!.volume).toBeGreaterThan(0);
});
