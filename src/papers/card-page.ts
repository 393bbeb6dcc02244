import { cardDrawing } from '../drawings/card.ts';
import { type Item, place, words } from '../drawings/list.ts';
import { type Manner, PAPER } from '../drawings/manner.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import type { SetUp } from '../results/setups.ts';
import { type ShowOptions, showSize } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { atMachine, bigFigures } from './card-figures.ts';
import { fitsColumn, gridAt, type TickRow, tickGrid, tickRows, tickTable } from './card-ticks.ts';
import { cautionBlock, trialBlock } from './card-trial.ts';
import { capital, FACE_WORD, instanceMarks } from './names.ts';
import { type Block, type Rich, STYLE, textBlock, textHeight } from './typeset.ts';

const MANNER: Manner = { ...PAPER, text: 3.7, rod: 8.5 };
const RIGHT = A4.width - A4.right;
const FOOT = 279;
const LEFT_WIDE = 108;
const SIDE = { x: A4.left + LEFT_WIDE + 8, width: COLUMN - LEFT_WIDE - 8 };
/** Rows to tick that the side column takes. */
const SIDE_TICKS = 6;

/** One set-up, one page: three large figures, the drawing, what to run, cautions and the trial cut. */
export function cardPage(book: Book, setup: SetUp, derived: Derived, show: ShowOptions): void {
  book.startBare(`Set-up ${setup.number}`);
  header(book, setup, derived.setups.setups.length);
  bigFigures(book, setup, show);
  const trial = trialBlock(book, setup, show);
  const warn = cautionBlock(book, setup);
  const low = FOOT - trial.height - warn.height;
  book.add(...place(warn.items, 0, low), ...place(trial.items, 0, low + warn.height));
  const top = book.y + 4;
  const rows = tickRows(setup, instanceMarks(derived.piece));
  const beside = fitsColumn(rows, SIDE.width, SIDE_TICKS);
  const told = sideColumn(book, setup, beside ? rows : [], top, show);
  // Boxes go under the drawing, over the page's width, where the side column cannot take them.
  const crowded = beside && top + told.height > low;
  const side = crowded ? sideColumn(book, setup, [], top, show) : told;
  const boxes = beside && !crowded ? undefined : tickGrid(book, rows, Math.min(70, (low - top) * 0.45));
  // Words that need the whole column leave the boxes to a page of their own.
  const wordy = boxes !== undefined && top + side.height > low - boxes.height;
  const grid = wordy ? undefined : boxes;
  const gridTop = low - (grid?.height ?? 0);
  const left = drawingColumn(book, setup, top, gridTop - top, show);
  book.add(...left.items, ...side.items);
  const used = afterWords(book, setup, { top, gridTop, left: left.height, side: side.height });
  const below = top + Math.max(left.height, side.height) + 4 + (used ?? 0);
  if (grid) book.add(...place(grid.items, 0, Math.min(gridTop, below)));
  if (used === undefined) afterPage(book, setup);
  if (wordy) restPage(book, setup, rows);
  for (const rest of grid?.rest ?? []) restPage(book, setup, rest);
}

/** The drawing with its caption; full size if the room lets it be. */
function drawingColumn(book: Book, setup: SetUp, top: number, room: number, show: ShowOptions): Block {
  const drawing = cardDrawing(setup.drawing, {
    width: LEFT_WIDE,
    height: Math.max(40, Math.min(128, room - 12)),
    manner: MANNER,
    show: atMachine(show),
    scales: [1, 0.5, 0.2, 0.1],
    id: setup.id,
  });
  const caption = textBlock(
    captionOf(drawing.scale, drawing.broken, setup),
    [A4.left, top + drawing.height + 1],
    LEFT_WIDE,
    STYLE.remark,
    book.ruler,
  );
  return {
    items: [...place(drawing.items, A4.left, top), ...caption.items],
    height: drawing.height + caption.height + 1,
  };
}

/**
 * What to do afterwards stands in the side column, else under the drawing, else across the page. Returns the height
 * it takes below both columns, mm; nothing where there is no room for it.
 */
function afterWords(
  book: Book,
  setup: SetUp,
  at: { top: number; gridTop: number; left: number; side: number },
): number | undefined {
  if (setup.after.length === 0) return 0;
  const foot = at.top + Math.max(at.left, at.side);
  const beside = section(book, 'After', setup.after, [SIDE.x, at.top + at.side], SIDE.width);
  if (at.top + at.side + beside.height <= at.gridTop) {
    book.add(...beside.items);
    return Math.max(0, at.top + at.side + beside.height - foot);
  }
  const under = section(book, 'After', setup.after, [A4.left, at.top + at.left + 4], LEFT_WIDE);
  if (at.top + at.left + 4 + under.height <= at.gridTop) {
    book.add(...under.items);
    return Math.max(0, at.top + at.left + 4 + under.height - foot);
  }
  const inOne: Rich = [{ text: 'After  ', strong: true }, { text: setup.after.join('. ') }];
  const height = textHeight(inOne, COLUMN, STYLE.bench, book.ruler) + 2;
  if (foot + height > at.gridTop) return undefined;
  book.add(...textBlock(inOne, [A4.left, foot + 1], COLUMN, STYLE.bench, book.ruler).items);
  return height;
}

