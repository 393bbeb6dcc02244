import { describe, expect, test } from 'vitest';
import { polygonArea } from '../../src/geometry/polygon.ts';
import type { ProfileCut } from '../../src/results/cuts.ts';
import { pieceOf, proofOf } from '../setting-out/piece.ts';
import { CORNERS } from './pieces/corners.ts';

type Set = Record<string, number | string>;
const made = (type: string, t = 20, set: Set = {}, over: Record<string, object> = {}) => {
  const { parts, set: own } = CORNERS[type]!(t);
  return pieceOf({
    parts: {
      ...parts,
      from: { ...parts.from, ...over.from },
      into: { ...parts.into, ...over.into },
    },
    joints: { j: { type, from: 'from', into: 'into', set: { ...own, ...set } } },
  });
};
const number = (m: ReturnType<typeof made>, figure: string) => m.book.number(`joints.j.${figure}`);
/** The first number in the mend. */
const mended = (mend: string): number => Number(/\d+(?:\.\d+)?/.exec(mend)?.[0]);

/** What cannot be, at boards of 20 by 160 mm, with the figure that is told; the figure in its mend must work. */
const CASES: [string, Set, string][] = [
  ['through-dovetail', { tails: 20 }, 'tails'],
  ['through-dovetail', { tails: 1, 'half.pin': 90 }, 'half.pin'],
  ['through-dovetail', { slope: 0.1, 'half.pin': 3 }, 'slope'],
  ['through-dovetail', { length: 12 }, 'length'],
  ['lapped-dovetail', { lap: 20 }, 'lap'],
  ['lapped-dovetail', { length: 20 }, 'length'],
  ['lapped-dovetail', { pin: 70 }, 'tails'],
  ['sliding-dovetail', { depth: 20 }, 'depth'],
  ['sliding-dovetail', { angle: 60 }, 'angle'],
  ['sliding-dovetail', { stop: 160 }, 'stop'],
  ['sliding-dovetail', { stop: 20, 'stop.room': 150 }, 'stop.room'],
  ['mitre-spline', { 'spline.thickness': 12 }, 'spline.thickness'],
  ['mitre-spline', { enters: 200 }, 'enters'],
  ['mitre-keys', { 'key.depth': 60 }, 'key.depth'],
  ['mitre-keys', { 'key.thickness': 15 }, 'key.thickness'],
  ['mitre-keys', { keys: 30, 'key.thickness': 1, edge: 4 }, 'keys'],
  ['mitre-keys', { keys: 2, edge: 1 }, 'edge'],
  ['mitre-dowels', { 'dowel.diameter': 19 }, 'dowel.diameter'],
  ['mitre-dowels', { enters: 60 }, 'enters'],
  ['mitre-dowels', { 'dowel.count': 12 }, 'dowel.count'],
  ['mitre-dowels', { 'from.outside': 5 }, 'from.outside'],
  ['mitre-dowels', { 'from.inside': 1 }, 'from.inside'],
  ['box-mitre', { 'spline.thickness': 12 }, 'spline.thickness'],
  ['box-mitre', { enters: 15 }, 'enters'],
  ['box-mitre', { 'from.inside': 1 }, 'from.inside'],
  ['box-mitre', { 'from.inside': 26 }, 'from.inside'],
  ['scarf', { nib: 10 }, 'nib'],
  ['scarf', { length: 300 }, 'length'],
  ['scarf', { slope: -1, length: 100 }, 'slope'],
  ['breadboard-end', { 'tongue.thickness': 19 }, 'tongue.thickness'],
  ['breadboard-end', { 'tongue.length': 50 }, 'tongue.length'],
  ['breadboard-end', { 'tenon.length': 80 }, 'tenon.length'],
  ['breadboard-end', { deeper: -1 }, 'deeper'],
  ['breadboard-end', { tenons: 3, 'tenon.width': 60 }, 'tenon.width'],
  ['breadboard-end', { tenons: 40 }, 'tenons'],
  ['breadboard-end', { tenons: 3, play: 30 }, 'play'],
  ['breadboard-end', { 'peg.diameter': 60 }, 'peg.diameter'],
  ['finger-joint', { length: 12 }, 'length'],
  ['finger-joint', { fingers: 200 }, 'finger.width'],
  ['finger-joint', { 'finger.width': 160 }, 'finger.width'],
];

