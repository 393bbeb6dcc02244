import { describe, expect, test } from 'vitest';
import { WOOD_SCREWS } from '../../src/reference/screws.ts';
import type { HoleCut } from '../../src/results/cuts.ts';
import { pieceOf } from '../setting-out/piece.ts';
import { PIECES } from './pieces/index.ts';

const madeOf = (type: 'hinge-recess' | 'lock-recess' | 'bed-connector', t = 20, set: object = {}) => {
  const made = pieceOf({
    ...PIECES[type]!(t),
    joints: { j: { type, from: 'from', into: 'into', set } },
  });
  expect(made.said).toEqual([]);
  const pilots = (id: string): HoleCut[] =>
    made.instance(id).cuts.filter((c): c is HoleCut => c.kind === 'hole' && c.role === 'pilot');
  const joint = made.piece.joints[0]!;
  const screws = joint.fasteners.filter(f => f.kind === 'screw');
  return { ...made, joint, pilots, screws };
};
const hard = (size: string): number => WOOD_SCREWS.find(size)!.pilotHardwoodMm.high;

describe('plates that are let in have a pilot for each of their screws', () => {
  test.each([
    ['hinge-recess', 6, 6, '3.0'],
    ['lock-recess', 2, 0, '3.0'],
    ['bed-connector', 3, 3, '4.0'],
  ] as const)('%s', (type, from, into, size) => {
    const made = madeOf(type);
    expect([made.pilots('from').length, made.pilots('into').length]).toEqual([from, into]);
    expect(made.screws.reduce((n, s) => n + s.quantity, 0)).toBe(from + into);
    for (const id of ['from', 'into'])
      for (const hole of made.pilots(id)) {
        expect(hole.diameter).toBe(hard(size));
        expect(hole.through).toBe(false);
        // Each starts in a plate's recess, which reaches round the screw on every side.
        expect(
          made
            .instance(id)
            .cuts.some(
              c =>
                c.kind === 'recess' &&
                c.face === hole.face &&
                (['x', 'y', 'z'] as const).every(
                  k => hole.at[k] >= c.box.min[k] - 1e-6 && hole.at[k] <= c.box.max[k] + 1e-6,
                ),
            ),
        ).toBe(true);
      }
  });

  test('hinge pilots go through the recess and the length of the screw', () => {
    const made = madeOf('hinge-recess');
    const depth = made.book.number('joints.j.recess.depth')!;
    const [screw] = made.screws;
    expect(new Set(made.pilots('from').map(h => h.depth))).toEqual(new Set([depth + screw!.length]));
  });

  test('screws of a bed connector stand clear of the slots of its hooks', () => {
    const made = madeOf('bed-connector');
    const slots = made.instance('into').cuts.flatMap(c => (c.kind === 'mortise' ? [c] : []));
    expect(slots).toHaveLength(2);
    for (const hole of made.pilots('into'))
      for (const slot of slots) {
        const inside = (['x', 'y', 'z'] as const).every(
          k => hole.at[k] > slot.box.min[k] - 2 && hole.at[k] < slot.box.max[k] + 2,
        );
        expect(inside).toBe(false);
      }
  });

  test('a plate no longer than its lock has no screws', () => {
    const made = madeOf('lock-recess', 20, { 'plate.length': 40 });
    expect([made.pilots('from'), made.screws]).toEqual([[], []]);
  });

  test('a screw that comes near the far side is told', () => {
    const thin = madeOf('bed-connector', 12).joint.limits.find(l => l.figure === 'behind the screws')!;
    expect(thin.min).toBe(1);
    expect(thin.value).toBeGreaterThanOrEqual(1);
  });
});
