import type { SolverStatus } from '../../results/solver.ts';
import { type SopLimit, type SopResult, solveSop } from './solve-sop.ts';
import { Contradiction, closePrecedence, mustPrecede, type Precedence } from './sop.ts';

/**
 * Set-ups on several machines. A machine keeps its state while another is used, so change-over is counted between
 * set-ups that follow each other on the same machine; precedence binds them all.
 */
export interface MachineOrder {
  count: number;
  machine: readonly string[];
  /** Minutes from set-up i to j of one machine; from -1: as the machine stands at first. */
  change: (from: number, to: number) => number;
  before: readonly (readonly number[])[];
}

export interface OrderResult {
  order: number[];
  value: number;
  bound: number;
  status: SolverStatus;
}

interface Extra {
  before: number;
  after: number;
}

interface Node {
  extras: Extra[];
  parts: Map<string, Part>;
  /** What the machines' own orders cost together; none of it is sure while they contradict each other. */
  value: number;
  bound: number;
}

/** One machine's set-ups in order, and the precedences among them by which it was found. */
interface Part extends SopResult {
  items: readonly number[];
  pairs: readonly (readonly number[])[];
}

/**
 * Each machine is ordered by itself; the orders are laid together. Where they contradict each other through
 * precedence (a ring), one of the stretches in the ring must be turned round: each way is tried, best bound first.
 * The bound is the sum over the machines; it is the value when nothing had to be turned.
 * @throws Contradiction when the precedences themselves contradict each other
 */
export function orderMachines(problem: MachineOrder, limit: SopLimit, nodes = 60): OrderResult {
  const base = closePrecedence(problem.count, problem.before);
  const machines = [...new Set(problem.machine)];
  // What is spent on bounds and exact search is shared by all machines and all nodes.
  const purse = { rounds: limit.rounds * (machines.length + nodes / 4), states: limit.states };
  const careful = { ...limit, purse };
  let best = greedyOrder(problem, base);
  const keep = (order: number[]): number => {
    const value = changeMinutes(problem, order);
    if (value < best.value - 1e-9) best = { order, value };
    return value;
  };
  dive(problem, base, machines, limit, keep);
  const root = makeNode(problem, base, machines, [], careful);
  const open: Node[] = root ? [root] : [];
  // Bounds of nodes whose own machines were not proved: nothing below them can be told apart further.
  let unresolved = root ? Number.POSITIVE_INFINITY : 0;
  for (let looked = 0; open.length > 0 && looked < nodes && !limit.stop?.(); looked++) {
    open.sort((a, b) => a.bound - b.bound);
    if (open[0]!.bound >= best.value - 1e-6 || (looked > 0 && purse.rounds <= 0)) break;
    const node = open.shift()!;
    const laid = layTogether(problem, base, node);
    if (laid.order) {
      keep(laid.order);
      unresolved = Math.min(unresolved, node.bound);
      continue;
    }
    if (laid.turns.length === 0) unresolved = Math.min(unresolved, node.bound);
    for (const turn of laid.turns) {
      const child = makeNode(problem, base, machines, [...node.extras, turn], careful, node);
      if (child) open.push(child);
    }
  }
  const bound = open.reduce((least, node) => Math.min(least, node.bound), Math.min(best.value, unresolved));
  return {
    order: best.order,
    value: best.value,
    bound,
    status: bound >= best.value - 1e-6 ? 'proved best' : 'within',
  };
}

/** Deepest a dive goes: more turns than this in one job have not been seen to help. */
const DEEPEST = 40;
/** Shakes of the local search for each machine at each turn of a dive. */
const DIVING = 100;

/**
 * Turns the cheapest stretch again and again until the machines agree: a good order soon, no bound. It comes before
 * everything that may be stopped, so that what is stopped early is still good.
 */
function dive(
  problem: MachineOrder,
  base: Precedence,
  machines: readonly string[],
  limit: SopLimit,
  keep: (order: number[]) => number,
): void {
  const quick: SopLimit = {
    seed: limit.seed,
    iterations: Math.min(limit.iterations, DIVING),
    rounds: 1,
    width: 1,
    states: 0,
  };
  let node = makeNode(problem, base, machines, [], quick);
  for (let depth = 0; node && depth < DEEPEST; depth++) {
    const here: Node = node;
    const laid = layTogether(problem, base, here);
    if (laid.order) {
      keep(laid.order);
      return;
    }
    node = undefined;
    for (const turn of laid.turns) {
      const child = makeNode(problem, base, machines, [...here.extras, turn], quick, here);
      if (child && (!node || child.value < node.value)) node = child;
    }
  }
}

function makeNode(
  problem: MachineOrder,
  base: Precedence,
  machines: readonly string[],
  extras: Extra[],
  limit: SopLimit,
  parent?: Node,
): Node | undefined {
  const lists = problem.before.map(list => [...list]);
  for (const e of extras) lists[e.after]!.push(e.before);
  let closed = base;
  if (extras.length > 0) {
    try {
      closed = closePrecedence(problem.count, lists);
    } catch (error) {
      if (error instanceof Contradiction) return undefined;
      throw error;
    }
  }
  const parts: Node['parts'] = new Map();
  let bound = 0;
  let value = 0;
  for (const machine of machines) {
    const items = itemsOf(problem, machine);
    const pairs = items.map(v => items.filter(u => mustPrecede(closed, u, v)));
    const same = parent?.parts.get(machine);
    // Precedences only grow, so as many as before are the same as before.
    const unchanged = same?.pairs.every((list, i) => list.length === pairs[i]!.length);
    const part = same && unchanged ? same : { ...solvePart(problem, items, pairs, limit), items, pairs };
    parts.set(machine, part);
    bound += part.bound;
    value += part.value;
  }
  return { extras, parts, value, bound };
}

