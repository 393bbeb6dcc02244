import type { DayPlan, LocalTime } from '../results/days.ts';
import { dayNumber, minutesOf } from './clock.ts';
import { group, type Item, type Point, polygon, polyline, words } from './list.ts';
import { type Manner, textWidth } from './manner.ts';

export interface FortnightJob {
  name: string;
  /** `ready Fri 11 Dec`, or why it is not promised. */
  ready: string;
  promised: boolean;
  plan: DayPlan;
  /** A short word for each operation id, written in or under its block. */
  words: Readonly<Record<string, string>>;
}

export interface FortnightOptions {
  width: number;
  manner: Manner;
  /** ISO date of the first day. */
  from: string;
  /** Days shown, 14 unless said. */
  days?: number;
  now?: LocalTime;
  done?: ReadonlySet<string>;
  /** One job on its own sheet: no columns for its name and date. */
  bare?: boolean;
}

/** Days on the page. */
export interface Scale {
  /** Page place of a moment. The working day fills its column; the night has no width. */
  x: (time: LocalTime) => number;
  edges: number[];
  first: number;
  idle: boolean[];
}

/** Does a moment fall in the days shown? */
export const inside = (time: LocalTime, scale: Scale, count: number): boolean => {
  const i = dayNumber(time) - scale.first;
  return i >= 0 && i < count;
};

export interface Span {
  from: number;
  to: number;
}

/** The widest stretch of a-b that no busy span covers; `busy` in ascending order. */
export function widestGap(a: number, b: number, busy: readonly Span[]): Span {
  let best: Span = { from: a, to: a };
  let from = a;
  for (const span of [...busy, { from: b, to: b }]) {
    const to = Math.min(span.from, b);
    if (to - from > best.to - best.from) best = { from, to };
    from = Math.max(from, span.to);
  }
  return best;
}

interface Block {
  operation: string;
  start: LocalTime;
  end: LocalTime;
}

/** Work that follows at once in the same operation is one block. */
export function blocks(plan: DayPlan): Block[] {
  const all: Block[] = [];
  for (const entry of plan.days.flatMap(d => d.entries)) {
    const last = all.at(-1);
    const joins =
      last &&
      last.operation === entry.operation &&
      dayNumber(last.end) === dayNumber(entry.start) &&
      minutesOf(entry.start) - minutesOf(last.end) <= 90;
    if (joins) last.end = entry.end;
    else all.push({ operation: entry.operation, start: entry.start, end: entry.end });
  }
  return all;
}

interface Bar extends Block {
  from: number;
  to: number;
  /** Operations that share the bar, being too short to draw apart. */
  more: number;
}

/** Blocks as bars on the page; what is too narrow to be told apart runs together. */
function barsOf(plan: DayPlan, scale: Scale, count: number, px: number): Bar[] {
  const bars: Bar[] = [];
  for (const block of blocks(plan)) {
    if (!inside(block.start, scale, count)) continue;
    const from = scale.x(block.start);
    const to = Math.max(scale.x(block.end), from + 1.5 * px);
    const last = bars.at(-1);
    const narrow = (bar: { from: number; to: number }): boolean => bar.to - bar.from < 7 * px;
    if (
      last &&
      from - last.to < 2 * px &&
      dayNumber(last.end) === dayNumber(block.start) &&
      (narrow(last) || last.more > 0 || narrow({ from, to }))
    ) {
      last.to = to;
      last.end = block.end;
      last.more++;
    } else bars.push({ ...block, from, to, more: 0 });
  }
  return bars;
}

/** Work as bars with a word in each or under it. */
export function workBlocks(
  job: FortnightJob,
  scale: Scale,
  top: number,
  options: FortnightOptions,
  count: number,
): Item[] {
  const { manner } = options;
  const { px, text } = manner;
  const right = scale.edges.at(-1)!;
  /** Words under the bars stand in one line: the next may not begin before the last has ended. */
  let free = Number.NEGATIVE_INFINITY;
  return barsOf(job.plan, scale, count, px).map((bar): Item => {
    const first = job.words[bar.operation] ?? '';
    const word = bar.more > 0 && first !== '' ? `${first}, ${bar.more} more` : first;
    const wide = textWidth(word, text);
    const fits = wide + 6 * px < bar.to - bar.from;
    const left = Math.min(bar.from, right - wide);
    const under = !fits && word !== '' && left >= free;
    if (under) free = left + wide + 6 * px;
    return group(barItems(bar, word, { top, fits, under: under ? left : undefined }, options), {
      figure: bar.operation,
      label: word,
    });
  });
}

function barItems(
  bar: Bar,
  word: string,
  at: { top: number; fits: boolean; under: number | undefined },
  { manner, done, now }: FortnightOptions,
): Item[] {
  const { px, text } = manner;
  const high = 28 * px;
  const { from, to } = bar;
  const isDone = done?.has(bar.operation) ?? false;
  const minute = now === undefined ? Number.NaN : minutesOf(now);
  const inHand = !isDone && minute >= minutesOf(bar.start) && minute < minutesOf(bar.end);
  const box: Point[] = [
    [from, at.top],
    [to, at.top],
    [to, at.top + high],
    [from, at.top + high],
  ];
  const tone = inHand ? ('pencil' as const) : ('ink' as const);
  return [
    polygon(box, { wash: isDone ? 'waste' : inHand ? 'picked' : 'timber' }),
    polygon(box, { stroke: 'edge', tone }),
    ...(at.fits && !isDone
      ? [
          words([(from + to) / 2, at.top + high / 2 + text * 0.36], word, {
            size: text,
            anchor: 'middle',
            tone,
          }),
        ]
      : []),
    ...(at.under === undefined
      ? []
      : [
          words([at.under, at.top + high + text * 1.1], word, {
            size: text,
            tone: inHand ? 'pencil' : 'ink-3',
          }),
        ]),
    ...(isDone && to - from > 10 * px ? [doneTick((from + to) / 2, at.top + high / 2, px)] : []),
  ];
}

const doneTick = (x: number, y: number, px: number): Item =>
  polyline(
    [
      [x - 5 * px, y],
      [x - 1.5 * px, y + 4 * px],
      [x + 5 * px, y - 5 * px],
    ],
    { stroke: 'outline' },
  );
