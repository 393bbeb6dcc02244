import { describe, expect, test } from 'vitest';
import { pieceOf, proofOf, timber } from '../setting-out/piece.ts';

/** A frame member lying flat; the other crosses it square. */
const flat = (t: number, over: object) =>
  timber({ length: 20 * t, width: 3 * t, thickness: t, facing: 'up', ...over });

const ARRANGED: Record<string, { left: string; front: string }> = {
  corner: { left: 'into.left', front: 'into.front' },
  T: { left: 'into.centre_x - into.width / 2', front: 'into.front' },
  cross: { left: 'into.centre_x - into.width / 2', front: 'into.centre_y - 10 * into.thickness' },
};

describe.each(Object.keys(ARRANGED))('%s halving', kind => {
  test.each([12, 20, 45])('at %i mm: half is gone from each, flush and without overlap', async t => {
    const { left, front } = ARRANGED[kind]!;
    const made = pieceOf({
      parts: {
        into: flat(t, { along: 'right', at: { left: 0, front: 0, bottom: 0 } }),
        from: flat(t, { along: 'back', at: { left, front, bottom: 0 } }),
      },
      joints: { j: { type: 'halving', from: 'from', into: 'into', count: 1 } },
    });
    expect(made.said).toEqual([]);
    const { overlaps, volumes } = await proofOf(made);
    expect(overlaps).toEqual([]);
    // 3t x 3t x t/2 is taken from each; the kernel draws a cut 0.01 mm past a face, which takes nothing more.
    const whole = 60 * t ** 3 - 4.5 * t ** 3;
    expect(volumes.from).toBeCloseTo(whole, 3);
    expect(volumes.into).toBeCloseTo(whole, 3);
  });
});
