import { type Item, type Point, polygon, polyline } from './list.ts';

/** A wavy gap down the page at `x`, from `top` to `foot`: a long piece is not drawn in full here. */
export function breakLine(x: number, top: number, foot: number, px: number): Item[] {
  const steps = Math.max(2, Math.round((foot - top + 4 * px) / (6.5 * px)));
  const wave = (shift: number): Point[] =>
    Array.from(
      { length: steps + 1 },
      (_, i): Point => [
        x + shift + (i % 2 === 0 ? -1.2 : 1.2) * px,
        top - 2 * px + ((foot - top + 4 * px) * i) / steps,
      ],
    );
  const [a, b] = [wave(-3.2 * px), wave(3.2 * px)];
  return [
    polygon([...a, ...b.toReversed()], { wash: 'sheet' }),
    polyline(a, { stroke: 'thin' }),
    polyline(b, { stroke: 'thin' }),
  ];
}
