import { expect, test } from 'vitest';
import { pieceOf, proofOf, timber } from '../setting-out/piece.ts';

/** A shelf 250 x 20 through two tenons into a side 22 thick. */
const parts = {
  side: timber({
    length: 600,
    width: 250,
    thickness: 22,
    along: 'up',
    facing: 'left',
    at: { left: 0, front: 0, bottom: 0 },
  }),
  shelf: timber({
    length: 400,
    width: 250,
    thickness: 20,
    along: 'right',
    facing: 'up',
    at: { left: 22, front: 0, bottom: 200 },
  }),
};
const made = (set: object) =>
  pieceOf({ parts, joints: { j: { type: 'twin-tenon', from: 'shelf', into: 'side', count: 1, set } } });
const sizes = {
  kind: 'through',
  beside: 'width',
  'first.size': 50,
  'second.size': 40,
  between: 80,
  across: 20,
};

test('tenons of unlike sizes as thick as the board, each in its own mortise', async () => {
  const twin = made(sizes);
  expect(twin.said).toEqual([]);
  const boxes = twin.instance('side').cuts.map(c => ('box' in c ? c.box.max.y - c.box.min.y : 0));
  expect(boxes).toEqual([50, 40]);
  const { overlaps, volumes } = await proofOf(twin);
  expect(overlaps).toEqual([]);
  // Shelf of 400 and two tenons of 22 long, as thick as it is.
  expect(volumes.shelf).toBeCloseTo(400 * 250 * 20 + 22 * 20 * (50 + 40), 2);
  expect(volumes.side).toBeCloseTo(600 * 250 * 22 - 22 * 20 * (50 + 40), 2);
});

test('keyed and with room to move: holes for keys, wider mortises, no glue', async () => {
  const keyed = made({
    ...sizes,
    'tenon.length': 70,
    'key.width': 18,
    'key.thickness': 12,
    'mortise.wider': 3,
  });
  expect(keyed.said).toEqual([]);
  const { overlaps, volumes } = await proofOf(keyed);
  expect(overlaps).toEqual([]);
  expect(volumes.shelf).toBeCloseTo(400 * 250 * 20 + 70 * 20 * (50 + 40) - 2 * 18 * 12 * 20, 2);
  expect(volumes.side).toBeCloseTo(600 * 250 * 22 - 22 * 20 * (56 + 46), 2);
  expect(keyed.piece.joints[0]!.glue).toEqual([]);
  expect(keyed.piece.joints[0]!.limits.find(l => l.figure === 'left beyond the key')).toMatchObject({
    value: 70 - 21 - 18,
    min: 18,
  });
});

test('in the thickness of a heavy rail the two stand beside each other', async () => {
  const heavy = pieceOf({
    parts: {
      post: timber({
        length: 400,
        width: 60,
        thickness: 60,
        along: 'up',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
      }),
      rail: timber({
        length: 300,
        width: 70,
        thickness: 50,
        along: 'right',
        facing: 'front',
        at: { left: 60, front: 5, top: 300 },
      }),
    },
    joints: { j: { type: 'twin-tenon', from: 'rail', into: 'post' } },
  });
  expect(heavy.said).toEqual([]);
  expect(heavy.book.value('joints.j.beside')).toMatchObject({ value: 'thickness' });
  expect(heavy.book.number('joints.j.first.size')).toBe(10);
  expect((await proofOf(heavy)).overlaps).toEqual([]);
});
