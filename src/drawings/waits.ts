import type { LocalTime, WaitEntry } from '../results/days.ts';
import { showClock, showDate } from '../results/show.ts';
import { dayNumber, isoDay, minutesOf } from './clock.ts';
import { diagonals } from './hatch.ts';
import { type DisplayList, type Item, line, type Point, polygon, rect, words } from './list.ts';
import { list, type Manner } from './manner.ts';

/** One thing that is drying, clamped or curing. */
export interface WaitRow {
  title: string;
  job: string;
  what: WaitEntry['what'];
  start: LocalTime;
  /** Free from here. */
  end: LocalTime;
  /** What may be done then. */
  say: string;
  /** Window: it must be done by then. */
  latest?: LocalTime;
}

export interface WaitsOptions {
  width: number;
  manner: Manner;
  from: LocalTime;
  to: LocalTime;
  now?: LocalTime;
}

const short = (time: LocalTime): string => `${showDate(time, 'short').split(' ')[0]} ${showClock(time)}`;

/**
 * Waits as lying strips on one scale: bare with diagonals, ended by a thick line; a window is a dashed strip that
 * ends in Attend.
 */
export function waitsDrawing(rows: readonly WaitRow[], options: WaitsOptions): DisplayList {
  const { manner, width } = options;
  const { px, text, large } = manner;
  const names = Math.max(196 * px, text * 13);
  const [from, to] = [minutesOf(options.from), minutesOf(options.to)];
  const room = width - names - text * 11;
  const x = (time: LocalTime): number =>
    names + ((Math.min(Math.max(minutesOf(time), from), to) - from) / Math.max(1, to - from)) * room;
  const step = Math.max(94 * px * 0.72, text * 4.6);
  const head = text * 2;
  const foot = head + rows.length * step;
  const items: Item[] = [];
  for (let day = dayNumber(options.from) + 1; day <= dayNumber(options.to); day++) {
    const at = x(`${isoDay(day)}T00:00`);
    items.push(line([at, head - text * 0.4], [at, foot], { stroke: 'thin', tone: 'rule' }));
    // The label of now wins over that of a day beside it.
    if (options.now !== undefined && Math.abs(at - x(options.now)) < text * 6) continue;
    items.push(
      words([at, text], showDate(isoDay(day), 'short').split(' ').slice(0, 2).join(' '), {
        size: text,
        anchor: 'middle',
        tone: 'ink-3',
      }),
    );
  }
  rows.forEach((row, i) => {
    const top = head + i * step + text * 0.6;
    const deep = 28 * px;
    if (i > 0)
      items.push(line([0, top - step * 0.22], [width, top - step * 0.22], { stroke: 'thin', tone: 'rule' }));
    items.push(
      words([0, top + large * 0.7], row.title, { size: large, strong: true }),
      words([0, top + large * 0.7 + text * 1.35], row.job, { size: text, tone: 'ink-3' }),
      ...strip(row, top, deep, x, manner, options.now),
    );
  });
  if (options.now !== undefined)
    items.push(
      line([x(options.now), head - text * 0.4], [x(options.now), foot], {
        stroke: 'outline',
        tone: 'pencil',
      }),
      words([x(options.now), text], `now ${showClock(options.now)}`, {
        size: text,
        anchor: 'middle',
        tone: 'pencil',
        strong: true,
        clear: 'sheet',
      }),
    );
  return list(manner, 'What is drying', width, foot + text * 0.5, items);
}

function strip(
  row: WaitRow,
  top: number,
  deep: number,
  x: (time: LocalTime) => number,
  manner: Manner,
  now: LocalTime | undefined,
): Item[] {
  const { px, text } = manner;
  const [a, b] = [x(row.start), x(row.end)];
  const box: Point[] = [
    [a, top],
    [b, top],
    [b, top + deep],
    [a, top + deep],
  ];
  const past = now === undefined ? 0 : Math.max(0, Math.min(x(now), b) - a);
  const items: Item[] = [
    polygon(box, { wash: 'sheet' }),
    ...diagonals(box, 5 * px, 'waste'),
    ...(past > 0 ? [rect(a, top, past, deep, { wash: 'waste' })] : []),
    polygon(box, { stroke: 'edge' }),
    line([b, top - 6 * px], [b, top + deep + 6 * px], { stroke: 'outline' }),
  ];
  if (row.latest === undefined) {
    items.push(
      words([b + 9 * px, top + deep / 2 - text * 0.15], short(row.end), {
        size: text,
        strong: true,
        clear: 'sheet',
      }),
      words([b + 9 * px, top + deep / 2 + text * 1.05], row.say, { size: text, clear: 'sheet' }),
    );
    return items;
  }
  const z = Math.max(x(row.latest), b + 4 * px);
  items.push(
    rect(b, top, z - b, deep, { wash: 'sheet' }),
    rect(b, top, z - b, deep, { stroke: 'hidden' }),
    line([z, top - 6 * px], [z, top + deep + 6 * px], { stroke: 'outline', tone: 'attend' }),
    words(
      [b + 9 * px, top + deep + text * 1.15],
      [{ text: short(row.end), strong: true }, { text: `  ${row.say}` }],
      {
        size: text,
      },
    ),
    words([z + 9 * px, top + deep / 2 - text * 0.15], short(row.latest), {
      size: text,
      strong: true,
      tone: 'attend',
      clear: 'sheet',
    }),
    words([z + 9 * px, top + deep / 2 + text * 1.05], 'at the latest', {
      size: text,
      strong: true,
      tone: 'attend',
      clear: 'sheet',
    }),
  );
  return items;
}
