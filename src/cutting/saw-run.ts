/**
 * The order of sawing over several pieces of stock: a fence set once serves all of them, the large pieces
 * first; and what would be too small to hold.
 */
import type { SawCut, StockUse } from '../results/cutting.ts';

/** Shortest piece ripped along a fence by hand, mm, where the saw has no limit of its own (CUT-15). */
export const SHORTEST_RIP = 300;

export interface SawRunStep {
  kind: 'cross' | 'rip';
  trim: boolean;
  /** Fence or stop, mm. */
  setting: number;
  /** Cuts made at it, by stock. */
  on: { use: string; label: string; orders: number[] }[];
}

export interface SawRun {
  steps: SawRunStep[];
  /** Settings made in this order, and when each piece of stock is sawn by itself. */
  settings: number;
  apart: number;
}

interface Waiting {
  use: StockUse;
  cut: SawCut;
  /** Cuts that come before it: the stage before, and earlier ones on its own strip. */
  after: Waiting[];
  stage: number;
}

const sameSetting = (a: SawCut, b: SawCut): boolean =>
  a.kind === b.kind && (a.trim ?? false) === (b.trim ?? false) && Math.abs(a.setting - b.setting) < 0.005;

const holds = (outer: SawCut, inner: SawCut): boolean =>
  outer.kind === inner.kind
    ? Math.abs(outer.from - inner.from) < 0.005 && Math.abs(outer.to - inner.to) < 0.005
    : inner.at > outer.from - 0.005 && inner.at < outer.to + 0.005;

/** Cuts before this one that may have freed the piece it divides: all whose span it meets. */
function waitingOf(use: StockUse): Waiting[] {
  const made: Waiting[] = [];
  for (const cut of [...use.cuts].sort((a, b) => a.order - b.order)) {
    const after = made.filter(one => holds(one.cut, cut) || holds(cut, one.cut));
    const stage = after.reduce(
      (most, one) => Math.max(most, one.stage + (one.cut.kind === cut.kind ? 0 : 1)),
      0,
    );
    made.push({ use, cut, after, stage });
  }
  return made;
}

/**
 * One order for all cuts of the stock given: as long as a cut is ready at the fence as it stands it is made
 * next, then the largest piece of the earliest stage. Every cut keeps its place after those that free its piece.
 */
export function sawRun(uses: readonly StockUse[]): SawRun {
  const left = uses.flatMap(waitingOf);
  const done = new Set<Waiting>();
  const steps: SawRunStep[] = [];
  let last: SawCut | undefined;
  while (done.size < left.length) {
    const ready = left.filter(one => !done.has(one) && one.after.every(before => done.has(before)));
    const next = ready.find(one => last && sameSetting(last, one.cut)) ?? ready.sort(largeFirst)[0]!;
    if (!last || !sameSetting(last, next.cut))
      steps.push({ kind: next.cut.kind, trim: next.cut.trim ?? false, setting: next.cut.setting, on: [] });
    const { on } = steps.at(-1)!;
    const mine = on.find(one => one.use === next.use.id);
    if (mine) mine.orders.push(next.cut.order);
    else on.push({ use: next.use.id, label: next.use.label, orders: [next.cut.order] });
    done.add(next);
    last = next.cut;
  }
  return { steps, settings: steps.length, apart: uses.reduce((sum, use) => sum + changes(use), 0) };
}

const largeFirst = (a: Waiting, b: Waiting): number =>
  a.stage - b.stage ||
  Number(b.cut.trim ?? false) - Number(a.cut.trim ?? false) ||
  b.cut.setting - a.cut.setting ||
  a.cut.order - b.cut.order;

const changes = (use: StockUse): number =>
  [...use.cuts]
    .sort((a, b) => a.order - b.order)
    .filter((cut, i, all) => i === 0 || !sameSetting(all[i - 1]!, cut)).length;

/** Cuts that rip a piece shorter than can be held at the fence, each with what would mend it. */
export function tooSmall(use: StockUse, shortest = SHORTEST_RIP): { order: number; words: string }[] {
  return use.cuts
    .filter(cut => cut.kind === 'rip' && cut.to - cut.from < shortest)
    .map(cut => ({
      order: cut.order,
      words: `Cut ${cut.order} rips a piece ${Math.round(cut.to - cut.from)} long, under ${shortest}: hold it in a sled, or saw it by hand or at the band saw.`,
    }));
}
