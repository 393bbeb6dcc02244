import type { Command, DisplayList, Item, Look, Point, TextItem } from './list.ts';
import { CLEAR_PAD, textWidth } from './manner.ts';
import { dashes, PAPER_INK, type Palette, SCREEN, WEIGHTS } from './palette.ts';

/** An SVG element as plain data: a screen makes elements of it, a file a string. */
export interface SvgNode {
  tag: string;
  attributes: Record<string, string>;
  children: (SvgNode | string)[];
}

export type Ground = 'screen' | 'print';

/** Two decimals, no trailing zeros, no minus zero: what golden files are compared in. */
export const tidy = (n: number): string => String(Math.round(n * 100) / 100 || 0);

const node = (
  tag: string,
  attributes: Record<string, string>,
  children: (SvgNode | string)[] = [],
): SvgNode => ({
  tag,
  attributes,
  children,
});

interface Hand {
  list: DisplayList;
  palette: Palette;
}

/** Turns a display list into SVG elements. On screens colours are CSS variables; on print they are fixed. */
export function svgTree(list: DisplayList, ground: Ground = 'screen'): SvgNode {
  const hand: Hand = { list, palette: ground === 'screen' ? SCREEN : PAPER_INK };
  const unit = list.unit === 'mm' ? 'mm' : '';
  return node(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${tidy(list.width)} ${tidy(list.height)}`,
      width: `${tidy(list.width)}${unit}`,
      height: `${tidy(list.height)}${unit}`,
      role: 'img',
      'stroke-linejoin': 'round',
      'stroke-linecap': 'round',
    },
    [node('title', {}, [list.title]), ...list.items.flatMap(item => draw(item, hand))],
  );
}

/** The drawing as the text of an SVG file. */
export const toSvg = (list: DisplayList, { ground = 'screen' }: { ground?: Ground } = {}): string =>
  `${write(svgTree(list, ground))}\n`;

function draw(item: Item, hand: Hand): SvgNode[] {
  const tags = tagAttributes(item);
  switch (item.kind) {
    case 'group': {
      const attributes = { ...tags, ...(item.label === undefined ? {} : { 'aria-label': item.label }) };
      const children = item.items.flatMap(child => draw(child, hand));
      return [node(item.href === undefined ? 'g' : 'a', attributes, children)];
    }
    case 'text':
      return drawText(item, hand, tags);
    case 'circle':
      return [
        node('circle', {
          ...tags,
          cx: tidy(item.centre[0]),
          cy: tidy(item.centre[1]),
          r: tidy(item.radius),
          ...look(item, hand),
        }),
      ];
    case 'path':
      return [node('path', { ...tags, d: item.d.map(commandText).join(''), ...look(item, hand) })];
    default:
      return [
        node('path', { ...tags, d: pointsText(item.points, item.kind === 'polygon'), ...look(item, hand) }),
      ];
  }
}

function tagAttributes(item: Item): Record<string, string> {
  return {
    ...(item.id === undefined ? {} : { id: item.id }),
    ...(item.figure === undefined ? {} : { 'data-figure': item.figure }),
    ...(item.href === undefined ? {} : { href: item.href }),
  };
}

const commandText = (command: Command): string =>
  command[0] +
  command
    .slice(1)
    .map(n => tidy(n as number))
    .join(' ');

const pointsText = (points: readonly Point[], closed: boolean): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${tidy(x)} ${tidy(y)}`).join('') + (closed ? 'Z' : '');

function look(item: Look, { list, palette }: Hand): Record<string, string> {
  const attributes: Record<string, string> = { fill: item.wash ? palette.wash(item.wash) : 'none' };
  const weights = WEIGHTS[list.unit];
  if (item.stroke) {
    attributes.stroke = palette.tone(item.tone ?? 'ink');
    attributes['stroke-width'] = tidy(weights.width[item.stroke] * list.weight);
    const dash = dashes(item.stroke, list.unit);
    if (dash) {
      attributes['stroke-dasharray'] = dash.map(d => tidy(d * Math.max(0.8, list.weight))).join(' ');
      attributes['stroke-linecap'] = 'butt';
    }
  } else if (item.seal && item.wash) {
    attributes.stroke = palette.wash(item.wash);
    attributes['stroke-width'] = tidy(weights.width.hatch);
  }
  return attributes;
}

const FONT = {
  big: 'var(--figures,"Encode Sans Variable","Encode Sans",sans-serif)',
  figures: 'var(--figures,"Encode Sans Variable","Encode Sans",sans-serif)',
  words: 'var(--text,"Source Serif 4 Variable","Source Serif 4",serif)',
  remark: 'var(--text,"Source Serif 4 Variable","Source Serif 4",serif)',
};

function drawText(item: TextItem, { palette }: Hand, tags: Record<string, string>): SvgNode[] {
  const [x, y] = item.at;
  const turn = item.turn === undefined ? undefined : `rotate(${tidy(item.turn)} ${tidy(x)} ${tidy(y)})`;
  const nodes: SvgNode[] = [];
  if (item.clear) {
    const width = item.runs.reduce(
      (sum, r) => sum + textWidth(r.text, item.size * (r.size ?? 1), r.strong),
      0,
    );
    const pad = item.size * CLEAR_PAD;
    const left = item.anchor === 'start' ? x : item.anchor === 'end' ? x - width : x - width / 2;
    nodes.push(
      node('rect', {
        x: tidy(left - pad),
        y: tidy(y - item.size * 0.86),
        width: tidy(width + 2 * pad),
        height: tidy(item.size * 1.18),
        fill: palette.wash(item.clear),
        ...(turn === undefined ? {} : { transform: turn }),
      }),
    );
  }
  const children = item.runs.map(run => {
    const attributes: Record<string, string> = {
      ...(run.strong ? { 'font-weight': '600' } : {}),
      ...(run.tone ? { fill: palette.tone(run.tone) } : {}),
      ...(run.size ? { 'font-size': tidy(item.size * run.size) } : {}),
    };
    return Object.keys(attributes).length === 0 ? run.text : node('tspan', attributes, [run.text]);
  });
  nodes.push(
    node(
      'text',
      {
        ...tags,
        x: tidy(x),
        y: tidy(y),
        ...(turn === undefined ? {} : { transform: turn }),
        'text-anchor': item.anchor,
        'xml:space': 'preserve',
        fill: palette.tone('ink'),
        'font-family': FONT[item.face],
        'font-size': tidy(item.size),
        ...(item.face === 'figures' ? { 'font-stretch': '82%', 'font-variant-numeric': 'tabular-nums' } : {}),
        ...(item.face === 'big' ? { 'font-stretch': '76%', 'font-variant-numeric': 'tabular-nums' } : {}),
        ...(item.face === 'remark' ? { 'font-style': 'italic' } : {}),
      },
      children,
    ),
  );
  return nodes;
}

const ESCAPES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** Characters that XML 1.0 does not allow become spaces. */
const legal = (c: string): string => (c >= ' ' || c === '\t' || c === '\n' || c === '\r' ? c : ' ');
const escapeXml = (text: string): string =>
  [...text]
    .map(c => ESCAPES[c] ?? legal(c))
    .join('')
    .replace(/[\ufffe\uffff]/g, ' ');

function write(element: SvgNode | string): string {
  if (typeof element === 'string') return escapeXml(element);
  const attributes = Object.entries(element.attributes)
    .map(([name, value]) => ` ${name}="${escapeXml(value)}"`)
    .join('');
  if (element.children.length === 0) return `<${element.tag}${attributes}/>`;
  const inner = element.children.map(write).join('');
  const open = element.tag === 'svg' || element.tag === 'g' || element.tag === 'a' ? '\n' : '';
  return `<${element.tag}${attributes}>${inner}</${element.tag}>${open}`;
}
