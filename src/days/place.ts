import type { Network, Step } from './network.ts';
import type { WorkingTime } from './working-time.ts';

/** A step that is over: its times are facts and are not moved. */
export interface Fixed {
  start: number;
  end: number;
}

/** Where every step lies, on the wall clock in minutes. */
export interface Placement {
  start: number[];
  end: number[];
  /** Minutes spent making the machine ready, part of start to end. */
  changeOver: number[];
  /** Steps in the order the hands do them. */
  sequence: number[];
  /** Steps begun after the window of the step before them had closed. */
  late: number[];
  /** End of the last step and its wait. */
  finish: number;
  changeOvers: number;
}

/** A window longer than this many days of looking ahead is taken as one the calendar can never keep. */
const LOOK_AHEAD_DAYS = 28;

export interface Shop {
  net: Network;
  time: WorkingTime;
  /** No step that is still to be done starts before this. */
  now: number;
  fixed: ReadonlyMap<number, Fixed>;
}

/**
 * The earliest moment at or after `from` at which the step can start so that its window, and the windows
 * of the steps that follow it, can be kept by the calendar alone. Undefined when there is none in sight.
 * Exact: a later start never lets the follower begin earlier, so the search may jump.
 */
export function firstStart(shop: Shop, step: Step, from: number, minutes = step.minutes): number | undefined {
  const { time, net } = shop;
  const limit = from + LOOK_AHEAD_DAYS * 1440;
  let start = plainStart(time, step, from, minutes);
  const window = step.window;
  if (!window || shop.fixed.has(window.next)) return start;
  const next = net.steps[window.next]!;
  while (start <= limit) {
    const ready = time.end(start, minutes) + step.wait;
    const follow = firstStart(shop, next, ready);
    if (follow === undefined) return undefined;
    if (follow <= ready + window.minutes) return start;
    const latestReady = follow - window.minutes;
    const end = latestReady - step.wait;
    const later = plainStart(time, step, Math.max(start + 1, startEnding(time, step, minutes, end)), minutes);
    start = Math.max(start + 1, later);
  }
  return undefined;
}

function plainStart(time: WorkingTime, step: Step, from: number, minutes: number): number {
  if (minutes === 0) return from;
  return step.whole ? time.openFor(from, minutes) : time.open(from);
}

/** A moment no later than the earliest start that ends at or after `end`. */
function startEnding(time: WorkingTime, step: Step, minutes: number, end: number): number {
  if (step.whole || minutes === 0) return end - minutes;
  return time.wallOf(Math.max(0, time.worked(end) - minutes));
}

interface Pending {
  step: number;
  ready: number;
  latest: number;
}

/**
 * Lays the steps into the calendar in the given order, one pair of hands. A step that would have to idle
 * lets later ones of the order fill the gap; a step that would make an open window close goes after the
 * step that the window waits for. Any order will do: what a step needs is placed before it.
 */
