import { describe, expect, test } from 'vitest';
import type { Frame } from '../../src/geometry/frame.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import type { HoleCut, PocketCut } from '../../src/results/cuts.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { pieceOf, proofOf, timber } from './piece.ts';

const FEATURES = {
  rebate: { type: 'rebate', on: 'leg', face: 'front', edge: 'right', width: 10, depth: 5, from: 30, to: 90 },
  groove: { type: 'groove', on: 'leg', face: 'left', width: 4, depth: 6, across: 3, from: 100 },
  hole: { type: 'hole', on: 'leg', face: 'right', along: 50, across: 5, diameter: 4, depth: 10 },
  slot: { type: 'hole', on: 'leg', face: 'front', along: 150, across: 12, diameter: 4, travel: 8 },
  sink: {
    type: 'countersink',
    on: 'leg',
    face: 'back',
    along: 170,
    across: 9,
    diameter: 4,
    size: 8,
    depth: 12,
  },
  taper: { type: 'taper', on: 'leg', face: 'right', start: 200, amount: 9 },
  thin: { type: 'taper', on: 'leg', face: 'front', start: 60, end: 'end1', amount: 4 },
  ease: { type: 'chamfer', on: 'leg', edges: [['left', 'front']], size: 3 },
  round: { type: 'round-over', on: 'leg', end: 'end2', size: 2 },
  end: { type: 'mitre', on: 'leg', end: 'end1', angle: 8, face: 'right' },
  notch: { type: 'notch', on: 'leg', face: 'back', along: 210, width: 20, depth: 6, edge: 'left', size: 12 },
};

const flipped = (f: Frame, axis: 'x' | 'y' | 'z', plane: number): Frame => ({
  origin: { ...f.origin, [axis]: 2 * plane - f.origin[axis] },
  x: { ...f.x, [axis]: -f.x[axis] },
  y: { ...f.y, [axis]: -f.y[axis] },
  z: { ...f.z, [axis]: -f.z[axis] },
});

describe('mirrored copies are the mirror image in the world', () => {
  test.each([
    ['upright', { along: 'up', facing: 'front' }, {}],
    ['lying to the left', { along: 'left', facing: 'up' }, {}],
    ['hanging down', { along: 'down', facing: 'right' }, {}],
    ['towards the front', { along: 'front', facing: 'up' }, {}],
    ['turned', { along: 'up', facing: 'back' }, { turn: { x: 7, y: -4, z: 20 } }],
  ])('%s, by every plane and twice repeated', async (_name, lie, turn) => {
    const made = pieceOf({
      parts: {
        leg: timber({
          length: 240,
          width: 40,
          thickness: 30,
          ...lie,
          ...turn,
          at: { left: 11, front: 23, bottom: 5 },
          repeat: { count: 2, along: 'y', step: 300 },
          mirror: { x: 400, y: -100, z: 500 },
        }),
      },
      // Words for faces depend on how it lies: those that name an end of this one are told and left out.
      features: FEATURES,
    });
    const cut = made.instance('leg').cuts.length;
    expect(cut).toBeGreaterThan(5);
    const kernel = await loadMeshKernel();
    const cache = new SolidCache(kernel);
    const planes = { x: 400, y: -100, z: 500 };
    expect(made.piece.instances).toHaveLength(16);
    for (const copy of made.piece.instances) {
      const axes = [...(/_([xyz]+)$/.exec(copy.id)?.[1] ?? '')] as ('x' | 'y' | 'z')[];
      const first = made.instance(copy.id.startsWith('leg_2') ? 'leg_2' : 'leg');
      const frame = axes.reduce((f, a) => flipped(f, a, planes[a]), first.frame);
      const volume = cache.of(copy).volume();
      expect(kernel.shared(cache.of(first), frame, cache.of(copy), copy.frame)).toBeCloseTo(volume, 0);
      expect(cache.of(first).volume()).toBeCloseTo(volume, 3);
    }
    cache.keep([]);
  });
});

const upright = timber({
  length: 400,
  width: 40,
  thickness: 20,
  along: 'up',
  facing: 'front',
  at: { left: 0, front: 0, bottom: 0 },
  mirror: { x: 200 },
});

test('a face word on a named mirrored copy is a side of that copy as it stands', async () => {
  const made = pieceOf({
    parts: {
      a: upright,
      wall: timber({
        length: 400,
        width: 10,
        thickness: 5,
        along: 'up',
        facing: 'front',
        at: { right: 400, front: 0, bottom: 0 },
      }),
    },
    features: { r: { type: 'rebate', on: 'a_x', face: 'front', edge: 'right', width: 10, depth: 5 } },
  });
  expect(made.instance('a').cuts).toEqual([]);
  // The strip at the right of a_x (which spans 360 to 400) fills the rebate: no room is shared.
  expect((await proofOf(made)).overlaps).toEqual([]);
});

