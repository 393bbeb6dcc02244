import { describe, expect, it } from 'vitest';
import { build } from './build.ts';

const upright = (over: object) => ({
  kind: 'timber',
  material: 'oak-european',
  length: 600,
  width: 400,
  thickness: 22,
  along: 'up',
  facing: 'left',
  ...over,
});
const sides = (clear: number) => ({
  near: upright({ at: { left: 0, front: 0, bottom: 0 } }),
  far: upright({ at: { left: 22 + clear, front: 0, bottom: 0 } }),
});
const drawer = (clear: number, over: object = {}, opening: object = {}) =>
  build({
    parts: sides(clear),
    drawers: {
      d: {
        name: 'Pens',
        opening: {
          left: 'near.right',
          right: 'far.left',
          bottom: 100,
          top: 220,
          front: 0,
          back: 400,
          ...opening,
        },
        material: 'oak-european',
        bottom: { material: 'birch-plywood', thickness: 6 },
        ...over,
      },
    },
  }).said;
const door = (clear: number, over: object = {}, opening: object = {}) =>
  build({
    parts: sides(clear),
    doors: {
      d: {
        opening: { left: 'near.right', right: 'far.left', bottom: 0, top: 500, front: 0, ...opening },
        material: 'oak-european',
        thickness: 20,
        hinged: 'left',
        ...over,
      },
    },
  }).said;
const lap = (overlap: string) => drawer(300, { front: { false_front: '20 mm', overlap } });

describe('an opening that has no room for its drawer or door is told at the builder, with what it needs', () => {
  it.each([
    // Two sides of 10 and two gaps of 1 leave 1 mm from 23 on.
    ['a drawer too narrow', () => drawer(15), '15 mm is under the least, 23 mm'],
    ['an opening turned about', () => drawer(-100), '\u2212100 mm is under the least, 23 mm'],
    [
      'slides with no room between',
      () => drawer(40, { slides: { item: 'slide', length: 350, room: 13 } }),
      '40 mm is under the least, 47 mm',
    ],
    ['a drawer too low', () => drawer(300, {}, { top: 108 }), '8 mm is under the least, 16'],
    // 400 less 10: front 20, back 10, 10 behind it and 1 mm between.
    ['a drawer too shallow', () => drawer(300, {}, { back: 45 }), '35 mm is under the least, 41 mm'],
    ['a negative gap', () => drawer(300, { gap: '-1 mm' }), '\u22121 mm is under the least, 0 mm'],
    ['a front past its frame', () => lap('30 mm'), '30 mm is over the most, 22 mm'],
    ['a front short of its opening', () => lap('-5 mm'), '\u22125 mm is under the least, 0 mm'],
    ['a door narrower than two stiles', () => door(90, { stile: 50 }), '90 mm is under the least, 105'],
    [
      'a door lower than two rails',
      () => door(300, { stile: 50 }, { top: 90 }),
      '90 mm is under the least, 105 mm',
    ],
    ['a slab in a slit', () => door(3), '3 mm is under the least, 5'],
    ['a door with a negative gap', () => door(300, { gap: '-2 mm' }), '\u22122 mm is under the least, 0 mm'],
  ])('%s', (_, said, words) => {
    const found = said();
    expect(found.every(f => /^(drawers|doors)\.d: /.test(f))).toBe(true);
    expect(found.join('\n')).toContain(words);
  });

  it.each([
    ['a drawer of the least width', () => drawer(23)],
    ['a front as wide as its frame', () => lap('22 mm')],
    ['a front flush with its opening', () => lap('0 mm')],
    ['a drawer of the least depth', () => drawer(300, {}, { back: 51 })],
  ])('%s is not told of its room', (_, said) => {
    expect(said().join('\n')).not.toMatch(/under the least|over the most/);
  });
});