export function place(shop: Shop, order: readonly number[]): Placement {
  const { net, time } = shop;
  const count = net.steps.length;
  const start = new Array<number>(count).fill(-1);
  const end = new Array<number>(count).fill(-1);
  const changeOver = new Array<number>(count).fill(0);
  const placed = new Uint8Array(count);
  /** Steps being placed: two that endanger each other must not wait for each other. */
  const inHand = new Uint8Array(count);
  const loaded = new Array<number>(net.machineOf.length === 0 ? 0 : Math.max(...net.machineOf) + 1).fill(-1);
  const sequence: number[] = [];
  const late: number[] = [];
  let pending: Pending[] = [];
  let cursor = shop.now;

  const settle = (index: number, from: number, to: number): void => {
    const step = net.steps[index]!;
    start[index] = from;
    end[index] = to;
    placed[index] = 1;
    if (step.setUp >= 0) loaded[net.machineOf[step.setUp]!] = step.setUp;
    const awaited = pending.filter(p => p.step === index);
    if (awaited.length > 0) {
      if (awaited.some(p => from > p.latest)) late.push(index);
      pending = pending.filter(p => p.step !== index);
    }
    if (step.window && !placed[step.window.next]) {
      const ready = to + step.wait;
      pending.push({ step: step.window.next, ready, latest: ready + step.window.minutes });
    }
  };

  const done = [...shop.fixed].sort((a, b) => a[1].start - b[1].start || a[0] - b[0]);
  for (const [index, fixed] of done) {
    settle(index, fixed.start, fixed.end);
    sequence.push(index);
  }

  const readyAt = (step: Step): number => {
    let ready = shop.now;
    for (const b of step.needs) ready = Math.max(ready, end[b]! + net.steps[b]!.wait);
    return ready;
  };
  const changeFor = (step: Step): number =>
    step.setUp >= 0 && loaded[net.machineOf[step.setUp]!] !== step.setUp
      ? Math.round(net.setUps[step.setUp]!.changeOver)
      : 0;
  const isFree = (step: Step): boolean => step.needs.every(b => placed[b]);

  /** Start and end of a step if it were next; placing commits nothing yet. */
  const tryNext = (step: Step, after: number): { from: number; to: number; change: number } => {
    const change = changeFor(step);
    const minutes = step.minutes + change;
    const wanted = minutes === 0 ? readyAt(step) : Math.max(after, readyAt(step));
    const from = firstStart(shop, step, wanted, minutes) ?? plainStart(time, step, wanted, minutes);
    return { from, to: minutes === 0 ? from : time.end(from, minutes), change };
  };

  /** The awaited step that would come too late if `index` held the hands until `to`. */
  const endangered = (index: number, to: number): number | undefined => {
    for (const wait of pending) {
      if (wait.step === index || inHand[wait.step]) continue;
      const step = net.steps[wait.step]!;
      const minutes = step.minutes + changeFor(step);
      const then = plainStart(time, step, Math.max(to, wait.ready), minutes);
      const alone = plainStart(time, step, Math.max(cursor, wait.ready), minutes);
      if (then > wait.latest && alone <= wait.latest) return wait.step;
    }
    return undefined;
  };

  const commit = (step: Step, at: { from: number; to: number; change: number }): void => {
    changeOver[step.index] = at.change;
    settle(step.index, at.from, at.to);
    sequence.push(step.index);
    if (at.to > at.from) cursor = at.to;
  };

  /** Fills the hands' time until `until` with steps further down the order, as far as they fit whole. */
  const fill = (position: number, until: number, keep: Step): void => {
    const kept = keep.setUp >= 0 ? net.machineOf[keep.setUp]! : -1;
    for (let k = position; k < order.length && time.open(cursor) < until; k++) {
      const step = net.steps[order[k]!]!;
      if (placed[step.index] || step.index === keep.index || !isFree(step)) continue;
      const spoils =
        step.setUp >= 0 &&
        net.machineOf[step.setUp] === kept &&
        loaded[kept] === keep.setUp &&
        step.setUp !== keep.setUp;
      if (spoils || readyAt(step) >= until) continue;
      const at = tryNext(step, cursor);
      if (at.to <= until && at.from < until && endangered(step.index, at.to) === undefined) commit(step, at);
    }
  };

  const put = (index: number, position: number): void => {
    if (placed[index]) return;
    const step = net.steps[index]!;
    for (const b of step.needs) put(b, position);
    if (placed[index]) return;
    inHand[index] = 1;
    let at = tryNext(step, cursor);
    if (at.to > at.from) {
      for (;;) {
        const first = endangered(index, at.to);
        if (first === undefined) break;
        inHand[first] = 1;
        put(first, position);
        if (placed[index]) return;
        at = tryNext(step, cursor);
      }
      if (at.from > time.open(cursor)) {
        fill(position, at.from, step);
        if (placed[index]) return;
        at = tryNext(step, cursor);
      }
    }
    commit(step, at);
  };

  order.forEach((index, position) => {
    put(index, position);
  });
  let finish = shop.now;
  for (const step of net.steps) finish = Math.max(finish, end[step.index]! + step.wait);
  return {
    start,
    end,
    changeOver,
    sequence,
    late,
    finish,
    changeOvers: changeOver.reduce((a, b) => a + b, 0),
  };
}
