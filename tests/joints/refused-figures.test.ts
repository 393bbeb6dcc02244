import { describe, expect, test } from 'vitest';
import { pieceOf } from '../setting-out/piece.ts';
import { PIECES } from './pieces/index.ts';

type Set = Record<string, number | string>;

/** Figures that cannot be, at parts of 20 mm, with the figure that is told. */
const CASES: [string, Set, string][] = [
  ['mortise-and-tenon', { 'tenon.thickness': 25 }, 'tenon.thickness'],
  ['mortise-and-tenon', { 'tenon.length': 60 }, 'tenon.length'],
  ['mortise-and-tenon', { kind: 'through', 'tenon.length': 30 }, 'tenon.length'],
  ['pegged-tenon', { 'peg.from_shoulder': 40 }, 'peg.from_shoulder'],
  ['pegged-tenon', { 'peg.diameter': 60 }, 'peg.diameter'],
  ['pegged-tenon', { draw: 5 }, 'draw'],
  ['loose-tenon', { 'tenon.thickness': 25 }, 'tenon.thickness'],
  ['loose-tenon', { 'tenon.width': 80 }, 'tenon.width'],
  ['loose-tenon', { 'enters.into': 50 }, 'enters.into'],
  ['dowelled', { 'dowel.diameter': 25 }, 'dowel.diameter'],
  ['dowelled', { edge: 1 }, 'edge'],
  ['dowelled', { 'dowel.count': 9 }, 'dowel.count'],
  ['dowelled', { 'enters.into': 45 }, 'enters.into'],
  ['screwed', { end: 1 }, 'end'],
  ['screwed', { length: 100 }, 'length'],
  ['screwed', { sunk: 20 }, 'sunk'],
  ['button', { end: 3 }, 'end'],
  ['button', { 'slot.down': 58 }, 'slot.down'],
  ['button', { 'slot.depth': 30 }, 'slot.depth'],
  ['grooved-panel', { 'edge.thickness': 30 }, 'edge.thickness'],
  ['grooved-panel', { 'enters.side': 30 }, 'enters.side'],
  ['grooved-panel', { 'groove.depth': 130, 'enters.side': 8 }, 'groove.depth'],
  ['bar-in-hole', { enters: 60 }, 'enters'],
  ['sheet-let-in', { 'recess.depth': 0.5 }, 'recess.depth'],
  ['tongue-and-groove', { 'tongue.thickness': 30 }, 'tongue.thickness'],
  ['housing', { depth: 30 }, 'depth'],
  ['halving', { share: 1 }, 'share'],
  ['twin-tenon', { 'first.size': 40 }, 'first.size'],
  ['twin-tenon', { 'tenon.length': 60 }, 'tenon.length'],
  ['twin-tenon', { across: 100 }, 'across'],
  ['twin-tenon', { kind: 'through', 'tenon.length': 20 }, 'tenon.length'],
  ['twin-tenon', { 'mortise.wider': 9 }, 'mortise.wider'],
  ['twin-tenon', { kind: 'through', 'key.width': 15 }, 'tenon.length'],
  [
    'twin-tenon',
    { kind: 'through', 'key.width': 15, 'tenon.length': 80, 'key.thickness': 30 },
    'key.thickness',
  ],
  ['wedged-tenon', { 'kerf.from_edge': 30 }, 'kerf.from_edge'],
  ['wedged-tenon', { 'kerf.depth': 60 }, 'kerf.depth'],
  ['wedged-tenon', { flare: 500 }, 'flare'],
  ['wedged-tenon', { 'tenon.thickness': 25 }, 'tenon.thickness'],
  ['round-tenon', { 'tenon.diameter': 30 }, 'tenon.diameter'],
  ['round-tenon', { 'tenon.length': 60 }, 'tenon.length'],
  ['round-tenon', { kind: 'through', 'tenon.length': 20 }, 'tenon.length'],
  ['stopped-housing', { stop: 0 }, 'stop'],
  ['stopped-housing', { stop: 200 }, 'stop'],
  ['stopped-housing', { depth: 30 }, 'depth'],
  ['tapered-housing', { depth: 20 }, 'depth'],
  ['tapered-housing', { taper: 20 }, 'taper'],
  ['pocket-screw', { size: '9.9' }, 'size'],
  ['pocket-screw', { angle: 45 }, 'angle'],
  ['pocket-screw', { 'under.head': 100 }, 'under.head'],
  ['pocket-screw', { length: 100 }, 'length'],
  ['pocket-screw', { length: 10 }, 'length'],
  ['pocket-screw', { end: 1 }, 'end'],
  ['shelf-pins', { 'pin.depth': 30 }, 'pin.depth'],
  ['shelf-pins', { above: 20 }, 'above'],
  ['shelf-pins', { 'set.in': 2 }, 'set.in'],
  ['nailed', { nail: '4.88 x 101.6' }, 'nail'],
  ['nailed', { nail: '1.2 x 20', punched: 0 }, 'nail'],
  ['nailed', { end: 1 }, 'end'],
  ['threaded-insert', { 'bolt.length': 20 }, 'bolt.length'],
  ['threaded-insert', { 'bolt.length': 100 }, 'bolt.length'],
  ['threaded-insert', { 'insert.length': 70, 'bolt.length': 50 }, 'insert.length'],
  ['threaded-insert', { sunk: 20 }, 'sunk'],
  ['threaded-insert', { end: 3 }, 'end'],
  ['barrel-nut', { 'bolt.length': 50 }, 'bolt.length'],
  ['barrel-nut', { 'nut.length': 40 }, 'nut.length'],
  ['barrel-nut', { sunk: 40 }, 'sunk'],
  ['barrel-nut', { 'dowel.diameter': 70 }, 'dowel.diameter'],
  ['bed-connector', { 'plate.length': 120 }, 'plate.length'],
  ['bed-connector', { 'plate.width': 20 }, 'plate.width'],
  ['bed-connector', { 'hook.reach': 40 }, 'hook.reach'],
  ['bed-connector', { 'hook.height': 80 }, 'hook.height'],
  ['table-plate', { inset: 60 }, 'inset'],
  ['table-plate', { end: 2 }, 'end'],
  ['hinge-recess', { 'leaf.width': 40 }, 'leaf.width'],
  ['hinge-recess', { 'leaf.length': 400 }, 'leaf.length'],
  ['lock-recess', { 'body.thickness': 25, 'plate.width': 10 }, 'body.thickness'],
  ['lock-recess', { 'body.depth': 120 }, 'body.depth'],
  ['lock-recess', { 'plate.width': 30 }, 'plate.width'],
  ['lock-recess', { at: 5 }, 'at'],
  ['lock-recess', { 'bolt.reach': 80 }, 'bolt.reach'],
  ['lock-recess', { 'keyhole.in': 1 }, 'keyhole.in'],
  ['slotted-screw', { slot: 400 }, 'slot'],
];

