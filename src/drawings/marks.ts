import { arc, circle, type Item, line, type Point, polygon, polyline, rect, type StateTone } from './list.ts';

/**
 * The six marks of state, each in a square of side `size` whose top left corner is `at`.
 * Not known and Working never resemble Pass; the mark says it without colour.
 */
export function stateMark(state: StateTone, at: Point, size: number): Item[] {
  const [x, y] = at;
  const p = (a: number, b: number): Point => [x + (a * size) / 16, y + (b * size) / 16];
  const k = size / 16;
  switch (state) {
    case 'stop':
      return [
        rect(x + k, y + k, 14 * k, 14 * k, { wash: 'stop' }),
        rect(x + 3.5 * k, y + 6.8 * k, 9 * k, 2.4 * k, { wash: 'sheet' }),
      ];
    case 'attend':
      return [
        polygon([p(8, 1), p(15, 8), p(8, 15), p(1, 8)], { stroke: 'edge', tone: 'attend' }),
        polygon([p(8, 1), p(8, 15), p(1, 8)], { wash: 'attend' }),
      ];
    case 'note':
      return [
        circle(p(8, 8), 6.6 * k, { stroke: 'edge', tone: 'note' }),
        circle(p(8, 8), 1.9 * k, { wash: 'note' }),
      ];
    case 'pass':
      return [polyline([p(2, 9), p(6, 13.5), p(14.5, 2.5)], { stroke: 'outline', tone: 'pass' })];
    case 'unknown':
      return [
        polygon([p(1.5, 1.5), p(14.5, 1.5), p(14.5, 14.5), p(1.5, 14.5)], {
          stroke: 'hidden',
          tone: 'unknown',
        }),
      ];
    default:
      return [2.4, 8, 13.6].map(a => circle(p(a, 8), 1.7 * k, { wash: 'pending' }));
  }
}

export const STATE_WORD: Record<StateTone, string> = {
  stop: 'Stop',
  attend: 'Attend',
  note: 'Note',
  pass: 'Pass',
  unknown: 'Not known',
  pending: 'Working',
};

/** The slanted tick that ends a dimension. */
export const tick = ([x, y]: Point, reach: number): Item =>
  line([x - reach, y + reach], [x + reach, y - reach], { stroke: 'edge' });

/** The face-side mark: a looped stroke whose tail touches the face edge at `at`; about 30 `k` high. */
export const faceSideMark = (at: Point, k: number): Item => ({
  kind: 'path',
  stroke: 'edge',
  tone: 'pencil',
  d: [
    ['M', at[0] - k, at[1]],
    ['C', at[0] - 16 * k, at[1] + k, at[0] - 31 * k, at[1] - 14 * k, at[0] - 25 * k, at[1] - 25 * k],
    ['C', at[0] - 20 * k, at[1] - 34 * k, at[0] - 12 * k, at[1] - 27 * k, at[0] - 16 * k, at[1] - 15 * k],
    ['C', at[0] - 19 * k, at[1] - 5 * k, at[0] - 25 * k, at[1] + 4 * k, at[0] - 33 * k, at[1] + 9 * k],
  ],
});

/** A bored hole seen along its axis: centre cross in chain, and its ring dashed where it enters from the far side. */
export const holeMark = (centre: Point, radius: number, px: number, seen: boolean): Item[] => {
  const [x, y] = centre;
  const reach = radius + 3 * px;
  return [
    ...(seen ? [] : [arc(centre, radius, 0, 360, { stroke: 'hidden' })]),
    line([x - reach, y], [x + reach, y], { stroke: 'chain' }),
    line([x, y - reach], [x, y + reach], { stroke: 'chain' }),
  ];
};
