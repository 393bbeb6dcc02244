import { formatLength } from '../quantities/length.ts';
import type { Left, Placed, SawCut, StockUse } from '../results/cutting.ts';
import type { ShowOptions } from '../results/show.ts';
import { diagonals, faceHatch } from './hatch.ts';
import { type DisplayList, group, type Item, polygon, rect, words } from './list.ts';
import { list, type Manner, textWidth } from './manner.ts';
import { materialOf } from './material.ts';
import { lyingRod, type Station, standingRod } from './rod.ts';
import { seedOf } from './seeded.ts';

export interface LayoutOptions {
  /** List units to a millimetre of stock; one scale for a whole page. */
  scale: number;
  manner: Manner;
  show: ShowOptions;
  /** Order number of the saw cut in hand, drawn in pencil. */
  now?: number;
  /** What a blank is called: the mark of its instance; the plan's own mark where absent. */
  marks?: ReadonlyMap<string, string>;
  /** Instance or mark that is picked. */
  picked?: string;
}

interface Sheet {
  x: number;
  y: number;
  deep: number;
  low: boolean;
  options: LayoutOptions;
  use: StockUse;
}

/**
 * One length or sheet to scale with what is cut from it, every saw cut at its true kerf, and rods that carry the
 * cuts: zero at the end you work from.
 */
export function layoutDrawing(use: StockUse, options: LayoutOptions): DisplayList {
  const { manner, scale } = options;
  const { px, text } = manner;
  const across = use.round ? use.thickness : use.width;
  const deep = Math.max(across * scale, 6 * px);
  const low = deep < text * 1.6;
  const rods = use.kind === 'sheet';
  const sheet: Sheet = {
    x: text * 0.9 + 3 * px,
    y: (low ? text * 1.5 : rods ? text * 0.7 : 0) + 2 * px,
    deep,
    low,
    options,
    use,
  };
  const length = use.length * scale;
  const rodTop = sheet.y + deep + 8 * px;
  const lying = stations(use, 'cross', use.length, options);
  // Turned figures hang as deep as the longest is wide.
  const hang = Math.max(...lying.map(s => textWidth(s.label, text, s.strong)));
  const items: Item[] = [
    ...stock(sheet),
    ...use.left.flatMap(left => leftOver(left, sheet)),
    ...use.placed.flatMap((placed, i) => blank(placed, i, sheet)),
    ...use.cuts.map(cut => kerf(cut, sheet)),
    ...toAvoid(sheet),
    polygon(outline(sheet), { stroke: 'outline' }),
    ...lyingRod({
      at: [sheet.x, rodTop],
      length,
      total: use.length,
      stations: lying,
      seed: seedOf(`${use.id} rod`),
      manner: { ...manner, rod: Math.min(manner.rod, 14 * px) },
    }),
  ];
  if (rods)
    items.push(
      ...standingRod({
        at: [sheet.x + length + 10 * px, sheet.y],
        length: deep,
        total: use.width,
        stations: stations(use, 'rip', use.width, options),
        seed: seedOf(`${use.id} standing`),
        manner: { ...manner, rod: Math.min(manner.rod, 14 * px) },
        zero: 'top',
        side: 'right',
      }),
    );
  const width = sheet.x + length + (rods ? (10 + 14 + 20) * px + text * 3 : 10 * px);
  const height = rodTop + Math.min(manner.rod, 14 * px) + 20 * px + Math.max(hang, text * 2.6) + text * 0.4;
  return list(manner, `Cutting layout of ${use.label}`, width, height, items);
}

/** Width a layout takes at `scale`, so that a page can choose one scale for all. */
export const layoutOverhang = (use: StockUse, manner: Manner): number =>
  manner.text * 0.9 +
  3 * manner.px +
  (use.kind === 'sheet' ? 44 * manner.px + manner.text * 3 : 10 * manner.px);

/** A board's true shape: its far edge may run slantwise. */
function outline({ x, y, deep, options, use }: Sheet): readonly (readonly [number, number])[] {
  const length = use.length * options.scale;
  if (!use.narrow) return corners(x, y, length, deep);
  const high = (width: number): number => (deep * width) / Math.max(use.width, 1e-9);
  return [
    [x, y],
    [x + length, y],
    [x + length, y + high(use.narrow.far)],
    [x, y + high(use.narrow.near)],
  ];
}

