/** Fills one piece of stock: items in a given order into free rectangles, each placing two cuts. */
import type { CutItem, CutStock, Layout, Lie, Slab } from './problem.ts';

/** Which of the two cuts beside a placed item goes from edge to edge of its rectangle. */
export type SplitRule = 'rip' | 'cross' | 'large rest' | 'short side';
/** Which free rectangle an item takes. */
export type ChooseRule = 'area' | 'side';

export interface FillWay {
  order: readonly number[];
  split: SplitRule;
  choose: ChooseRule;
}

/** Sizes of free rectangles, the only thing the choice of a place depends on. */
interface Free {
  l: number[];
  w: number[];
}

interface Step {
  item: number;
  lie: Lie;
  /** Index of the free rectangle it takes. */
  at: number;
}

/** What a fill would place, before anything is drawn. */
export interface Trial {
  stock: number;
  area: number;
  steps: Step[];
  way: FillWay;
}

/**
 * Tries to lay items on stock `stock` in the order of `way`, as many of `left` as fit; `left` is untouched.
 * Time: pieces placed x free rectangles x ways to lie.
 */
export function tryFill(
  items: readonly CutItem[],
  stocks: readonly CutStock[],
  stock: number,
  left: Int32Array,
  way: FillWay,
): Trial {
  const on = stocks[stock]!;
  const free: Free = { l: [on.l], w: [on.w] };
  const steps: Step[] = [];
  let area = 0;
  for (const item of way.order) {
    const wanted = left[item]!;
    const lies = items[item]!.lies[stock]!;
    if (wanted === 0 || lies.length === 0) continue;
    for (let n = 0; n < wanted; n++) {
      const place = bestPlace(free, lies, way.choose);
      if (!place) break;
      take(free, place.at, place.lie, on, way.split);
      steps.push({ item, ...place });
      area += place.lie.l * place.lie.w;
    }
    if (free.l.length === 0) break;
  }
  return { stock, area, steps, way };
}

/** Replaces free rectangle `at` by what is left beside the lie in it, the first cut's rest before the second's. */
function take(free: Free, at: number, lie: Lie, on: CutStock, rule: SplitRule): void {
  const l = free.l[at]!;
  const w = free.w[at]!;
  free.l.splice(at, 1);
  free.w.splice(at, 1);
  const cross = firstCut(l, w, lie, on, rule) === 'cross';
  const restL = l - lie.l - on.kerf;
  const restW = w - lie.w - on.kerf;
  // Written out: this runs millions of times, and a function made anew each time costs more than its work.
  if (cross && restL > 0) {
    free.l.push(restL);
    free.w.push(w);
  }
  if (restW > 0) {
    free.l.push(cross ? lie.l : l);
    free.w.push(restW);
  }
  if (!cross && restL > 0) {
    free.l.push(restL);
    free.w.push(lie.w);
  }
}

/** Draws a trial: the slabs with their cuts, following its steps. */
export function layoutOf(stocks: readonly CutStock[], trial: Trial): Layout {
  const on = stocks[trial.stock]!;
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const free: Slab[] = [root];
  const counts = new Map<number, number>();
  for (const { item, lie, at } of trial.steps) {
    const [slab] = free.splice(at, 1);
    put(slab!, item, lie, on, trial.way.split, free);
    counts.set(item, (counts.get(item) ?? 0) + 1);
  }
  return { stock: trial.stock, slab: root, counts, area: trial.area };
}

function bestPlace(
  free: Free,
  lies: readonly Lie[],
  choose: ChooseRule,
): { at: number; lie: Lie } | undefined {
  let at = -1;
  let best: Lie | undefined;
  let bestScore = Infinity;
  for (let i = 0; i < free.l.length; i++) {
    const l = free.l[i]!;
    const w = free.w[i]!;
    for (const lie of lies) {
      const spareL = l - lie.l;
      const spareW = w - lie.w;
      if (spareL < 0 || spareW < 0) continue;
      const score = choose === 'area' ? l * w - lie.l * lie.w : Math.min(spareL, spareW);
      if (score < bestScore) {
        at = i;
        best = lie;
        bestScore = score;
      }
    }
  }
  return best && { at, lie: best };
}

/** Fills free slabs in the given order of items, from `left`, and counts what it places. Returns the area. */
export function fillSlabs(
  items: readonly CutItem[],
  stocks: readonly CutStock[],
  stock: number,
  free: Slab[],
  left: Int32Array,
  order: readonly number[],
  counts: Map<number, number>,
): number {
  const on = stocks[stock]!;
  let area = 0;
  for (const item of order)
    while (left[item]! > 0) {
      const sizes: Free = { l: free.map(slab => slab.l), w: free.map(slab => slab.w) };
      const place = bestPlace(sizes, items[item]!.lies[stock]!, 'side');
      if (!place) break;
      const [slab] = free.splice(place.at, 1);
      put(slab!, item, place.lie, on, 'large rest', free);
      left[item]! -= 1;
      counts.set(item, (counts.get(item) ?? 0) + 1);
      area += place.lie.l * place.lie.w;
    }
  return area;
}

/** Puts the item at the lower left of the slab; what is left beside and above it becomes free. */
function put(slab: Slab, item: number, lie: Lie, on: CutStock, rule: SplitRule, free: Slab[]): void {
  const crossFirst = firstCut(slab.l, slab.w, lie, on, rule) === 'cross';
  const kept = divide(slab, crossFirst ? 'cross' : 'rip', crossFirst ? lie.l : lie.w, on.kerf, free);
  const last = divide(kept, crossFirst ? 'rip' : 'cross', crossFirst ? lie.w : lie.l, on.kerf, free);
  last.item = item;
  last.lie = lie;
}

/** Cuts the slab so that `at` of it is kept; the rest beyond the kerf is free. Returns the kept slab. */
function divide(slab: Slab, cut: 'cross' | 'rip', at: number, kerf: number, free: Slab[]): Slab {
  const whole = cut === 'cross' ? slab.l : slab.w;
  if (whole === at) return slab;
  slab.cut = cut;
  slab.kept =
    cut === 'cross' ? { x: slab.x, y: slab.y, l: at, w: slab.w } : { x: slab.x, y: slab.y, l: slab.l, w: at };
  const beyond = whole - at - kerf;
  if (beyond > 0) {
    slab.rest =
      cut === 'cross'
        ? { x: slab.x + at + kerf, y: slab.y, l: beyond, w: slab.w }
        : { x: slab.x, y: slab.y + at + kerf, l: slab.l, w: beyond };
    free.push(slab.rest);
  }
  return slab.kept;
}

function firstCut(l: number, w: number, lie: Lie, on: CutStock, rule: SplitRule): 'cross' | 'rip' {
  if (on.single) return 'cross';
  // A measured board has been cross-cut to length before anything is ripped from it.
  if (on.board) return 'rip';
  // Timber: whole widths are cross-cut to rough length, what is narrower has been ripped already (CUT-7).
  if (on.crossFirst) return w === on.w ? 'cross' : 'rip';
  if (rule === 'rip' || rule === 'cross') return rule;
  const restL = l - lie.l;
  const restW = w - lie.w;
  if (rule === 'short side') return restL < restW ? 'rip' : 'cross';
  const cross = Math.max(restL * w, restW * lie.l);
  const rip = Math.max(restW * l, restL * lie.w);
  return cross >= rip ? 'cross' : 'rip';
}
