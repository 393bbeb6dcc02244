import type { OperationKind } from '../results/operations.ts';
import { pushedBack } from './improve.ts';
import type { Network, Step } from './network.ts';
import { type Placement, place, type Shop } from './place.ts';

/** The way of the work through the shop: of two things that may be done now, the earlier in this list goes first. */
const STAGES: readonly OperationKind[] = [
  'order',
  'break down',
  'rest',
  'prepare',
  'measure',
  'mark out',
  'cut',
  'drill',
  'shape',
  'dry fit',
  'sand',
  'glue up',
  'clean up',
  'fit',
  'finish',
  'assemble',
  'pack',
];

/** A trial cut belongs to its cut. */
function stageOf(net: Network, step: Step): number {
  const { kind } = net.operations[step.operation]!;
  return STAGES.indexOf(kind === 'test piece' ? 'cut' : kind);
}

/** Changes of set-up are counted in minutes, changes of the kind of work at one each. */
export function unrest(net: Network, plan: Placement): number {
  const hands = plan.sequence.filter(k => plan.end[k]! > plan.start[k]!);
  const changes = hands.filter(
    (k, at) => at > 0 && likeness(net, net.steps[hands[at - 1]!]!, net.steps[k]!) < 1,
  );
  return plan.changeOvers + changes.length;
}

/** 3 the same set-up, 2 the same batch, 1 the same kind of work. */
function likeness(net: Network, a: Step, b: Step): number {
  if (a.setUp >= 0 && a.setUp === b.setUp) return 3;
  const [one, other] = [net.operations[a.operation]!, net.operations[b.operation]!];
  if (one.batch !== undefined && one.batch === other.batch) return 2;
  return one.kind === other.kind ? 1 : 0;
}

/**
 * The same plan with like work together, where the finish allows it: a step may go before a more pressing one
 * while that one can still begin at its latest start. Tried from each of the given plans that is as good as the
 * first; taken only when nothing is later for it.
 */
export function calmed(shop: Shop, plan: Placement, others: readonly Placement[]): Placement {
  const good = (p: Placement): boolean => p.late.length <= plan.late.length && p.finish <= plan.finish;
  let calmest = plan;
  for (const from of [plan, ...others.filter(good)]) {
    const next = place(shop, calmOrder(shop, from));
    if (good(next) && unrest(shop.net, next) < unrest(shop.net, calmest)) calmest = next;
  }
  return calmest;
}

function calmOrder(shop: Shop, plan: Placement): number[] {
  const { net, time, fixed } = shop;
  const latest = pushedBack(shop, plan);
  const ready = net.steps.map(() => shop.now);
  const waitsFor = net.steps.map(step => step.needs.length);
  const order: number[] = [];
  let free: number[] = [];
  let cursor = shop.now;
  let last: Step | undefined;
  const loaded = new Map<number, number>();
  const minutesOf = (step: Step): number => {
    if (step.setUp < 0 || loaded.get(net.machineOf[step.setUp]!) === step.setUp) return step.minutes;
    return step.minutes + Math.round(net.setUps[step.setUp]!.changeOver);
  };

  const finish = (index: number, end: number): void => {
    const step = net.steps[index]!;
    order.push(index);
    for (const next of step.following) {
      ready[next] = Math.max(ready[next]!, end + step.wait);
      if (--waitsFor[next]! === 0 && !fixed.has(next)) free.push(next);
    }
    if (step.window) {
      const closes = end + step.wait + step.window.minutes;
      latest[step.window.next] = Math.min(latest[step.window.next]!, closes);
    }
  };
  free = net.steps.filter(step => step.needs.length === 0 && !fixed.has(step.index)).map(s => s.index);
  for (const index of plan.sequence) if (fixed.has(index)) finish(index, fixed.get(index)!.end);

  while (free.length > 0) {
    const opens = time.open(cursor);
    const begins = free.map(k => begin(k, opens));
    const soonest = Math.min(...begins);
    const pressing = free.reduce((a, b) => (latest[b]! < latest[a]! ? b : a));
    const slack = time.worked(latest[pressing]!) - time.worked(soonest);
    const may = free.filter(
      (k, at) => begins[at]! <= soonest && (k === pressing || minutesOf(net.steps[k]!) <= slack),
    );
    const pick = may.length > 0 ? may.reduce((a, b) => (prefer(b, a) ? b : a)) : pressing;
    const step = net.steps[pick]!;
    const from = begins[free.indexOf(pick)]!;
    free = free.filter(k => k !== pick);
    const minutes = minutesOf(step);
    if (step.setUp >= 0) loaded.set(net.machineOf[step.setUp]!, step.setUp);
    if (minutes > 0) {
      cursor = time.end(from, minutes);
      last = step;
    }
    finish(pick, minutes > 0 ? cursor : from);
  }
  return order;

  function begin(index: number, opens: number): number {
    const step = net.steps[index]!;
    if (step.minutes === 0) return ready[index]!;
    if (step.whole) return time.openFor(Math.max(opens, ready[index]!), step.minutes);
    return ready[index]! <= opens ? opens : time.open(ready[index]!);
  }

  function prefer(a: number, b: number): boolean {
    const [one, other] = [net.steps[a]!, net.steps[b]!];
    // What leaves the hands free is begun at once.
    if ((one.minutes === 0) !== (other.minutes === 0)) return one.minutes === 0;
    const like = last ? likeness(net, last, one) - likeness(net, last, other) : 0;
    if (like !== 0) return like > 0;
    const [stage, otherStage] = [stageOf(net, one), stageOf(net, other)];
    return stage !== otherStage ? stage < otherStage : a < b;
  }
}