describe('what cannot be cut says which figure is at fault, and the figure it names works', () => {
  test.each(CASES)('%s %j', (type, set, figure) => {
    const { faults, piece } = made(type, 20, set);
    expect(faults.map(f => f.place)).toContain(`joints.j.${figure in set ? 'set.' : ''}${figure}`);
    expect(piece.instances.flatMap(i => i.cuts)).toEqual([]);
    const told = faults.find(f => f.place.endsWith(figure))!;
    expect([told.mend, made(type, 20, { ...set, [figure]: mended(told.mend) }).said]).toEqual([
      told.mend,
      [],
    ]);
  });

  test('boards that make no corner', () => {
    const high = { from: { at: { left: 'into.right', front: 0, bottom: 30 } } };
    expect(made('through-dovetail', 20, {}, high).said[0]).toMatch(
      /open on the end of into, and from stands 30 mm from it/,
    );
    const wide = { from: { width: 200 } };
    expect(made('lapped-dovetail', 20, {}, wide).said[0]).toMatch(/40 mm of the end of from stand over into/);
  });
});

describe('dovetails', () => {
  test.each([
    ['oak-european', 8],
    ['pine-scots', 6],
    ['spruce-european', 6],
    ['walnut-european', 8],
  ])('in %s slope 1 in %i (DV-1)', (material, slope) => {
    const m = made('through-dovetail', 20, {}, { from: { material } });
    expect(m.said).toEqual([]);
    expect(number(m, 'slope')).toBe(slope);
    // The sides themselves, not the figure: a socket widens by one in so many.
    const socket = m.instance('into').cuts[0] as ProfileCut;
    const [a, b, , d] = socket.polygon;
    const run = Math.abs(a![1] - d![1]);
    const out = Math.abs(a![0] - d![0]);
    expect(Math.max(run, out) / Math.min(run, out)).toBeCloseTo(slope, 9);
    expect(b).toBeDefined();
  });

  test('160 mm of 20 mm oak: 3 tails, pins 13, half pins 7; tails fill the rest', async () => {
    const m = made('through-dovetail');
    expect(['tails', 'pin', 'half.pin', 'length'].map(f => number(m, f))).toEqual([3, 13, 7, 20]);
    // At the tips: 160 = 2 x 7 + 2 x 13 + 3 x 40. At the roots, 20 / 8 narrower on each side: 35.
    const sockets = m.instance('into').cuts as ProfileCut[];
    expect(sockets.map(s => polygonArea(s.polygon))).toEqual([750, 750, 750].map(v => expect.closeTo(v, 6)));
    const { volumes } = await proofOf(m);
    expect(volumes.from).toBeCloseTo(300 * 160 * 20 + 3 * 750 * 20, 3);
    // The kernel draws a socket a hundredth past its floor.
    expect(volumes.into).toBeCloseTo(400 * 160 * 20 - 3 * 750 * 20.01, 3);
  });

  test('lapped: a quarter of the front stays before the tails', () => {
    const m = made('lapped-dovetail');
    expect(['lap', 'length'].map(f => number(m, f))).toEqual([5, 15]);
    expect(m.instance('from').size.length).toBe(315);
  });
});

