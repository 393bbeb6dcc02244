import { expect, test } from 'vitest';
import { FigureBook } from '../../src/figures/book.ts';
import { evaluate } from '../../src/figures/evaluate.ts';
import { parseExpression } from '../../src/figures/expression.ts';
import type { Why } from '../../src/results/why.ts';

/** A book of expressions by name. */
function bookOf(texts: Record<string, string>): FigureBook {
  const book = new FigureBook();
  for (const [name, text] of Object.entries(texts)) {
    const parsed = parseExpression(text);
    if (!parsed.ok) throw new Error(parsed.fault);
    book.define({
      name,
      label: name,
      place: name,
      kind: 'number',
      how: 'expression',
      compute: read => evaluate(parsed.node, read),
    });
  }
  return book;
}

const chain = (n: number, next: (i: number) => string) =>
  Object.fromEntries([['p0', '1'], ...Array.from({ length: n }, (_, i) => [`p${i + 1}`, next(i)])]);

test('a chain of 8000 figures is worked out whichever end is asked first', () => {
  const book = bookOf(chain(8000, i => `p${i} + 1`));
  expect(book.number('p8000')).toBe(8001);
  expect(book.faults()).toEqual([]);
});

test('a chain of figures, each of the deepest expression, does not outgrow the stack', () => {
  const book = bookOf(chain(400, i => `${'-('.repeat(38)}p${i} + 1${')'.repeat(38)}`));
  expect(book.number('p400')).toBe(401);
});

test('a circle longer than one piece of a chain is told, and what hangs on it is withheld', () => {
  const book = bookOf(
    Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`p${i}`, `p${(i + 1) % 1000} + 1`])),
  );
  expect(book.number('p500')).toBeUndefined();
  expect(book.number('p3')).toBeUndefined();
  expect(book.faults()).toHaveLength(1);
  expect(book.faults()[0]!.fault).toMatch(/in a circle/);
});

const nodes = (why: Why): number => 1 + why.inputs.reduce((sum, i) => sum + nodes(i), 0);

test('"why" of a figure that others share explains each once, down to what was entered', () => {
  // Thirteen layers of eight, each figure reading all eight below: 8 to the 12th ways down.
  const layers = Array.from({ length: 13 }, (_, l) =>
    Array.from({ length: 8 }, (_, k): [string, string] => [
      `q${l}_${k}`,
      l === 0 ? `${k + 1}` : `min(${Array.from({ length: 8 }, (_, m) => `q${l - 1}_${m}`).join(', ')})`,
    ]),
  ).flat();
  const why = bookOf(Object.fromEntries(layers)).why('q12_0')!;
  // One at the top, and eight inputs for itself and each of the 8 x 11 figures between it and the entered ones.
  expect(nodes(why)).toBe(1 + 8 * (1 + 8 * 11));
  let deepest = why;
  while (deepest.inputs.length > 0) deepest = deepest.inputs[0]!;
  expect(deepest.figure).toBe('q0_0');
});
