import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { diagonalMm, pushInMm } from '../../src/operations/squareness.ts';
import { glueTimes } from '../../src/operations/times.ts';
import type { Operation } from '../../src/results/operations.ts';
import { operation, setUps, workshop } from '../days/making.ts';
import { type OutsideCheck, outside } from './check.ts';

/** A shop that never shuts: waits and work run on one clock. */
const ALWAYS = workshop({
  week: Object.fromEntries([1, 2, 3, 4, 5, 6, 7].map(day => [day, [{ from: 0, to: 1440 }]])),
  daysOff: [],
});

/** Minutes from start to finish of jobs with heads and tails on one pair of hands. */
function oneMachine(jobs: readonly (readonly [head: number, work: number, tail: number])[]): {
  finish: number;
  bound: number;
} {
  const operations: Operation[] = jobs.flatMap(([head, work, tail], k) => [
    operation(`head ${k}`, 0, { wait: head, what: 'delivery' }),
    operation(`work ${k}`, work, { after: [`head ${k}`], wait: tail }),
  ]);
  const plan = planDays(operations, setUps(), ALWAYS, { start: '2026-11-23T00:00' }, FIRST_EFFORT);
  return { finish: plan.value, bound: plan.bound };
}

export const checks: OutsideCheck[] = [
  outside({
    id: 'diagonal-square',
    topic: 'geometry',
    inputs: { a: 800, b: 600, one: 1003, other: 997 },
    published: { diagonal: 1000, push: 3 },
    unit: 'mm',
    tolerance: 0.01,
    source:
      'half the difference: http://www.wood-working-hobby.com/2007/04/09/how-to-square-up-a-cabinet-before-gluing-or-nailing-it-together/',
    basis: 'printed rule, arithmetic',
    ours: ({ a, b, one, other }) => ({ diagonal: diagonalMm(a, b), push: pushInMm(one, other) }),
  }),
  outside({
    id: 'one-machine-seven-jobs',
    topic: 'order of work',
    inputs: {
      jobs: [
        [10, 5, 7],
        [13, 6, 26],
        [11, 7, 24],
        [20, 4, 21],
        [30, 3, 8],
        [0, 6, 17],
        [30, 2, 0],
      ],
    },
    published: 50,
    unit: 'min',
    tolerance: 0,
    source:
      'J. Carlier, The one-machine sequencing problem, EJOR 11 (1982) 42-47, seven jobs with heads and tails; all 5040 orders tried give the same best',
    basis: 'memory',
    ours: ({ jobs }) => oneMachine(jobs).finish,
  }),
  outside({
    id: 'glue-pva-clamp-and-day',
    topic: 'glue',
    inputs: { glue: 'pva' },
    published: { clamp: 60, full: 1440 },
    unit: 'min',
    tolerance: 0,
    source:
      'clamped 30 to 60 min for an unstressed joint, 24 h before full stress: https://studylib.net/doc/18296895/new-tech-gluing-guide-f',
    basis: 'read values',
    ours: ({ glue }) => {
      const times = glueTimes(workshop(), glue);
      return { clamp: times?.clamp?.minutes ?? Number.NaN, full: times?.cure?.minutes ?? Number.NaN };
    },
  }),
];
