import { type DisplayList, type Item, line, words } from '../drawings/list.ts';
import { PAPER } from '../drawings/manner.ts';
import { turnedView } from '../drawings/view.ts';
import { formatMoney, wholeMinor } from '../quantities/money.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import { showDate } from '../results/show.ts';
import { A4, Book, COLUMN, type Foot } from './book.ts';
import type { PaperFonts } from './fonts.ts';
import type { PackInfo } from './pack.ts';
import { writePdf } from './pdf.ts';
import { pdfRuler, type Ruler } from './pdf-fonts.ts';
import { type Block, type Rich, STYLE, type Style, textBlock, textHeight } from './typeset.ts';

/** What an offer says beyond the derivation: who writes to whom, in the maker's own words. */
export interface OfferInfo extends PackInfo {
  /** First line large, the rest under it. */
  maker: readonly string[];
  to: readonly string[];
  /** `31, second`. */
  offer: string;
  /** ISO date until which it is open. */
  openUntil: string;
  heading: string;
  /** Paragraphs. */
  make: readonly string[];
  notIncluded: readonly string[];
  /** How it will behave: movement through the year, how it ages. */
  expect: readonly string[];
  /** Lines of the price, minor units; the whole price in one line when empty. */
  lines: readonly { label: string; amount: number }[];
  /** Shares of the price and when they are due; they add up to 1. */
  stages: readonly { label: string; share: number }[];
  /** `Ready Friday 11 December, if ordered by 11 November.` From the day plan when absent. */
  when?: string;
  /** What is said of tax under the price. */
  taxWords: string;
  /** The maker's own terms, as local law has them. */
  terms: string;
}

const GAP = 9;
const HALF = (COLUMN - GAP) / 2;
const RIGHT = A4.width - A4.right;
const PLAIN: Style = { ...STYLE.table, size: 3.5, lead: 1.34 };
const BODY: Style = { ...STYLE.text, size: 3.55, lead: 1.38 };

/** The offer as pages: a letter with a drawing and one price. */
export function offerPages(derived: Derived, info: OfferInfo, ruler: Ruler): DisplayList[] {
  const show: ShowOptions = { unit: info.unit, currency: info.currency };
  const book = new Book(info, ruler);
  book.startBare('Offer');
  letterHead(book, info);
  book.gap(5);
  book.text(info.heading, { ...STYLE.title, size: 6.8 });
  book.gap(3);
  if (derived.piece.instances.length > 0) {
    const view = turnedView(derived.piece, { width: 130, height: 66, manner: PAPER, show });
    book.drawing(view, (COLUMN - view.width) / 2);
  }
  book.gap(4);
  pair(
    book,
    [['What I will make', info.make]],
    [
      ['What is not included', info.notIncluded],
      ['What to expect of it', info.expect],
    ],
  );
  book.gap(4);
  priceTable(book, derived, info);
  book.gap(4);
  stagesAndDate(book, derived, info);
  book.gap(3);
  book.text(info.terms, { ...BODY, size: 3.2, tone: 'ink-2' });
  signatures(book);
  return book.finish(offerFoot(info));
}

const offerFoot =
  (info: OfferInfo): Foot =>
  (_, page, of) => [
    words([A4.left, 288], `Offer ${info.offer}, made from setting-out ${info.settingOut}`, {
      size: 3,
      tone: 'ink-3',
    }),
    words([RIGHT, 288], `${page} of ${of}`, { size: 3, anchor: 'end', tone: 'ink-3' }),
  ];

function letterHead(book: Book, info: OfferInfo): void {
  const top = book.y;
  const [name = '', ...rest] = info.maker;
  const maker = stack(
    book,
    [[name, { ...STYLE.heading, size: 5 }], ...rest.map(t => [t, { ...PLAIN, tone: 'ink-3' }] as const)],
    A4.left,
    56,
  );
  const to = stack(
    book,
    info.to.map(t => [t, PLAIN] as const),
    A4.left + 62,
    46,
  );
  const facts: [string, string][] = [
    ['Offer', info.offer],
    ['Date', showDate(info.date)],
    ['Open until', showDate(info.openUntil)],
    ['Drawing', `setting-out ${info.settingOut}`],
  ];
  facts.forEach(([label, value], i) => {
    const y = top + i * PLAIN.size * PLAIN.lead;
    book.add(
      ...textBlock(label, [A4.left + 112, y], 24, { ...PLAIN, tone: 'ink-3' }, book.ruler).items,
      ...textBlock(value, [A4.left + 130, y], COLUMN - 130, { ...PLAIN, strong: true }, book.ruler, 'end')
        .items,
    );
  });
  book.y = Math.max(maker, to, top + facts.length * PLAIN.size * PLAIN.lead) + 4;
  book.rule('outline');
}

function stack(book: Book, lines: readonly (readonly [string, Style])[], x: number, width: number): number {
  let y = book.y;
  for (const [text, style] of lines) {
    const block = textBlock(text, [x, y], width, style, book.ruler);
    book.add(...block.items);
    y += block.height;
  }
  return y;
}

type Told = readonly [string, readonly Rich[]];

/** Paragraphs under small headings, in two columns side by side; over the whole width where they are long. */
function pair(book: Book, left: readonly Told[], right: readonly Told[]): void {
  const blocks = [told(book, left, A4.left), told(book, right, A4.left + HALF + GAP)];
  const height = Math.max(...blocks.map(b => b.height));
  if (height <= book.room) {
    book.add(...blocks.flatMap(b => b.items));
    book.y += height;
    return;
  }
  for (const [title, paragraphs] of [...left, ...right]) {
    if (paragraphs.length === 0) continue;
    book.label(title);
    for (const paragraph of paragraphs) {
      book.text(paragraph, BODY);
      book.gap(0.8);
    }
    book.gap(2);
  }
}

