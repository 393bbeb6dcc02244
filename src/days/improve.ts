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
 * Latest start of each step against the finish, the hands doing them in the order of the plan: how far the
 * whole may be pushed back as it stands.
 */
export function pushedBack(shop: Shop, plan: Placement): number[] {
  const latest = [...plan.start];
  backwards(shop, plan, (free, rank) => free.reduce((a, b) => (rank[b]! > rank[a]! ? b : a)), latest);
  return latest;
}

/**
 * The order by latest start when what may end last goes last, whatever the plan had (justification, J. D. Wiest
 * 1964; V. Valls, F. Ballestin, S. Quintanilla 2005). Taken forward again it closes gaps that the first left.
 */
export function justified(shop: Shop, plan: Placement): number[] {
  const latest = [...plan.start];
  const rank = backwards(
    shop,
    plan,
    (free, ranks, may) =>
      free.reduce((a, b) => (may(b) > may(a) || (may(b) === may(a) && ranks[b]! > ranks[a]!) ? b : a)),
    latest,
  );
  return [...plan.sequence].sort((a, b) => latest[a]! - latest[b]! || rank[a]! - rank[b]!);
}

/** Which of the free steps is laid next from behind; `may` tells how late a step may end. */
type Choice = (free: readonly number[], rank: readonly number[], may: (k: number) => number) => number;

/** Lays the steps from the finish backwards into `latest`; returns the rank of each in the plan. */
function backwards(shop: Shop, plan: Placement, choose: Choice, latest: number[]): number[] {
  const { net, time } = shop;
  const late = net.steps.map(() => plan.finish);
  const open = net.steps.map(step => step.following.length);
  const rank: number[] = [];
  plan.sequence.forEach((index, k) => {
    rank[index] = k;
  });
  let free = net.steps.filter(step => open[step.index] === 0).map(step => step.index);
  let cursor = plan.finish;
  while (free.length > 0) {
    const index = choose(free, rank, k => late[k]! - net.steps[k]!.wait);
    const step = net.steps[index]!;
    free = free.filter(k => k !== index);
    if (!shop.fixed.has(index)) {
      const minutes = step.minutes + plan.changeOver[index]!;
      const until = late[index]! - step.wait;
      latest[index] = minutes > 0 ? time.latestStart(Math.min(until, cursor), minutes, step.whole) : until;
      if (minutes > 0) cursor = Math.min(cursor, latest[index]!);
    }
    for (const b of step.needs) {
      late[b] = Math.min(late[b]!, latest[index]!);
      if (--open[b]! === 0) free.push(b);
    }
  }
  return rank;
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
  for (let gained = true; gained && !done(); ) gained = offer(justified(shop, best));
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
