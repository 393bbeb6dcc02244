import { formatMinutes } from '../quantities/time.ts';
import type { Day, LocalTime } from '../results/days.ts';
import { showClock } from '../results/show.ts';
import { minutesOf } from './clock.ts';
import { type DayStretch, dayStretches } from './day-stretches.ts';
import { longGrain } from './hatch.ts';
import { type DisplayList, group, type Item, line, polyline, rect, type Tone, words } from './list.ts';
import { list, type Manner, textWidth } from './manner.ts';
import { seedOf } from './seeded.ts';
import { spreadLabels } from './spread.ts';

export interface TodayOptions {
  width: number;
  height: number;
  manner: Manner;
  /** Second line under a piece of work, by operation; else its minutes. */
  notes?: Readonly<Record<string, string>>;
  /** Operations that are done. */
  done?: ReadonlySet<string>;
  now?: LocalTime;
}

/** One day as a standing rod, morning at the top: work as stretches of it, rests left bare. */
export function todayRod(day: Day, options: TodayOptions): DisplayList {
  const { manner } = options;
  const { px, text, rod: wide } = manner;
  const spans = day.working.map(w => ({ from: minutesOf(w.from), to: minutesOf(w.to) }));
  const times = [
    ...spans.flatMap(s => [s.from, s.to]),
    ...day.entries.flatMap(e => [minutesOf(e.start), minutesOf(e.end)]),
  ];
  if (times.length === 0)
    return list(manner, 'No work today', options.width, text * 2, [
      words([0, text], 'No work', { size: text, face: 'remark' }),
    ]);
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const top = text;
  const length = options.height - 2 * text;
  const x = text * 3.4 + 8 * px;
  const y = (minute: number): number => top + ((minute - first) / Math.max(1, last - first)) * length;
  const items: Item[] = [
    rect(x, top, wide, length, { wash: 'rod' }),
    ...longGrain({
      corner: [x, top],
      along: [0, length],
      across: [wide, 0],
      seed: seedOf(day.date),
      gap: wide / 3,
    }),
  ];
  spans.slice(1).forEach((span, i) => {
    const rest = spans[i]!.to;
    items.push(rect(x, y(rest), wide, y(span.from) - y(rest), { wash: 'sheet' }));
    if (y(span.from) - y(rest) > text * 1.5)
      items.push(
        words([x + wide / 2, (y(rest) + y(span.from)) / 2 + text * 0.35], 'rest', {
          size: text,
          anchor: 'middle',
          face: 'remark',
          tone: 'ink-2',
        }),
      );
  });
  const two = manner.large * 1.05 + text * 1.25;
  const stretches = dayStretches(day.entries, Math.floor((length - two * 0.6) / (two * 1.12)) + 1);
  const places = spreadLabels(
    stretches.map(e => y(minutesOf(e.start)) + two * 0.3),
    two * 1.12,
    top + two * 0.3,
    top + length - two * 0.3,
  );
  items.push(...stretches.flatMap((stretch, i) => stretchItems(stretch, places[i]!, { x, y, options })));
  items.push(
    ...clockLabels(
      [...day.working.flatMap(w => [w.from, w.to]), ...stretches.flatMap(s => [s.start, s.end])],
      x,
      y,
      { manner, low: top, high: top + length },
    ),
  );
  items.push(rect(x, top, wide, length, { stroke: 'outline' }));
  const now = options.now === undefined ? Number.NaN : minutesOf(options.now);
  if (now >= first && now <= last)
    items.push(
      line([x - 12 * px, y(now)], [x + wide + 12 * px, y(now)], { stroke: 'outline', tone: 'pencil' }),
      words([x - 16 * px, y(now) + text * 0.36], showClock(options.now!), {
        size: text,
        anchor: 'end',
        strong: true,
        tone: 'pencil',
        clear: 'sheet',
      }),
    );
  return list(manner, `Work of ${day.date}`, options.width, options.height, items);
}

/** As much of a strong text as `room` holds. */
function fitting(text: string, size: number, room: number): string {
  if (textWidth(text, size, true) <= room) return text;
  let kept = text;
  while (kept.length > 1 && textWidth(`${kept}\u2026`, size, true) > room) kept = kept.slice(0, -1);
  return `${kept.trimEnd()}\u2026`;
}

function stretchItems(
  stretch: DayStretch,
  place: number,
  at: { x: number; y: (minute: number) => number; options: TodayOptions },
): Item[] {
  const { manner, done, now, notes } = at.options;
  const { px, text, rod: wide } = manner;
  const [from, to] = [minutesOf(stretch.start), minutesOf(stretch.end)];
  const [y0, y1] = [at.y(from), at.y(to)];
  const isDone = stretch.operations.every(o => done?.has(o) ?? false);
  const minute = now === undefined ? Number.NaN : minutesOf(now);
  const inHand = !isDone && minute >= from && minute < to;
  const tone: Tone = inHand ? 'pencil' : isDone ? 'ink-3' : 'ink';
  const right = at.x + wide;
  const room = at.options.width - right - 32 * px;
  const items: Item[] = [
    ...(inHand ? [rect(at.x, y0, wide, y1 - y0, { wash: 'picked' })] : []),
    line([at.x - 5 * px, y0], [right + 5 * px, y0], { stroke: 'edge' }),
    line([at.x - 5 * px, y1], [right + 5 * px, y1], { stroke: 'edge' }),
    polyline(
      [
        [right + 5 * px, y0],
        [right + 18 * px, place - text * 0.3],
        [right + 26 * px, place - text * 0.3],
      ],
      { stroke: 'thin' },
    ),
    words([right + 32 * px, place], fitting(stretch.title, manner.large, room), {
      size: manner.large,
      strong: true,
      tone,
    }),
  ];
  const [first] = stretch.operations;
  const note = (stretch.operations.length === 1 && notes?.[first!]) || formatMinutes(stretch.minutes);
  items.push(words([right + 32 * px, place + text * 1.25], note, { size: text, tone: 'ink-3' }));
  if (isDone && y1 - y0 > 14 * px)
    items.push(
      polyline(
        [
          [at.x + wide * 0.3, (y0 + y1) / 2],
          [at.x + wide * 0.45, (y0 + y1) / 2 + 6 * px],
          [at.x + wide * 0.75, (y0 + y1) / 2 - 7 * px],
        ],
        { stroke: 'outline' },
      ),
    );
  return [group(items, { figure: first!, label: stretch.title })];
}

/** Clock times at the left of the rod, each once, spread where they crowd. */
function clockLabels(
  marks: readonly LocalTime[],
  x: number,
  y: (minute: number) => number,
  at: { manner: Manner; low: number; high: number },
): Item[] {
  const { manner } = at;
  const times = [...new Map(marks.map(t => [minutesOf(t), t])).entries()].sort((a, b) => a[0] - b[0]);
  const places = spreadLabels(
    times.map(([m]) => y(m)),
    manner.text * 1.15,
    at.low,
    at.high,
  );
  return times.map(([, time], i) =>
    words([x - 10 * manner.px, places[i]! + manner.text * 0.36], showClock(time), {
      size: manner.text,
      anchor: 'end',
    }),
  );
}
