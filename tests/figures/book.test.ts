import { expect, test } from 'vitest';
import { type Figure, FigureBook } from '../../src/figures/book.ts';
import { FigureFault, type Read } from '../../src/figures/evaluate.ts';
import { lengthOf, type Measure } from '../../src/figures/measure.ts';
import { nearest, slips } from '../../src/figures/nearest.ts';

const figure = (name: string, compute: (read: Read) => Measure, over: Partial<Figure> = {}): Figure => ({
  name,
  label: name,
  place: name,
  kind: 'length',
  how: 'expression',
  compute,
  ...over,
});
const sum = (read: Read, ...names: string[]): Measure =>
  lengthOf(names.reduce((total, n) => total + (read(n) as { value: number }).value, 0));

test('figures are worked out once, in the order they need each other', () => {
  const book = new FigureBook();
  let worked = 0;
  book.define(figure('a', read => sum(read, 'b', 'c')));
  book.define(
    figure('b', () => {
      worked++;
      return lengthOf(2);
    }),
  );
  book.define(figure('c', read => sum(read, 'b', 'b')));
  expect(book.number('a')).toBe(6);
  expect(book.number('a')).toBe(6);
  expect(worked).toBe(1);
});

test('a circle is named in full, once, and what leans on it is not told again', () => {
  const book = new FigureBook();
  book.define(figure('a', read => sum(read, 'b')));
  book.define(figure('b', read => sum(read, 'c')));
  book.define(figure('c', read => sum(read, 'a')));
  book.define(figure('d', read => sum(read, 'a')));
  for (const name of ['d', 'a', 'b', 'c']) book.outcome(name);
  expect(book.faults().map(f => f.fault)).toEqual([
    'the figures need each other in a circle: a -> b -> c -> a',
  ]);
  expect(book.number('d')).toBeUndefined();
});

test('a fault blocks what needs it and nothing else', () => {
  const book = new FigureBook();
  book.define(
    figure('bad', () => {
      throw new FigureFault('no', 'mend');
    }),
  );
  book.define(figure('leans', read => sum(read, 'bad')));
  book.define(figure('sound', () => lengthOf(3)));
  expect([book.number('leans'), book.number('sound')]).toEqual([undefined, 3]);
  expect(book.faults()).toHaveLength(1);
});

test('late figures are asked for by name, and an unknown one is a fault with its hint', () => {
  const book = new FigureBook(
    name => (name === 'leg_x' ? figure(name, () => lengthOf(7)) : undefined),
    name => new FigureFault(`there is no figure ${name}`, 'did you mean leg_x?'),
  );
  book.define(figure('wants', read => sum(read, 'leg_x')));
  book.define(figure('lost', read => sum(read, 'leg_y')));
  expect(book.number('wants')).toBe(7);
  expect(book.number('lost')).toBeUndefined();
  expect(book.faults()[0]).toMatchObject({ place: 'lost', mend: 'did you mean leg_x?' });
});

test('why re-runs the figure and names what it read, down to what was entered', () => {
  const book = new FigureBook();
  book.define(figure('length', () => lengthOf(1000), { how: 'entered' }));
  book.define(figure('leg', () => lengthOf(45), { how: 'entered' }));
  book.define(
    figure(
      'rail',
      read =>
        lengthOf(
          sum(read, 'length').type === 'number' ? 1000 - 2 * (read('leg') as { value: number }).value : 0,
        ),
      { formula: 'length - 2 * leg' },
    ),
  );
  const why = book.why('rail');
  expect(why).toMatchObject({ value: { kind: 'length', value: 910 }, formula: 'length - 2 * leg' });
  expect(why?.inputs.map(i => [i.figure, i.how, i.value?.value])).toEqual([
    ['length', 'entered', 1000],
    ['leg', 'entered', 45],
  ]);
  expect(book.why('nothing')).toBeUndefined();
});

test('the nearest name is a hint only when it is near', () => {
  expect(slips('hieght', 'height')).toBe(1);
  expect(nearest('hieght', ['height', 'width'])).toBe('height');
  expect(nearest('zebra', ['height', 'width'])).toBeUndefined();
});
