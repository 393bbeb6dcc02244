import { type Item, rect } from '../drawings/list.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { type Rich, STYLE, type Style, textBlock, textHeight } from './typeset.ts';

export interface Column {
  title: string;
  /** mm; the columns with `grow` share what is left. */
  width: number;
  grow?: number;
  anchor?: 'start' | 'end';
  strong?: boolean;
  /** A box to tick and nothing else. */
  tick?: boolean;
}

export interface Row {
  cells: readonly Rich[];
  /** A remark under the row, from the first column that grows to the right edge. */
  note?: Rich;
  /** The first cell is a heading over the whole width, and stays with the row after it. */
  section?: boolean;
  /** Ruled off in ink above: a sum. */
  total?: boolean;
}

const GAP = 2.6;
const PAD = 1.05;

/** A table in the column: ink rules at head and foot, hair rules between, the head again on each page. */
export function table(book: Book, columns: readonly Column[], rows: readonly Row[]): void {
  const widths = widthsOf(columns);
  const at = widths.map((_, i) => A4.left + widths.slice(0, i).reduce((a, b) => a + b + GAP, 0));
  const heights = rows.map(row => rowHeight(book, columns, widths, row));
  const after = (i: number): number => (rows[i]?.section ? (heights[i + 1] ?? 0) : 0);
  book.need(headHeight(book, columns, widths) + (heights[0] ?? 0) + after(0));
  head(book, columns, widths, at);
  rows.forEach((row, i) => {
    if (book.need(heights[i]! + after(i))) head(book, columns, widths, at);
    else if (i > 0 && !rows[i - 1]!.section)
      book.rule(row.total || row.section ? 'edge' : 'thin', !row.total && !row.section);
    drawRow(book, columns, widths, at, row, heights[i]!);
  });
  book.rule('edge');
}

function widthsOf(columns: readonly Column[]): number[] {
  const fixed = columns.reduce((sum, c) => sum + c.width, 0) + GAP * (columns.length - 1);
  const grow = columns.reduce((sum, c) => sum + (c.grow ?? 0), 0);
  const spare = Math.max(0, COLUMN - fixed);
  return columns.map(c => c.width + (grow > 0 ? (spare * (c.grow ?? 0)) / grow : 0));
}

const headHeight = (book: Book, columns: readonly Column[], widths: readonly number[]): number =>
  Math.max(...columns.map((c, i) => textHeight(c.title, widths[i]!, STYLE.head, book.ruler))) + 0.6;

function head(
  book: Book,
  columns: readonly Column[],
  widths: readonly number[],
  at: readonly number[],
): void {
  const height = headHeight(book, columns, widths);
  columns.forEach((column, i) => {
    const own = textHeight(column.title, widths[i]!, STYLE.head, book.ruler);
    book.add(
      ...textBlock(
        column.title,
        [at[i]!, book.y + height - 0.6 - own],
        widths[i]!,
        STYLE.head,
        book.ruler,
        column.anchor,
      ).items,
    );
  });
  book.y += height;
  book.rule('edge');
}

const cellStyle = (column: Column, row: Row): Style =>
  column.strong || row.total ? { ...STYLE.table, strong: true } : STYLE.table;

/** Where remarks begin: under the column that says what a row is. */
const noteColumn = (columns: readonly Column[]): number =>
  Math.max(
    0,
    columns.findIndex(c => c.grow !== undefined),
  );

const noteWidth = (columns: readonly Column[], widths: readonly number[]): number =>
  COLUMN - widths.slice(0, noteColumn(columns)).reduce((sum, w) => sum + w + GAP, 0);

const SECTION: Style = { ...STYLE.small, lead: 1.5 };

function rowHeight(book: Book, columns: readonly Column[], widths: readonly number[], row: Row): number {
  if (row.section) return textHeight(row.cells[0] ?? '', COLUMN, SECTION, book.ruler) + 1.4;
  const cells = columns.map((column, i) =>
    column.tick ? 4 : textHeight(row.cells[i] ?? '', widths[i]!, cellStyle(column, row), book.ruler),
  );
  const note =
    row.note === undefined ? 0 : textHeight(row.note, noteWidth(columns, widths), STYLE.remark, book.ruler);
  return Math.max(...cells) + note + 2 * PAD;
}

function drawRow(
  book: Book,
  columns: readonly Column[],
  widths: readonly number[],
  at: readonly number[],
  row: Row,
  height: number,
): void {
  const items: Item[] = [];
  if (row.section) {
    const block = textBlock(row.cells[0] ?? '', [A4.left, book.y + 1.4], COLUMN, SECTION, book.ruler);
    book.add(...block.items);
    book.y += height;
    return;
  }
  let deepest = 0;
  columns.forEach((column, i) => {
    if (column.tick) {
      if (!row.total) items.push(rect(at[i]!, book.y + PAD + 0.3, 3.6, 3.6, { stroke: 'edge' }));
      return;
    }
    const block = textBlock(
      row.cells[i] ?? '',
      [at[i]!, book.y + PAD],
      widths[i]!,
      cellStyle(column, row),
      book.ruler,
      column.anchor,
    );
    deepest = Math.max(deepest, block.height);
    items.push(...block.items);
  });
  if (row.note !== undefined)
    items.push(
      ...textBlock(
        row.note,
        [at[noteColumn(columns)]!, book.y + PAD + deepest],
        noteWidth(columns, widths),
        STYLE.remark,
        book.ruler,
      ).items,
    );
  book.add(...items);
  book.y += height;
}