function told(book: Book, sections: readonly Told[], x: number): Block {
  const items: Item[] = [];
  let y = book.y;
  for (const [title, paragraphs] of sections) {
    if (paragraphs.length === 0) continue;
    if (y > book.y) y += 2.5;
    const head = textBlock(title, [x, y], HALF, STYLE.small, book.ruler);
    items.push(...head.items);
    y += head.height + 0.5;
    for (const paragraph of paragraphs) {
      const block = textBlock(paragraph, [x, y], HALF, BODY, book.ruler);
      items.push(...block.items);
      y += block.height + 0.8;
    }
  }
  return { items, height: y - book.y };
}

function priceTable(book: Book, derived: Derived, info: OfferInfo): void {
  const { price } = derived;
  const money = (minor: number): string => formatMoney(minor, info.currency);
  const lines = info.lines.length > 0 ? info.lines : [{ label: info.title, amount: price.net }];
  const rows = [...lines, ...(price.tax > 0 ? [{ label: 'Tax', amount: price.tax }] : [])];
  book.need(rows.length * 7 + 20);
  book.rule('edge');
  rows.forEach((row, i) => {
    if (i > 0) book.rule('thin', true);
    priceRow(book, row.label, money(row.amount), PLAIN, 1.2);
  });
  book.rule('edge');
  priceRow(book, 'Price', money(price.total), { ...PLAIN, size: 5.3, strong: true }, 1.1);
  book.rule('outline');
  book.gap(1.2);
  book.text(info.taxWords, { ...BODY, size: 3.3, tone: 'ink-2' });
}

function priceRow(book: Book, label: string, amount: string, style: Style, pad: number): void {
  book.y += pad;
  const block = textBlock(label, [A4.left, book.y], COLUMN - 40, style, book.ruler);
  book.add(...block.items, ...textBlock(amount, [RIGHT - 50, book.y], 50, style, book.ruler, 'end').items);
  book.y += block.height + pad;
}

/** Shares as whole minor units that add up to the price: the last takes what rounding leaves. */
export function stageAmounts(total: number, shares: readonly number[]): number[] {
  const amounts = shares.slice(0, -1).map(share => wholeMinor(total * share));
  return shares.length === 0 ? [] : [...amounts, total - amounts.reduce((a, b) => a + b, 0)];
}

function stagesAndDate(book: Book, derived: Derived, info: OfferInfo): void {
  const when = info.when ?? `Ready ${showDate(derived.days.finish.likely, 'long')}.`;
  const amounts = stageAmounts(
    derived.price.total,
    info.stages.map(s => s.share),
  );
  const step = 5.6;
  const height = Math.max(8 + info.stages.length * step, 8 + textHeight(when, HALF, BODY, book.ruler));
  book.need(height);
  const top = book.y;
  const paid = textBlock(
    info.stages.length > 1 ? `Paid in ${info.stages.length}` : 'Paid',
    [A4.left, top],
    HALF,
    STYLE.small,
    book.ruler,
  );
  book.add(...paid.items);
  info.stages.forEach((stage, i) => {
    const y = top + paid.height + 0.6 + i * step;
    const share = `${Math.round(stage.share * 100)}\u2009%`;
    book.add(
      ...textBlock(stage.label, [A4.left, y], HALF - 34, PLAIN, book.ruler).items,
      ...textBlock(share, [A4.left + HALF - 40, y], 14, { ...PLAIN, tone: 'ink-3' }, book.ruler, 'end').items,
      ...textBlock(
        formatMoney(amounts[i]!, info.currency),
        [A4.left + HALF - 26, y],
        26,
        PLAIN,
        book.ruler,
        'end',
      ).items,
      line([A4.left, y + step - 0.6], [A4.left + HALF, y + step - 0.6], { stroke: 'thin', tone: 'rule' }),
    );
  });
  const date = told(book, [['When', [when]]], A4.left + HALF + GAP);
  book.add(...date.items);
  book.y = top + height;
}

function signatures(book: Book): void {
  book.need(20);
  const y = Math.max(book.y + 14, 270);
  const widths = [0.36, 0.28, 0.36].map(s => s * (COLUMN - 2 * GAP));
  let x = A4.left;
  ['Ordered by, date', 'Sample chosen', 'For the workshop'].forEach((label, i) => {
    book.add(
      line([x, y], [x + widths[i]!, y], { stroke: 'edge' }),
      ...textBlock(label, [x, y + 0.8], widths[i]!, { ...STYLE.head, size: 3.1 }, book.ruler).items,
    );
    x += widths[i]! + GAP;
  });
  book.y = y + 6;
}

/** The offer letter as the bytes of a PDF; the same input gives the same bytes. */
export function offerLetter(derived: Derived, info: OfferInfo, fonts: PaperFonts): Promise<Uint8Array> {
  const ruler = pdfRuler(fonts);
  return writePdf(
    offerPages(derived, info, ruler),
    fonts,
    {
      title: `Offer ${info.offer}`,
      subject: info.heading,
      date: info.date,
      programVersion: info.programVersion,
      ...(info.compress === undefined ? {} : { compress: info.compress }),
    },
    ruler,
  );
}
