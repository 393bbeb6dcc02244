import { type Item, line, rect, words } from '../drawings/list.ts';
import { stateMark } from '../drawings/marks.ts';
import { mm } from '../results/quantity.ts';
import type { SetUp } from '../results/setups.ts';
import { type Shown, type ShowOptions, showQuantity } from '../results/show.ts';
import { correctedSetting } from '../setups/trials.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { atMachine, thing } from './card-figures.ts';
import { capital } from './names.ts';
import { type Block, STYLE, shownRuns, textBlock } from './typeset.ts';

const RIGHT = A4.width - A4.right;

/** Cautions in three columns under a thick rule; items stand as if the block began at 0. */
export function cautionBlock(book: Book, setup: SetUp): Block {
  if (setup.cautions.length === 0) return { items: [], height: 0 };
  const gap = 6;
  const width = (COLUMN - 2 * gap) / 3;
  const items: Item[] = [line([A4.left, 0], [RIGHT, 0], { stroke: 'outline' })];
  let y = 3;
  for (let i = 0; i < setup.cautions.length; i += 3) {
    let deepest = 0;
    setup.cautions.slice(i, i + 3).forEach((caution, c) => {
      const x = A4.left + c * (width + gap);
      const block = textBlock(caution, [x + 6, y], width - 6, { ...STYLE.bench, size: 3.7 }, book.ruler);
      items.push(...stateMark('attend', [x, y + 0.6], 4), ...block.items);
      deepest = Math.max(deepest, block.height);
    });
    y += deepest + 2;
  }
  return { items, height: y + 1 };
}

/** The trial-cut table: measured, wanted, difference, setting now; two rows to write in. */
export function trialBlock(book: Book, setup: SetUp, show: ShowOptions): Block {
  const { correction, wanted } = setup;
  if (!correction || !wanted) return { items: [], height: 0 };
  const figure = showQuantity(wanted.value, atMachine(show));
  const from = correctedSetting(setup)?.name ?? 'fence';
  const titles = [
    `${thing(setup)} measured`,
    'Wanted',
    correction.share === 'half' ? 'Half the difference' : 'The difference',
    `${capital(from)} now`,
  ];
  const widths = [0.3, 0.16, 0.33, 0.21].map(s => s * COLUMN);
  const items: Item[] = [line([A4.left, 0], [RIGHT, 0], { stroke: 'edge' })];
  const label = textBlock('Trial cut', [A4.left, 2.2], COLUMN, STYLE.small, book.ruler);
  items.push(...label.items);
  const head = 2.2 + label.height;
  const row = 8.6;
  const top = head + 5;
  let x = A4.left;
  titles.forEach((title, i) => {
    items.push(...textBlock(title, [x + 2, head + 0.4], widths[i]! - 2, STYLE.head, book.ruler).items);
    for (const r of [0, 1]) items.push(rect(x, top + r * row, widths[i]!, row, { stroke: 'thin' }));
    x += widths[i]!;
  });
  const cell = (column: number, r: number, shown: Shown): void => {
    const left = A4.left + widths.slice(0, column).reduce((sum, w) => sum + w, 0);
    items.push(
      words([left + 2, top + r * row + 5.8], shownRuns({ ...shown, unit: '' }), { size: 4.6, strong: true }),
    );
  };
  // The last trials that were entered stand in the rows; what is left is written in.
  const entered = (setup.trials ?? []).filter(t => !t.older).slice(-2);
  for (const r of [0, 1]) {
    cell(1, r, figure);
    const trial = entered[r];
    if (!trial) continue;
    cell(0, r, showQuantity(mm(trial.measured), atMachine(show)));
    cell(2, r, showQuantity(mm(trial.move), atMachine(show)));
    cell(3, r, showQuantity(mm(trial.now), atMachine(show)));
  }
  const note = textBlock(
    `${correction.tooBig} ${correction.tooSmall}`,
    [A4.left, top + 2 * row + 1.6],
    COLUMN,
    { ...STYLE.bench, size: 3.7 },
    book.ruler,
  );
  return { items: [...items, ...note.items], height: top + 2 * row + note.height + 4 };
}
