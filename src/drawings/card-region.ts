import type { CardDrawing, CardRegion } from '../results/setups.ts';
import type { Plot } from './card-plot.ts';
import { diagonals, endGrain, faceHatch, layersOf, longGrain, sheetEdge } from './hatch.ts';
import { type Item, type Look, type Point, polygon, polyline, words } from './list.ts';
import { textWidth } from './manner.ts';
import { seedOf } from './seeded.ts';

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

export const paintOrder = (regions: readonly CardRegion[]): CardRegion[] =>
  [...regions].sort((p, q) => ORDER.indexOf(p.what) - ORDER.indexOf(q.what));

export function drawRegion(region: CardRegion, card: CardDrawing, plot: Plot): Item[] {
  const { manner, id } = plot.options;
  const { px } = manner;
  const edge = (a: number): number => Math.min(plot.options.width, Math.max(0, plot.x(a)));
  const [x0, x1] = [edge(region.a.from), edge(region.a.to)].sort((p, q) => p - q) as [number, number];
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
      const thick = (tall ? x1 - x0 : y1 - y0) / plot.scale;
      return [
        polygon(box, { wash: 'board' }),
        ...sheetEdge({ ...(tall ? upright : flat), seed, gap: 4 * px }, layersOf(thick)),
        polygon(box, outline),
        ...label,
      ];
    }
    case 'tool': {
      const shape = leaning(region, card, plot) ?? box;
      return [
        polygon(shape, { wash: 'sheet' }),
        ...diagonals(shape, 4 * px, 'metal'),
        polygon(shape, outline),
        ...label,
      ];
    }
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

/** A tilted blade leans away from the fence, so that the work is not trapped under it (common practice). */
function leaning(region: CardRegion, card: CardDrawing, plot: Plot): Point[] | undefined {
  if (card.blade.tilt === 0) return undefined;
  const angle = (Math.abs(card.blade.tilt) * Math.PI) / 180;
  const at = (a: number, h: number): Point => [plot.x(a + h * Math.tan(angle)), plot.y(h)];
  const { a, h } = region;
  // Level with the table a leaning kerf is wider than the blade.
  const far = a.from + (a.to - a.from) / Math.cos(angle);
  return [at(a.from, h.to), at(far, h.to), at(far, h.from), at(a.from, h.from)];
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
  // What is kept has its measure low down: its name stands high, or not at all.
  const kept = region.what === 'keep';
  if (kept && (x1 - x0 <= wide || (y1 - y0) * 0.45 < size * 1.8)) return [];
  const level = x1 - x0 > wide && y1 - y0 > size * 1.3;
  if (!level && (y1 - y0 <= wide || x1 - x0 <= size * 1.2)) return [];
  const reach = { x: (level ? wide : size * 1.4) / 2, y: (level ? size * 1.4 : wide) / 2 };
  const x = clearOf(
    x0,
    x1,
    reach.x,
    plot.across.breaks.map(b => (plot.x(b.from) + plot.x(b.to)) / 2),
    [0.5, 0.25, 0.75],
  );
  const y = clearOf(
    y0,
    y1,
    reach.y,
    plot.up.breaks.map(b => (plot.y(b.from) + plot.y(b.to)) / 2),
    kept ? [0.28] : [0.5, 0.25, 0.75],
  );
  if (x === undefined || y === undefined) return [];
  const style = { size, anchor: 'middle' as const, clear };
  return [
    level
      ? words([x, y + size * 0.35], region.label, style)
      : words([x + size * 0.35, y], region.label, { ...style, turn: -90 }),
  ];
}

/** The first of some places between two edges at which a word of half-width `reach` stands clear of every break. */
function clearOf(
  from: number,
  to: number,
  reach: number,
  breaks: readonly number[],
  shares: readonly number[],
): number | undefined {
  return shares
    .map(share => from + (to - from) * share)
    .find(
      at =>
        at - reach >= from - 0.01 &&
        at + reach <= to + 0.01 &&
        breaks.every(b => Math.abs(b - at) > reach * 1.15),
    );
}
