import { formatLength } from '../quantities/length.ts';
import type { CardDrawing, CardMeasure } from '../results/setups.ts';
import { breakLine } from './break-line.ts';
import { type CardOptions, cardFoot, type Plot, plotOf, regionsOf } from './card-plot.ts';
import { drawRegion, paintOrder } from './card-region.ts';
import { cardRod } from './card-rod.ts';
import { diagonals } from './hatch.ts';
import { type DisplayList, type Item, line, type Point, polygon, polyline, words } from './list.ts';
import { list, textWidth } from './manner.ts';
import { faceSideMark, tick } from './marks.ts';

export interface CardPicture extends DisplayList {
  /** List units to a millimetre of the work. */
  scale: number;
  /** Long stretches were left out. */
  broken: boolean;
}

/**
 * The set-up as the operator sees it: table, fence, jig, work, blade in its kerf, and one rod from the fence that
 * carries every station. Returns the drawing with the scale it took.
 */
export function cardDrawing(card: CardDrawing, options: CardOptions): CardPicture {
  const { manner, width } = options;
  const { px } = manner;
  const regions = regionsOf(card);
  const plot = plotOf(card, regions, options);
  const foot = plot.y(plot.foot);
  const rodTop = foot + 14 * px;
  const items: Item[] = [
    ...paintOrder(regions).flatMap(region => drawRegion(region, card, plot)),
    ...workLine(card, plot),
    ...(card.measures ?? []).flatMap(measure => drawMeasure(measure, card, plot)),
    ...(card.mark ? [faceSideMark([plot.x(card.mark.a), plot.y(card.mark.h)], markSize(card, plot))] : []),
    ...cardRod(card, plot, rodTop),
    ...plot.across.breaks.flatMap(b => [
      ...breakLine((plot.x(b.from) + plot.x(b.to)) / 2, plot.y(plot.top), foot, px),
      ...breakLine((plot.x(b.from) + plot.x(b.to)) / 2, rodTop, rodTop + manner.rod, px),
    ]),
    ...plot.up.breaks.flatMap(b => levelBreak(b, regions, plot)),
  ];
  const broken = plot.across.breaks.length + plot.up.breaks.length > 0;
  const title = `Set-up seen ${card.seen ?? 'by the operator'}`;
  return { ...list(manner, title, width, foot + cardFoot(manner), items), scale: plot.scale, broken };
}

/** The line marked on the work: its waste hatched, the line itself strong. */
function workLine(card: CardDrawing, plot: Plot): Item[] {
  if (!card.line || card.line.length < 3) return [];
  const points = card.line.map((p): Point => [plot.x(p.a), plot.y(p.h)]);
  return [
    polygon(points, { wash: 'waste' }),
    ...diagonals(points, 6 * plot.options.manner.px, 'waste', false),
    polyline([...points, points[0]!], { stroke: 'outline' }),
  ];
}

const markSize = (card: CardDrawing, plot: Plot): number =>
  Math.min(plot.options.manner.px, (card.work.width * plot.scale) / 36);

/** A break across the height, over the regions that run through it. */
function levelBreak(
  b: { from: number; to: number },
  regions: ReturnType<typeof regionsOf>,
  plot: Plot,
): Item[] {
  const { px } = plot.options.manner;
  const spanning = regions.filter(r => r.h.from <= b.from + 0.01 && r.h.to >= b.to - 0.01);
  if (spanning.length === 0) return [];
  const xs = spanning.flatMap(r => [plot.x(r.a.from), plot.x(r.a.to)]);
  const middle = (plot.y(b.from) + plot.y(b.to)) / 2;
  const turned = breakLine(middle, Math.min(...xs), Math.max(...xs), px);
  return turned.map(item =>
    item.kind === 'polygon' || item.kind === 'polyline'
      ? { ...item, points: item.points.map(([x, y]): Point => [y, x]) }
      : item,
  );
}

/** A measure between two points: thin line, slanted ticks, the figure beside or above it. */
function drawMeasure(measure: CardMeasure, card: CardDrawing, plot: Plot): Item[] {
  const { manner, show } = plot.options;
  const { px, text } = manner;
  const upright = measure.from.a === measure.to.a;
  const figure = formatLength(measure.value, { ...show, trim: false });
  const size = text * 1.15;
  const from: Point = [plot.x(measure.from.a), plot.y(measure.from.h)];
  const to: Point = [plot.x(measure.to.a), plot.y(measure.to.h)];
  // A height on the outside of the work stands clear of it, with extension lines.
  const outside = upright && Math.abs(measure.from.a - (card.work.offset + card.work.width)) < 0.05;
  const away = outside ? (plot.x(1) < plot.x(0) ? -20 : 20) * px : 0;
  const ends: Point[] = [from, to].map(([x, y]): Point => [x + away, y]);
  const [p, q] = ends as [Point, Point];
  const extensions = outside
    ? [from, to].map(([x, y]) => line([x + away * 0.18, y], [x + away * 1.35, y]))
    : [];
  const middle: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
  const room = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const wide = textWidth(figure, size, true);
  const within = !upright && room > wide + 2 * px;
  const at: Point = within
    ? [middle[0], middle[1] - size * 0.5]
    : upright
      ? [middle[0] - (room < size * 1.3 ? 11 : 7) * px, middle[1] + size * 0.35]
      : [Math.max(p[0], q[0]) + 6 * px, middle[1] + size * 0.35];
  return [
    ...extensions,
    line(p, q),
    tick(p, 4 * px),
    tick(q, 4 * px),
    words(at, figure, {
      size,
      anchor: within ? 'middle' : upright ? 'end' : 'start',
      strong: true,
      ...(outside ? {} : { clear: 'sheet' as const }),
    }),
  ];
}
