import { formatLength } from '../quantities/length.ts';
import type { SawCut, StockUse } from '../results/cutting.ts';
import type { ShowOptions } from '../results/show.ts';

const TIMES = ['', '', 'twice', 'three times', 'four times', 'five times', 'six times'];
const times = (n: number): string => (n < 2 ? '' : `, ${TIMES[n] ?? `${n} times`}`);

const sameStep = (a: SawCut, b: SawCut): boolean =>
  a.kind === b.kind && (a.trim ?? false) === (b.trim ?? false);

/** One line of the order of sawing: what to do, and the figures to set with how often each. */
export interface SawStep {
  /** Order numbers of the cuts in it. */
  orders: number[];
  verb: string;
  settings: { figure: string; times: string }[];
}

/**
 * The saw cuts in their order as short steps: neighbours of one kind in one step, a fence setting used again at
 * once counted. `Rip 132, three times`.
 */
export function sawOrder(use: StockUse, show: ShowOptions): SawStep[] {
  const steps: { first: SawCut; cuts: SawCut[] }[] = [];
  for (const cut of [...use.cuts].sort((a, b) => a.order - b.order)) {
    const last = steps.at(-1);
    if (last && sameStep(last.first, cut)) last.cuts.push(cut);
    else steps.push({ first: cut, cuts: [cut] });
  }
  return steps.map(({ first, cuts }) => ({
    orders: cuts.map(c => c.order),
    verb: verb(first, use),
    settings: settings(cuts, show),
  }));
}

function verb(cut: SawCut, use: StockUse): string {
  if (cut.trim) return cut.kind === 'cross' ? 'Square the end' : 'Trim the edge';
  if (cut.kind === 'rip') return 'Rip';
  return use.kind === 'bar' || use.kind === 'tube' ? 'Saw off' : 'Cross-cut';
}

function settings(cuts: readonly SawCut[], show: ShowOptions): SawStep['settings'] {
  const groups: { figure: string; count: number }[] = [];
  for (const cut of cuts) {
    const figure = formatLength(cut.setting, show);
    const last = groups.at(-1);
    if (last?.figure === figure) last.count++;
    else groups.push({ figure, count: 1 });
  }
  return groups.map(g => ({ figure: g.figure, times: times(g.count) }));
}

/** A step as one string: `Rip 50, four times; 65, twice`. */
export const sawStepText = (step: SawStep): string =>
  `${step.verb} ${step.settings.map(s => s.figure + s.times).join('; ')}`;
