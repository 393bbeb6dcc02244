import { formatLength } from '../quantities/length.ts';
import type { CardDrawing, CardMeasure, CardRegion } from '../results/setups.ts';
import type { ShowOptions } from '../results/show.ts';
import { diagonals, endGrain, faceHatch, layersOf, longGrain, sheetEdge } from './hatch.ts';
import {
  type DisplayList,
  type Item,
  type Look,
  line,
  type Point,
  polygon,
  polyline,
  words,
} from './list.ts';
import { list, type Manner, textWidth } from './manner.ts';
import { faceSideMark, tick } from './marks.ts';
import { lyingRod, type Station } from './rod.ts';
import { seedOf } from './seeded.ts';
import { spreadLabels } from './spread.ts';

export interface CardOptions {
  /** Space to draw in, list units. */
  width: number;
  height: number;
  manner: Manner;
  show: ShowOptions;
  /** Scales that may be taken, list units to a millimetre, best first; any that fits when absent. */
  scales?: readonly number[];
  /** Seed of the hatch: the id of the set-up. */
  id: string;
}

interface Window {
  low: number;
  high: number;
  foot: number;
  top: number;
}

/** Where a card's own (a, h) lies on the page. */
interface Plot {
  x: (a: number) => number;
  y: (h: number) => number;
  k: number;
  right: boolean;
  window: Window;
  options: CardOptions;
}

/**
 * The set-up as the operator sees it: table, fence, jig, work, blade in its kerf, and one rod from the fence that
 * carries every station. Returns the drawing with the scale it took.
 */
export function cardDrawing(card: CardDrawing, options: CardOptions): DisplayList & { scale: number } {
  const { manner } = options;
  const { px, text } = manner;
  const regions = regionsOf(card);
  const window = windowOf(card, regions);
  const margin = {
    side: textWidth('100.0', text * 1.3, true) + 26 * px,
    foot: manner.rod + 44 * px + text * 2.4,
  };
  const fit = Math.min(
    (options.width - margin.side - 8 * px) / Math.max(window.high - window.low, 1),
    (options.height - margin.foot - 6 * px) / Math.max(window.top - window.foot, 1),
  );
  const k = options.scales?.find(scale => scale <= fit) ?? fit;
  // The fence stands on the right unless the card says where the operator sees it.
  const right = !/\b(on|to|at) the left/.test(card.seen ?? '');
  const edge = right ? options.width - 4 * px : 4 * px;
  const drawn: Window = window;
  const plot: Plot = {
    x: a => (right ? edge - (a - drawn.low) * k : edge + (a - drawn.low) * k),
    y: h => 4 * px + (drawn.top - h) * k,
    k,
    right,
    window: drawn,
    options,
  };
  const foot = plot.y(drawn.foot);
  const items: Item[] = [
    ...paintOrder(regions).flatMap(region => drawRegion(region, card, plot)),
    ...(card.measures ?? []).flatMap(measure => drawMeasure(measure, plot)),
    ...(card.mark ? [faceSideMark([plot.x(card.mark.a), plot.y(card.mark.h)], markSize(card, plot))] : []),
    ...cardRod(card, plot, foot + 14 * px),
  ];
  return {
    ...list(
      manner,
      `Set-up seen ${card.seen ?? 'by the operator'}`,
      options.width,
      foot + margin.foot,
      items,
    ),
    scale: k,
  };
}

const markSize = (card: CardDrawing, plot: Plot): number =>
  Math.min(plot.options.manner.px, (card.work.width * plot.k) / 36);

/** Regions as the card gives them; an older card has only work, jig and blade, from which they follow. */
function regionsOf(card: CardDrawing): CardRegion[] {
  if (card.regions && card.regions.length > 0) return card.regions;
  const { work, blade, jig = 0 } = card;
  const head = Math.max(work.height, blade.height) + 12;
  const span = (from: number, to: number) => ({ from, to });
  return [
    { what: 'fence', a: span(-13, 0), h: span(0, head), label: 'fence' },
    ...(jig > 0 ? [{ what: 'jig' as const, a: span(0, jig), h: span(0, head + 6), label: 'jig' }] : []),
    { what: 'work', a: span(work.offset, work.offset + work.width), h: span(0, work.height), label: 'work' },
    { what: 'tool', a: span(blade.at, blade.at + blade.kerf), h: span(-12, blade.height) },
    { what: 'table', a: span(-13, work.offset + work.width + 25), h: span(-8, 0) },
  ];
}