const made = (type: string, set: Set) => {
  const sample = PIECES[type]!(20);
  return pieceOf({
    parts: sample.parts,
    joints: { j: { type, from: 'from', into: 'into', set: { ...sample.set, ...set } } },
  });
};

/** The figure that the mend names: a size such as `2 x 40`, or the first number in it. */
const mended = (mend: string): number | string => {
  const pair = /\d+(?:\.\d+)? x \d+(?:\.\d+)?/.exec(mend)?.[0];
  return pair ?? Number(/\d+(?:\.\d+)?/.exec(mend)?.[0]);
};

describe('a joint that cannot exist says which figure is at fault, and the figure it names works', () => {
  test.each(CASES)('%s %j', (type, set, figure) => {
    const { faults, piece } = made(type, set);
    expect(faults.map(f => f.place)).toContain(`joints.j.${figure in set ? 'set.' : ''}${figure}`);
    expect(piece.instances.flatMap(i => i.cuts)).toEqual([]);
    const told = faults.find(f => f.place.endsWith(figure))!;
    const { faults: left } = made(type, { ...set, [figure]: mended(told.mend) });
    expect([told.mend, left.filter(f => f.place.endsWith(figure))]).toEqual([told.mend, []]);
  });
});

describe('parts that do not lie as the joint needs are told', () => {
  const move = (type: string, part: string, over: object): string[] => {
    const { parts } = PIECES[type]!(20);
    return pieceOf({
      parts: { ...parts, [part]: { ...parts[part], ...over } },
      joints: { j: { type, from: 'from', into: 'into' } },
    }).said;
  };

  test('a hinge thinner than the gap between door and frame', () => {
    expect(made('hinge-recess', { knuckle: 1 }).said[0]).toMatch(
      /stand 1.5 mm apart, the closed hinge is only 1 thick/,
    );
  });

  test('a post in the middle of a board is no notch', () => {
    expect(move('corner-notch', 'from', { at: { left: 100, front: 50, bottom: 0 } })[0]).toMatch(
      /lies inside into and reaches none of its edges/,
    );
  });

  test('a runner let in too deep, and one buried in its side', () => {
    expect(
      move('runner-groove', 'from', { thickness: 30, at: { left: 0, centre_z: 80, front: -10 } })[0],
    ).toMatch(/goes through a side of 20/);
    expect(
      move('runner-groove', 'from', { thickness: 6, at: { left: 0, centre_z: 80, front: 7 } })[0],
    ).toMatch(/reaches no face of into/);
  });

  test('pins need a level shelf against an upright', () => {
    expect(
      move('shelf-pins', 'into', { along: 'back', facing: 'right', at: { left: 0, front: 0, bottom: 0 } })
        .length,
    ).toBeGreaterThan(0);
  });

  test('a slotted screw into an edge', () => {
    expect(
      move('slotted-screw', 'into', {
        width: 24,
        thickness: 600,
        at: { left: 0, front: 0, bottom: 500 },
      }).join(),
    ).toMatch(/is met on its edge|no from meets into/);
  });
});
