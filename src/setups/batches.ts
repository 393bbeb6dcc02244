import type { Operation } from '../results/operations.ts';
import { SAME } from './figures.ts';
import type { Draft, Task } from './method.ts';

/** What is run: a cut of a part, or a size it is brought to. */
type RunTask = Pick<Task, 'instance' | 'mark'> & { cut: Pick<Task['cut'], 'id' | 'by' | 'stage'> };

/** One draft of one cut on its way into a set-up. */
export interface Step {
  task: RunTask;
  draft: Draft;
  operations: Operation[];
  /** Place among the drafts of its cut. */
  index: number;
}

/** Steps with one machine, tool and setting that nothing forces apart. */
export interface Batch {
  key: string;
  steps: Step[];
  /** Batches that must be done first. */
  before: number[];
}

/** Equal keys can stand in one set-up: machine, method, tool, jig and every figure agree (SET-23). */
export function draftKey(draft: Draft): string {
  const figures = draft.settings.map(s => `${s.name}=${rounded(s.value.value)}`);
  return [
    draft.machine.id,
    draft.title ?? '',
    draft.method,
    draft.tool,
    draft.jig?.id ?? '',
    draft.removal.shape,
    ...draft.removal.moves.map(m => rounded(m)),
    ...(draft.removal.outline ?? []).flatMap(p => p.map(rounded)),
    ...(draft.removal.turned ?? []).flatMap(p => [rounded(p.at), rounded(p.less)]),
    ...figures,
  ].join('|');
}

const rounded = (value: number | string | boolean): string =>
  typeof value === 'number' ? String(Math.round(value / SAME)) : String(value);

/** What must be done before what, over operations (stations) and batches, closed as it grows. */
class Precedence {
  /** Nodes that lie before each node, itself left out. */
  private readonly above: Set<number>[] = [];
  /** Nodes that already lie before some other: only they have anything to hand down. */
  private readonly leads = new Set<number>();

  add(): number {
    this.above.push(new Set());
    return this.above.length - 1;
  }

  isBefore(a: number, b: number): boolean {
    return this.above[b]!.has(a);
  }

  link(before: number, after: number): void {
    if (before === after || this.isBefore(before, after)) return;
    const gained = [before, ...this.above[before]!];
    for (const u of gained) {
      this.above[after]!.add(u);
      this.leads.add(u);
    }
    if (!this.leads.has(after)) return;
    this.above.forEach((set, node) => {
      if (node !== after && set.has(after)) for (const u of gained) set.add(u);
    });
  }

  beforeOf(node: number): ReadonlySet<number> {
    return this.above[node]!;
  }
}

/**
 * Gathers steps into set-ups in the order of work. A step joins a batch of its key unless something that must come
 * before the step itself waits for that batch: then a set-up of its own is opened.
 */
export function gather(steps: readonly Step[], operations: readonly Operation[]): Batch[] {
  const precedence = new Precedence();
  const byOperation = new Map<string, Step[]>();
  for (const step of steps)
    for (const operation of step.operations) {
      const list = byOperation.get(operation.id);
      if (list) list.push(step);
      else byOperation.set(operation.id, [step]);
    }
  const batches: { node: number; batch: Batch }[] = [];
  const open = new Map<string, number[]>();
  const nodeOfStep = new Map<Step, number>();
  const lastOfCut = new Map<string, number>();
  /** Nodes whose end is the end of an operation. */
  const ends = new Map<string, Set<number>>();

  const place = (step: Step, after: readonly number[]): void => {
    const placed = nodeOfStep.get(step);
    if (placed !== undefined) {
      for (const node of after) if (!precedence.isBefore(placed, node)) precedence.link(node, placed);
      return;
    }
    const cut = `${step.task.instance.id} / ${step.task.cut.id}`;
    const own = lastOfCut.get(cut);
    const needs = own === undefined ? after : [...after, own];
    const key = draftKey(step.draft);
    let at = open
      .get(key)
      ?.find(i => needs.every(n => n === batches[i]!.node || !precedence.isBefore(batches[i]!.node, n)));
    if (at === undefined) {
      at = batches.length;
      batches.push({ node: precedence.add(), batch: { key, steps: [], before: [] } });
      open.set(key, [...(open.get(key) ?? []), at]);
    }
    const { node, batch } = batches[at]!;
    batch.steps.push(step);
    for (const n of needs) precedence.link(n, node);
    nodeOfStep.set(step, node);
    lastOfCut.set(cut, node);
  };

  for (const operation of sorted(operations)) {
    const after = operation.after.flatMap(a => [...(ends.get(a.operation) ?? [])]);
    const own = byOperation.get(operation.id);
    const nodes = new Set<number>();
    if (own) {
      for (const step of own) {
        place(step, after);
        nodes.add(nodeOfStep.get(step)!);
      }
    } else {
      const station = precedence.add();
      for (const node of after) precedence.link(node, station);
      nodes.add(station);
    }
    ends.set(operation.id, nodes);
  }
  for (const step of steps) if (!nodeOfStep.has(step)) place(step, []);

  const indexOf = new Map(batches.map(({ node }, i) => [node, i]));
  return batches.map(({ node, batch }) => ({
    ...batch,
    before: [...precedence.beforeOf(node)].flatMap(n => indexOf.get(n) ?? []).sort((a, b) => a - b),
  }));
}

/** Operations so that each follows what it waits for; a ring is broken where it is met (it is a fault elsewhere). */
function sorted(operations: readonly Operation[]): Operation[] {
  const byId = new Map(operations.map(o => [o.id, o]));
  const state = new Map<string, 'open' | 'done'>();
  const order: Operation[] = [];
  const visit = (operation: Operation): void => {
    if (state.has(operation.id)) return;
    state.set(operation.id, 'open');
    for (const after of operation.after) {
      const first = byId.get(after.operation);
      if (first) visit(first);
    }
    state.set(operation.id, 'done');
    order.push(operation);
  };
  for (const operation of operations) visit(operation);
  return order;
}
