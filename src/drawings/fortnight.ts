import { roundTo } from '../quantities/length.ts';
import type { DayPlan, LocalTime } from '../results/days.ts';
import { showDate } from '../results/show.ts';
import { dayNumber, isoDay, minutesOf, shareOfDay, weekday } from './clock.ts';
import { diagonals, longGrain } from './hatch.ts';
import {
  type DisplayList,
  group,
  type Item,
  line,
  type Point,
  polygon,
  polyline,
  rect,
  words,
} from './list.ts';
import { list, type Manner, textWidth } from './manner.ts';
import { seedOf } from './seeded.ts';

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

/** Days without work are this share of a working one. */
const IDLE = 0.38;

interface Scale {
  /** Page place of a moment. The working day fills its column; the night has no width. */
  x: (time: LocalTime) => number;
  edges: number[];
  first: number;
  idle: boolean[];
}

/** Days as a lying rod and under it each job's work and waits; idle days are narrow and bare. */
export function fortnight(jobs: readonly FortnightJob[], options: FortnightOptions): DisplayList {
  const { manner, width } = options;
  const { px, text } = manner;
  const count = options.days ?? 14;
  const first = dayNumber(options.from);
  const names = options.bare ? text * 3.2 : Math.max(110 * px, text * 9);
  const ready = options.bare ? 0 : text * 8.5;
  const scale = scaleOf(jobs, first, count, names, width - names - ready);
  const rodTop = text * 2;
  const deep = 20 * px;
  const step = Math.max(60 * px, text * 4.4);
  const items: Item[] = [...dayRod(scale, rodTop, deep, options)];
  jobs.forEach((job, i) => {
    const top = rodTop + deep + 18 * px + i * step;
    items.push(
      words([0, top + 14 * px + text * 0.4], job.name, { size: manner.large, strong: true }),
      words([width, top + 14 * px + text * 0.4], job.ready, {
        size: text,
        anchor: 'end',
        strong: job.promised,
        tone: job.promised ? 'ink' : 'ink-3',
      }),
      ...waitStrips(job, scale, top, options, count),
      ...workBlocks(job, scale, top, options, count),
      line([0, top + step - 10 * px], [width, top + step - 10 * px], { stroke: 'thin', tone: 'rule' }),
    );
  });
  const foot = rodTop + deep + 18 * px + jobs.length * step + text;
  items.push(words([0, foot], 'Hours', { size: text, tone: 'ink-3' }), ...hours(jobs, scale, foot, manner));
  return list(manner, `Days from ${options.from}`, width, foot + text * 0.6, items);
}

function scaleOf(
  jobs: readonly FortnightJob[],
  first: number,
  count: number,
  left: number,
  room: number,
): Scale {
  const worked = new Set(
    jobs.flatMap(j => j.plan.days.filter(d => d.working.length > 0).map(d => dayNumber(d.date))),
  );
  const idle = Array.from({ length: count }, (_, i) => {
    const day = first + i;
    return worked.size === 0 ? weekday(day) > 5 : !worked.has(day) && (weekday(day) > 5 || inPlan(jobs, day));
  });
  const shares = idle.map(i => (i ? IDLE : 1));
  const unit = room / shares.reduce((a, b) => a + b, 0);
  const edges = [left];
  for (const share of shares) edges.push(edges.at(-1)! + share * unit);
  const [opens, closes] = dayEnds(jobs);
  const x = (time: LocalTime): number => {
    const i = dayNumber(time) - first;
    if (i < 0) return edges[0]!;
    if (i >= count) return edges.at(-1)!;
    const share = Math.min(1, Math.max(0, (shareOfDay(time) - opens) / (closes - opens)));
    return edges[i]! + share * (edges[i + 1]! - edges[i]!);
  };
  return { x, edges, first, idle };
}

/** A day without work between the first and last of a plan is a day off; beyond it nothing is known. */
const inPlan = (jobs: readonly FortnightJob[], day: number): boolean =>
  jobs.some(({ plan }) => {
    const all = plan.days.map(d => dayNumber(d.date));
    return all.length > 0 && day >= Math.min(...all) && day <= Math.max(...all);
  });

/** First opening and last closing of any day, as shares of the day. */
function dayEnds(jobs: readonly FortnightJob[]): [number, number] {
  const spans = jobs.flatMap(j => j.plan.days.flatMap(d => d.working));
  if (spans.length === 0) return [8 / 24, 17 / 24];
  const ends = spans.map(s => shareOfDay(s.to));
  return [Math.min(...spans.map(s => shareOfDay(s.from))), Math.max(...ends)];
}