const rails = {
  rail: timber({
    length: 300,
    width: 60,
    thickness: 21,
    along: 'right',
    facing: 'front',
    at: { left: 50, front: 10, bottom: 100 },
    repeat: { count: 2, along: 'z', step: 100 },
  }),
  leg: timber({
    length: 180,
    width: 50,
    thickness: 50,
    along: 'up',
    facing: 'front',
    at: { left: 0, front: 0, bottom: 0 },
  }),
};

test('a copy without the tenon of its fellow gets the hole and the groove where its own wood is', () => {
  const made = pieceOf({
    parts: rails,
    joints: { j: { type: 'mortise-and-tenon', from: 'rail', into: 'leg' } },
    features: {
      g: { type: 'groove', on: 'rail', face: 'back', width: 6, depth: 6 },
      h: { type: 'hole', on: 'rail', face: 'back', along: 50, diameter: 4, depth: 10 },
    },
  });
  const [tenoned, plain] = ['rail', 'rail_2'].map(id => made.instance(id));
  expect([tenoned!.size.length, plain!.size.length]).toEqual([333, 300]);
  const groove = (i: typeof plain) => (i!.cuts.find(c => c.by === 'g') as PocketCut).box.max.x;
  const hole = (i: typeof plain) => (i!.cuts.find(c => c.by === 'h') as HoleCut).at.x;
  expect([groove(tenoned), groove(plain)]).toEqual([333, 300]);
  expect([hole(tenoned), hole(plain)]).toEqual([83, 50]);
});

test('a shelf end let into two boards side by side is lengthened once', async () => {
  const side = (front: number) =>
    timber({
      length: 400,
      width: 100,
      thickness: 20,
      along: 'up',
      facing: 'left',
      at: { left: 0, front, bottom: 0 },
    });
  const made = pieceOf({
    parts: {
      s1: side(0),
      s2: side(100),
      shelf: timber({
        length: 300,
        width: 200,
        thickness: 18,
        along: 'right',
        facing: 'up',
        at: { left: 20, front: 0, bottom: 200 },
      }),
    },
    joints: {
      j: { type: 'housing', from: 'shelf', into: 's1' },
      k: { type: 'housing', from: 'shelf', into: 's2' },
    },
  });
  expect(made.instance('shelf').size.length).toBe(306.5);
  expect(made.book.number('parts.shelf.length')).toBe(306.5);
  expect((await proofOf(made)).overlaps).toEqual([]);
});

test.each([
  [{ type: 'hole', face: 'front', along: 5000, diameter: 5 }, 'along: the hole stands at 5000 mm'],
  [{ type: 'hole', face: 'front', along: 50, across: 300, diameter: 5 }, 'across: the hole stands at 300 mm'],
  [{ type: 'hole', face: 'front', along: 50, diameter: -5 }, 'diameter: diameter comes to -5 mm'],
  [{ type: 'hole', face: 'front', along: 50, diameter: 5, depth: 0 }, 'depth: depth comes to 0 mm'],
  [
    { type: 'hole', face: 'front', along: 50, diameter: 5, repeat: { count: 1000, step: 0.1 } },
    'repeat.count: the count',
  ],
  [
    { type: 'hole', face: 'front', along: 50, diameter: 5, repeat: { count: 2.4, step: 9 } },
    'repeat.count: the count',
  ],
  [{ type: 'taper', face: 'front', start: 500, amount: 5 }, 'start: the taper starts'],
  [{ type: 'taper', face: 'front', start: 50, amount: 20 }, 'amount: a taper of 20 mm leaves nothing of 20'],
  [{ type: 'chamfer', edges: [['front', 'right']], size: 100 }, 'size: the chamfer of 100 mm is larger'],
  [{ type: 'mitre', end: 'end1', angle: 95 }, 'angle: an end cut at 95 degrees'],
  [{ type: 'groove', face: 'front', width: -5, depth: 5 }, 'width: width comes to -5 mm'],
  [{ type: 'countersink', face: 'front', along: 20, diameter: 5, size: 3 }, 'size: a head of 3 mm'],
  [
    { type: 'countersink', face: 'front', along: 20, diameter: 5, size: 9, angle: 200 },
    'angle: a countersink of 200',
  ],
])('a cut that cannot be made is told at its field: %j', (feature, said) => {
  const made = pieceOf({ parts: { a: upright }, features: { f: { on: 'a', ...feature } } });
  expect(made.said).toHaveLength(1);
  expect(made.said[0]).toContain(`features.f.${said}`);
  expect(made.instance('a').cuts).toEqual([]);
});

test('a feature on a copy beyond the count is told', () => {
  const made = pieceOf({
    parts: rails,
    features: { h: { type: 'hole', on: 'rail_9', face: 'back', along: 50, diameter: 4, depth: 10 } },
  });
  expect(made.said).toEqual(['features.h.on: there is no rail_9: so many are not made']);
});
