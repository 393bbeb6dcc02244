/** Small plates with few pieces, and every way to cut them, worked out without any of the solver's tables. */
import fc from 'fast-check';
import type { CutProblem } from '../../src/cutting/problem.ts';
import { demand } from './shop.ts';

export interface Small {
  l: number;
  w: number;
  kerf: number;
  pieces: { l: number; w: number; worth: number; n: number }[];
}

export const small = fc.record({
  l: fc.integer({ min: 6, max: 30 }),
  w: fc.integer({ min: 6, max: 30 }),
  kerf: fc.integer({ min: 0, max: 2 }),
  pieces: fc.array(
    fc.record({
      l: fc.integer({ min: 2, max: 14 }),
      w: fc.integer({ min: 2, max: 14 }),
      worth: fc.integer({ min: 1, max: 50 }),
      n: fc.integer({ min: 1, max: 4 }),
    }),
    { minLength: 1, maxLength: 4 },
  ),
});

export function problemOf({ l, w, kerf, pieces }: Small, turn = false): CutProblem {
  const use = {
    from: 'buy',
    kind: 'sheet',
    material: '',
    label: '',
    length: l,
    width: w,
    thickness: 1,
    round: false,
  } as const;
  return {
    stocks: [
      {
        use: { ...use, kerf, trim: { end: 0, edge: 0 } },
        item: 's',
        l,
        w,
        kerf,
        cost: 1,
        limit: Infinity,
        single: false,
        crossFirst: false,
      },
    ],
    items: pieces.map(piece => ({
      demands: Array.from({ length: piece.n }, () => demand({})),
      lies: [liesOf(piece, turn).filter(lie => lie.l <= l && lie.w <= w)],
      area: piece.l * piece.w,
    })),
  };
}

const liesOf = (
  piece: { l: number; w: number },
  turn: boolean,
): { l: number; w: number; turned: boolean }[] => [
  { l: piece.l, w: piece.w, turned: false },
  ...(turn ? [{ l: piece.w, w: piece.l, turned: true }] : []),
];

interface Box {
  l: number;
  w: number;
}

const fewest = (boxes: Box[]): Box[] =>
  boxes.filter(
    (box, i) =>
      !boxes.some(
        (other, k) => other.l <= box.l && other.w <= box.w && (k < i || other.l < box.l || other.w < box.w),
      ),
  );

/**
 * Every choice of the pieces that one plate can hold, by the least boxes each choice can be cut from: two
 * choices side by side or one above another; for strips pieces side by side, then strips one above another.
 */
export function everyPlate(
  { l, w, kerf, pieces }: Small,
  stages: 'free' | 'strips along' = 'free',
  turn = false,
): number[][] {
  const boxes = new Map<string, { all: Box[]; row: Box[] }>();
  const inside = (all: Box[]): Box[] => fewest(all.filter(box => box.l <= l && box.w <= w));
  const beside = (a: Box[], b: Box[]): Box[] =>
    a.flatMap(one => b.map(two => ({ l: one.l + kerf + two.l, w: Math.max(one.w, two.w) })));
  const above = (a: Box[], b: Box[]): Box[] =>
    a.flatMap(one => b.map(two => ({ l: Math.max(one.l, two.l), w: one.w + kerf + two.w })));
  const choices = divisions(pieces.map(piece => piece.n)).filter(counts => counts.some(n => n > 0));
  choices.sort((a, b) => total(a) - total(b));
  for (const counts of choices) {
    const single = total(counts) === 1 ? liesOf(pieces[counts.indexOf(1)]!, turn) : [];
    const all: Box[] = [...single];
    const row: Box[] = [...single];
    for (const part of divisions(counts)) {
      const one = boxes.get(part.join());
      const two = boxes.get(counts.map((n, i) => n - part[i]!).join());
      if (!one || !two) continue;
      row.push(...beside(one.row, two.row));
      all.push(...above(one.all, two.all));
      if (stages === 'free') all.push(...beside(one.all, two.all));
    }
    boxes.set(counts.join(), { all: inside([...all, ...row]), row: inside(row) });
  }
  return choices.filter(counts => boxes.get(counts.join())!.all.length > 0);
}

const total = (counts: number[]): number => counts.reduce((sum, n) => sum + n, 0);

const divisions = (counts: number[]): number[][] =>
  counts.reduce<number[][]>(
    (all, n) => all.flatMap(one => Array.from({ length: n + 1 }, (_, k) => [...one, k])),
    [[]],
  );
