import { type Item, line, rect } from '../drawings/list.ts';
import type { Run, SetUp } from '../results/setups.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { FACE_WORD } from './names.ts';
import { type Block, STYLE, textBlock, textHeight } from './typeset.ts';

/** One line to tick: a part (or its end) with a box for each way it is laid. */
export interface TickRow {
  label: string;
  boxes: readonly string[];
}

const STEP = 6.4;
const BOX = 4.2;
const HEAD = { ...STYLE.head, size: 2.9, lead: 1.2 };
const LABEL = { ...STYLE.bench, size: 3.6 };
/** Least width of a column of boxes, and of the name before them. */
const BOX_WIDE = 13;
const NAME_WIDE = 22;
const GAP = 6;

/** The runs as rows; several cuts of one kind at one place are one row, several passes of one lay one box. */
export function tickRows(setup: SetUp, marks: ReadonlyMap<string, string>): TickRow[] {
  const name = (run: Run): string => {
    const mark = marks.get(run.instance) ?? run.mark;
    return run.end === undefined ? mark : `${mark}, ${FACE_WORD[run.end]}`;
  };
  const rows = new Map<string, { boxes: readonly string[]; count: number }>();
  for (const run of setup.runs) {
    const row = rows.get(name(run));
    if (row) row.count++;
    else rows.set(name(run), { boxes: boxesOf(run.passes), count: 1 });
  }
  return [...rows].map(([label, row]) => ({
    label: row.count > 1 ? `${label}, ${row.count} cuts` : label,
    boxes: row.boxes,
  }));
}

/** `face`, `face, pass 2`, `face, pass 3` become one box `face, 3 passes`. */
export function boxesOf(passes: readonly string[]): string[] {
  const boxes: { lay: string; count: number }[] = [];
  for (const pass of passes) {
    const lay = /^(.*), pass \d+$/.exec(pass)?.[1];
    const last = boxes.at(-1);
    if (lay !== undefined && last?.lay === lay) last.count++;
    else boxes.push({ lay: lay ?? pass, count: 1 });
  }
  return boxes.map(b => (b.count > 1 ? `${b.lay}, ${b.count} passes` : b.lay));
}

const longest = (rows: readonly TickRow[]): readonly string[] =>
  rows.reduce<readonly string[]>((best, row) => (row.boxes.length > best.length ? row.boxes : best), []);

/** Can the rows stand in a column of this width? */
export const fitsColumn = (rows: readonly TickRow[], width: number, most: number): boolean =>
  rows.length <= most && NAME_WIDE + longest(rows).length * BOX_WIDE <= width;

/** Rows to tick with the lays as columns. */
export function tickTable(
  book: Book,
  rows: readonly TickRow[],
  at: readonly [number, number],
  width: number,
): Block {
  const boxes = longest(rows);
  const column = Math.min(18, Math.max(BOX_WIDE * 0.7, (width - NAME_WIDE) / Math.max(1, boxes.length)));
  const x = (i: number): number => at[0] + width - column * (boxes.length - i) + column / 2;
  const head = Math.max(0, ...boxes.map(b => textHeight(b, column - 1, HEAD, book.ruler))) + 0.8;
  const items: Item[] = boxes.flatMap((box, i) => {
    const own = textHeight(box, column - 1, HEAD, book.ruler);
    return textBlock(
      box,
      [x(i) - column / 2 + 0.5, at[1] + head - own - 0.8],
      column - 1,
      HEAD,
      book.ruler,
      'middle',
    ).items;
  });
  rows.forEach((row, r) => {
    const y = at[1] + head + r * STEP;
    items.push(
      line([at[0], y], [at[0] + width, y], { stroke: 'thin', tone: 'rule' }),
      ...textBlock(row.label, [at[0], y + 0.8], width - column * boxes.length, LABEL, book.ruler).items,
      ...row.boxes.map((_, i) => rect(x(i) - BOX / 2, y + 1.1, BOX, BOX, { stroke: 'edge' })),
    );
  });
  return { items, height: head + rows.length * STEP };
}

const columnsOf = (rows: readonly TickRow[]): number =>
  Math.max(1, Math.min(4, Math.floor((COLUMN + GAP) / (NAME_WIDE + longest(rows).length * BOX_WIDE + GAP))));

/** Rows over the page's width in several columns; what does not fit `room` is given back, page by page. */
export function tickGrid(book: Book, rows: readonly TickRow[], room: number): Block & { rest: TickRow[][] } {
  const columns = columnsOf(rows);
  const fit = Math.max(1, Math.floor((room - 10) / STEP)) * columns;
  const perPage = columns * 34;
  const rest: TickRow[][] = [];
  for (let i = fit; i < rows.length; i += perPage) rest.push(rows.slice(i, i + perPage));
  return { ...gridAt(book, rows.slice(0, fit), 0), rest };
}

/** A grid with its top at `top` of the page. */
export function gridAt(book: Book, rows: readonly TickRow[], top: number): Block {
  const columns = columnsOf(rows);
  const down = Math.ceil(rows.length / columns);
  const width = (COLUMN - (columns - 1) * GAP) / columns;
  const blocks = Array.from({ length: columns }, (_, c) => rows.slice(c * down, (c + 1) * down))
    .filter(part => part.length > 0)
    .map((part, c) => tickTable(book, part, [A4.left + c * (width + GAP), top + 1], width));
  return { items: blocks.flatMap(b => b.items), height: Math.max(0, ...blocks.map(b => b.height)) + 3 };
}