/** Defects and sapwood that the layout keeps out of, named where there is room. */
function toAvoid(sheet: Sheet): Item[] {
  const { manner } = sheet.options;
  return (sheet.use.avoid ?? []).flatMap(bad => {
    const low = bad.low ?? 0;
    const x1 = Math.min(bad.to, sheet.use.length);
    const y1 = Math.min(bad.high ?? sheet.use.width, sheet.use.width);
    const r = area({ x: bad.from, y: low, length: x1 - bad.from, width: y1 - low }, sheet);
    if (r.w <= 0 || r.h <= 0) return [];
    const size = manner.text * 0.9;
    const named = textWidth(bad.what, size) + 2 * manner.px < r.w && r.h > size * 1.2;
    return [
      rect(r.x, r.y, r.w, r.h, { wash: 'sheet' }),
      ...diagonals(corners(r.x, r.y, r.w, r.h), 2.5 * manner.px, 'ink', false),
      rect(r.x, r.y, r.w, r.h, { stroke: 'edge' }),
      ...(named
        ? [
            words([r.x + r.w / 2, r.y + r.h / 2 + size * 0.35], bad.what, {
              size,
              anchor: 'middle',
              face: 'remark',
              clear: 'sheet',
            }),
          ]
        : []),
    ];
  });
}

function stock(sheet: Sheet): Item[] {
  const { options } = sheet;
  const area = outline(sheet);
  return [polygon(area, { wash: 'waste' }), ...diagonals(area, 4 * options.manner.px, 'waste', false)];
}

const corners = (x: number, y: number, w: number, h: number) =>
  [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ] as const;

/** A rectangle of the stock on the page. Round stock fills its strip. */
function area(r: { x: number; y: number; length: number; width: number }, sheet: Sheet) {
  const { scale } = sheet.options;
  const across = sheet.use.round || sheet.low ? sheet.deep / Math.max(sheet.use.width, 1e-9) : scale;
  return {
    x: sheet.x + r.x * scale,
    y: sheet.use.round ? sheet.y : sheet.y + r.y * across,
    w: r.length * scale,
    h: sheet.use.round ? sheet.deep : r.width * across,
  };
}

function leftOver(left: Left, sheet: Sheet): Item[] {
  if (left.fate === 'waste') return [];
  const { x, y, w, h } = area({ ...left, width: left.narrow ?? left.width }, sheet);
  const { manner, show } = sheet.options;
  const size = manner.text * 1.08;
  const figures = sheet.use.round
    ? formatLength(left.length, show)
    : `${formatLength(left.length, show)} \u00d7 ${formatLength(left.narrow ?? left.width, show)}`;
  const full = `back to the rack  ${figures}`;
  const fits = [full, figures].find(t => textWidth(t, size) + 6 * manner.px < w);
  const base = sheet.low ? sheet.y - manner.text * 0.5 : y + h / 2 + size * 0.35;
  return [
    rect(x, y, w, h, { wash: 'sheet' }),
    rect(x, y, w, h, { stroke: 'hidden' }),
    ...(fits === undefined || (!sheet.low && h < size * 1.2)
      ? []
      : [words([x + w / 2, base], fits, { size, anchor: 'middle', face: 'remark', tone: 'ink-2' })]),
  ];
}

function blank(placed: Placed, index: number, sheet: Sheet): Item[] {
  const { manner, picked } = sheet.options;
  const { x, y, w, h } = area(placed, sheet);
  const material = materialOf(sheet.use.material, sheet.use.kind);
  const isPicked = picked === placed.instance || picked === placed.mark;
  const alongX = !(placed.turned && material === 'timber');
  const grain = alongX
    ? { corner: [x, y] as const, along: [w, 0] as const, across: [0, h] as const }
    : { corner: [x, y] as const, along: [0, h] as const, across: [w, 0] as const };
  const gap = (material === 'timber' || material === 'board' ? 5 : 4) * manner.px;
  return [
    group(
      [
        rect(x, y, w, h, { wash: isPicked ? 'picked' : material }),
        ...faceHatch(material, { ...grain, seed: seedOf(placed.instance || placed.mark) + index, gap }),
        rect(x, y, w, h, { stroke: 'edge', tone: isPicked ? 'pencil' : 'ink' }),
        ...blankLabel(placed, { x, y, w, h }, sheet, isPicked),
      ],
      {
        id: `${sheet.use.id}/${index}`,
        figure: placed.instance,
        label: `${placed.mark} on ${sheet.use.label}`,
      },
    ),
  ];
}

