import type { Face, Item, TextRun, Tone } from '../drawings/list.ts';
import { words } from '../drawings/list.ts';
import type { Say } from '../results/message.ts';
import { fillSay, type Shown, type ShowOptions, THIN } from '../results/show.ts';
import { closeFractions } from './fonts.ts';
import type { Ruler } from './pdf-fonts.ts';

export type Rich = string | readonly TextRun[];

export interface Style {
  face: Face;
  /** mm */
  size: number;
  /** Line height as a factor of the size. */
  lead: number;
  strong?: boolean;
  tone?: Tone;
}

/** Type on paper, sizes in mm (1 pt is 0.353 mm). */
export const STYLE = {
  title: { face: 'words', size: 7.4, lead: 1.15, strong: true },
  heading: { face: 'words', size: 5.2, lead: 1.2, strong: true },
  small: { face: 'figures', size: 3.6, lead: 1.25, strong: true },
  table: { face: 'figures', size: 3.5, lead: 1.3 },
  head: { face: 'figures', size: 3.1, lead: 1.3, tone: 'ink-3' },
  text: { face: 'words', size: 3.7, lead: 1.36 },
  say: { face: 'words', size: 4, lead: 1.3, strong: true },
  quiet: { face: 'figures', size: 3.2, lead: 1.35, tone: 'ink-3' },
  bench: { face: 'figures', size: 4, lead: 1.3 },
  remark: { face: 'remark', size: 3.5, lead: 1.3, tone: 'ink-2' },
} as const satisfies Record<string, Style>;

export const runsOf = (rich: Rich, style: Style): TextRun[] =>
  (typeof rich === 'string' ? [{ text: rich }] : rich).map(run => ({
    ...(style.strong ? { strong: true } : {}),
    ...(style.tone ? { tone: style.tone } : {}),
    ...run,
    // Two spaces are a gap that is meant: one of them must not be lost where lines are broken.
    text: closeFractions(run.text).replaceAll('  ', '\u00a0 '),
  }));

/** A figure set strong with its unit small after a thin gap; degrees and per cent keep their size. */
export function shownRuns(shown: Shown, strong = true): TextRun[] {
  if (shown.unit === '') return [{ text: shown.figure, strong }];
  if (shown.close) {
    const gap = shown.unit === '\u00b0' ? '' : THIN;
    return [{ text: shown.figure + gap + shown.unit, strong }];
  }
  return [
    { text: shown.figure, strong },
    { text: THIN + shown.unit, size: 0.74, tone: 'ink-3', strong: false },
  ];
}

/** A sentence with its figures strong; names that a sentence is filled with stay plain. */
export const sayRuns = (message: Say, show: ShowOptions): TextRun[] =>
  fillSay(message, show).flatMap(run =>
    'words' in run ? [{ text: run.words }] : shownRuns(run.figure, message.values[run.name]?.kind !== 'text'),
  );

interface Word {
  runs: TextRun[];
  width: number;
}

/** Breaks text into lines of at most `width`; a word wider than a line is broken where it must be. */
export function wrap(rich: Rich, width: number, style: Style, ruler: Ruler): TextRun[][] {
  const measure = (run: TextRun): number => ruler.width(run, style.face, style.size);
  const lines: TextRun[][] = [];
  for (const paragraph of paragraphs(runsOf(rich, style))) {
    let open: TextRun[] = [];
    let used = 0;
    for (const word of wordsOf(paragraph, measure).flatMap(w => fitWord(w, width, measure))) {
      const space = open.length === 0 ? 0 : measure({ ...open.at(-1)!, text: ' ' });
      if (open.length > 0 && used + space + word.width > width + 1e-6) {
        lines.push(open);
        open = [];
        used = 0;
      }
      if (open.length > 0) {
        open.push({ ...open.at(-1)!, text: ' ' });
        used += space;
      }
      open.push(...word.runs);
      used += word.width;
    }
    lines.push(open);
  }
  return lines.map(joinRuns);
}

function paragraphs(runs: readonly TextRun[]): TextRun[][] {
  const all: TextRun[][] = [[]];
  for (const run of runs)
    run.text.split('\n').forEach((text, i) => {
      if (i > 0) all.push([]);
      if (text !== '') all.at(-1)!.push({ ...run, text });
    });
  return all;
}

function wordsOf(runs: readonly TextRun[], measure: (run: TextRun) => number): Word[] {
  const all: Word[] = [];
  let open: TextRun[] = [];
  const close = (): void => {
    if (open.length > 0) all.push({ runs: open, width: open.reduce((sum, r) => sum + measure(r), 0) });
    open = [];
  };
  for (const run of runs)
    run.text.split(' ').forEach((text, i) => {
      if (i > 0) close();
      if (text !== '') open.push({ ...run, text });
    });
  close();
  return all;
}

function fitWord(word: Word, width: number, measure: (run: TextRun) => number): Word[] {
  if (word.width <= width) return [word];
  const pieces: Word[] = [];
  for (const run of word.runs)
    for (const c of run.text) {
      const piece = { ...run, text: c };
      const wide = measure(piece);
      const last = pieces.at(-1);
      if (last && last.width + wide <= width) {
        last.runs.push(piece);
        last.width += wide;
      } else pieces.push({ runs: [piece], width: wide });
    }
  return pieces.map(p => ({ runs: joinRuns(p.runs), width: p.width }));
}

const sameDress = (a: TextRun, b: TextRun): boolean =>
  a.strong === b.strong && a.tone === b.tone && a.size === b.size;

function joinRuns(runs: readonly TextRun[]): TextRun[] {
  const joined: TextRun[] = [];
  for (const run of runs) {
    const last = joined.at(-1);
    if (last && sameDress(last, run)) joined[joined.length - 1] = { ...last, text: last.text + run.text };
    else joined.push(run);
  }
  return joined;
}

export interface Block {
  items: Item[];
  height: number;
}

/** Text in lines from the top left (or right, or middle) of a column. */
export function textBlock(
  rich: Rich,
  at: readonly [number, number],
  width: number,
  style: Style,
  ruler: Ruler,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Block {
  const lines = wrap(rich, width, style, ruler);
  const step = style.size * style.lead;
  const x = anchor === 'start' ? at[0] : anchor === 'end' ? at[0] + width : at[0] + width / 2;
  const items = lines.flatMap((runs, i): Item[] =>
    runs.length === 0
      ? []
      : [
          words([x, at[1] + i * step + step / 2 + style.size * 0.33], runs, {
            size: style.size,
            face: style.face,
            anchor,
          }),
        ],
  );
  return { items, height: lines.length * step };
}

export const textHeight = (rich: Rich, width: number, style: Style, ruler: Ruler): number =>
  wrap(rich, width, style, ruler).length * style.size * style.lead;
