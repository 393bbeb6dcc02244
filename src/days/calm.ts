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
  'test piece',
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
 * while that one can still begin at its latest start. Taken only when nothing is later for it.
 */
export function calmed(shop: Shop, plan: Placement): Placement {
  const next = place(shop, calmOrder(shop, plan));
  const noLater = next.late.length <= plan.late.length && next.finish <= plan.finish;
  return noLater && unrest(shop.net, next) < unrest(shop.net, plan) ? next : plan;
}

function calmOrder(shop: Shop, plan: Placement): number[] {
  const { net, time, fixed } = shop;
  const latest = pushedBack(shop, plan).latest;
  const end = net.steps.map(step => fixed.get(step.index)?.end ?? -1);
  const order: number[] = [...plan.sequence.filter(k => fixed.has(k))];
  let left = plan.sequence.filter(k => !fixed.has(k));
  let cursor = shop.now;
  let last: Step | undefined;
  while (left.length > 0) {
    const free = left.filter(k => net.steps[k]!.needs.every(b => end[b]! >= 0));
    const begins = new Map(free.map(k => [k, begin(k)]));
    const soonest = Math.min(...begins.values());
    const now = free.filter(k => begins.get(k)! <= soonest);
    const pressing = free.reduce((a, b) => (latest[b]! < latest[a]! ? b : a));
    const may = now.filter(
      k => k === pressing || time.end(begins.get(k)!, net.steps[k]!.minutes) <= latest[pressing]!,
    );
    const pick = may.length > 0 ? may.reduce((a, b) => (prefer(b, a) ? b : a)) : pressing;
    const step = net.steps[pick]!;
    end[pick] = step.minutes > 0 ? time.end(begins.get(pick)!, step.minutes) : begins.get(pick)!;
    if (step.minutes > 0) {
      cursor = end[pick]!;
      last = step;
    }
    if (step.window) {
      const closes = end[pick]! + step.wait + step.window.minutes;
      latest[step.window.next] = Math.min(latest[step.window.next]!, closes);
    }
    order.push(pick);
    left = left.filter(k => k !== pick);
  }
  return order;

  function begin(index: number): number {
    const step = net.steps[index]!;
    const ready = step.needs.reduce((most, b) => Math.max(most, end[b]! + net.steps[b]!.wait), shop.now);
    if (step.minutes === 0) return ready;
    const from = Math.max(cursor, ready);
    return step.whole ? time.openFor(from, step.minutes) : time.open(from);
  }

  function prefer(a: number, b: number): boolean {
    const [one, other] = [net.steps[a]!, net.steps[b]!];
    // What leaves the hands free is begun at once.
    if ((one.minutes === 0) !== (other.minutes === 0)) return one.minutes === 0;
    const like = last ? likeness(net, last, one) - likeness(net, last, other) : 0;
    if (like !== 0) return like > 0;
    const stage = (step: Step): number => STAGES.indexOf(net.operations[step.operation]!.kind);
    return stage(one) !== stage(other) ? stage(one) < stage(other) : a < b;
  }
}
