import { describe, expect, test } from 'vitest';
import { pieceOf, proofOf, timber } from '../setting-out/piece.ts';

/** Volumes are reckoned by hand beside each: what is gone from the two is what they shared, once. */
describe('halvings of unequal thickness', () => {
  const cross = (thin: object, thick: object, set = {}) => ({
    parts: {
      p: timber({ length: 400, width: 40, along: 'right', facing: 'up', ...thin }),
      q: timber({ length: 400, width: 50, along: 'back', facing: 'up', ...thick }),
    },
    joints: { j: { type: 'halving', from: 'p', into: 'q', set } },
  });
  const at = (bottom: number) => ({ centre_x: 0, centre_y: 0, bottom });

  test.each([
    ['flush at the top', { thickness: 20, at: at(10) }, { thickness: 30, at: at(0) }],
    ['flush at the bottom', { thickness: 20, at: at(0) }, { thickness: 30, at: at(0) }],
    ['thick over thin, flush at the top', { thickness: 30, at: at(0) }, { thickness: 20, at: at(10) }],
    ['thick over thin, flush at the bottom', { thickness: 30, at: at(0) }, { thickness: 20, at: at(0) }],
    ['of equal thickness', { thickness: 20, at: at(0) }, { thickness: 20, at: at(0) }],
  ])('%s close without overlap or gap', async (_name, p, q) => {
    const made = pieceOf(cross(p, q));
    expect(made.said).toEqual([]);
    const { overlaps, volumes } = await proofOf(made);
    expect(overlaps).toEqual([]);
    const whole = 400 * 40 * p.thickness + 400 * 50 * q.thickness;
    expect(whole - volumes.p! - volumes.q!).toBeCloseTo(40 * 50 * 20, 3);
    expect(made.instance('p').cuts[0]).toMatchObject({ kind: 'halving' });
    expect(['back', 'face']).toContain((made.instance('p').cuts[0] as { face: string }).face);
  });

  test('a share of a third takes a third of the overlap from the first', async () => {
    const made = pieceOf(cross({ thickness: 20, at: at(10) }, { thickness: 30, at: at(0) }, { share: 0.3 }));
    const { overlaps, volumes } = await proofOf(made);
    expect(overlaps).toEqual([]);
    expect(400 * 40 * 20 - volumes.p!).toBeCloseTo(40 * 50 * 6, 3);
  });

  test('a thin member inside a thick one cannot be put in, and that is said', () => {
    const made = pieceOf(cross({ thickness: 20, at: at(5) }, { thickness: 30, at: at(0) }));
    expect(made.said).toEqual(['joints.j.share: p lies inside q and comes flush with neither face']);
    expect(made.instance('p').cuts).toEqual([]);
  });
});

describe('mitred corners', () => {
  test('a frame of unequal widths closes from inner to outer corner', async () => {
    const made = pieceOf({
      parts: {
        rail: timber({
          length: 400,
          width: 60,
          thickness: 20,
          along: 'right',
          facing: 'front',
          at: { left: 0, front: 0, bottom: 0 },
        }),
        stile: timber({
          length: 300,
          width: 40,
          thickness: 20,
          along: 'up',
          facing: 'front',
          at: { left: 0, front: 0, bottom: 0 },
          mirror: { x: 200 },
        }),
      },
      joints: { j: { type: 'mitred-frame', from: 'rail', into: 'stile', count: 2 } },
    });
    const { overlaps, volumes } = await proofOf(made);
    expect(overlaps).toEqual([]);
    expect(volumes.rail).toBeCloseTo(400 * 60 * 20 - 2 * ((60 * 40) / 2) * 20, 3);
    expect(volumes.stile).toBeCloseTo(300 * 40 * 20 - ((60 * 40) / 2) * 20, 3);
  });

  test.each([
    [20, 20],
    [20, 14],
  ])(
    'the corners of a box %i and %i thick are bevelled, not mitred across the board',
    async (bottom, side) => {
      const made = pieceOf({
        parts: {
          base: timber({
            length: 400,
            width: 200,
            thickness: bottom,
            along: 'right',
            facing: 'up',
            at: { left: 0, front: 0, bottom: 0 },
          }),
          side: timber({
            length: 300,
            width: 200,
            thickness: side,
            along: 'up',
            facing: 'left',
            at: { left: 0, front: 0, bottom: 0 },
            mirror: { x: 200 },
          }),
        },
        joints: { j: { type: 'mitred-frame', from: 'base', into: 'side', count: 2 } },
      });
      expect(made.said).toEqual([]);
      const { overlaps, volumes } = await proofOf(made);
      expect(overlaps).toEqual([]);
      expect(volumes.base).toBeCloseTo(400 * 200 * bottom - bottom * side * 200, 3);
      expect(volumes.side).toBeCloseTo(300 * 200 * side - (bottom * side * 200) / 2, 3);
      // 45 degrees of equal ones; of unequal ones the slant runs from corner to corner.
      expect(Math.abs((made.instance('side').cuts[0] as { bevel: number }).bevel)).toBeCloseTo(
        (Math.atan2(bottom, side) * 180) / Math.PI,
        9,
      );
      expect(made.piece.joints[0]!.glue[0]!.area).toBeCloseTo(Math.hypot(bottom, side) * 200, 6);
    },
  );
});
