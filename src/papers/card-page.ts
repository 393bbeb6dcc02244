import { cardDrawing } from '../drawings/card.ts';
import { type Item, line, place, rect, words } from '../drawings/list.ts';
import { type Manner, PAPER } from '../drawings/manner.ts';
import { stateMark } from '../drawings/marks.ts';
import type { Derived } from '../results/derived.ts';
import type { Run, SetUp } from '../results/setups.ts';
import { type Shown, type ShowOptions, showQuantity, showSize } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { capital, FACE_WORD, instanceMarks, settingWord } from './names.ts';
import { type Block, type Rich, STYLE, shownRuns, textBlock } from './typeset.ts';

const MANNER: Manner = { ...PAPER, text: 3.7, rod: 8.5 };
const RIGHT = A4.width - A4.right;
const FOOT = 279;
const LEFT_WIDE = 108;
const SIDE = { x: A4.left + LEFT_WIDE + 8, width: COLUMN - LEFT_WIDE - 8 };
/** Rows to tick that the side column takes. */
const SIDE_TICKS = 6;

/** Machine figures keep their decimal: 45.0 tells more than 45. */
export const atMachine = (show: ShowOptions): ShowOptions => ({
  ...show,
  ...(show.unit === 'mm' ? { decimals: 1 } : {}),
  trim: false,
});

