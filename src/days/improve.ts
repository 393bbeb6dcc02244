import type { Effort } from '../results/solver.ts';
import { type Generator, generator } from './generator.ts';
import type { Network } from './network.ts';
import { type Placement, place, type Shop } from './place.ts';

/** Orders to begin with, from rules of the trade of scheduling: each is a priority, lower goes first. */
export function firstOrders(shop: Shop, earliest: readonly number[]): number[][] {
  const { net } = shop;
  const tail = tails(net);
  const listed = net.steps.map(step => step.index);
  const latest = listed.map(k => -(tail[k]! + net.steps[k]!.minutes + net.steps[k]!.wait));
  return [
    // Longest way still to go first: what feeds the long waits is begun early.
    sorted(listed, k => latest[k]!),
    // As soon as it can be, longest way to go among equals.
    sorted(listed, k => earliest[k]! + latest[k]! / 1e6),
    // Least slack first.
    sorted(listed, k => earliest[k]! + latest[k]!),
  ];
}

function sorted(items: readonly number[], key: (k: number) => number): number[] {
  return [...items].sort((a, b) => key(a) - key(b) || a - b);
}

/** Minutes from the end of each step's wait to the end of everything, no breaks and no queues. */
function tails(net: Network): number[] {
  const tail = net.steps.map(() => 0);
  for (let k = net.steps.length - 1; k >= 0; k--) {
    for (const next of net.steps[k]!.following) {
      const step = net.steps[next]!;
      tail[k] = Math.max(tail[k]!, step.minutes + step.wait + tail[next]!);
    }
  }
  return tail;
}

/** Fewer windows missed, then sooner done, then fewer minutes of change-over. */
export function better(a: Placement, b: Placement): number {
  return a.late.length - b.late.length || a.finish - b.finish || a.changeOvers - b.changeOvers;
}

/**
 * The order by latest start: every step pushed back against the finish as far as what follows allows, the
 * hands still one pair (justification, Wiest 1964; Valls, Ballestin and Quintanilla 2005). Taken forward
 * again it closes gaps that the first pass left.
 */
export function pushedBack(shop: Shop, plan: Placement): { order: number[]; latest: number[] } {
  const { net, time } = shop;
  const late = net.steps.map(() => plan.finish);
  const key = net.steps.map(() => plan.finish);
  let cursor = plan.finish;
  for (let k = plan.sequence.length - 1; k >= 0; k--) {
    const index = plan.sequence[k]!;
    const step = net.steps[index]!;
    if (shop.fixed.has(index)) {
      key[index] = plan.start[index]!;
      continue;
    }
    const minutes = step.minutes + plan.changeOver[index]!;
    const until = Math.min(late[index]! - step.wait, minutes > 0 ? cursor : plan.finish);
    const start = minutes > 0 ? time.latestStart(until, minutes, step.whole) : until;
    key[index] = start;
    if (minutes > 0) cursor = Math.min(cursor, start);
    for (const b of step.needs) late[b] = Math.min(late[b]!, start);
  }
  const rank = plan.sequence.reduce<number[]>((ranks, index, k) => {
    ranks[index] = k;
    return ranks;
  }, []);
  const order = [...plan.sequence].sort((a, b) => key[a]! - key[b]! || rank[a]! - rank[b]!);
  return { order, latest: key };
}

/** The best order found within the effort; stops when the bound is reached. */
export function improve(shop: Shop, first: Placement, bound: number, effort: Effort): Placement {
  let best = first;
  let left = effort.iterations;
  const done = (): boolean => left <= 0 || (best.finish <= bound && best.late.length === 0);
  const offer = (order: readonly number[]): boolean => {
    left--;
    const plan = place(shop, order);
    const gain = better(plan, best);
    if (gain <= 0) best = plan;
    return gain < 0;
  };
  for (let gained = true; gained && !done(); ) gained = offer(pushedBack(shop, best).order);
  const random = generator(effort.seed);
  while (!done()) offer(moved(shop, best, random));
  return best;
}

/**
 * The order with one step elsewhere. Mostly one that holds up the finish: later, when it only keeps the hands
 * from what comes next, else earlier. Now and then any step anywhere.
 */
export function moved(shop: Shop, plan: Placement, random: Generator): number[] {
  const order = [...plan.sequence];
  if (order.length < 2) return order;
  const upTo = (below: number): number => Math.floor(random() * below);
  const holding = holdUp(shop, plan);
  const inTheWay = holding.filter((k, at) => {
    const next = holding[at + 1];
    return next !== undefined && !shop.net.steps[next]!.needs.includes(k);
  });
  const how = random();
  if (how < 0.4 && inTheWay.length > 0) {
    const from = order.indexOf(inTheWay[upTo(inTheWay.length)]!);
    return shifted(order, from, from + 1 + upTo(order.length - from - 1));
  }
  if (how < 0.8 && holding.length > 0) {
    const from = order.indexOf(holding[upTo(holding.length)]!);
    return shifted(order, from, upTo(from + 1));
  }
  return shifted(order, upTo(order.length), upTo(order.length));
}

function shifted(order: number[], from: number, to: number): number[] {
  const [step] = order.splice(from, 1);
  order.splice(to, 0, step!);
  return order;
}

/** Steps from the start to the finish each of which begins when the one before it lets it. */
export function holdUp(shop: Shop, plan: Placement): number[] {
  const { net, time } = shop;
  let index = -1;
  let finish = -1;
  for (const step of net.steps) {
    const end = plan.end[step.index]! + step.wait;
    // Of two that end together the later begun is the tighter.
    if (end > finish || (end === finish && plan.start[step.index]! > plan.start[index]!)) {
      finish = end;
      index = step.index;
    }
  }
  const position = new Array<number>(net.steps.length).fill(-1);
  const hands = plan.sequence.filter(k => plan.end[k]! > plan.start[k]!);
  hands.sort((a, b) => plan.start[a]! - plan.start[b]!);
  hands.forEach((k, at) => {
    position[k] = at;
  });
  const chain: number[] = [];
  while (index >= 0 && !shop.fixed.has(index)) {
    chain.push(index);
    const step = net.steps[index]!;
    const start = plan.start[index]!;
    let needed = -1;
    let ready = -1;
    for (const b of step.needs) {
      const at = plan.end[b]! + net.steps[b]!.wait;
      if (at > ready) {
        ready = at;
        needed = b;
      }
    }
    const previous = position[index]! > 0 ? hands[position[index]! - 1]! : -1;
    const handsFree = previous >= 0 ? plan.end[previous]! : -1;
    const byNeed = needed >= 0 && (step.minutes === 0 || time.open(ready) >= start);
    if (byNeed && ready >= handsFree) index = needed;
    else if (previous >= 0 && time.open(handsFree) >= start) index = previous;
    else index = ready >= handsFree ? needed : previous;
  }
  return chain.reverse();
}
