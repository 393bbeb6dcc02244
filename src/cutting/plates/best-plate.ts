/**
 * The most worthy way to cut one plate when pieces are limited: prices are put on pieces used too often and
 * moved step by step (a Lagrangian), which gives the bound; every table on the way is made into a plate.
 */
import { fillSlabs } from '../fill.ts';
import type { CutProblem, Layout, Slab } from '../problem.ts';
import { seeded } from '../random.ts';
import { PlateClimb } from './climb.ts';
import { parted } from './draw-strips.ts';
import { GuillotineTable } from './guillotine-table.ts';
import { PlatePricer, type Stages } from './plate-pricer.ts';

export interface BestPlate {
  layout: Layout | undefined;
  value: number;
  /** No plate is worth more. */
  bound: number;
}

export interface PlateSearch {
  seed: number;
  rounds: number;
  stages: Stages;
  /** Pieces as often as wished: the table alone decides. */
  endless?: boolean;
  stop?: () => boolean;
  /** Enough to know whether this much can be had: ends when the bound falls below it. */
  wanted?: number;
}

/** Neighbours tried in a round, and rounds after which the climb begins anew. */
const CLIMB_STEPS = 150;
const CLIMB_ROUNDS = 12;

/** @param worth whole numbers, by item; at most `demands.length` pieces of each */
export function bestPlate(problem: CutProblem, worth: Float64Array, limits: PlateSearch): BestPlate {
  const caps = Int32Array.from(problem.items, item => item.demands.length);
  const random = seeded(limits.seed);
  const pricer = new PlatePricer(problem, limits.stages, random);
  let best: Layout | undefined;
  let value = 0;
  let bound = Infinity;
  const keep = (layout: Layout): void => {
    let sum = 0;
    for (const [item, count] of layout.counts) sum += count * worth[item]!;
    if (sum > value) {
      value = sum;
      best = layout;
    }
  };
  const table = new GuillotineTable(problem, 0, limits.stages === 'free' ? 400 : 60);
  const climb =
    limits.stages === 'free' && !limits.endless ? new PlateClimb(problem, worth, random) : undefined;
  const penalty = new Float64Array(worth.length);
  let step = 1;
  for (let round = 0; round < limits.rounds && value < bound - 0.5; round++) {
    if (bound < (limits.wanted ?? 0)) break;
    if (round > 0 && limits.stop?.()) break;
    const priced = worth.map((one, i) => Math.max(0, one - penalty[i]!));
    const most = table.most(priced);
    let least = most;
    for (let i = 0; i < worth.length; i++) least += caps[i]! * Math.min(worth[i]!, penalty[i]!);
    bound = Math.min(bound, Math.floor(least + 1e-6));
    const used = new Int32Array(worth.length);
    if (limits.stages === 'free' && table.exact) keep(drawTable(problem, table, priced, worth, caps, used));
    const shaken = priced.map(one => one * (0.9 + 0.2 * random()));
    for (const way of pricer.price(round === 0 ? worth : shaken, caps, [0]).ways) keep(way.payload);
    if (climb && round % CLIMB_ROUNDS === CLIMB_ROUNDS - 1) climb.restart();
    const climbed = climb?.climb(CLIMB_STEPS);
    if (climbed) keep(climbed.layout);
    if (limits.endless) break;
    step = movePenalty(penalty, used, caps, worth, least - value, step);
  }
  return { layout: best, value, bound: Math.max(bound, value) };
}

/** One step along what is used too often; returns the next step's share. */
function movePenalty(
  penalty: Float64Array,
  used: Int32Array,
  caps: Int32Array,
  worth: Float64Array,
  gap: number,
  step: number,
): number {
  let norm = 0;
  for (let i = 0; i < caps.length; i++)
    if (used[i]! > caps[i]! || penalty[i]! > 0) norm += (used[i]! - caps[i]!) ** 2;
  if (norm === 0) return step * 0.9;
  const move = (step * Math.max(1, gap)) / norm;
  for (let i = 0; i < caps.length; i++)
    penalty[i] = Math.min(worth[i]!, Math.max(0, penalty[i]! + move * (used[i]! - caps[i]!)));
  return Math.max(0.02, step * 0.98);
}

/** Draws the table's plate; pieces beyond the limit leave a place that is filled with what is left. */
function drawTable(
  problem: CutProblem,
  table: GuillotineTable,
  priced: Float64Array,
  worth: Float64Array,
  caps: Int32Array,
  used: Int32Array,
): Layout {
  const on = problem.stocks[0]!;
  const left = caps.slice();
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const counts = new Map<number, number>();
  const open: Slab[] = [];
  let area = 0;
  table.read<Slab>(
    root,
    priced,
    (slab, kind, at) => {
      const whole = kind === 'cross' ? slab.l : slab.w;
      return parted(slab, kind, Math.min(at - on.kerf, whole), on.kerf);
    },
    (slab, item, lie) => {
      used[item]! += 1;
      if (left[item]! === 0) {
        open.push(slab);
        return;
      }
      left[item]! -= 1;
      counts.set(item, (counts.get(item) ?? 0) + 1);
      area += lie.l * lie.w;
      open.push(...cutTo(slab, item, lie, on.kerf));
    },
  );
  collectFree(root, open);
  const order = problem.items
    .map((_, i) => i)
    .sort((a, b) => worth[b]! / problem.items[b]!.area - worth[a]! / problem.items[a]!.area);
  area += fillSlabs(problem.items, problem.stocks, 0, open, left, order, counts);
  return { stock: 0, slab: root, counts, area };
}

/** Puts a piece into a slab that may be larger; returns what is left of it. */
function cutTo(
  slab: Slab,
  item: number,
  lie: { l: number; w: number; turned: boolean },
  kerf: number,
): Slab[] {
  const [row, beside] = parted(slab, 'cross', lie.l, kerf);
  const [piece, above] = parted(row, 'rip', lie.w, kerf);
  piece.item = item;
  piece.lie = lie;
  return [beside, above].filter(one => one !== undefined);
}

/** Slabs with neither piece nor cut that are not listed yet. */
function collectFree(slab: Slab, open: Slab[]): void {
  if (slab.kept) collectFree(slab.kept, open);
  if (slab.rest) collectFree(slab.rest, open);
  if (!slab.cut && slab.item === undefined && !open.includes(slab)) open.push(slab);
}
