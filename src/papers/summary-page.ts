import { PAPER } from '../drawings/manner.ts';
import { stateMark } from '../drawings/marks.ts';
import { turnedView } from '../drawings/view.ts';
import { boxSize } from '../geometry/box.ts';
import { formatLength } from '../quantities/length.ts';
import { formatHours } from '../quantities/time.ts';
import type { Derived } from '../results/derived.ts';
import { q } from '../results/quantity.ts';
import { type ShowOptions, showDate, showQuantity } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { type Rich, runsOf, STYLE, type Style, shownRuns, textBlock } from './typeset.ts';

/** The first page: what is made, in one picture with its overall sizes, and the few figures that matter. */
export function summaryPage(book: Book, derived: Derived, show: ShowOptions): { contentsAt: number } {
  const { info } = book;
  book.startBare('Summary');
  const who = info.client === undefined ? '' : `, for ${info.client}`;
  book.text(`Commission ${info.number}${who}`, { ...STYLE.table, tone: 'ink-3' });
  book.text(info.title, { ...STYLE.title, size: 9 });
  book.gap(1);
  book.text(`Job pack, made from setting-out ${info.settingOut} on ${showDate(info.date, 'long')}`, {
    ...STYLE.table,
    tone: 'ink-2',
  });
  book.gap(3);
  book.rule('outline');
  book.gap(6);
  if (derived.piece.instances.length > 0) {
    const view = turnedView(derived.piece, { width: COLUMN - 12, height: 118, manner: PAPER, show });
    book.drawing(view, Math.max(0, (COLUMN - view.width) / 2));
  }
  book.gap(8);
  book.rule('edge');
  figureRow(book, figures(derived, show));
  book.rule('edge');
  book.gap(5);
  const contentsAt = book.y;
  firstChecks(book, derived);
  return { contentsAt };
}

/** What the pack holds and where, beside what must be seen first; written when every page is made. */
export function contents(book: Book, top: number): void {
  const x = A4.left + HALF + 10;
  const width = COLUMN - HALF - 10;
  const label = textBlock('In this pack', [x, top], width, STYLE.small, book.ruler);
  book.addToFirst(...label.items);
  const rows = sections(book.contents()).slice(0, MOST_ROWS);
  rows.forEach(({ title, pages }, i) => {
    const y = top + label.height + 0.6 + i * STYLE.table.size * STYLE.table.lead;
    book.addToFirst(
      ...textBlock(title, [x, y], width - 14, STYLE.table, book.ruler).items,
      ...textBlock(pages, [x, y], width, STYLE.table, book.ruler, 'end').items,
    );
  });
}

const HALF = 96;
const MOST_ROWS = 8;

/** Cards in one line: `Set-ups 1 to 12`. */
function sections(list: readonly { section: string; page: number }[]): { title: string; pages: string }[] {
  const cards = list.filter(c => /^Set-up \d+$/.test(c.section));
  const away = list.filter(c => c.section.startsWith('Outwork: '));
  const rows: { title: string; pages: string }[] = [];
  for (const { section, page } of list) {
    if (section === 'Summary' || /^Set-up \d+, /.test(section)) continue;
    if (section.startsWith('Outwork: ')) {
      if (section === away[0]!.section)
        rows.push({
          title: away.length === 1 ? 'Outwork' : `Outwork, ${away.length}`,
          pages: `${page}\u2013${away.at(-1)!.page + 1}`,
        });
      continue;
    }
    if (!cards.some(c => c.section === section)) rows.push({ title: section, pages: `${page}` });
    else if (section === cards[0]!.section)
      rows.push({
        title: cards.length === 1 ? 'Set-up card' : `Set-up cards, ${cards.length}`,
        pages: `${page}${cards.length > 1 ? `\u2013${cards.at(-1)!.page}` : ''}`,
      });
  }
  return rows;
}

interface BigFigure {
  title: string;
  figure: Rich;
  note: string;
}

/** Mass of all parts, with what is not known said. */
function massOf(derived: Derived): { mass: number; unknown: number } {
  let mass = 0;
  let unknown = 0;
  for (const group of derived.piece.groups)
    if (group.mass === null) unknown += group.instances.length;
    else mass += group.mass * group.instances.length;
  return { mass, unknown };
}

