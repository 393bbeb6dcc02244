/**
 * Judges a day plan from nothing but its own words and what it was asked: written apart from the planner
 * and sharing none of its arithmetic. Returns a sentence for each thing that does not hold.
 */
import type { DayEntry, DayPlan } from '../results/days.ts';
import type { Operation } from '../results/operations.ts';
import type { SetUpPlan } from '../results/setups.ts';
import type { Workshop } from '../workshop/workshop.ts';

export interface DaysAsked {
  start: string;
  deadline?: string;
  progress?: { now: string; done: { operation: string; end: string; minutes: number }[] };
}

const stamp = (local: string): number =>
  Date.parse(local.length === 10 ? `${local}T00:00Z` : `${local}Z`) / 60_000;

interface Lain {
  entries: DayEntry[];
  from: number;
  to: number;
}

export function checkDays(
  operations: readonly Operation[],
  setUps: SetUpPlan,
  workshop: Workshop,
  asked: DaysAsked,
  plan: DayPlan,
): string[] {
  if (plan.status === 'none') return plan.trouble.length > 0 ? [] : ['no plan and no reason'];
  const told = new Set(plan.trouble.map(t => t.operation));
  const done = new Set(asked.progress?.done.map(d => d.operation) ?? []);
  const entries = plan.days.flatMap(day => day.entries);
  const lain = layOut(entries, plan);
  return [
    ...hours(entries, workshop, asked, done),
    ...oneAtATime(entries),
    ...complete(operations, lain, told, done),
    ...minutesRight(operations, setUps, entries, done),
    ...order(operations, lain, done),
    ...windows(operations, lain, told, done),
    ...whole(operations, lain, told, done, workshop),
    ...changeOvers(setUps, entries, done),
    ...figures(operations, entries, workshop, asked, plan),
  ];
}

/** Times of each operation; one without hands-on minutes lies where its wait begins. */
function layOut(entries: readonly DayEntry[], plan: DayPlan): Map<string, Lain> {
  const lain = new Map<string, Lain>();
  for (const entry of entries) {
    const own = lain.get(entry.operation);
    if (own) {
      own.entries.push(entry);
      own.from = Math.min(own.from, stamp(entry.start));
      own.to = Math.max(own.to, stamp(entry.end));
    } else {
      lain.set(entry.operation, { entries: [entry], from: stamp(entry.start), to: stamp(entry.end) });
    }
  }
  for (const wait of plan.waits)
    if (!lain.has(wait.operation))
      lain.set(wait.operation, { entries: [], from: stamp(wait.start), to: stamp(wait.start) });
  return lain;
}

/** Working minutes between two moments, day by day; overlapping spans of a day count once. */
function workingMinutes(workshop: Workshop, from: number, to: number): number {
  let minutes = 0;
  for (let midnight = Math.floor(from / 1440) * 1440; midnight < to; midnight += 1440) {
    const when = new Date(midnight * 60_000);
    const spans = workshop.calendar.week[when.getUTCDay() === 0 ? 7 : when.getUTCDay()] ?? [];
    if (spans.length === 0 || workshop.calendar.daysOff.includes(when.toISOString().slice(0, 10))) continue;
    let reached = from;
    for (const span of [...spans].sort((a, b) => a.from - b.from)) {
      const begin = Math.max(reached, midnight + span.from);
      const end = Math.min(to, midnight + span.to);
      if (end <= begin) continue;
      minutes += end - begin;
      reached = end;
    }
  }
  return minutes;
}

function hours(
  entries: readonly DayEntry[],
  workshop: Workshop,
  asked: DaysAsked,
  done: ReadonlySet<string>,
): string[] {
  const earliest = stamp(asked.progress?.now ?? asked.start);
  return entries
    .filter(entry => !done.has(entry.operation))
    .flatMap(entry => {
      const [from, to] = [stamp(entry.start), stamp(entry.end)];
      const faults: string[] = [];
      if (from < Math.max(earliest, stamp(asked.start)))
        faults.push(`${entry.operation} begins before the plan does`);
      if (workingMinutes(workshop, from, to) !== to - from)
        faults.push(`${entry.operation} at ${entry.start} lies outside working hours`);
      return faults;
    });
}