describe('sliding dovetail', () => {
  test('20 mm in 20 mm: 6.5 deep at 14 degrees, way and tongue alike', async () => {
    const m = made('sliding-dovetail');
    const { overlaps, volumes } = await proofOf(m);
    expect(overlaps).toEqual([]);
    // Mean width of the way: 20 less 6.5 x tan 14 on its two slopes together.
    const gone = (20 - 6.5 * Math.tan((14 * Math.PI) / 180)) * 6.5 * 160;
    expect(volumes.into).toBeCloseTo(400 * 160 * 20 - gone, 0);
    expect(volumes.from).toBeCloseTo(300 * 160 * 20 + gone, 0);
  });

  test('stopped 20 mm from the front: the way shows at the back only, the tongue is 21 mm shorter', async () => {
    const m = made('sliding-dovetail', 20, { stop: 20 });
    expect(m.said).toEqual([]);
    expect((await proofOf(m)).overlaps).toEqual([]);
    const way = m.instance('into').cuts[0] as ProfileCut;
    expect([way.to - way.from, way.through]).toEqual([140, false]);
    const [cheek] = m.instance('from').cuts as ProfileCut[];
    expect(cheek!.to - cheek!.from).toBe(139);
  });

  test('between two upright boards it goes in from above: the way is open at the top, stopped below', async () => {
    const wall = {
      kind: 'timber',
      material: 'oak-european',
      width: 200,
      thickness: 20,
      along: 'right',
      facing: 'front',
    };
    const m = pieceOf({
      parts: {
        into: { ...wall, length: 500, at: { left: 0, front: 0, bottom: 0 } },
        from: {
          ...wall,
          width: 150,
          length: 300,
          thickness: 16,
          along: 'back',
          facing: 'left',
          at: { left: 100, front: 'into.back', top: 'into.top' },
        },
      },
      joints: { j: { type: 'sliding-dovetail', from: 'from', into: 'into', set: { stop: 15 } } },
    });
    expect(m.said).toEqual([]);
    expect((await proofOf(m)).overlaps).toEqual([]);
    const way = m.instance('into').cuts[0] as ProfileCut;
    expect([way.axis, Math.min(200 - way.to, way.from), way.to - way.from]).toEqual(['y', 0, 135]);
  });

  test('a runner on its edge grows in width, and its tongue runs along the grain', async () => {
    const m = made(
      'sliding-dovetail',
      20,
      {},
      {
        from: { along: 'back', facing: 'up', length: 160, width: 40, thickness: 20 },
      },
    );
    expect(m.said).toEqual([]);
    expect(m.instance('from').size).toEqual({ length: 160, width: 46.5, thickness: 20 });
    expect((await proofOf(m)).overlaps).toEqual([]);
    expect(m.piece.joints[0]!.glue[0]!.grain).toBe('long');
  });
});

describe('finger joint', () => {
  test('160 mm of 20 mm: nine fingers, five and four', () => {
    const m = made('finger-joint');
    expect(number(m, 'fingers')).toBe(9);
    expect([m.instance('from').cuts.length, m.instance('into').cuts.length]).toEqual([4, 5]);
  });

  test('run with a cutter of 12: what is left makes the last finger', async () => {
    const m = made('finger-joint', 20, { 'finger.width': 12 });
    expect(m.said).toEqual([]);
    // 13 of 12 are 156; 4 are left, a slot of the entering board.
    expect([m.instance('from').cuts.length, m.instance('into').cuts.length]).toEqual([7, 7]);
    expect((await proofOf(m)).overlaps).toEqual([]);
  });
});

describe('mitres strengthened', () => {
  test('a spline of 5 in a frame 40 by 20: two grooves 10 deep along the whole mitre', async () => {
    const m = made('mitre-spline');
    expect([number(m, 'spline.thickness'), number(m, 'enters')]).toEqual([5, 10]);
    const groove = m.instance('from').cuts.find(cut => cut.kind === 'slant') as ProfileCut;
    // The mitre is 40 x root 2 long; the groove square to it 10 deep.
    expect(polygonArea(groove.polygon)).toBeCloseTo(40 * Math.SQRT2 * 10, 6);
  });

  test('keys on the corner of a box: two and one for each 60 mm, the outer 10 mm from the edges', async () => {
    const { parts } = CORNERS['box-mitre']!(20);
    const m = pieceOf({ parts, joints: { j: { type: 'mitre-keys', from: 'from', into: 'into' } } });
    expect(m.said).toEqual([]);
    expect((await proofOf(m)).overlaps).toEqual([]);
    const slots = m.instance('from').cuts.filter(cut => cut.kind === 'slant') as ProfileCut[];
    expect(slots.map(s => (s.from + s.to) / 2)).toEqual(
      [10, 10 + 140 / 3, 150 - 140 / 3, 150].map(v => expect.closeTo(v, 9)),
    );
    expect(slots[0]!.axis).toBe('y');
  });

  test('a box mitre without spline is a bare bevel, and that is noted', () => {
    const m = made('box-mitre', 20, { spline: 'without' });
    expect(m.said).toEqual([]);
    expect(m.instance('from').cuts.map(cut => cut.kind)).toEqual(['end-cut']);
    expect(m.piece.joints[0]!.limits.some(l => l.severity === 'note')).toBe(true);
  });

  test('a frame is no box', () => {
    const { parts } = CORNERS['mitre-spline']!(20);
    const m = pieceOf({ parts, joints: { j: { type: 'box-mitre', from: 'from', into: 'into' } } });
    expect(m.said[0]).toMatch(/lie with their widths in the plane of the corner/);
  });
});

