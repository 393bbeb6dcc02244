/** Plates, shared by the guillotine families: reading, solving, writing plans, counting them again. */
import { leastCost } from '../../src/cutting/bound.ts';
import type { Stages } from '../../src/cutting/plates/guillotine-table.ts';
import { improvePlates, layoutsOf, solvePlates } from '../../src/cutting/plates/solve-plates.ts';
import type { CutItem, CutProblem, CutStock, Layout, Slab } from '../../src/cutting/problem.ts';
import { search } from '../../src/cutting/search.ts';
import type { Demand } from '../../src/results/cutting.ts';
import {
  bestKnown,
  type FamilyOptions,
  type FamilyResult,
  findInstances,
  numbersOf,
  tally,
  writePlan,
  writeResults,
} from './options.ts';

export interface PlateProblem {
  sizes: { l: number; w: number; cost: number }[];
  types: { l: number; w: number; demand: number }[];
}

export interface PlatePlan {
  plates: {
    size: [number, number];
    count: number;
    pieces: { type: number; x: number; y: number; l: number; w: number }[];
  }[];
}

/** `L W`, the number of types, then `l w demand` a type. */
export function readOnePlate(text: string): PlateProblem {
  const [l, w, n, ...rest] = numbersOf(text);
  return {
    sizes: [{ l: l!, w: w!, cost: 1 }],
    types: Array.from({ length: n! }, (_, i) => ({
      l: rest[3 * i]!,
      w: rest[3 * i + 1]!,
      demand: rest[3 * i + 2]!,
    })),
  };
}

const DEMAND: Demand = {
  mark: '',
  instance: '',
  name: '',
  length: 0,
  width: 0,
  thickness: 1,
  material: '',
  kind: 'sheet',
  round: false,
  turn: false,
  across: false,
  purpose: 'part',
};

/** Kerf and trim are zero here; one unit of the file is one unit of the solver. */
export function toCutProblem(problem: PlateProblem, turn: boolean): CutProblem {
  const stocks: CutStock[] = problem.sizes.map((size, s) => ({
    use: {
      from: 'buy',
      kind: 'sheet',
      material: '',
      label: '',
      length: size.l,
      width: size.w,
      thickness: 1,
      round: false,
      trim: { end: 0, edge: 0 },
      kerf: 0,
    },
    item: String(s),
    l: size.l,
    w: size.w,
    kerf: 0,
    cost: size.cost,
    limit: Infinity,
    single: false,
    crossFirst: false,
  }));
  const items: CutItem[] = problem.types.map(type => ({
    demands: Array.from({ length: type.demand }, () => DEMAND),
    area: type.l * type.w,
    lies: problem.sizes.map(size =>
      [
        { l: type.l, w: type.w, turned: false },
        ...(turn && type.l !== type.w ? [{ l: type.w, w: type.l, turned: true }] : []),
      ].filter(lie => lie.l <= size.l && lie.w <= size.w),
    ),
  }));
  return { items, stocks };
}

export function planOf(layouts: readonly Layout[], problem: PlateProblem): PlatePlan {
  return {
    plates: layouts.map(layout => {
      const pieces: PlatePlan['plates'][number]['pieces'] = [];
      const walk = (slab: Slab): void => {
        if (slab.item !== undefined && slab.lie)
          pieces.push({ type: slab.item, x: slab.x, y: slab.y, l: slab.lie.l, w: slab.lie.w });
        if (slab.kept) walk(slab.kept);
        if (slab.rest) walk(slab.rest);
      };
      walk(layout.slab);
      const size = problem.sizes[layout.stock]!;
      return { size: [size.l, size.w], count: 1, pieces };
    }),
  };
}

/** Pieces of each type in a plan, or what is wrong with it: sizes, overlaps, a plate that no saw can cut. */
export function countedPieces(
  plan: PlatePlan,
  problem: PlateProblem,
  turn: boolean,
  stages: Stages,
): number[] | string {
  const made = problem.types.map(() => 0);
  for (const { size, count, pieces } of plan.plates) {
    for (const piece of pieces) {
      const type = problem.types[piece.type];
      if (!type) return 'an unknown type';
      const straight = piece.l === type.l && piece.w === type.w;
      if (!straight && !(turn && piece.l === type.w && piece.w === type.l)) return 'a piece of another size';
      made[piece.type]! += count;
    }
    if (!cuttable(pieces, 0, 0, size[0], size[1])) return 'a plate that no saw can cut';
    if (stages !== 'free' && !inStrips(pieces, stages === 'strips along'))
      return 'a plate that is not in strips';
  }
  return made;
}

function faultOf(plan: PlatePlan, problem: PlateProblem, turn: boolean, stages: Stages): string | undefined {
  const made = countedPieces(plan, problem, turn, stages);
  if (typeof made === 'string') return made;
  const wrong = problem.types.findIndex((type, i) => made[i] !== type.demand);
  return wrong < 0 ? undefined : `${made[wrong]} of type ${wrong}, wanted ${problem.types[wrong]!.demand}`;
}

