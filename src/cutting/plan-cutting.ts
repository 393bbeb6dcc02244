/** Cutting layouts for a whole piece: what to take from the rack, what to buy, and every cut. */
import type { CuttingPlan, Demand, MaterialPlan, ShoppingLine, StockUse } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { Effort } from '../results/solver.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { leastCost } from './bound.ts';
import { type Component, components, type Unplaced } from './components.ts';
import { collectDemands } from './demands.ts';
import { joined, keptUses, type LaidLayouts, without } from './kept-layouts.ts';
import { improveLengths, isOfLengths } from './lengths/as-lengths.ts';
import { cheapestSet, ordersOf } from './orders.ts';
import { improvePlates } from './plates/solve-plates.ts';
import type { CutItem, Solution } from './problem.ts';
import { withRuns } from './runs.ts';
import { sawn } from './saw.ts';
import { search } from './search.ts';
import { kerfFor, type StockLine, stockLines } from './stock.ts';
import { wasteShare } from './waste.ts';
import { wished } from './wishes.ts';
import { planWords, sectionWords } from './words.ts';

/** Enough for a shop-size job within a few milliseconds. */
export const DEFAULT_EFFORT: Effort = { seed: 1, iterations: 120 };

/** Kinds of blank in a problem that column generation takes on at the usual effort. */
const MOST_ITEMS = 24;
/** Iterations from which sheets and boards go on to column generation: seconds, not milliseconds. */
export const PLATE_EFFORT = 600;
/** Steps of filling plates that go with one iteration: some tens of microseconds. */
const FILL_STEPS = 20_000;

/**
 * Lays out every blank of the piece and every test piece of the operations.
 * Pure, synchronous and deterministic for an effort; `iterations` counts trial layouts of a problem of up
 * to 60 pieces, and fewer are made of larger ones, so that the time stays in hand.
 */
export function planCutting(
  piece: Piece,
  operations: readonly Operation[],
  workshop: Workshop,
  effort: Effort,
  wishes?: CuttingDocument,
): CuttingPlan {
  const demands = wished(collectDemands(piece, operations), piece, wishes);
  return planRest(demands, workshop, effort, wishes?.laid ?? {});
}

/** Plans what the layouts kept by the maker leave to be cut, from the stock they leave; they stay whole. */
export function planRest(
  demands: readonly Demand[],
  workshop: Workshop,
  effort: Effort,
  laid: LaidLayouts,
): CuttingPlan {
  const kept = keptUses(laid, demands);
  if (kept.length === 0) return planDemands(demands, workshop, effort);
  const { rest, shop } = without(kept, demands, workshop);
  return joined(planDemands(rest, shop, effort), kept, workshop);
}

/** The same for demands given as they are. */
export function planDemands(demands: readonly Demand[], workshop: Workshop, effort: Effort): CuttingPlan {
  return cheapestSet(
    planWith(demands, workshop, effort),
    demands,
    workshop,
    (wanted, shop) => planWith(wanted, shop, effort),
    (wanted, shop) => components(wanted, stockLines(shop)).unplaced.length,
  );
}

function planWith(demands: readonly Demand[], workshop: Workshop, effort: Effort): CuttingPlan {
  const lines = stockLines(workshop);
  const joined = withRuns(demands, demand => kerfFor(demand.material, 'sheet', workshop.blades));
  const { problems, unplaced } = components(joined, lines);
  const numbers = new Map<string, number>();
  const materials = problems.map(problem => planProblem(problem, workshop, effort, numbers));
  addUnplaced(materials, unplaced);
  const buy = shopping(materials, lines);
  return {
    materials,
    buy,
    orders: ordersOf({ buy }, workshop),
    cost: materials.reduce((sum, plan) => sum + plan.cost, 0),
  };
}

function planProblem(
  problem: Component,
  workshop: Workshop,
  effort: Effort,
  numbers: Map<string, number>,
): MaterialPlan {
  const pieces = problem.items.reduce((sum, item) => sum + item.demands.length, 0);
  const trials = Math.max(4, Math.ceil(effort.iterations * Math.min(1, 60 / pieces)));
  const least = leastCost(problem, Infinity);
  const { solution, bound } = bettered(problem, search(problem, trials, effort.seed, least), least, effort);
  const status = solution.missing.some(n => n > 0)
    ? ('stopped' as const)
    : solution.cost <= bound
      ? ('proved best' as const)
      : ('within' as const);
  const uses = usesOf(problem, solution, workshop, numbers);
  const unplaced = ranOut(problem, solution);
  const first = problem.items[0]!.demands[0]!;
  return {
    material: first.material,
    section: sections(problem.items),
    kind: first.kind,
    uses,
    unplaced,
    status: uses.length === 0 ? 'none' : status,
    value: solution.cost,
    bound,
    cost: solution.cost,
    waste: wasteShare(uses),
    words: planWords(uses, status, solution.cost, bound, unplaced.length),
    notes: [...problem.notes, ...unmatched(problem, uses)],
  };
}

