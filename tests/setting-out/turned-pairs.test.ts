import { expect, test } from 'vitest';
import type { HoleCut, PocketCut } from '../../src/results/cuts.ts';
import { pieceOf, timber } from './piece.ts';

const DEGREES = Math.PI / 180;

/** A rail against a post, the pair turned together about the post's middle. */
const pair = (degrees: number) => ({
  post: timber({
    length: 400,
    width: 40,
    thickness: 40,
    along: 'up',
    facing: 'front',
    at: { centre_x: 0, centre_y: 0, bottom: 0 },
    turn: { z: degrees },
  }),
  rail: timber({
    length: 300,
    width: 60,
    thickness: 21,
    along: 'right',
    facing: 'front',
    at: {
      centre_x: 170 * Math.cos(degrees * DEGREES),
      centre_y: 170 * Math.sin(degrees * DEGREES),
      top: 380,
    },
    turn: { z: degrees },
  }),
});

test.each([0, 17, 30, 45, 90, 200])(
  'a pair turned together by %i degrees gets the mortise of one that stands square',
  degrees => {
    const made = pieceOf({
      parts: pair(degrees),
      joints: { j: { type: 'mortise-and-tenon', from: 'rail', into: 'post', count: 1 } },
    });
    expect(made.said).toEqual([]);
    const { min, max } = (made.instance('post').cuts[0] as PocketCut).box;
    // Reckoned by hand: tenon 7 thick and 46 wide of a rail 21 x 60 with its top 20 below the post's; 26 + 2 deep.
    const wanted = [327, 0, 16.5, 373, 28, 23.5];
    for (const [i, value] of [min.x, min.y, min.z, max.x, max.y, max.z].entries())
      expect(value).toBeCloseTo(wanted[i]!, 9);
  },
);

test('screws of a turned pair stay in the wood', () => {
  const lying = (bottom: number, thickness: number) =>
    timber({
      length: 300,
      width: 40,
      thickness,
      along: 'right',
      facing: 'up',
      at: { centre_x: 0, centre_y: 0, bottom },
      turn: { z: 30 },
    });
  const made = pieceOf({
    parts: { under: lying(0, 40), upper: lying(40, 21) },
    joints: { j: { type: 'screwed', from: 'upper', into: 'under' } },
  });
  const places = made.instance('upper').cuts.map(c => (c as HoleCut).at);
  expect(places.map(p => Math.round(p.x * 1e6) / 1e6)).toEqual([30, 270]);
  expect(places.map(p => Math.round(p.y * 1e6) / 1e6)).toEqual([20, 20]);
});

test('parts that cross at a slant get no joint cut by their outer boxes, and are told why', () => {
  const leg = (degrees: number) =>
    timber({
      length: 400,
      width: 40,
      thickness: 20,
      along: 'right',
      facing: 'up',
      at: { centre_x: 0, centre_y: 0, bottom: 0 },
      turn: { z: degrees },
    });
  const made = pieceOf({
    parts: { p: leg(30), q: leg(-30) },
    joints: { j: { type: 'halving', from: 'p', into: 'q' } },
  });
  expect(made.instance('p').cuts).toEqual([]);
  expect(made.said).toEqual(['joints.j: no p meets q']);
  expect(made.faults[0]!.mend).toMatch(/at a slant/);
});

test('a round bar may be turned about its own axis against the part it enters', () => {
  const leg = (left: number) =>
    timber({
      length: 400,
      width: 40,
      thickness: 40,
      along: 'up',
      facing: 'front',
      at: { left, centre_y: 0, bottom: 0 },
      turn: { x: 12 },
    });
  const made = pieceOf({
    parts: {
      left: leg(0),
      right: leg(340),
      bar: {
        kind: 'bar',
        material: 'steel-mild',
        diameter: 12,
        along: 'right',
        at: { left: 40, right: 340, centre_y: 0, centre_z: 200 },
      },
    },
    joints: {
      l: { type: 'bar-in-hole', from: 'bar', into: 'left', count: 1 },
      r: { type: 'bar-in-hole', from: 'bar', into: 'right', count: 1 },
    },
  });
  expect(made.said).toEqual([]);
  const at = (made.instance('left').cuts[0] as HoleCut).at;
  expect(at.x).toBeCloseTo(200, 9);
  expect(Math.min(at.y, 40 - at.y)).toBeCloseTo(0, 9);
});