const itemsOf = (problem: MachineOrder, machine: string): number[] =>
  problem.machine.flatMap((m, i) => (m === machine ? [i] : []));

function solvePart(
  problem: MachineOrder,
  items: readonly number[],
  pairs: readonly (readonly number[])[],
  limit: SopLimit,
): SopResult {
  const n = items.length + 1;
  const cost = new Float64Array(n * n);
  for (let i = 0; i < items.length; i++) {
    cost[i + 1] = problem.change(-1, items[i]!);
    for (let j = 0; j < items.length; j++)
      if (i !== j) cost[(i + 1) * n + j + 1] = problem.change(items[i]!, items[j]!);
  }
  const before = [[], ...pairs.map(list => list.map(u => items.indexOf(u) + 1))];
  const result = solveSop({ n, cost, before }, limit);
  return { ...result, order: result.order.slice(1).map(v => items[v - 1]!) };
}

/** Change-over minutes of an order, machine by machine. */
export function changeMinutes(problem: MachineOrder, order: readonly number[]): number {
  const last = new Map<string, number>();
  let total = 0;
  for (const v of order) {
    const machine = problem.machine[v]!;
    total += problem.change(last.get(machine) ?? -1, v);
    last.set(machine, v);
  }
  return total;
}

/** The orders of the machines as one, staying at a machine while it can go on; or the stretches of a ring. */
function layTogether(
  problem: MachineOrder,
  base: Precedence,
  node: Node,
): { order: number[]; turns: [] } | { order: undefined; turns: Extra[] } {
  const { count } = problem;
  const before: number[][] = Array.from({ length: count }, (_, v) => [...base.prev[v]!]);
  const chain = new Map<number, number>();
  for (const part of node.parts.values())
    for (let i = 0; i + 1 < part.order.length; i++) {
      before[part.order[i + 1]!]!.push(part.order[i]!);
      chain.set(part.order[i]!, part.order[i + 1]!);
    }
  try {
    closePrecedence(count, before);
  } catch (error) {
    if (!(error instanceof Contradiction)) throw error;
    return { order: undefined, turns: stretches(error.loop, base, chain) };
  }
  return { order: steadyOrder(problem.machine, before), turns: [] };
}

/** Runs of a ring that follow a machine's own order; each could be turned round. */
function stretches(loop: readonly number[], base: Precedence, chain: Map<number, number>): Extra[] {
  const n = loop.length;
  const bound = (i: number): boolean => mustPrecede(base, loop[i]!, loop[(i + 1) % n]!);
  let start = 0;
  while (start < n && !bound((start + n - 1) % n)) start++;
  const turns: Extra[] = [];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    if (bound(i)) continue;
    const from = loop[i]!;
    let to = from;
    while (k < n && !bound((start + k) % n) && chain.has(loop[(start + k) % n]!)) {
      to = loop[(start + k + 1) % n]!;
      k++;
    }
    if (to !== from) turns.push({ before: to, after: from });
  }
  return turns;
}

/** A topological order that stays at one machine while it can, and otherwise takes the lowest number. */
export function steadyOrder(machine: readonly string[], before: readonly (readonly number[])[]): number[] {
  const count = machine.length;
  const waiting = before.map(list => new Set(list).size);
  const after: number[][] = Array.from({ length: count }, () => []);
  before.forEach((list, v) => {
    for (const u of new Set(list)) after[u]!.push(v);
  });
  const ready = new Set<number>();
  for (let v = 0; v < count; v++) if (waiting[v] === 0) ready.add(v);
  const order: number[] = [];
  let here: string | undefined;
  while (ready.size > 0) {
    const sorted = [...ready].sort((a, b) => a - b);
    const v = sorted.find(u => machine[u] === here) ?? sorted[0]!;
    ready.delete(v);
    order.push(v);
    here = machine[v];
    for (const u of after[v]!) if (--waiting[u]! === 0) ready.add(u);
  }
  return order;
}

/** Always the cheapest next set-up that precedence allows: a feasible order to fall back on. */
function greedyOrder(problem: MachineOrder, base: Precedence): { order: number[]; value: number } {
  const { count } = problem;
  const waiting = base.prev.map(list => list.length);
  const ready: number[] = [];
  for (let v = 0; v < count; v++) if (waiting[v] === 0) ready.push(v);
  const last = new Map<string, number>();
  const order: number[] = [];
  while (ready.length > 0) {
    let pick = 0;
    let least = Number.POSITIVE_INFINITY;
    ready.forEach((v, i) => {
      const c = problem.change(last.get(problem.machine[v]!) ?? -1, v);
      if (c < least - 1e-9 || (Math.abs(c - least) <= 1e-9 && v < ready[pick]!)) {
        least = c;
        pick = i;
      }
    });
    const v = ready.splice(pick, 1)[0]!;
    order.push(v);
    last.set(problem.machine[v]!, v);
    for (const u of base.next[v]!) if (--waiting[u]! === 0) ready.push(u);
  }
  return { order, value: changeMinutes(problem, order) };
}