function dayRod(scale: Scale, top: number, deep: number, { manner, now }: FortnightOptions): Item[] {
  const { px, text } = manner;
  const [left, right] = [scale.edges[0]!, scale.edges.at(-1)!];
  const items: Item[] = [
    rect(left, top, right - left, deep, { wash: 'rod' }),
    ...longGrain({
      corner: [left, top],
      along: [right - left, 0],
      across: [0, deep],
      seed: seedOf('days'),
      gap: deep / 3,
    }),
  ];
  scale.idle.forEach((idle, i) => {
    const [x0, x1] = [scale.edges[i]!, scale.edges[i + 1]!];
    const day = scale.first + i;
    const [name = '', date = ''] = showDate(isoDay(day), 'short').split(' ');
    const today = now !== undefined && dayNumber(now) === day;
    const full = `${name} ${date}`;
    const label = idle || textWidth(full, text) > x1 - x0 - 6 * px ? (idle ? name.slice(0, 1) : date) : full;
    if (idle) items.push(rect(x0, top, x1 - x0, deep, { wash: 'sheet' }));
    items.push(
      line([x0, top - 6 * px], [x0, top + deep], { stroke: 'edge' }),
      words([x0 + 4 * px, top - 8 * px], label, {
        size: text,
        tone: today ? 'pencil' : idle ? 'ink-3' : 'ink',
        strong: today,
      }),
    );
  });
  items.push(rect(left, top, right - left, deep, { stroke: 'edge' }));
  if (now !== undefined)
    items.push(
      line([scale.x(now), top - 4 * px], [scale.x(now), top + deep + 6 * px], {
        stroke: 'outline',
        tone: 'pencil',
      }),
    );
  return items;
}

const inside = (time: LocalTime, scale: Scale, count: number): boolean => {
  const i = dayNumber(time) - scale.first;
  return i >= 0 && i < count;
};

function waitStrips(
  job: FortnightJob,
  scale: Scale,
  top: number,
  { manner }: FortnightOptions,
  count: number,
): Item[] {
  const { px, text } = manner;
  const y = top + 14 * px;
  const busy = blocks(job.plan)
    .filter(b => inside(b.start, scale, count))
    .map(b => ({ from: scale.x(b.start), to: scale.x(b.end) }));
  /** Where words already stand: overlapping waits share one line. */
  const told: Span[] = [];
  return job.plan.waits.flatMap((wait): Item[] => {
    const end = dayNumber(wait.end) - scale.first;
    if (end < 0 || !(inside(wait.start, scale, count) || dayNumber(wait.start) < scale.first)) return [];
    const [a, b] = [scale.x(wait.start), scale.x(wait.end)];
    if (b - a < 6 * px) return [];
    const box: Point[] = [
      [a, y - 4 * px],
      [b, y - 4 * px],
      [b, y + 4 * px],
      [a, y + 4 * px],
    ];
    const word = { clamp: 'glue', dry: 'dry', cure: 'cures', rest: 'rests', delivery: 'comes' }[wait.what];
    const size = text * 1.05;
    const bare = widestGap(a, b, busy);
    const middle = (bare.from + bare.to) / 2;
    const half = textWidth(word, size) / 2 + 5 * px;
    const clear =
      2 * half < bare.to - bare.from && told.every(t => middle + half < t.from || middle - half > t.to);
    if (clear) told.push({ from: middle - half, to: middle + half });
    return [
      ...diagonals(box, 4.5 * px, 'waste'),
      line([a, y], [b, y], { stroke: 'edge' }),
      line([b, y - 5 * px], [b, y + 5 * px], { stroke: 'edge' }),
      ...(clear
        ? [
            words([middle, y + size * 0.35], word, {
              size,
              anchor: 'middle',
              face: 'remark',
              tone: 'ink-2',
              clear: 'sheet',
            }),
          ]
        : []),
    ];
  });
}

interface Span {
  from: number;
  to: number;
}

/** The widest stretch of a-b that no busy span covers; `busy` in ascending order. */
function widestGap(a: number, b: number, busy: readonly Span[]): Span {
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
function blocks(plan: DayPlan): Block[] {
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

function workBlocks(
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

function hours(jobs: readonly FortnightJob[], scale: Scale, y: number, manner: Manner): Item[] {
  return scale.idle.flatMap((idle, i): Item[] => {
    const date = isoDay(scale.first + i);
    const minutes = jobs
      .flatMap(j => j.plan.days.filter(d => d.date === date))
      .reduce((sum, d) => sum + d.entries.reduce((s, e) => s + e.minutes, 0), 0);
    return idle || minutes === 0
      ? []
      : [
          words([scale.edges[i]! + 4 * manner.px, y], roundTo(minutes / 60, 1).toFixed(1), {
            size: manner.text,
          }),
        ];
  });
}