function afterPage(book: Book, setup: SetUp): void {
  book.startPage(`Set-up ${setup.number}, afterwards`);
  book.heading(setup.title);
  book.add(...section(book, 'After', setup.after, [A4.left, book.y], COLUMN).items);
}

function header(book: Book, setup: SetUp, of: number): void {
  const { info } = book;
  const base = A4.top + 11;
  const last = ` of ${of}`;
  const number = `${setup.number}`;
  const lastWide = book.ruler.width({ text: last }, 'figures', 3.9);
  const numberWide = book.ruler.width({ text: number, strong: true }, 'big', 12);
  book.add(
    words([RIGHT - lastWide - numberWide - 1.5, base], 'Set-up', { size: 3.9, anchor: 'end' }),
    words([RIGHT - lastWide, base], number, { size: 12, face: 'big', anchor: 'end', strong: true }),
    words([RIGHT, base], last, { size: 3.9, anchor: 'end' }),
  );
  const wide = COLUMN - 44;
  book.text(
    `${info.title}, setting-out ${info.settingOut}`,
    { ...STYLE.table, tone: 'ink-3' },
    { width: wide },
  );
  book.text(setup.title, STYLE.title, { width: wide });
  book.text(`${setup.machine}, ${setup.tool}`, { ...STYLE.bench, tone: 'ink-2' }, { width: wide });
  book.gap(2);
  book.rule('outline');
}

const SCALE_WORD: Record<string, string> = {
  '1': 'at full size',
  '0.5': 'at half size',
  '0.2': 'at a fifth',
  '0.1': 'at a tenth',
};

function captionOf(scale: number, broken: boolean, setup: SetUp): string {
  const size = SCALE_WORD[`${scale}`] ?? 'not to scale';
  const seen = setup.drawing.seen ?? 'from where you stand';
  const lay = scale === 1 && !broken ? ': lay the work on it' : broken ? ', broken where it is long' : '';
  const kerf = setup.kerfSide === undefined ? '' : ` Kerf ${setup.kerfSide.replace(/\.$/, '')}.`;
  return `Seen ${seen}, ${size}${lay}.${kerf}`;
}

/** A small heading and its lines. */
function section(
  book: Book,
  title: string,
  lines: readonly Rich[],
  at: readonly [number, number],
  width: number,
  numbered = false,
): Block {
  if (lines.length === 0) return { items: [], height: 0 };
  const head = textBlock(title, at, width, STYLE.small, book.ruler);
  const items: Item[] = [...head.items];
  let y = at[1] + head.height + 0.8;
  lines.forEach((rich, i) => {
    const indent = numbered ? 5 : 0;
    if (numbered)
      items.push(
        words([at[0], y + STYLE.bench.size * 0.98], `${i + 1}`, { size: STYLE.bench.size, tone: 'ink-3' }),
      );
    const block = textBlock(rich, [at[0] + indent, y], width - indent, STYLE.bench, book.ruler);
    items.push(...block.items);
    y += block.height + 0.8;
  });
  return { items, height: y - at[1] + 2.6 };
}

function sideColumn(
  book: Book,
  setup: SetUp,
  rows: readonly TickRow[],
  top: number,
  show: ShowOptions,
): Block {
  const test = setup.testPiece;
  const before = [
    ...setup.before,
    ...(test
      ? [
          `Test piece ${showSize(test, show)} in ${materialName(test.material)}${
            (test.serves ?? 1) > 1 ? `, good for ${test.serves} trials` : ''
          }`,
        ]
      : []),
  ];
  const told = section(book, 'Before', before, [SIDE.x, top], SIDE.width);
  const run = section(book, 'Run', runLines(setup), [SIDE.x, top + told.height], SIDE.width, true);
  const items = [...told.items, ...run.items];
  let y = top + told.height + run.height;
  if (rows.length > 0) {
    const ticks = tickTable(book, rows, [SIDE.x, y], SIDE.width);
    items.push(...ticks.items);
    y += ticks.height + 2.6;
  }
  return { items, height: y - top };
}

/** What the hands do, one line a pass: from how the work is laid, ends turned last. */
function runLines(setup: SetUp): string[] {
  const first = setup.runs[0];
  if (!first) return [];
  const at = setup.drawing.jig ? 'the jig' : setup.drawing.zero === 'stop' ? 'the stop' : 'the fence';
  const hand = setup.drawing.view === 'hand';
  const lays = first.lays ?? [
    { label: first.passes[0] ?? '', down: first.down, against: first.against, entry: first.down },
  ];
  const lines: string[] = setup.testPiece ? ['Test piece first, every pass'] : [];
  for (const lay of lays) {
    const word = lay.label === '' || lays.length === 1 ? '' : `${capital(lay.label)}: `;
    const rest = lay.against === lay.down ? '' : `, ${FACE_WORD[lay.against]} to ${at}`;
    lines.push(
      hand ? `${word}from the ${FACE_WORD[lay.entry]}` : `${word}${FACE_WORD[lay.down]} down${rest}`,
    );
  }
  const ends = new Set(setup.runs.map(r => r.end).filter(e => e !== undefined));
  if (ends.size > 1) lines.push('Turn end for end, again');
  return lines.map(capital);
}

function restPage(book: Book, setup: SetUp, rows: readonly TickRow[]): void {
  book.startPage(`Set-up ${setup.number}, more to run`);
  book.heading(setup.title);
  const grid = gridAt(book, rows, book.y);
  book.add(...grid.items);
  book.y += grid.height;
}
