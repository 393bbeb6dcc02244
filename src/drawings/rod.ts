import { longGrain } from './hatch.ts';
import { type Item, line, type Point, polyline, rect, type Tone, words } from './list.ts';
import type { Manner } from './manner.ts';
import { spreadLabels } from './spread.ts';

/** A place on a rod. `at` is in the rod's own measure (mm of the piece, minutes of the day). */
export interface Station {
  at: number;
  /** What is written; the figure in the person's unit. */
  label: string;
  /** What it is, beside the figure. */
  name?: string;
  /** Picked or said by the maker: drawn in pencil. */
  pencil?: boolean;
  strong?: boolean;
  /** A centre line: drawn as a chain. */
  centre?: boolean;
  figure?: string;
}

export interface Zone {
  from: number;
  to: number;
  picked?: boolean;
  /** Crossed from corner to corner, as a mortise is marked. */
  crossed?: boolean;
  name?: string;
}

export interface RodOptions {
  /** Top left corner, list units. */
  at: Point;
  /** Length drawn, list units. */
  length: number;
  /** What the length stands for, in the rod's measure. */
  total: number;
  stations: readonly Station[];
  zones?: readonly Zone[];
  seed: number;
  manner: Manner;
  /** Label places already spread, when rods that meet share one spread. */
  places?: readonly number[];
  /** Names after the figures of a lying rod, on the same turned line. */
  names?: boolean;
  /** A standing rod: where zero is (foot, unless said) and on which side figures stand (left, unless said). */
  zero?: 'foot' | 'top';
  side?: 'left' | 'right';
}

const toneOf = (station: Station): Tone => (station.pencil ? 'pencil' : 'ink');

const labelRuns = (station: Station, names: boolean) => [
  { text: station.label, strong: station.strong ?? station.pencil ?? false, tone: toneOf(station) },
  ...(names && station.name ? [{ text: `  ${station.name}`, tone: 'ink-3' as const }] : []),
];

const tagOf = (station: Station) => (station.figure === undefined ? {} : { figure: station.figure });

/** A rod lying along the page: zero at the left, figures below it and read from the right. */
export function lyingRod(options: RodOptions): Item[] {
  const { at, length, total, manner, seed } = options;
  const [x, y] = at;
  const { px, rod: deep } = manner;
  const scale = length / total;
  const items: Item[] = [
    rect(x, y, length, deep, { wash: 'rod' }),
    ...longGrain({ corner: [x, y], along: [length, 0], across: [0, deep], seed, gap: deep / 3 }),
  ];
  for (const zone of options.zones ?? []) items.push(...lyingZone(zone, x, y, scale, manner));
  items.push(rect(x, y, length, deep, { stroke: 'edge' }));
  const stations = [...options.stations].sort((a, b) => a.at - b.at);
  const places =
    options.places ??
    spreadLabels(
      stations.map(s => x + s.at * scale),
      manner.least,
      x - manner.text * 0.8,
      x + length + manner.text * 0.5,
    );
  const drop = 16 * px;
  stations.forEach((station, i) => {
    const sx = x + station.at * scale;
    const lx = places[i]!;
    const tone = toneOf(station);
    const proud = (station.pencil ? 7 : station.centre ? 5 : 4) * px;
    items.push(
      line([sx, y - proud], [sx, y + deep], { stroke: station.centre ? 'chain' : 'edge', tone }),
      polyline(
        [
          [sx, y + deep],
          [lx, y + deep + drop - 4 * px],
          [lx, y + deep + drop],
        ],
        { stroke: 'thin', tone },
      ),
      words([lx + manner.text * 0.34, y + deep + drop + 4 * px], labelRuns(station, options.names ?? false), {
        size: manner.text,
        anchor: 'end',
        turn: -90,
        ...tagOf(station),
      }),
    );
  });
  return items;
}

function lyingZone(zone: Zone, x: number, y: number, scale: number, manner: Manner): Item[] {
  const a = x + zone.from * scale;
  const b = x + zone.to * scale;
  const deep = manner.rod;
  const items: Item[] = [];
  if (zone.picked) items.push(rect(a, y, b - a, deep, { wash: 'picked' }));
  if (zone.crossed)
    items.push(
      line([a, y], [b, y + deep], { stroke: 'thin' }),
      line([a, y + deep], [b, y], { stroke: 'thin' }),
    );
  if (zone.name)
    items.push(
      words([(a + b) / 2, y + deep / 2 + manner.text * 0.35], zone.name, {
        size: manner.text,
        anchor: 'middle',
        tone: zone.picked ? 'pencil' : 'ink-3',
        clear: zone.picked ? 'picked' : 'rod',
      }),
    );
  return items;
}

