import { type Item, line, words } from '../drawings/list.ts';
import type { SetUp } from '../results/setups.ts';
import { type Shown, type ShowOptions, showQuantity } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { capital, settingWord } from './names.ts';
import { STYLE, shownRuns, textBlock, textHeight } from './typeset.ts';

/** Machine figures keep their decimal: 45.0 tells more than 45. */
export const atMachine = (show: ShowOptions): ShowOptions => ({
  ...show,
  ...(show.unit === 'mm' ? { decimals: 1 } : {}),
  trim: false,
});

/** What the trial cut measures: `Tenon`, `Slot`. */
export const thing = (setup: SetUp): string => capital((setup.wanted?.label ?? '').replace(/ wanted$/, ''));

interface Big {
  title: string;
  figure: Shown;
  how: string;
}

/** Up to three figures as large as the column lets them be, the rest in lines below. */
export function bigFigures(book: Book, setup: SetUp, show: ShowOptions): void {
  const fine = atMachine(show);
  const all: Big[] = setup.settings.map(s => ({
    title: settingWord(s),
    figure: showQuantity(s.value, fine),
    how: s.to === undefined ? s.how : `to the ${s.to}: ${s.how}`,
  }));
  const wanted: Big | undefined = setup.wanted && {
    title: `${thing(setup)} wanted`,
    figure: showQuantity(setup.wanted.value, fine),
    how: setup.wanted.how,
  };
  const large = wanted ? [...all.slice(0, 2), wanted] : all.slice(0, 3);
  const rest = all.slice(wanted ? 2 : 3);
  const width = COLUMN / 3;
  const top = book.y + 2.5;
  const style = { ...STYLE.bench, size: 3.7, tone: 'ink-2' as const };
  const inner = width - 6;
  // All three figures stand on one line, however many lines their titles take.
  const head = Math.max(0, ...large.map(big => textHeight(big.title, inner, style, book.ruler)));
  let deepest = 0;
  large.forEach((big, i) => {
    const x = A4.left + i * width + (i === 0 ? 0 : 4.5);
    const own = textHeight(big.title, inner, style, book.ruler);
    const how = textBlock(
      big.how,
      [x, top + head + 16.6],
      inner,
      { ...STYLE.table, tone: 'ink-2' },
      book.ruler,
    );
    book.add(
      ...textBlock(big.title, [x, top + head - own], inner, style, book.ruler).items,
      ...largeFigure(book, big.figure, [x, top + head + 14.2], inner),
      ...how.items,
    );
    deepest = Math.max(deepest, head + 16.6 + how.height);
  });
  large.slice(1).forEach((_, i) => {
    const x = A4.left + (i + 1) * width;
    book.add(line([x, book.y], [x, top + deepest + 2], { stroke: 'edge' }));
  });
  book.y = top + deepest + 2;
  book.rule('edge');
  if (rest.length === 0) return;
  book.gap(1.6);
  for (const small of rest)
    book.text(
      [
        { text: `${small.title} `, tone: 'ink-2' },
        ...shownRuns(small.figure),
        { text: `  ${small.how}`, tone: 'ink-3' },
      ],
      STYLE.bench,
    );
  book.gap(1.4);
  book.rule('edge');
}

/** The figure as large as the column lets it be, its unit small and plain beside it. */
function largeFigure(book: Book, shown: Shown, at: readonly [number, number], width: number): Item[] {
  const figure = shown.close ? shown.figure + shown.unit : shown.figure;
  const unit = shown.close ? '' : shown.unit;
  const unitSize = 4.4;
  const unitWide = unit === '' ? 0 : book.ruler.width({ text: unit }, 'figures', unitSize) + 1.8;
  const em = Math.max(0.01, book.ruler.width({ text: figure, strong: true }, 'big', 1));
  const size = Math.min(17, (width - unitWide) / em);
  const left = at[0] - size * 0.04;
  return [
    words([left, at[1]], figure, { size, face: 'big', strong: true }),
    ...(unit === '' ? [] : [words([left + em * size + 1.8, at[1]], unit, { size: unitSize, tone: 'ink-3' })]),
  ];
}
