import { type DisplayList, type Item, line, place, rect, type Stroke, words } from '../drawings/list.ts';
import { list, PAPER } from '../drawings/manner.ts';
import { showDate } from '../results/show.ts';
import type { Ruler } from './pdf-fonts.ts';
import { type Rich, STYLE, type Style, textBlock, textHeight } from './typeset.ts';

/** A4, with room at the left for the file. */
export const A4 = { width: 210, height: 297, left: 24, right: 18, top: 13, foot: 20 };
export const COLUMN = A4.width - A4.left - A4.right;
const RIGHT = A4.width - A4.right;
const BOTTOM = A4.height - A4.foot;

export interface PaperInfo {
  title: string;
  number: string;
  /** The client as he is to be named on papers; left out of what stays in the shop. */
  client?: string;
  /** Number of the setting-out the paper is made from. */
  settingOut: number;
  /** ISO date on which it is made. */
  date: string;
  programVersion: string;
}

export const SAFETY_LINE =
  'An aid, not an instruction to work unsafely: your machine\u2019s own rules and local codes come first.';

interface Page {
  section: string;
  items: Item[];
}

/** Pages under the hand: a cursor that runs down the column and turns the page when it is full. */
export class Book {
  readonly ruler: Ruler;
  readonly info: PaperInfo;
  y = 0;
  private readonly pages: Page[] = [];

  constructor(info: PaperInfo, ruler: Ruler) {
    this.info = info;
    this.ruler = ruler;
  }

  /** Begins a page with the running head. */
  startPage(section: string): void {
    const items: Item[] = [
      words([A4.left, A4.top + 4.6], this.info.title, { size: 4.6, face: 'words', strong: true }),
      words([RIGHT, A4.top + 4.6], section, { size: 3.5, anchor: 'end', strong: true }),
      line([A4.left, A4.top + 7.5], [RIGHT, A4.top + 7.5], { stroke: 'outline' }),
    ];
    this.pages.push({ section, items });
    this.y = A4.top + 12;
  }

  /** Begins a page without a head: the page has its own. */
  startBare(section: string): void {
    this.pages.push({ section, items: [] });
    this.y = A4.top;
  }

  get pageNumber(): number {
    return this.pages.length;
  }

  get room(): number {
    return BOTTOM - this.y;
  }

  /** Turns the page unless there is room for `height`. */
  need(height: number): boolean {
    const fresh = this.y <= A4.top + 12.01;
    if (height <= this.room || fresh) return false;
    this.startPage(this.pages.at(-1)?.section ?? '');
    return true;
  }

  add(...items: Item[]): void {
    this.pages.at(-1)!.items.push(...items);
  }

  gap(height: number): void {
    this.y += height;
  }

  rule(stroke: Stroke = 'edge', quiet = false): void {
    this.add(
      line([A4.left, this.y], [RIGHT, this.y], { stroke, ...(quiet ? { tone: 'rule' as const } : {}) }),
    );
  }

  /** A paragraph over the column, or over a part of it, turning the page first if it does not fit. */
  text(rich: Rich, style: Style, options: { x?: number; width?: number; keep?: number } = {}): void {
    const width = options.width ?? COLUMN - (options.x ?? 0);
    this.need(textHeight(rich, width, style, this.ruler) + (options.keep ?? 0));
    const block = textBlock(rich, [A4.left + (options.x ?? 0), this.y], width, style, this.ruler);
    this.add(...block.items);
    this.y += block.height;
  }

  heading(rich: Rich, keep = 30): void {
    this.text(rich, STYLE.heading, { keep });
    this.gap(1.5);
  }

  /** A small heading in the sans of tables. */
  label(rich: Rich, keep = 14): void {
    this.text(rich, STYLE.small, { keep });
    this.gap(0.6);
  }

  /** First page of each section, in order: what a list of contents needs. */
  contents(): { section: string; page: number }[] {
    const seen = new Set<string>();
    return this.pages.flatMap(({ section }, i) => {
      if (seen.has(section)) return [];
      seen.add(section);
      return [{ section, page: i + 1 }];
    });
  }

  /** Adds to the first page when the rest is made. */
  addToFirst(...items: Item[]): void {
    this.pages[0]!.items.push(...items);
  }

  /** Places a drawing at the cursor; `x` from the left margin. */
  drawing(drawn: DisplayList, x = 0): void {
    this.need(drawn.height);
    this.add(...place(drawn.items, A4.left + x, this.y));
    this.y += drawn.height;
  }

  /** A box to tick, its top left at (x, y) of the page. */
  tick(x: number, y: number, side = 3.6): void {
    this.add(rect(x, y, side, side, { stroke: 'edge' }));
  }

  /** The finished pages, each with its foot. */
  finish(foot: Foot = workshopFoot): DisplayList[] {
    return this.pages.map((page, i) =>
      list(PAPER, page.section, A4.width, A4.height, [
        ...page.items,
        ...foot(this.info, i + 1, this.pages.length),
      ]),
    );
  }
}

/** What stands at the foot of page `page` of `of`. */
export type Foot = (info: PaperInfo, page: number, of: number) => Item[];

/** Foot of a shop paper: what it was made from, the safety line, page x of y. */
const workshopFoot: Foot = ({ settingOut, date, programVersion, number }, page, of) => {
  const made = `Commission ${number}, made from setting-out ${settingOut}, ${showDate(date)}, Scantling ${programVersion}`;
  return [
    line([A4.left, 283], [RIGHT, 283], { stroke: 'thin' }),
    words([A4.left, 286.8], made, { size: 3, tone: 'ink-3' }),
    words([RIGHT, 286.8], `${page} of ${of}`, { size: 3, anchor: 'end', tone: 'ink-3' }),
    words([A4.left, 290.6], SAFETY_LINE, { size: 3, tone: 'ink-3' }),
  ];
};
