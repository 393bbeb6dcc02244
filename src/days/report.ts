import type { Day, DayEntry, DayPlan, WaitEntry } from '../results/days.ts';
import { DAY_MINUTES, dayNumber, isoDate, localTime } from './civil.ts';
import { type Network, runsOf } from './network.ts';
import type { Placement, Shop } from './place.ts';

interface Stretch {
  step: number;
  from: number;
  to: number;
}

/** The hands' time in stretches without a break, in order. */
function stretches(shop: Shop, plan: Placement): Stretch[] {
  const all: Stretch[] = [];
  for (const step of shop.net.steps) {
    const from = plan.start[step.index]!;
    const to = plan.end[step.index]!;
    if (to <= from) continue;
    if (shop.fixed.has(step.index)) {
      all.push({ step: step.index, from, to });
      continue;
    }
    for (let at = shop.time.open(from); at < to; ) {
      const until = Math.min(to, shop.time.spanEnd(at));
      all.push({ step: step.index, from: at, to: until });
      at = until < to ? shop.time.open(until) : to;
    }
  }
  return all.sort((a, b) => a.from - b.from || a.step - b.step);
}

export function entriesOf(shop: Shop, plan: Placement): DayEntry[] {
  const { net } = shop;
  const all = stretches(shop, plan);
  const of = new Map<number, number>();
  for (const s of all) {
    const operation = net.steps[s.step]!.operation;
    of.set(operation, (of.get(operation) ?? 0) + 1);
  }
  const seen = new Map<number, number>();
  const changeLeft = [...plan.changeOver];
  return all.map(({ step, from, to }) => {
    const { operation: index, setUp } = net.steps[step]!;
    const operation = net.operations[index]!;
    const part = (seen.get(index) ?? 0) + 1;
    seen.set(index, part);
    const changeOver = Math.min(changeLeft[step]!, to - from);
    changeLeft[step]! -= changeOver;
    return {
      operation: operation.id,
      title: operation.title,
      start: localTime(from),
      end: localTime(to),
      minutes: to - from,
      piece: {
        part,
        of: of.get(index)!,
        ...(setUp >= 0
          ? { marks: [...new Set(runsOf(operation, net.setUps[setUp]!).map(run => run.mark))] }
          : {}),
      },
      ...(setUp >= 0 ? { setUp: net.setUps[setUp]!.id } : {}),
      ...(changeOver > 0 ? { changeOver } : {}),
      ...(shop.fixed.has(step) ? { done: true } : {}),
    };
  });
}

/** Every working day from the first to the finish, and any other day on which something was done. */
export function daysOf(shop: Shop, entries: readonly DayEntry[], start: number, finish: number): Day[] {
  const byDate = new Map<string, DayEntry[]>();
  for (const entry of entries) {
    const date = entry.start.slice(0, 10);
    byDate.set(date, [...(byDate.get(date) ?? []), entry]);
  }
  const first = Math.min(dayNumber(start), ...[...shop.fixed.values()].map(fixed => dayNumber(fixed.start)));
  const days: Day[] = [];
  for (let day = first; day <= dayNumber(finish); day++) {
    const date = isoDate(day * DAY_MINUTES);
    const working = shop.time.spansOf(day).map(s => ({ from: localTime(s.from), to: localTime(s.to) }));
    const own = byDate.get(date) ?? [];
    if (working.length > 0 || own.length > 0) days.push({ date, working, entries: own });
  }
  return days;
}

export function waitsOf(net: Network, plan: Placement, entries: readonly DayEntry[]): WaitEntry[] {
  const waits: WaitEntry[] = [];
  net.operations.forEach((operation, index) => {
    const last = net.last[index]!;
    if (!operation.wait || last < 0 || net.steps[last]!.wait <= 0) return;
    const start = localTime(plan.end[last]!);
    const end = localTime(plan.end[last]! + net.steps[last]!.wait);
    waits.push({
      operation: operation.id,
      what: operation.wait.what,
      start,
      end,
      meanwhile: [
        ...new Set(
          entries
            .filter(e => e.operation !== operation.id && e.start < end && e.end > start)
            .map(e => e.operation),
        ),
      ],
    });
  });
  return waits.sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
}

export function deadlineOf(finish: string, deadline: string): NonNullable<DayPlan['deadline']> {
  const days = (date: string): number =>
    Date.parse(`${date.slice(0, 10)}T00:00:00Z`) / (DAY_MINUTES * 60_000);
  const daysLate = Math.max(0, days(finish) - days(deadline));
  return { date: deadline.slice(0, 10), kept: daysLate === 0, daysLate };
}
