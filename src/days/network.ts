import type { Operation, OperationKind, Spell } from '../results/operations.ts';
import type { Run, SetUp, SetUpPlan } from '../results/setups.ts';

/** One stretch of hands-on work in one machine state: an operation, or its share in one set-up. */
export interface Step {
  index: number;
  operation: number;
  /** Index of the set-up it runs in, -1 for none. */
  setUp: number;
  /** Whole minutes. */
  minutes: number;
  /** May not be broken off: a glue-up, a wet coat. */
  whole: boolean;
  /** Minutes after the hands leave it. */
  wait: number;
  window?: Window;
  /** Steps that must be done, waits included, before this one. */
  needs: number[];
  /** Steps that need this one. */
  following: number[];
}

/** `next` must begin within `minutes` of the end of the step's wait. */
export interface Window {
  next: number;
  minutes: number;
}

export interface Network {
  operations: readonly Operation[];
  setUps: readonly SetUp[];
  /** Index of the machine of each set-up; a machine keeps its state until another set-up takes it. */
  machineOf: readonly number[];
  steps: Step[];
  /** First and last step of each operation; both -1 for one left out. */
  first: number[];
  last: number[];
  /** Operations that wait for each other in a ring and so cannot be planned. */
  ring: number[];
}

export type Reading = 'low' | 'likely' | 'high';

/** Wet glue and wet coats do not wait for the end of lunch. */
const NOT_BROKEN_OFF: readonly OperationKind[] = ['glue up', 'finish'];

export const wholeMinutes = (spell: Spell, reading: Reading): number =>
  spell[reading] <= 0 ? 0 : Math.max(1, Math.round(spell[reading]));

const machineOf = (setUp: SetUp): string => setUp.machineId ?? setUp.machine;

/** Steps and their precedence from operations and the set-ups they run in. */
export function network(operations: readonly Operation[], plan: SetUpPlan, reading: Reading): Network {
  const position = new Map(operations.map((operation, index) => [operation.id, index]));
  const setUps = [...plan.setups].sort((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1));
  const machines = [...new Set(setUps.map(machineOf))];
  const runsIn: number[][] = operations.map(() => []);
  setUps.forEach((setUp, index) => {
    for (const id of new Set(setUp.operations)) {
      const operation = position.get(id);
      if (operation !== undefined) runsIn[operation]!.push(index);
    }
  });

  // A trial cut is made in the set-up it is for, once the machine stands ready.
  for (const [index, operation] of operations.entries()) {
    for (const after of runsIn[index]!.length > 0 ? operation.after : []) {
      const trial = position.get(after.operation);
      if (trial === undefined || operations[trial]!.kind !== 'test piece') continue;
      if (runsIn[trial]!.length === 0) runsIn[trial]!.push(runsIn[index]![0]!);
    }
  }

  const afters = operations.map(operation =>
    [...new Set(operation.after.map(after => position.get(after.operation)))].filter(k => k !== undefined),
  );
  const { order, ring } = inOrder(afters);
  const steps: Step[] = [];
  const first = operations.map(() => -1);
  const last = operations.map(() => -1);
  for (const index of order) {
    const operation = operations[index]!;
    const shares = sharesOf(operation, runsIn[index]!, setUps, wholeMinutes(operation.handsOn, reading));
    shares.forEach((share, k) => {
      const closing = k === shares.length - 1;
      const step: Step = {
        index: steps.length,
        operation: index,
        setUp: share.setUp,
        minutes: share.minutes,
        whole: NOT_BROKEN_OFF.includes(operation.kind),
        wait: closing ? Math.round(operation.wait?.minutes ?? 0) : 0,
        needs: k > 0 ? [steps.length - 1] : afters[index]!.map(a => last[a]!).filter(a => a >= 0),
        following: [],
      };
      if (k === 0) first[index] = step.index;
      last[index] = step.index;
      for (const b of step.needs) steps[b]!.following.push(step.index);
      steps.push(step);
    });
  }
  operations.forEach((operation, index) => {
    const next = operation.window && position.get(operation.window.next);
    if (next === undefined || last[index]! < 0 || first[next]! < 0) return;
    steps[last[index]!]!.window = { next: first[next]!, minutes: Math.round(operation.window!.minutes) };
  });
  return {
    operations,
    setUps,
    machineOf: setUps.map(setUp => machines.indexOf(machineOf(setUp))),
    steps,
    first,
    last,
    ring,
  };
}

/** Operations sorted so that each comes after what it needs; as listed where nothing forces otherwise. */
function inOrder(afters: readonly number[][]): { order: number[]; ring: number[] } {
  const order: number[] = [];
  const state = afters.map(() => 0 as 0 | 1 | 2);
  const open = afters.map(after => new Set(after).size);
  const following: number[][] = afters.map(() => []);
  afters.forEach((after, index) => {
    for (const a of new Set(after)) following[a]!.push(index);
  });
  const queue = afters.flatMap((_, index) => (open[index] === 0 ? [index] : []));
  for (let k = 0; k < queue.length; k++) {
    const index = queue[k]!;
    state[index] = 2;
    order.push(index);
    for (const next of following[index]!) if (--open[next]! === 0) queue.push(next);
  }
  return { order, ring: afters.flatMap((_, index) => (state[index] === 2 ? [] : [index])) };
}

interface Share {
  setUp: number;
  minutes: number;
}

/** What an operation has in a set-up. Sizing names no cuts: there every run of the set-up is the operation's. */
export function runsOf({ cuts }: Operation, { runs }: SetUp): Run[] {
  const own = new Set(cuts.map(cut => `${cut.instance}/${cut.cut}`));
  const made = runs.filter(run => own.has(`${run.instance}/${run.cut}`));
  return made.length > 0 ? made : runs;
}

/** Splits an operation's minutes over its set-ups by the runs each has of its cuts; the sum is kept. */
function sharesOf(
  operation: Operation,
  runsIn: readonly number[],
  setUps: readonly SetUp[],
  minutes: number,
): Share[] {
  if (runsIn.length < 2) return [{ setUp: runsIn[0] ?? -1, minutes }];
  const weights = runsIn.map(
    setUp => runsOf(operation, setUps[setUp]!).reduce((n, run) => n + Math.max(1, run.passes.length), 0) || 1,
  );
  const weight = weights.reduce((a, b) => a + b, 0);
  let given = 0;
  let seen = 0;
  return runsIn.map((setUp, k) => {
    seen += weights[k]!;
    const upTo = Math.round((minutes * seen) / weight);
    const share = { setUp, minutes: upTo - given };
    given = upTo;
    return share;
  });
}