function windowOf(card: CardDrawing, regions: readonly CardRegion[]): Window {
  const a = [...regions.flatMap(r => [r.a.from, r.a.to]), ...card.stations.map(s => s.at)];
  const h = regions.flatMap(r => [r.h.from, r.h.to]);
  return { low: Math.min(...a), high: Math.max(...a), foot: Math.min(...h), top: Math.max(...h) };
}

const ORDER: CardRegion['what'][] = [
  'table',
  'backing',
  'fence',
  'stop',
  'jig',
  'work',
  'keep',
  'waste',
  'second waste',
  'tool',
];

const paintOrder = (regions: readonly CardRegion[]): CardRegion[] =>
  [...regions].sort((p, q) => ORDER.indexOf(p.what) - ORDER.indexOf(q.what));

function drawRegion(region: CardRegion, card: CardDrawing, plot: Plot): Item[] {
  const { manner, id } = plot.options;
  const { px } = manner;
  const [x0, x1] = [plot.x(region.a.from), plot.x(region.a.to)].sort((p, q) => p - q) as [number, number];
  const [y0, y1] = [plot.y(region.h.to), plot.y(region.h.from)];
  const box: Point[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const outline: Look = { stroke: 'outline' };
  const seed = seedOf(`${id} ${region.what}`);
  const upright = { corner: [x0, y1] as Point, along: [0, y0 - y1] as Point, across: [x1 - x0, 0] as Point };
  const flat = { corner: [x0, y0] as Point, along: [x1 - x0, 0] as Point, across: [0, y1 - y0] as Point };
  const label = regionLabel(region, x0, y0, x1, y1, plot);
  switch (region.what) {
    case 'work': {
      const field = card.grain === 'across' ? flat : upright;
      const grain =
        card.grain === 'end-on'
          ? endGrain({ ...flat, seed, gap: 5 * px })
          : longGrain({ ...field, seed, gap: 6 * px });
      return [
        polygon(box, { wash: card.grain === 'end-on' ? 'timber-end' : 'timber' }),
        ...grain,
        polygon(box, outline),
        ...label,
      ];
    }
    case 'keep':
      return label;
    case 'waste':
      return [
        polygon(box, { wash: 'waste' }),
        ...diagonals(box, 6 * px, 'waste', false),
        polygon(box, { stroke: 'edge' }),
        ...label,
      ];
    case 'second waste':
      return [polygon(box, { stroke: 'hidden' }), ...label];
    case 'jig':
    case 'backing': {
      const tall = y1 - y0 > x1 - x0;
      const thick = (tall ? x1 - x0 : y1 - y0) / plot.k;
      return [
        polygon(box, { wash: 'board' }),
        ...sheetEdge({ ...(tall ? upright : flat), seed, gap: 4 * px }, layersOf(thick)),
        polygon(box, outline),
        ...label,
      ];
    }
    case 'tool':
      return [
        polygon(box, { wash: 'sheet' }),
        ...diagonals(box, 4 * px, 'metal'),
        polygon(box, outline),
        ...label,
      ];
    case 'table':
      return [
        polygon(box, { wash: 'metal' }),
        ...diagonals(box, 7 * px, 'metal'),
        polyline([box[0]!, box[1]!], outline),
        ...label,
      ];
    default:
      return [
        polygon(box, { wash: 'metal' }),
        ...faceHatch('metal', { ...flat, seed, gap: 6 * px }),
        polygon(box, outline),
        ...label,
      ];
  }
}

/** The name of a region inside it, lying or standing, else left out: the rod names it too. */
function regionLabel(region: CardRegion, x0: number, y0: number, x1: number, y1: number, plot: Plot): Item[] {
  if (!region.label) return [];
  const { manner } = plot.options;
  const size = manner.text;
  const wide = textWidth(region.label, size) + size;
  const clear =
    region.what === 'work' || region.what === 'keep'
      ? plot.options.manner.unit === 'mm'
        ? ('sheet' as const)
        : ('timber' as const)
      : ('sheet' as const);
  const middle: Point = [(x0 + x1) / 2, (y0 + y1) / 2];
  if (x1 - x0 > wide && y1 - y0 > size * 1.3)
    return [words([middle[0], middle[1] + size * 0.35], region.label, { size, anchor: 'middle', clear })];
  if (y1 - y0 > wide && x1 - x0 > size * 1.2)
    return [
      words([middle[0] + size * 0.35, middle[1]], region.label, { size, anchor: 'middle', turn: -90, clear }),
    ];
  return [];
}

/** A measure between two points: thin line, slanted ticks, the figure on a gap of ground. */
function drawMeasure(measure: CardMeasure, plot: Plot): Item[] {
  const { manner, show } = plot.options;
  const { px } = manner;
  const from: Point = [plot.x(measure.from.a), plot.y(measure.from.h)];
  const to: Point = [plot.x(measure.to.a), plot.y(measure.to.h)];
  const figure = formatLength(measure.value, { ...show, trim: false });
  const upright = Math.abs(to[1] - from[1]) > Math.abs(to[0] - from[0]);
  const size = manner.text * 1.15;
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const room = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const wide = textWidth(figure, size, true);
  const at: Point = upright
    ? [middle[0] - 6 * px, middle[1] + size * 0.35]
    : room > wide + 8 * px
      ? [middle[0], middle[1] - 4 * px]
      : [Math.min(from[0], to[0]) - 6 * px, middle[1] + size * 0.35];
  return [
    line(from, to),
    tick(from, 4 * px),
    tick(to, 4 * px),
    words(at, figure, {
      size,
      anchor: upright || room <= wide + 8 * px ? 'end' : 'middle',
      strong: true,
      clear: 'sheet',
    }),
  ];
}

/** The rod from the fence: stations with figure and name under each other, kerf hatched in it. */
function cardRod(card: CardDrawing, plot: Plot, top: number): Item[] {
  const { manner, show, id } = plot.options;
  const { px, text, rod: deep } = manner;
  if (card.stations.length === 0) return [];
  const places = card.stations.map(s => plot.x(s.at));
  const [left, right] = [Math.min(...places, plot.x(0)), Math.max(...places, plot.x(0))];
  const length = Math.max(right - left, 1);
  const stations: Station[] = card.stations.map(s => ({ at: s.at, label: '' }));
  const bare = lyingRod({
    at: [left, top],
    length,
    total: length,
    stations: [],
    seed: seedOf(`${id} rod`),
    manner,
  });
  const [k0, k1] = [plot.x(card.blade.at), plot.x(card.blade.at + card.blade.kerf)].sort((p, q) => p - q) as [
    number,
    number,
  ];
  const kerf: Point[] = [
    [k0, top],
    [k1, top],
    [k1, top + deep],
    [k0, top + deep],
  ];
  const inside = card.blade.kerf > 0 && k0 >= left - 0.01 && k1 <= right + 0.01;
  const order = stations
    .map((s, i) => ({ x: plot.x(s.at), station: card.stations[i]! }))
    .sort((p, q) => p.x - q.x);
  const widest = Math.max(
    ...order.map(o => Math.max(textWidth(o.station.label, text), textWidth('000.0', text * 1.12, true))),
  );
  const placed = spreadLabels(
    order.map(o => o.x),
    widest + 5 * px,
    widest / 2,
    plot.options.width - widest / 2,
  );
  return [
    ...bare,
    ...(inside
      ? [
          polygon(kerf, { wash: 'sheet' }),
          ...diagonals(kerf, 4 * px, 'metal'),
          polygon(kerf, { stroke: 'edge' }),
        ]
      : []),
    ...order.flatMap(({ x, station }, i) => {
      const base = top + deep + 13 * px + text;
      const figure = formatLength(station.at, { ...show, trim: station.at === 0 });
      return [
        line([x, plot.y(0) + 2 * px], [x, top - 6 * px], { stroke: 'chain', tone: 'ink-2' }),
        line([x, top - 6 * px], [x, top + deep], { stroke: station.strong ? 'outline' : 'edge' }),
        polyline(
          [
            [x, top + deep],
            [placed[i]!, top + deep + 9 * px],
            [placed[i]!, top + deep + 12 * px],
          ],
          { stroke: 'thin' },
        ),
        words([placed[i]!, base], figure, {
          size: station.strong ? text * 1.12 : text,
          anchor: 'middle',
          strong: station.strong,
        }),
        words([placed[i]!, base + text * 1.15], station.label, {
          size: text,
          anchor: 'middle',
          tone: 'ink-3',
        }),
      ];
    }),
  ];
}