/** Groups that were to come from one board and could not, in words. */
function unmatched(problem: Component, uses: readonly StockUse[]): string[] {
  const words = new Map<string, Set<string>>();
  for (const { oneBoard, demands } of problem.items)
    if (oneBoard !== undefined)
      words.set(oneBoard, new Set([...(words.get(oneBoard) ?? []), ...demands.map(d => d.instance)]));
  return [...words].flatMap(([word, of]) => {
    const on = uses.filter(use => use.placed.some(placed => of.has(placed.instance))).length;
    return on > 1
      ? [`No one board holds all of ${word}: it comes from ${on}. A longer or wider board would do it.`]
      : [];
  });
}

/**
 * Problems of lengths go on to column generation, which also gives their bound; so do sheets and boards
 * when the effort allows.
 */
function bettered(
  problem: Component,
  solution: Solution,
  least: number,
  effort: Effort,
): { solution: Solution; bound: number } {
  if (solution.missing.some(n => n > 0)) return { solution, bound: 0 };
  const small = problem.items.length <= Math.max(MOST_ITEMS, effort.iterations / 20);
  if (solution.cost <= least || !small || apart(problem)) return { solution, bound: least };
  const nodes = Math.ceil(effort.iterations / 6);
  if (isOfLengths(problem))
    return improveLengths(problem, solution, { seed: effort.seed, nodes, bound: least });
  if (effort.iterations < PLATE_EFFORT) return { solution, bound: least };
  return improvePlates(problem, solution, {
    seed: effort.seed,
    nodes,
    steps: FILL_STEPS * effort.iterations,
    bound: least,
  });
}

/** Boards with defects and blanks that match are laid piece by piece: columns know nothing of either. */
const apart = ({ items, stocks }: Component): boolean =>
  stocks.some(stock => stock.board) || items.some(item => item.oneBoard !== undefined);

/** Demands are handed out in their own order, so that like layouts keep like marks. */
function usesOf(
  problem: Component,
  solution: Solution,
  workshop: Workshop,
  numbers: Map<string, number>,
): StockUse[] {
  const given = problem.items.map(() => 0);
  const take = (item: number): Demand => problem.items[item]!.demands[given[item]!++]!;
  const order = [...solution.layouts].sort((a, b) => a.stock - b.stock || b.area - a.area);
  return order.map(layout => {
    const stock = problem.stocks[layout.stock]!;
    const key = stock.use.from === 'rack' ? stock.item : `buy:${stock.item}`;
    const n = (numbers.get(key) ?? 0) + 1;
    numbers.set(key, n);
    const id = stock.use.from === 'rack' && n === 1 ? key : `${key}:${n}`;
    return sawn(id, stock, layout, take, workshop.leastOffcut);
  });
}

function ranOut(problem: Component, solution: Solution): Unplaced[] {
  return problem.items.flatMap((item, i) => {
    const missing = solution.missing[i]!;
    return item.demands
      .slice(item.demands.length - missing)
      .flatMap(whole => whole.members ?? [whole])
      .map(demand => ({
        demand,
        reason: `The ${demand.material} on the rack runs out before this blank, and no supplier with a price has its section.`,
        mend: `Add ${demand.material} of this section to a supplier, or more of it to the rack.`,
      }));
  });
}

/** Sections of all items, each once. */
const sections = (items: readonly CutItem[]): string =>
  [...new Set(items.flatMap(({ demands: [demand] }) => (demand ? [sectionWords(demand)] : [])))].join(', ');

/** Blanks without stock join the plan of their material, or stand in one of their own. */
function addUnplaced(materials: MaterialPlan[], unplaced: readonly Unplaced[]): void {
  for (const missing of unplaced) {
    const { material, kind } = missing.demand;
    let plan = materials.find(one => one.material === material && one.kind === kind);
    if (!plan) {
      plan = {
        material,
        section: sections([{ demands: [missing.demand], lies: [], area: 0 }]),
        kind,
        uses: [],
        unplaced: [],
        status: 'none',
        value: 0,
        bound: 0,
        cost: 0,
        waste: 0,
        words: '',
        notes: [],
      };
      materials.push(plan);
    }
    plan.unplaced.push(missing);
    plan.words = planWords(plan.uses, plan.status, plan.value, plan.bound, plan.unplaced.length);
  }
}

function shopping(materials: readonly MaterialPlan[], lines: readonly StockLine[]): ShoppingLine[] {
  const counts = new Map<string, number>();
  for (const use of materials.flatMap(plan => plan.uses))
    if (use.supplier !== undefined) {
      const key = `${use.supplier}|${use.item}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  return lines.flatMap(({ stock, supplierName }) => {
    const quantity = counts.get(`${stock.supplier}|${stock.item}`);
    if (quantity === undefined || supplierName === undefined) return [];
    return [
      {
        id: stock.item,
        item: stock.use.label,
        supplier: supplierName,
        quantity,
        unitPrice: stock.cost,
        price: quantity * stock.cost,
      },
    ];
  });
}
