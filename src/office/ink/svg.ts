import { seeded, seedOf } from '../../drawings/seeded.ts';
import type { Spot } from './camera.ts';
import type { LabelPlace } from './label.ts';

/** Small pieces of SVG text for the overlay; classes carry the line kinds. */

export const px = (n: number): string => (Math.round(n * 10) / 10).toString();
export const at = (s: Spot): string => `${px(s[0])} ${px(s[1])}`;

export const line = (a: Spot, b: Spot, kind: string): string =>
  `<path class="${kind}" d="M${at(a)}L${at(b)}"/>`;

export const polygon = (spots: readonly Spot[], kind: string): string =>
  `<path class="${kind}" d="M${spots.map(at).join('L')}Z"/>`;

export const box = (x: number, y: number, w: number, h: number, kind: string): string =>
  `<path class="${kind}" d="M${px(x)} ${px(y)}h${px(w)}v${px(h)}h${px(-w)}Z"/>`;

const ENTITY: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text: string): string => text.replace(/[&<>"]/g, c => ENTITY[c]!);

const FRACTION = /^(.*?)\s*(\d+\/\d+)$/;

/** A figure with its fraction set as one. */
export function figureText(text: string): string {
  const match = FRACTION.exec(text);
  if (!match) return escaped(text);
  return `${escaped(match[1]!)}<tspan class="frac" dx="${match[1] ? 1 : 0}">${escaped(match[2]!)}</tspan>`;
}

/** Width of a figure on the sheet, near enough to keep others clear of it, CSS pixels. */
export function figureWidth(text: string): number {
  const match = FRACTION.exec(text);
  return match ? match[1]!.length * 7 + match[2]!.length * 4.6 + 2 : text.length * 7;
}

/** Three grain lines at most, so that a rod is never taken for a part. */
export function grainLines(
  x: number,
  y: number,
  w: number,
  h: number,
  seed: string,
  standing: boolean,
): string {
  const random = seeded(seedOf(seed));
  const [along, across] = standing ? [h, w] : [w, h];
  let d = '';
  for (let i = 0; i < 3; i++) {
    const b = (across * (i + 0.35 + 0.3 * random())) / 3;
    let a = 3 + 0.1 * along * random();
    while (a < along - 8) {
      const length = Math.min(along - 3 - a, 30 + 120 * random());
      d += standing
        ? `M${px(x + b)} ${px(y + h - a)}v${px(-length)}`
        : `M${px(x + a)} ${px(y + b)}h${px(length)}`;
      a += length + 8 + 40 * random();
    }
  }
  return `<path class="g" d="${d}"/>`;
}

/** Name and size of the picked part on free ground, with a leader to the part. */
export function labelSvg(place: LabelPlace, title: string, size: string): string {
  const middle = place.x + place.width / 2;
  const below = place.point[1] < place.y;
  const y = below ? place.y + 2 : place.y + place.height - 2;
  const x = Math.min(Math.max(place.point[0], place.x + 10), place.x + place.width - 10);
  const word = (text: string, down: number): string =>
    `<text class="p" x="${px(middle)}" y="${px(place.y + down)}" text-anchor="middle">${escaped(text)}</text>`;
  return (
    line([x, y], place.point, 'pkt') +
    `<circle class="dot" cx="${px(place.point[0])}" cy="${px(place.point[1])}" r="2.6"/>` +
    `<g class="halo">${word(title, 13)}${word(size, 29)}</g>`
  );
}

/** The mark of a part, on the part. */
export const markSvg = (spot: Spot, mark: string, picked: boolean): string =>
  `<g class="halo"><text class="${picked ? 'p' : 'b'}" x="${px(spot[0])}" y="${px(spot[1] + 4.5)}" text-anchor="middle">${escaped(mark)}</text></g>`;
