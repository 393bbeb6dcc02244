import type { CardDrawing, CardRegion } from '../results/setups.ts';
import type { ShowOptions } from '../results/show.ts';
import { type Fold, fold } from './fold.ts';
import { type Manner, textWidth } from './manner.ts';

export interface CardOptions {
  /** Space to draw in, list units. */
  width: number;
  height: number;
  manner: Manner;
  show: ShowOptions;
  /** Scales that may be taken, list units to a millimetre, best first; whatever fits when absent. */
  scales?: readonly number[];
  /** Seed of the hatch: the id of the set-up. */
  id: string;
}

/** Where a card's own (a, h) lies on the page. */
export interface Plot {
  x: (a: number) => number;
  y: (h: number) => number;
  scale: number;
  across: Fold;
  up: Fold;
  /** Least and greatest h drawn. */
  foot: number;
  top: number;
  options: CardOptions;
}

const TABLE_DEEP = 8;
const BLADE_BELOW = 14;
const TOOL_ABOVE = 10;
/** The table is drawn this far past everything, and cut off at the edge of the drawing. */
const TABLE_BEYOND = 400;

/**
 * Regions as the card gives them, with the table under the work and the blade going down through it where the
 * card shows a section; a card without regions has work, jig, fence and blade from its plain figures.
 */
export function regionsOf(card: CardDrawing): CardRegion[] {
  const given = card.regions && card.regions.length > 0 ? card.regions : plainRegions(card);
  if (card.plane === 'plan' || given.some(r => r.what === 'table')) return given;
  const low = Math.min(...given.map(r => r.a.from));
  const high = Math.max(...given.map(r => r.a.to)) + TABLE_BEYOND;
  const risers = given.filter(r => r.what === 'tool' && r.h.from <= 0 && r.h.to > 0);
  // The opening in the table is a little wider than the blade.
  const holes = risers.map(r => ({ from: r.a.from - 2, to: r.a.to + 2 })).sort((a, b) => a.from - b.from);
  const table: CardRegion[] = [];
  let from = low;
  for (const hole of [...holes, { from: high, to: high }]) {
    if (hole.from > from)
      table.push({ what: 'table', a: { from, to: hole.from }, h: { from: -TABLE_DEEP, to: 0 } });
    from = Math.max(from, hole.to);
  }
  const tools = given.map(r => {
    if (risers.includes(r)) return { ...r, h: { from: -BLADE_BELOW, to: r.h.to } };
    // A drill, chisel or cutter that comes from above stands out over the work.
    const over = r.what === 'tool' && r.h.from > 0 && Math.abs(r.h.to - card.work.height) < 0.05;
    return over ? { ...r, h: { from: r.h.from, to: r.h.to + TOOL_ABOVE } } : r;
  });
  return [...table, ...tools];
}

function plainRegions(card: CardDrawing): CardRegion[] {
  const { work, blade, jig = 0 } = card;
  const head = Math.max(work.height, blade.height) + 12;
  const span = (from: number, to: number) => ({ from, to });
  return [
    { what: 'fence', a: span(-13, 0), h: span(0, head), label: 'fence' },
    ...(jig > 0 ? [{ what: 'jig' as const, a: span(0, jig), h: span(0, head + 6), label: 'jig' }] : []),
    { what: 'work', a: span(work.offset, work.offset + work.width), h: span(0, work.height), label: 'work' },
    { what: 'tool', a: span(blade.at, blade.at + blade.kerf), h: span(0, blade.height) },
  ];
}

/** Room the rod and its figures take under the drawing. */
export const cardFoot = ({ rod, px, text }: Manner): number => rod + 44 * px + text * 2.4;

/** Chooses the scale and lays the card on the page: full size if it can be, broken where it is long. */
export function plotOf(card: CardDrawing, regions: readonly CardRegion[], options: CardOptions): Plot {
  const { manner, width, height } = options;
  const { px } = manner;
  const side = textWidth('100.0', manner.text * 1.15, true) + 26 * px;
  const room = { wide: width - side - 8 * px, high: height - cardFoot(manner) - 6 * px };
  // The table goes on to the edge of the page: it asks for no room.
  const as = [
    ...regions.filter(r => r.what !== 'table').flatMap(r => [r.a.from, r.a.to]),
    ...card.stations.map(s => s.at),
    ...(card.line ?? []).map(p => p.a),
    ...(card.measures ?? []).flatMap(m => [m.from.a, m.to.a]),
  ];
  const hs = [
    ...regions.flatMap(r => [r.h.from, r.h.to]),
    ...(card.line ?? []).map(p => p.h),
    ...(card.measures ?? []).flatMap(m => [m.from.h, m.to.h]),
    ...(card.mark ? [card.mark.h] : []),
  ];
  const laid = (scale: number, whole: boolean): { across: Fold; up: Fold; fits: boolean } => {
    const most = whole ? Number.POSITIVE_INFINITY : 1;
    const across = fold(as, (most * room.wide * 0.55) / scale, (room.wide * 0.3) / scale);
    const up = fold(hs, (most * room.high * 0.6) / scale, (room.high * 0.35) / scale);
    return { across, up, fits: across.total * scale <= room.wide && up.total * scale <= room.high };
  };
  const full = manner.unit === 'mm' ? 1 : 96 / 25.4;
  const { scale, whole } = scaleOf(options.scales, full, laid);
  const { across, up } = laid(scale, whole);
  // The fence stands on the right unless the card says where the operator sees it.
  const right = !/\b(on|to|at) the left/.test(card.seen ?? '');
  return {
    x: a => (right ? width - 4 * px - across.at(a) * scale : 4 * px + across.at(a) * scale),
    y: h => 4 * px + (up.total - up.at(h)) * scale,
    scale,
    across,
    up,
    foot: Math.min(...hs),
    top: Math.max(...hs),
    options,
  };
}

type Laid = (scale: number, whole: boolean) => { fits: boolean };

/**
 * Whole at full size if it can be, whole down to half, else broken at the largest scale that fits; with no list of
 * scales the largest is found by halving.
 */
function scaleOf(
  scales: readonly number[] | undefined,
  full: number,
  laid: Laid,
): { scale: number; whole: boolean } {
  if (scales) {
    const whole = scales.find(s => s >= full / 2 && laid(s, true).fits);
    if (whole !== undefined) return { scale: whole, whole: true };
    const broken = scales.find(s => laid(s, false).fits);
    if (broken !== undefined) return { scale: broken, whole: false };
  }
  const whole = largest(full, s => laid(s, true).fits);
  return whole >= full / 2
    ? { scale: whole, whole: true }
    : { scale: largest(full, s => laid(s, false).fits), whole: false };
}

function largest(full: number, fits: (scale: number) => boolean): number {
  if (fits(full)) return full;
  let [low, high] = [0, full];
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return Math.max(low, full * 1e-4);
}
