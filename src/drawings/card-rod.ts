import { formatLength } from '../quantities/length.ts';
import type { CardDrawing } from '../results/setups.ts';
import type { Plot } from './card-plot.ts';
import { diagonals } from './hatch.ts';
import { type Item, line, type Point, polygon, polyline, words } from './list.ts';
import { textWidth } from './manner.ts';
import { lyingRod } from './rod.ts';
import { seedOf } from './seeded.ts';
import { spreadLabels } from './spread.ts';

/** The rod from the fence: stations with figure and name under each other, kerf hatched in it. */
export function cardRod(card: CardDrawing, plot: Plot, top: number): Item[] {
  const { manner, show, id } = plot.options;
  const { px, text, rod: deep } = manner;
  if (card.stations.length === 0) return [];
  const places = card.stations.map(s => plot.x(s.at));
  const [left, right] = [Math.min(...places, plot.x(0)), Math.max(...places, plot.x(0))];
  const length = Math.max(right - left, 1);
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
  const order = card.stations.map(station => ({ x: plot.x(station.at), station })).sort((p, q) => p.x - q.x);
  const figureOf = (at: number): string => formatLength(at, { ...show, trim: at === 0 });
  const widest = Math.max(
    ...card.stations.map(s =>
      Math.max(textWidth(s.label, text), textWidth(figureOf(s.at), text * (s.strong ? 1.12 : 1), s.strong)),
    ),
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
      const figure = figureOf(station.at);
      return [
        line([x, Math.max(plot.y(0), plot.y(plot.foot)) + 2 * px], [x, top - 6 * px], {
          stroke: 'chain',
          tone: 'ink-2',
        }),
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