function blankLabel(
  placed: Placed,
  r: { x: number; y: number; w: number; h: number },
  sheet: Sheet,
  isPicked: boolean,
): Item[] {
  const { manner, show } = sheet.options;
  const { text } = manner;
  const size = sheet.use.round
    ? formatLength(placed.length, show)
    : `${formatLength(placed.length, show)} \u00d7 ${formatLength(placed.width, show)}`;
  const own = sheet.options.marks?.get(placed.instance) ?? placed.mark;
  const name = placed.purpose === 'part' ? own : placed.mark.startsWith('test') ? 'test' : placed.mark;
  const forms = [`${name}  ${size}`, name];
  const upright = !sheet.low && r.w < textWidth(name, text, true) + text && r.h > r.w;
  const room = upright ? r.h : r.w;
  const thick = upright ? r.w : r.h;
  // In a narrow strip the letters may be a little smaller before they are left out.
  const letters = [text, text * 0.8].find(s => sheet.low || thick >= s * 1.02);
  if (letters === undefined) return [];
  const form = forms.find(t => textWidth(t, letters, true) + letters * 0.9 < room);
  if (form === undefined) return [];
  const tone = isPicked ? ('pencil' as const) : ('ink' as const);
  const content = [
    { text: name, strong: true, tone },
    ...(form === forms[0] ? [{ text: `  ${size}`, tone }] : []),
  ];
  const middle = r.x + r.w / 2;
  const style = { size: letters, anchor: 'middle' as const };
  if (sheet.low) return [words([middle, sheet.y - text * 0.45], content, style)];
  const clear = isPicked ? ('picked' as const) : materialOf(sheet.use.material, sheet.use.kind);
  return upright
    ? [words([middle + letters * 0.35, r.y + r.h / 2], content, { ...style, turn: -90, clear })]
    : [words([middle, r.y + r.h / 2 + letters * 0.35], content, { ...style, clear })];
}

/** The kerf at its true width, at least a pixel, on the far side of the kept edge. */
function kerf(cut: SawCut, sheet: Sheet): Item {
  const { scale, manner, now } = sheet.options;
  const wide = Math.max(sheet.use.kerf * scale, manner.px);
  const wash = cut.order === now ? ('pencil' as const) : ('ink' as const);
  const at = cut.trim ? cut.at * scale - wide : cut.at * scale;
  const look = wash === 'pencil' ? { stroke: 'outline' as const, tone: 'pencil' as const } : { wash };
  const across = sheet.low || sheet.use.round ? sheet.deep / Math.max(sheet.use.width, 1e-9) : scale;
  const id = { id: `${sheet.use.id}/cut/${cut.order}` };
  if (cut.kind === 'rip')
    return {
      ...rect(sheet.x + cut.from * scale, sheet.y + at, (cut.to - cut.from) * scale, wide, look),
      ...id,
    };
  const [top, high] = sheet.use.round ? [0, sheet.deep] : [cut.from * across, (cut.to - cut.from) * across];
  return { ...rect(sheet.x + at, sheet.y + top, wide, high, look), ...id };
}

/** Where saw cuts of one kind fall, each place once, with both ends of the stock. */
function stations(use: StockUse, kind: SawCut['kind'], total: number, options: LayoutOptions): Station[] {
  const cuts = use.cuts.filter(c => c.kind === kind);
  const places = [...new Set(cuts.map(c => Math.round(c.at * 100) / 100))].filter(a => a > 0 && a < total);
  const now = cuts.find(c => c.order === options.now)?.at;
  return [0, ...places, total].map(at => ({
    at,
    label: formatLength(at, options.show),
    strong: at > 0 && at < total,
    ...(now !== undefined && Math.abs(now - at) < 0.01 ? { pencil: true } : {}),
  }));
}