function oneAtATime(entries: readonly DayEntry[]): string[] {
  const sorted = entries
    .filter(entry => !entry.done)
    .sort((a, b) => stamp(a.start) - stamp(b.start) || stamp(a.end) - stamp(b.end));
  return sorted
    .slice(1)
    .flatMap((entry, k) =>
      stamp(entry.start) < stamp(sorted[k]!.end)
        ? [`${entry.operation} and ${sorted[k]!.operation} ask for the hands at once`]
        : [],
    );
}

function complete(
  operations: readonly Operation[],
  lain: ReadonlyMap<string, Lain>,
  told: ReadonlySet<string>,
  done: ReadonlySet<string>,
): string[] {
  const known = new Set(operations.map(o => o.id));
  const strange = [...lain.keys()].filter(id => !known.has(id)).map(id => `${id} was not asked for`);
  const missing = operations.filter(
    o =>
      (o.handsOn.likely > 0
        ? !lain.get(o.id)?.entries.length
        : (o.wait?.minutes ?? 0) > 0 && !lain.has(o.id)) &&
      !told.has(o.id) &&
      !done.has(o.id),
  );
  return [...strange, ...missing.map(o => `${o.id} is left out and not told`)];
}

function minutesRight(
  operations: readonly Operation[],
  setUps: SetUpPlan,
  entries: readonly DayEntry[],
  done: ReadonlySet<string>,
): string[] {
  const change = new Map(setUps.setups.map(s => [s.id, Math.round(s.changeOver)]));
  return operations.flatMap(operation => {
    const own = entries.filter(e => e.operation === operation.id);
    if (own.length === 0 || done.has(operation.id)) return [];
    const faults: string[] = [];
    const { likely } = operation.handsOn;
    const asked = likely <= 0 ? 0 : Math.max(1, Math.round(likely));
    const given = own.reduce((sum, e) => sum + e.minutes - (e.changeOver ?? 0), 0);
    if (given !== asked) faults.push(`${operation.id} is given ${given} min of ${asked}`);
    for (const e of own) {
      if (stamp(e.end) - stamp(e.start) !== e.minutes)
        faults.push(`${e.operation} at ${e.start}: end less start is not its minutes`);
      if (
        (e.changeOver ?? 0) > 0 &&
        (e.setUp === undefined || (e.changeOver ?? 0) > (change.get(e.setUp) ?? 0))
      )
        faults.push(`${e.operation} at ${e.start} pays a change-over that no set-up asks`);
    }
    const parts = own.map(e => `${e.piece.part}/${e.piece.of}`);
    const wanted = own.map((_, k) => `${k + 1}/${own.length}`);
    if (parts.join() !== wanted.join())
      faults.push(`${operation.id}: its pieces are numbered ${parts.join()}`);
    return faults;
  });
}

function order(
  operations: readonly Operation[],
  lain: ReadonlyMap<string, Lain>,
  done: ReadonlySet<string>,
): string[] {
  const byId = new Map(operations.map(o => [o.id, o]));
  return operations.flatMap(operation => {
    const own = lain.get(operation.id);
    if (!own || done.has(operation.id)) return [];
    return operation.after.flatMap(after => {
      const first = lain.get(after.operation);
      if (!first) return [];
      const free = first.to + Math.round(byId.get(after.operation)?.wait?.minutes ?? 0);
      return own.from < free
        ? [`${operation.id} begins before ${after.operation} is free (${after.rule.number})`]
        : [];
    });
  });
}

function windows(
  operations: readonly Operation[],
  lain: ReadonlyMap<string, Lain>,
  told: ReadonlySet<string>,
  done: ReadonlySet<string>,
): string[] {
  return operations.flatMap(operation => {
    const [own, next] = [lain.get(operation.id), operation.window && lain.get(operation.window.next)];
    if (!own || !next || !operation.window || done.has(operation.window.next)) return [];
    const closes = own.to + Math.round(operation.wait?.minutes ?? 0) + Math.round(operation.window.minutes);
    return next.from > closes && !told.has(operation.id) && !told.has(operation.window.next)
      ? [`${operation.window.next} begins after its window and nobody is told`]
      : [];
  });
}

