import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Assembly } from '../../src/results/piece.ts';
import { at, checksOf, hole, input, joint, LYING, only, part, pieceOf, sentence } from './fixtures.ts';

/** A bar between two rails, each in an end frame of its own, or both in one frame. */
function barred(frames: 'two frames' | 'one frame', dry = true) {
  const rails = [-32, 1183].map((x, i) =>
    part(`rail_${i}`, {
      name: 'Lower rail',
      size: [340, 80, 32],
      frame: at({ origin: vec(0, 0, 0), x: vec(0, 1, 0), y: vec(0, 0, 1), z: vec(1, 0, 0) }, x, 0, 0),
      cuts: [hole({ id: 'rest.1', role: 'bar', at: vec(100, 40, i === 0 ? 32 : 0), depth: 20 })],
    }),
  );
  const bar = part('bar', {
    size: [1221, 16, 16],
    kind: 'bar',
    material: 'stainless-304',
    round: true,
    frame: at(LYING, -19, 92, 32),
    added: { end1: 19, end2: 19 },
  });
  const rests = rails.map((r, i) =>
    joint('rest', ['bar', r.id], {
      type: 'bar-in-hole',
      dry,
      contact: box(1183 * i, 92, 32, 1183 * i, 108, 48),
    }),
  );
  const assembly = (id: string, given: Partial<Assembly>): Assembly => ({
    id,
    name: `the ${id}`,
    instances: [],
    assemblies: [],
    joints: [],
    dryFit: true,
    order: 1,
    ...given,
  });
  const early =
    frames === 'two frames'
      ? [assembly('left', { instances: ['rail_0'] }), assembly('right', { instances: ['rail_1'], order: 2 })]
      : [assembly('frame', { instances: ['rail_0', 'rail_1'] })];
  const whole = assembly('whole', {
    instances: ['bar'],
    assemblies: early.map(a => a.id),
    joints: rests.map(j => j.id),
    order: 3,
  });
  return input(pieceOf([bar, ...rails], rests, [...early, whole]));
}

describe('CHK-37: a way in', () => {
  it('reminds of bars that go in loose as the frames close', () => {
    const check = only('way in', barred('two frames'));
    expect([check.severity, check.title]).toEqual(['attend', 'Bar: no later way in']);
    expect(sentence(check)).toBe('Bar goes in loose as the whole closes on it.');
  });

  it('leaves what is shut out to the motions tried on the solids', () => {
    expect(checksOf('way in', barred('one frame'))).toEqual([]);
  });

  it('says nothing of what is glued in its turn, nor of a through hole', () => {
    expect(checksOf('way in', barred('two frames', false))).toEqual([]);
    const { piece, ...rest } = barred('one frame');
    const through = piece.instances.map(i => ({
      ...i,
      cuts: i.cuts.map(c => ({ ...c, through: true })) as typeof i.cuts,
    }));
    expect(checksOf('way in', { ...rest, piece: { ...piece, instances: through } })).toEqual([]);
  });
});
