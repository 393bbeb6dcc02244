/**
 * Sawn boards measured one by one: cross-cut into lengths that dodge defects, each length then ripped where
 * it is clear (CUT-7, CUT-11). All figures in hundredths of a millimetre of the usable area.
 */
import { type FillWay, fillSlabs } from './fill.ts';
import type { CutItem, CutStock, Layout, MeasuredBoard, Slab } from './problem.ts';

interface Span {
  from: number;
  to: number;
}

/** A length of the board with what is ripped from it. */
interface Section {
  from: number;
  length: number;
  area: number;
  slab: Slab;
  counts: Map<number, number>;
}

/** Above any ratio of areas two lengths of one board can have. */
const LEAD = 1e6;

/** Usable width over the whole of a length: the far edge is straight, so one of its ends is the least. */
export function widthOver(board: MeasuredBoard, whole: number, from: number, to: number): number {
  const at = (x: number): number => board.near + ((board.far - board.near) * x) / Math.max(1, whole);
  return Math.floor(Math.min(at(from), at(to)) + 1e-6);
}

/** Strips across the board that are clear of everything to avoid from `from` to `to`. */
function clearSpans(on: CutStock, board: MeasuredBoard, from: number, to: number): Span[] {
  const top = Math.min(on.w, widthOver(board, on.l, from, to));
  const inWay = board.avoid
    .filter(a => a.x < to && a.x + a.l > from)
    .sort((a, b) => a.y - b.y || a.y + a.w - b.y - b.w);
  const spans: Span[] = [];
  let at = 0;
  for (const a of inWay) {
    if (a.y > at) spans.push({ from: at, to: Math.min(a.y, top) });
    at = Math.max(at, a.y + a.w);
  }
  spans.push({ from: at, to: top });
  return spans.filter(span => span.to > span.from);
}

/**
 * Lays items of `left` on measured board `stock` in the order of `way`. `left` is untouched. Undefined when
 * nothing fits clear of the defects.
 */
export function fillMeasured(
  items: readonly CutItem[],
  stocks: readonly CutStock[],
  stock: number,
  left: Int32Array,
  way: FillWay,
): Layout | undefined {
  const on = stocks[stock]!;
  const still = left.slice();
  const sections: Section[] = [];
  for (let x = 0; x < on.l; ) {
    const next = bestSection(items, stocks, stock, still, way, x);
    if (!next) break;
    for (const [item, n] of next.counts) still[item]! -= n;
    sections.push(next);
    x = next.from + next.length + on.kerf;
  }
  return sections.length > 0 ? drawn(on, stock, sections) : undefined;
}

/** The length from `x` or beyond a defect that gives most for the board it takes. */
function bestSection(
  items: readonly CutItem[],
  stocks: readonly CutStock[],
  stock: number,
  left: Int32Array,
  way: FillWay,
  x: number,
): Section | undefined {
  const on = stocks[stock]!;
  const board = on.board!;
  const lengths = new Set<number>();
  for (const item of way.order)
    if (left[item]! > 0) for (const lie of items[item]!.lies[stock]!) lengths.add(lie.l);
  // A strip thinner than the saw takes away is no cut: the length begins a kerf further on.
  const starts = [x, ...board.avoid.map(a => a.x + a.l).filter(end => end > x)].map(start =>
    start > x && start - x <= on.kerf ? x + on.kerf + 1 : start,
  );
  const lead = way.order.find(item => left[item]! > 0 && items[item]!.lies[stock]!.length > 0);
  let best: Section | undefined;
  let bestWorth = 0;
  for (const from of [...new Set(starts)].sort((a, b) => a - b))
    for (const length of lengths) {
      if (from + length > on.l) continue;
      const section = filled(items, stocks, stock, left, way, from, length);
      // By area alone, or the blank that leads the order before all: one dodges waste, the other being left over.
      const leads = way.choose === 'side' && lead !== undefined && section.counts.has(lead);
      const worth = (section.area / (from + length + on.kerf - x)) * (leads ? LEAD : 1);
      if (section.area > 0 && worth > bestWorth * (1 + 1e-9)) {
        best = section;
        bestWorth = worth;
      }
    }
  return best;
}

function filled(
  items: readonly CutItem[],
  stocks: readonly CutStock[],
  stock: number,
  left: Int32Array,
  way: FillWay,
  from: number,
  length: number,
): Section {
  const on = stocks[stock]!;
  const slab: Slab = { x: from, y: 0, l: length, w: on.w };
  const free = ripped(slab, clearSpans(on, on.board!, from, from + length), on.kerf);
  const counts = new Map<number, number>();
  const area = fillSlabs(items, stocks, stock, free, left.slice(), way.order, counts);
  return { from, length, area, slab, counts };
}

/** Rips the length at the edges of its clear strips; returns the clear ones. */
function ripped(whole: Slab, spans: readonly Span[], kerf: number): Slab[] {
  const clear: Slab[] = [];
  let rest: Slab | undefined = whole;
  for (const span of spans) {
    if (!rest) break;
    const gap: number = span.from - rest.y;
    const from: number = gap > 0 && gap <= kerf ? rest.y + kerf + 1 : span.from;
    if (span.to <= from) continue;
    if (from > rest.y) {
      const strip: Slab = rest;
      rest = cut(strip, 'rip', from - kerf - strip.y, kerf);
    }
    if (!rest) break;
    const strip: Slab = rest;
    const beyond = strip.y + strip.w - span.to;
    rest = beyond > 0 ? cut(strip, 'rip', span.to - strip.y, kerf) : undefined;
    clear.push(strip.kept ?? strip);
  }
  return clear;
}

/** Cuts `at` off the slab and returns what lies beyond the kerf, if anything does. */
function cut(slab: Slab, kind: 'cross' | 'rip', at: number, kerf: number): Slab | undefined {
  const { x, y, l, w } = slab;
  slab.cut = kind;
  slab.kept = kind === 'cross' ? { x, y, l: at, w } : { x, y, l, w: at };
  const beyond = (kind === 'cross' ? l : w) - at - kerf;
  if (beyond <= 0) return undefined;
  slab.rest =
    kind === 'cross' ? { x: x + at + kerf, y, l: beyond, w } : { x, y: y + at + kerf, l, w: beyond };
  return slab.rest;
}

/** The lengths put one after the other, with the bad places sawn out between them. */
function drawn(on: CutStock, stock: number, sections: readonly Section[]): Layout {
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const counts = new Map<number, number>();
  let at: Slab | undefined = root;
  for (const section of sections) {
    if (!at) break;
    if (section.from > at.x) {
      const bad: Slab = at;
      at = cut(bad, 'cross', section.from - on.kerf - bad.x, on.kerf);
    }
    if (!at) break;
    const whole: Slab = at;
    const spare = whole.l - section.length;
    at = spare > 0 ? cut(whole, 'cross', section.length, on.kerf) : undefined;
    Object.assign(whole.kept ?? whole, section.slab);
    for (const [item, n] of section.counts) counts.set(item, (counts.get(item) ?? 0) + n);
  }
  return { stock, slab: root, counts, area: sections.reduce((sum, section) => sum + section.area, 0) };
}