/** A rod standing on the page: name and figure in two columns beside it. */
export function standingRod(options: RodOptions): Item[] {
  const { at, length, total, manner, seed } = options;
  const [x, y] = at;
  const wide = manner.rod;
  const up = (value: number): number =>
    options.zero === 'top' ? y + (value * length) / total : y + length - (value * length) / total;
  const items: Item[] = [
    rect(x, y, wide, length, { wash: 'rod' }),
    ...longGrain({ corner: [x, y + length], along: [0, -length], across: [wide, 0], seed, gap: wide / 3 }),
  ];
  for (const zone of options.zones ?? []) {
    const [head, foot] = [up(zone.from), up(zone.to)].sort((a, b) => a - b) as [number, number];
    if (zone.picked) items.push(rect(x, head, wide, foot - head, { wash: 'picked' }));
    if (zone.crossed)
      items.push(
        line([x, foot], [x + wide, head], { stroke: 'thin' }),
        line([x, head], [x + wide, foot], { stroke: 'thin' }),
      );
  }
  items.push(rect(x, y, wide, length, { stroke: 'edge' }));
  const stations = [...options.stations].sort((a, b) => up(a.at) - up(b.at));
  const places =
    options.places ??
    spreadLabels(
      stations.map(s => up(s.at)),
      manner.text * 1.22,
      y - manner.text * 0.4,
      y + length + manner.text * 0.8,
    );
  const figures = Math.max(0, ...stations.map(s => s.label.length)) * manner.text * 0.53;
  return [...items, ...stations.flatMap((s, i) => standingLabel(s, up(s.at), places[i]!, figures, options))];
}

function standingLabel(
  station: Station,
  sy: number,
  ly: number,
  figures: number,
  options: RodOptions,
): Item[] {
  const { manner } = options;
  const { px, rod: wide } = manner;
  const x = options.at[0];
  const right = options.side === 'right';
  // `near` is the side of the labels; `out` steps away from the rod on that side.
  const near = right ? x + wide : x;
  const far = right ? x : x + wide;
  const out = right ? 1 : -1;
  const lead = 14 * px;
  const tone = toneOf(station);
  const base = ly + manner.text * 0.36;
  const proud = (station.pencil ? 7 : 4) * px;
  const items: Item[] = [
    line([near, sy], [far - out * proud, sy], { stroke: station.centre ? 'chain' : 'edge', tone }),
    polyline(
      [
        [near, sy],
        [near + out * (lead - 4 * px), ly],
        [near + out * lead, ly],
      ],
      { stroke: 'thin', tone },
    ),
    words([near + out * (lead + 4 * px), base], labelRuns(station, false), {
      size: manner.text,
      anchor: right ? 'start' : 'end',
      ...tagOf(station),
    }),
  ];
  if (station.name)
    items.push(
      words([near + out * (lead + 4 * px + figures + manner.text * 0.7), base], station.name, {
        size: manner.text,
        anchor: right ? 'start' : 'end',
        tone: station.pencil ? 'pencil' : 'ink-3',
      }),
    );
  return items;
}

/** A small rod that carries one overall size inside it: what papers use. */
export function sizeRod(
  at: Point,
  length: number,
  label: string,
  seed: number,
  manner: Manner,
  standing = false,
): Item[] {
  const [x, y] = at;
  const deep = manner.rod;
  const [width, height] = standing ? [deep, length] : [length, deep];
  const grain = standing
    ? longGrain({ corner: [x, y + length], along: [0, -length], across: [deep, 0], seed, gap: deep / 3 })
    : longGrain({ corner: [x, y], along: [length, 0], across: [0, deep], seed, gap: deep / 3 });
  const middle: Point = [x + width / 2, y + height / 2];
  const shift = manner.text * 0.35;
  return [
    rect(x, y, width, height, { wash: 'rod' }),
    ...grain,
    rect(x, y, width, height, { stroke: 'edge' }),
    words(standing ? [middle[0] + shift, middle[1]] : [middle[0], middle[1] + shift], label, {
      size: manner.text,
      anchor: 'middle',
      strong: true,
      clear: 'rod',
      ...(standing ? { turn: -90 } : {}),
    }),
  ];
}
