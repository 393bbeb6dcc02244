import { expect, test } from 'vitest';
import { FACE_AXIS, type PocketCut } from '../../src/results/cuts.ts';
import { SIZE_OF_AXIS } from '../../src/setting-out/faces.ts';
import { pieceOf } from '../setting-out/piece.ts';
import { PIECES } from './pieces/index.ts';

test('a notch goes through only where it reaches the far side from the face it is cut from', () => {
  const made = pieceOf({
    ...PIECES['corner-notch']!(20),
    joints: { j: { type: 'corner-notch', from: 'from', into: 'into' } },
  });
  expect(made.said).toEqual([]);
  const board = made.instance('into');
  const cut = board.cuts.find((c): c is PocketCut => c.kind === 'notch')!;
  const axis = FACE_AXIS[cut.face];
  const deep = cut.box.max[axis] - cut.box.min[axis];
  expect(deep).toBeLessThan(board.size[SIZE_OF_AXIS[axis]]);
  expect(cut.through).toBe(false);
});
