import { roundTo } from '../quantities/length.ts';
import type { LocalTime } from '../results/days.ts';
import { showDate } from '../results/show.ts';
import { dayNumber, isoDay, shareOfDay, weekday } from './clock.ts';
import {
  blocks,
  type FortnightJob,
  type FortnightOptions,
  inside,
  type Scale,
  type Span,
  widestGap,
  workBlocks,
} from './fortnight-bars.ts';
import { diagonals, longGrain } from './hatch.ts';
import { type DisplayList, type Item, line, type Point, rect, words } from './list.ts';
import { list, type Manner, textWidth } from './manner.ts';
import { seedOf } from './seeded.ts';

export type { FortnightJob, FortnightOptions };

/** Days without work are this share of a working one. */
const IDLE = 0.38;

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
    const word = {
      clamp: 'glue',
      dry: 'dry',
      cure: 'cures',
      rest: 'rests',
      delivery: 'comes',
      outwork: 'away',
    }[wait.what];
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