function figures(derived: Derived, show: ShowOptions): BigFigure[] {
  const { piece, days, setups } = derived;
  const size = boxSize(piece.bounds);
  const overall = [size.x, size.y, size.z].map(v => formatLength(v, show)).join(' \u00d7 ');
  const { mass, unknown } = massOf(derived);
  const parts = piece.groups.reduce((sum, g) => sum + g.instances.length, 0);
  const ready = days.finish.likely;
  const late = days.deadline && !days.deadline.kept ? `, ${days.deadline.daysLate} days late` : '';
  return [
    {
      title: 'Length, depth, height',
      figure: [
        { text: overall },
        { text: `\u2009${show.unit === 'ft' ? 'in' : show.unit}`, size: 0.74, tone: 'ink-3', strong: false },
      ],
      note: `${parts} parts in ${piece.groups.length} marks`,
    },
    {
      title: 'Weight',
      figure: shownRuns(showQuantity(q('mass', mass), show)),
      note: unknown > 0 ? `and ${unknown} parts not known` : 'of all parts',
    },
    {
      title: 'At the bench',
      figure: formatHours(days.handsOnMinutes.likely),
      note: `${setups.setups.length} set-ups`,
    },
    {
      title: 'Ready',
      figure: ready === '' ? 'not known' : showDate(ready, 'short'),
      note: days.deadline ? `due ${showDate(days.deadline.date, 'short')}${late}` : 'no date asked',
    },
  ];
}

const FIGURE = { face: 'figures', size: 5.6, lead: 1.25, strong: true } as const;

/** As large as lets the figure stand in one line. */
function figureStyle(book: Book, rich: Rich, width: number): Style {
  const em = runsOf(rich, FIGURE).reduce((sum, run) => sum + book.ruler.width(run, FIGURE.face, 1), 0);
  const size = Math.min(FIGURE.size, width / Math.max(em, 0.01));
  return { ...FIGURE, size, lead: (FIGURE.size * FIGURE.lead) / size };
}

function figureRow(book: Book, row: readonly BigFigure[]): void {
  const shares = [1.7, 1, 1, 1];
  const unit = COLUMN / shares.slice(0, row.length).reduce((a, b) => a + b, 0);
  let x = A4.left;
  const top = book.y + 2.2;
  row.forEach((big, i) => {
    const width = shares[i]! * unit;
    const inset = i === 0 ? 0 : 4;
    const at = x + inset;
    book.add(
      ...textBlock(big.title, [at, top], width - inset, STYLE.head, book.ruler).items,
      ...textBlock(
        big.figure,
        [at, top + 4.2],
        width,
        figureStyle(book, big.figure, width - inset - 1),
        book.ruler,
      ).items,
      ...textBlock(big.note, [at, top + 11.4], width - inset, STYLE.quiet, book.ruler).items,
    );
    x += width;
  });
  book.y = top + 17;
}

/** What must be seen before work begins: the worst checks, at most five, and what could not be worked out. */
function firstChecks(book: Book, derived: Derived): void {
  const open = derived.checks.filter(
    c => c.severity === 'stop' || c.severity === 'attend' || c.severity === 'unknown',
  );
  const order = ['stop', 'attend', 'unknown'];
  const worst = [...open].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity));
  if (worst.length === 0 && derived.faults.length === 0) {
    book.text('Nothing stands in the way of this piece.', STYLE.text, { width: HALF });
    return;
  }
  book.label('Before you begin');
  const room = Math.max(1, Math.min(5, Math.floor((book.room - 10) / 5)));
  for (const check of worst.slice(0, room)) {
    book.add(...stateMark(check.severity, [A4.left, book.y + 0.8], 3.3));
    book.text(check.title, STYLE.table, { x: 6, width: HALF - 6 });
  }
  const more = worst.length - room;
  if (more > 0) book.text(`and ${more} more under Checks`, STYLE.remark, { x: 6, width: HALF - 6 });
  if (derived.faults.length > 0)
    book.text(
      `${derived.faults.length} things in the job file could not be worked out; they stand under Checks.`,
      STYLE.remark,
      {
        x: 6,
      },
    );
}