/** One set-up, one page: three large figures, the drawing, what to run, cautions and the trial cut. */
export function cardPage(book: Book, setup: SetUp, derived: Derived, show: ShowOptions): void {
  book.startBare(`Set-up ${setup.number}`);
  header(book, setup, derived.setups.setups.length);
  bigFigures(book, setup, show);
  const trial = trialBlock(book, setup, show);
  const warn = cautionBlock(book, setup);
  const rows = tickRows(setup, instanceMarks(derived.piece));
  const low = FOOT - trial.height - warn.height;
  const grid = rows.length > SIDE_TICKS ? tickGrid(book, rows, low - book.y - 60) : undefined;
  const top = book.y + 4;
  const room = low - top - (grid?.height ?? 0);
  const side = sideColumn(book, setup, rows, top, show);
  const drawing = cardDrawing(setup.drawing, {
    width: LEFT_WIDE,
    height: Math.min(122, room - 9),
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
  book.add(...place(drawing.items, A4.left, top), ...caption.items, ...side.items);
  let y = Math.max(top + drawing.height + caption.height + 3, top + side.height + 3);
  if (grid) {
    book.add(...place(grid.items, 0, Math.min(y, low - grid.height)));
    y += grid.height;
  }
  book.add(...place(warn.items, 0, low), ...place(trial.items, 0, low + warn.height));
  for (const rest of grid?.rest ?? []) restPage(book, setup, rest);
}

function header(book: Book, setup: SetUp, of: number): void {
  const { info } = book;
  const base = A4.top + 11;
  const last = ` of ${of}`;
  const number = `${setup.number}`;
  const lastWide = book.ruler.width({ text: last }, 'figures', 3.9);
  const numberWide = book.ruler.width({ text: number, strong: true }, 'big', 12);
  book.add(
    words([RIGHT, base], last, { size: 3.9, anchor: 'end' }),
    words([RIGHT - lastWide, base], number, { size: 12, face: 'big', anchor: 'end', strong: true }),
    words([RIGHT - lastWide - numberWide - 1.5, base], 'Set-up', { size: 3.9, anchor: 'end' }),
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

interface Big {
  title: string;
  figure: Shown;
  how: string;
}

function bigFigures(book: Book, setup: SetUp, show: ShowOptions): void {
  const fine = atMachine(show);
  const all: Big[] = setup.settings.map(s => ({
    title: settingWord(s) + (s.to === undefined ? '' : `, to the ${s.to}`),
    figure: showQuantity(s.value, fine),
    how: s.how,
  }));
  const wanted: Big | undefined = setup.wanted && {
    title: `${capital(setup.wanted.label)} wanted`,
    figure: showQuantity(setup.wanted.value, fine),
    how: setup.wanted.how,
  };
  const large = wanted ? [...all.slice(0, 2), wanted] : all.slice(0, 3);
  const rest = all.slice(wanted ? 2 : 3);
  const width = COLUMN / 3;
  const top = book.y + 2.5;
  let deepest = 0;
  large.forEach((big, i) => {
    const x = A4.left + i * width + (i === 0 ? 0 : 4.5);
    const inner = width - 6;
    const title = textBlock(
      big.title,
      [x, top],
      inner,
      { ...STYLE.bench, size: 3.7, tone: 'ink-2' },
      book.ruler,
    );
    const figure = largeFigure(book, big.figure, [x, top + title.height + 14.2], inner);
    const how = textBlock(
      big.how,
      [x, top + title.height + 16.6],
      inner,
      { ...STYLE.table, tone: 'ink-2' },
      book.ruler,
    );
    book.add(...title.items, ...figure, ...how.items);
    deepest = Math.max(deepest, title.height + 16.6 + how.height);
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
  return `Seen ${seen}, ${size}${lay}.`;
}

interface TickRow {
  label: string;
  passes: readonly string[];
}

function tickRows(setup: SetUp, marks: ReadonlyMap<string, string>): TickRow[] {
  const name = (run: Run): string => {
    const mark = marks.get(run.instance) ?? run.mark;
    return run.end === undefined ? mark : `${mark}, ${FACE_WORD[run.end]}`;
  };
  // Several cuts of one kind at one end of a part are one row: the machine stands still between them.
  const rows = new Map<string, { passes: readonly string[]; count: number }>();
  for (const run of setup.runs) {
    const key = name(run);
    const row = rows.get(key);
    if (row) row.count++;
    else rows.set(key, { passes: run.passes, count: 1 });
  }
  return [...rows].map(([label, row]) => ({
    label: row.count > 1 ? `${label}, ${row.count} cuts` : label,
    passes: row.passes,
  }));
}

const list = (
  book: Book,
  lines: readonly Rich[],
  at: readonly [number, number],
  width: number,
  numbered = false,
): Block => {
  const items: Item[] = [];
  let y = at[1];
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
  return { items, height: y - at[1] };
};

function sideColumn(
  book: Book,
  setup: SetUp,
  rows: readonly TickRow[],
  top: number,
  show: ShowOptions,
): Block {
  const items: Item[] = [];
  let y = top;
  const put = (title: string, lines: readonly Rich[], numbered = false): void => {
    if (lines.length === 0) return;
    const head = textBlock(title, [SIDE.x, y], SIDE.width, STYLE.small, book.ruler);
    y += head.height + 0.8;
    const body = list(book, lines, [SIDE.x, y], SIDE.width, numbered);
    items.push(...head.items, ...body.items);
    y += body.height + 2.6;
  };
  const test = setup.testPiece;
  put('Before', [
    ...setup.before,
    ...(test ? [`Test piece ${showSize(test, show)} is cut with the rest.`] : []),
  ]);
  put('Run', runLines(setup), true);
  if (setup.kerfSide) put('Kerf', [setup.kerfSide]);
  if (rows.length <= SIDE_TICKS) {
    const ticks = tickTable(book, rows, [SIDE.x, y], SIDE.width);
    items.push(...ticks.items);
    y += ticks.height + 2.6;
  }
  put('After', setup.after);
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
    lines.push(
      hand
        ? `${word}from the ${FACE_WORD[lay.entry]}`
        : `${word}${FACE_WORD[lay.down]} down, ${FACE_WORD[lay.against]} to ${at}`,
    );
  }
  const ends = new Set(setup.runs.map(r => r.end).filter(e => e !== undefined));
  if (ends.size > 1) lines.push('Turn end for end, again');
  return lines.map(capital);
}

/** Rows to tick with the passes as columns. */
function tickTable(
  book: Book,
  rows: readonly TickRow[],
  at: readonly [number, number],
  width: number,
): Block {
  const passes = longest(rows);
  const step = 6.4;
  const column = Math.min(13, (width - 20) / Math.max(1, passes.length));
  const items: Item[] = [];
  const x = (i: number): number => at[0] + width - column * (passes.length - i) + column / 2;
  passes.forEach((pass, i) => {
    items.push(
      ...textBlock(
        pass,
        [x(i) - column / 2, at[1]],
        column,
        { ...STYLE.head, size: 2.9 },
        book.ruler,
        'middle',
      ).items,
    );
  });
  const head = 4;
  rows.forEach((row, r) => {
    const y = at[1] + head + r * step;
    items.push(
      line([at[0], y], [at[0] + width, y], { stroke: 'thin', tone: 'rule' }),
      ...textBlock(
        row.label,
        [at[0], y + 0.8],
        width - column * passes.length,
        { ...STYLE.bench, size: 3.6 },
        book.ruler,
      ).items,
      ...row.passes.map((_, i) => rect(x(i) - 2.1, y + 1.1, 4.2, 4.2, { stroke: 'edge' })),
    );
  });
  return { items, height: head + rows.length * step };
}

const longest = (rows: readonly TickRow[]): readonly string[] =>
  rows.reduce<readonly string[]>((best, row) => (row.passes.length > best.length ? row.passes : best), []);

/** More rows than the side takes: a grid over the page's width, and pages of their own when there are many. */
function tickGrid(book: Book, rows: readonly TickRow[], room: number): Block & { rest: TickRow[][] } {
  const { columns, step, perPage } = gridShape(rows);
  const fit = Math.max(1, Math.floor((Math.min(room, 64) - 8) / step)) * columns;
  const here = rows.slice(0, fit);
  const rest: TickRow[][] = [];
  for (let i = fit; i < rows.length; i += perPage) rest.push(rows.slice(i, i + perPage));
  const grid = gridItems(book, here, 0);
  return { ...grid, rest };
}

function gridShape(rows: readonly TickRow[]): { columns: number; step: number; perPage: number } {
  const passes = longest(rows).length;
  const columns = passes > 3 ? 2 : passes > 1 ? 3 : 4;
  return { columns, step: 6.4, perPage: columns * 32 };
}

function gridItems(book: Book, rows: readonly TickRow[], top: number): Block {
  const { columns } = gridShape(rows);
  const down = Math.ceil(rows.length / columns);
  const width = (COLUMN - (columns - 1) * 6) / columns;
  const blocks = Array.from({ length: columns }, (_, c) =>
    tickTable(book, rows.slice(c * down, (c + 1) * down), [A4.left + c * (width + 6), top + 1], width),
  ).filter((_, c) => rows.length > c * down);
  return { items: blocks.flatMap(b => b.items), height: Math.max(0, ...blocks.map(b => b.height)) + 3 };
}

function restPage(book: Book, setup: SetUp, rows: readonly TickRow[]): void {
  book.startPage(`Set-up ${setup.number}, more to run`);
  book.heading(setup.title);
  const grid = gridItems(book, rows, book.y);
  book.add(...grid.items);
  book.y += grid.height;
}

/** Cautions in three columns under a thick rule; items stand as if the block began at 0. */
function cautionBlock(book: Book, setup: SetUp): Block {
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
function trialBlock(book: Book, setup: SetUp, show: ShowOptions): Block {
  const { correction, wanted } = setup;
  if (!correction || !wanted) return { items: [], height: 0 };
  const figure = showQuantity(wanted.value, atMachine(show));
  const from = setup.settings[0]?.name ?? 'fence';
  const titles = [
    `${capital(wanted.label)} measured`,
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
  for (const r of [0, 1])
    items.push(
      words([A4.left + widths[0]! + 2, top + r * row + 5.8], shownRuns({ ...figure, unit: '' }), {
        size: 4.6,
        strong: true,
      }),
    );
  const note = textBlock(
    `${correction.tooBig} ${correction.tooSmall}`,
    [A4.left, top + 2 * row + 1.6],
    COLUMN,
    { ...STYLE.bench, size: 3.7 },
    book.ruler,
  );
  return { items: [...items, ...note.items], height: top + 2 * row + note.height + 4 };
}