describe('scarf', () => {
  test('20 mm deep: 160 long, nibs of 2.5; the first length grows, the second loses what it takes', async () => {
    const m = made('scarf');
    expect(['length', 'nib'].map(f => number(m, f))).toEqual([160, 2.5]);
    expect(m.instance('from').size.length).toBe(560);
    const { overlaps, volumes } = await proofOf(m);
    expect(overlaps).toEqual([]);
    // What the two are together is their bodies: half of the scarf, 160 x 20 / 2 by 60 wide, goes from one to the other.
    expect(volumes.from).toBeCloseTo(400 * 60 * 20 + 160 * 10 * 60, 1);
    expect(volumes.into).toBeCloseTo(400 * 60 * 20 - 160 * 10 * 60, 1);
  });

  test('across the width of a flat board, and lengths that are not alike', async () => {
    const m = made('scarf', 20, { across: 'width', slope: 3 });
    expect(m.said).toEqual([]);
    expect(number(m, 'length')).toBe(180);
    expect((await proofOf(m)).overlaps).toEqual([]);
    expect(m.piece.joints[0]!.limits.find(l => l.min !== undefined && l.value < l.min)?.remedy).toMatch(
      /480 mm long/,
    );
    expect(made('scarf', 20, {}, { from: { width: 50 } }).said[0]).toMatch(/are 50 and 60 mm there/);
  });

  test('ends find ends only: a board whose end stands against a face makes none', () => {
    const { parts } = CORNERS['through-dovetail']!(20);
    const m = pieceOf({ parts, joints: { j: { type: 'scarf', from: 'from', into: 'into' } } });
    expect(m.said[0]).toMatch(/no from meets into/);
  });
});

describe('breadboard end', () => {
  const panel = (over: object = {}) => {
    const { parts } = CORNERS['breadboard-end']!(20);
    return pieceOf({
      parts: {
        into: { ...parts.into, length: 480 },
        from: { ...parts.from, repeat: { count: 3, along: 'y', step: 160 } },
      },
      joints: {
        panel: { type: 'edge-glued', from: 'from', into: 'from' },
        j: { type: 'breadboard-end', from: 'from', into: 'into', count: 3, ...over },
      },
    });
  };

  test('a panel of three boards is glued at the middle one; the others are pegged in slots', async () => {
    const m = panel({ set: { play: 3 } });
    expect(m.said).toEqual([]);
    expect((await proofOf(m)).overlaps).toEqual([]);
    const joints = m.piece.joints.filter(j => j.joint === 'j');
    expect(joints.map(j => [j.instances[0], j.glue.length, j.room?.what])).toEqual([
      ['from', 0, 'slotted screw'],
      ['from_2', 1, 'glued'],
      ['from_3', 0, 'slotted screw'],
    ]);
    const slot = m.instance('from').cuts.find(cut => cut.kind === 'hole');
    expect(slot).toMatchObject({ role: 'dowel', slot: { travel: 6, along: 'y' } });
    expect(m.instance('from_2').cuts.find(cut => cut.kind === 'hole')).not.toHaveProperty('slot');
    // Mortises by hand: tenons of 70, the outer ones 3 mm freer on each side.
    const mortises = m
      .instance('into')
      .cuts.flatMap(cut => (cut.kind === 'mortise' ? [cut.box.max.x - cut.box.min.x] : []));
    expect(mortises).toEqual([76, 70, 76].map(v => expect.closeTo(v, 9)));
  });

  test('too little play for the distance from the middle is told', () => {
    const play = (m: ReturnType<typeof panel>) =>
      m.piece.joints.flatMap(j => j.limits).filter(l => l.figure === 'play' && l.value < (l.min ?? 0));
    expect(play(panel({ set: { play: 0.5 } }))).toHaveLength(2);
    expect(play(panel())).toHaveLength(0);
  });
});