type Box = { x: number; y: number; l: number; w: number };

/** Can the boxes be parted by cuts from edge to edge, each inside the rectangle? */
function cuttable(boxes: readonly Box[], x: number, y: number, l: number, w: number): boolean {
  if (boxes.some(b => b.x < x || b.y < y || b.x + b.l > x + l || b.y + b.w > y + w)) return false;
  if (boxes.length <= 1) return true;
  for (const at of new Set(boxes.map(b => b.x + b.l))) {
    const before = boxes.filter(b => b.x + b.l <= at);
    const after = boxes.filter(b => b.x >= at);
    if (before.length === boxes.length || before.length + after.length < boxes.length) continue;
    return cuttable(before, x, y, at - x, w) && cuttable(after, at, y, x + l - at, w);
  }
  for (const at of new Set(boxes.map(b => b.y + b.w))) {
    const before = boxes.filter(b => b.y + b.w <= at);
    const after = boxes.filter(b => b.y >= at);
    if (before.length === boxes.length || before.length + after.length < boxes.length) continue;
    return cuttable(before, x, y, l, at - y) && cuttable(after, x, at, l, y + w - at);
  }
  return false;
}

/** Strips parted by full cuts, in each one row of pieces on its low edge. */
function inStrips(boxes: readonly Box[], along: boolean): boolean {
  const low = (b: Box): number => (along ? b.y : b.x);
  const high = (b: Box): number => low(b) + (along ? b.w : b.l);
  const edges = [...new Set(boxes.map(low))].sort((a, b) => a - b);
  return edges.every((edge, i) => boxes.every(b => low(b) !== edge || high(b) <= (edges[i + 1] ?? Infinity)));
}

export interface PlateFamily {
  name: string;
  read: (text: string) => PlateProblem;
  /** Table of best-known values and stages of a variant. */
  variants: Record<string, { table: string; turn: boolean; stages: Stages; where?: Record<string, string> }>;
}

export function runPlates(family: PlateFamily, options: FamilyOptions): void {
  const variant = family.variants[options.variant];
  if (!variant)
    throw new Error(`${family.name}: --variant is one of ${Object.keys(family.variants).join(', ')}`);
  const known = bestKnown(options.dir, variant.table, variant.where);
  const results: FamilyResult[] = [...options.earlier];
  for (const instance of findInstances(options)) {
    const problem = family.read(instance.text());
    const began = performance.now();
    const stop = (share: number): boolean => performance.now() > began + 1000 * share * options.seconds;
    const cut = toCutProblem(problem, variant.turn);
    const { layouts, value, bound, proved } = solve(cut, variant.stages, stop);
    const seconds = (performance.now() - began) / 1000;
    const plan = planOf(layouts, problem);
    const fault = faultOf(plan, problem, variant.turn, variant.stages);
    if (fault) throw new Error(`${instance.name}: the plan does not hold: ${fault}`);
    results.push({
      instance: instance.name,
      value,
      bound,
      status: proved ? 'proved-best' : 'within',
      seconds,
    });
    writePlan(options, instance.name, plan);
    writeResults(options, results);
    const best = known.get(instance.name);
    if (best?.proven && value < best.best) throw new Error(`${instance.name}: below a proven best value`);
    if (!best || value > best.best)
      console.log(
        `${instance.name}: ${value}, bound ${bound}, known ${best?.best ?? '-'} (${best?.bound ?? '-'}), ${seconds.toFixed(1)} s`,
      );
  }
  const counted = results.filter(result => known.has(result.instance));
  const sum = counted.reduce((total, { value }) => total + Number(value), 0);
  const sumKnown = counted.reduce((total, { instance }) => total + known.get(instance)!.best, 0);
  console.log(
    `${family.name} ${options.variant}: ${tally(results, known, 'less')}, sums ${sum} / ${sumKnown}`,
  );
}

interface Solved {
  layouts: Layout[];
  value: number;
  bound: number;
  proved: boolean;
}

/** @param stop true once that share of the time is over */
function solve(problem: CutProblem, stages: Stages, stop: (share: number) => boolean): Solved {
  const least = leastCost(problem, Infinity);
  if (stages !== 'free') {
    const limits = { seed: 1, stages, nodes: Infinity, stop: () => stop(1), bound: least };
    const found = solvePlates(problem, [], limits);
    const { value, bound, status } = found;
    return { layouts: layoutsOf(problem, found), value, bound, proved: status === 'proved best' };
  }
  const pieces = problem.items.reduce((total, item) => total + item.demands.length, 0);
  const first = search(problem, Math.ceil(60_000 / (pieces + 20)), 1, least);
  const effort = { seed: 1, nodes: Infinity, steps: Infinity, bound: least, stop };
  const { solution, bound } = improvePlates(problem, first, effort);
  return { layouts: solution.layouts, value: solution.cost, bound, proved: solution.cost <= bound };
}
