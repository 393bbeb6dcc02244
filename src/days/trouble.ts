import type { DayPlan } from '../results/days.ts';
import { localTime } from './civil.ts';
import type { Network } from './network.ts';
import { firstStart, type Placement, type Shop } from './place.ts';

export type Trouble = DayPlan['trouble'][number];

/** `1 h 30`, `2 d`: spells in the words of the papers. */
function spell(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  if (minutes < 2880)
    return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60}`;
  return `${Math.round(minutes / 144) / 10} d`;
}

/** Glue-ups and coats longer than any unbroken span of the week; they are planned from the start of a span. */
export function tooLong(shop: Shop): Trouble[] {
  const { net, time } = shop;
  return net.steps
    .filter(step => step.whole && !shop.fixed.has(step.index) && step.minutes > time.longestSpan)
    .map(step => ({
      operation: net.operations[step.operation]!.id,
      what: `takes ${spell(step.minutes)} without a break; the longest span of the week is ${spell(time.longestSpan)}`,
      mend:
        net.operations[step.operation]!.kind === 'glue up'
          ? `split it into two glue-ups, or work ${spell(step.minutes - time.longestSpan)} longer that day`
          : `coat it in two lots, or work ${spell(step.minutes - time.longestSpan)} longer that day`,
    }));
}

/**
 * Windows that the calendar can never keep, however the work lies: taken out of the network, and told.
 * What is left can be planned for.
 */
export function dropHopelessWindows(shop: Shop, from: number): Trouble[] {
  const { net } = shop;
  const trouble: Trouble[] = [];
  for (let k = net.steps.length - 1; k >= 0; k--) {
    const step = net.steps[k]!;
    if (!step.window || shop.fixed.has(k) || firstStart(shop, step, from) !== undefined) continue;
    const next = net.operations[net.steps[step.window.next]!.operation]!;
    trouble.push({
      operation: net.operations[step.operation]!.id,
      what: `"${next.title}" is due within ${spell(step.window.minutes)} of the end of the wait; no working day of the calendar allows it`,
      mend: 'work an evening or a day off for it, or abrade before the next coat',
    });
    delete step.window;
  }
  return trouble;
}

/** Windows that this plan misses. */
export function missed(net: Network, plan: Placement): Trouble[] {
  return plan.late.map(index => {
    const closed = Math.min(
      ...net.steps
        .filter(step => step.window?.next === index)
        .map(step => plan.end[step.index]! + step.wait + step.window!.minutes),
    );
    return {
      operation: net.operations[net.steps[index]!.operation]!.id,
      what: `begins ${spell(plan.start[index]! - closed)} after its window closed at ${localTime(closed).replace('T', ' ')}`,
      mend: 'abrade before the next coat, or work longer that day',
    };
  });
}