function whole(
  operations: readonly Operation[],
  lain: ReadonlyMap<string, Lain>,
  told: ReadonlySet<string>,
  done: ReadonlySet<string>,
  workshop: Workshop,
): string[] {
  return operations
    .filter(o => (o.kind === 'glue up' || o.kind === 'finish') && !told.has(o.id) && !done.has(o.id))
    .flatMap(operation => {
      const own = lain.get(operation.id);
      return own && workingMinutes(workshop, own.from, own.to) !== own.to - own.from
        ? [`${operation.id} is broken off over a break`]
        : [];
    });
}

/** Replays the machines: a set-up is paid for when its machine stands in another, and only then. */
function changeOvers(setUps: SetUpPlan, entries: readonly DayEntry[], done: ReadonlySet<string>): string[] {
  const byId = new Map(setUps.setups.map(s => [s.id, s]));
  const standing = new Map<string, string>();
  const paid = new Map<string, number>();
  const faults: string[] = [];
  let current: string | undefined;
  const settle = (): void => {
    const setUp = current === undefined ? undefined : byId.get(current);
    if (setUp && (paid.get(setUp.id) ?? 0) !== Math.round(setUp.changeOver))
      faults.push(
        `${setUp.id} is made ready in ${paid.get(setUp.id) ?? 0} of ${Math.round(setUp.changeOver)} min`,
      );
    current = undefined;
  };
  const inTime = [...entries].sort((a, b) => stamp(a.start) - stamp(b.start));
  for (const entry of inTime) {
    const setUp = entry.setUp === undefined ? undefined : byId.get(entry.setUp);
    if (!setUp) continue;
    const machine = setUp.machineId ?? setUp.machine;
    if (standing.get(machine) !== setUp.id && !done.has(entry.operation)) {
      settle();
      paid.set(setUp.id, 0);
      current = setUp.id;
    }
    standing.set(machine, setUp.id);
    if ((entry.changeOver ?? 0) > 0 && current !== setUp.id)
      faults.push(`${setUp.id} is paid for again at ${entry.start}`);
    paid.set(setUp.id, (paid.get(setUp.id) ?? 0) + (entry.changeOver ?? 0));
  }
  settle();
  return faults;
}

function figures(
  operations: readonly Operation[],
  entries: readonly DayEntry[],
  workshop: Workshop,
  asked: DaysAsked,
  plan: DayPlan,
): string[] {
  const faults: string[] = [];
  const start = stamp(asked.start);
  const ends = [...entries.map(e => stamp(e.end)), ...plan.waits.map(w => stamp(w.end))];
  const finish = Math.max(stamp(asked.progress?.now ?? asked.start), start, ...ends);
  const day = new Date(finish * 60_000).toISOString().slice(0, 10);
  if (plan.finish.likely !== day) faults.push(`the finish is ${day}, not ${plan.finish.likely}`);
  if (plan.finish.low > plan.finish.likely || plan.finish.high < plan.finish.likely)
    faults.push('the band of the finish crosses');
  const value = workingMinutes(workshop, start, finish);
  if (plan.value !== value) faults.push(`the value is ${value} working minutes, not ${plan.value}`);
  if (plan.bound > plan.value) faults.push('the bound lies above the plan');
  if (plan.status === 'proved best' && plan.bound !== plan.value)
    faults.push('called proved best with a gap');
  for (const wait of plan.waits) {
    const operation = operations.find(o => o.id === wait.operation);
    const own = entries.filter(e => e.operation === wait.operation);
    if (stamp(wait.end) - stamp(wait.start) !== Math.round(operation?.wait?.minutes ?? 0))
      faults.push(`the wait of ${wait.operation} is not as long as asked`);
    if (own.length > 0 && stamp(wait.start) !== Math.max(...own.map(e => stamp(e.end))))
      faults.push(`the wait of ${wait.operation} does not begin when the hands leave it`);
  }
  if (asked.deadline !== undefined) {
    const late = Math.max(0, (stamp(day) - stamp(asked.deadline.slice(0, 10))) / 1440);
    if (plan.deadline?.daysLate !== late || plan.deadline.kept !== (late === 0))
      faults.push(`the deadline is missed by ${late} days and the plan says otherwise`);
  }
  return faults;
}
