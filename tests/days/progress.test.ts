import { describe, expect, it } from 'vitest';
import { checkDays } from '../../src/days/check-days.ts';
import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { orderOf, type Progress } from '../../src/days/progress.ts';
import type { DayPlan } from '../../src/results/days.ts';
import { operation, setUp, setUps, workshop } from './making.ts';

const MONDAY = '2026-11-23T08:00';
const OPERATIONS = [
  operation('cut', 120),
  operation('glue', 60, { kind: 'glue up', after: ['cut'], wait: 60, what: 'clamp' }),
  operation('drawer', 180),
  operation('flush', 60, { after: ['glue'] }),
  operation('oil', 60, { kind: 'finish', after: ['flush'], wait: 600 }),
  operation('pack', 30, { after: ['oil', 'drawer'] }),
];

const plan = (progress?: Progress, deadline?: string): DayPlan => {
  const asked = { start: MONDAY, ...(progress ? { progress } : {}), ...(deadline ? { deadline } : {}) };
  const made = planDays(OPERATIONS, setUps(), workshop(), asked, FIRST_EFFORT);
  expect(checkDays(OPERATIONS, setUps(), workshop(), asked, made)).toEqual([]);
  return made;
};

const entry = (made: DayPlan, id: string) => made.days.flatMap(d => d.entries).find(e => e.operation === id)!;

describe('planning again after ticks', () => {
  it('leaves what is done where it was done and starts nothing before now', () => {
    const made = plan({
      now: '2026-11-23T15:00',
      done: [
        { operation: 'cut', end: '2026-11-23T11:00', minutes: 180 },
        { operation: 'glue', end: '2026-11-23T12:00', minutes: 60 },
      ],
    });
    expect(entry(made, 'cut')).toMatchObject({
      start: '2026-11-23T08:00',
      end: '2026-11-23T11:00',
      minutes: 180,
      done: true,
    });
    for (const id of ['drawer', 'flush', 'oil', 'pack'])
      expect(entry(made, id).start >= '2026-11-23T15:00').toBe(true);
  });

  it('keeps the old order of the rest when nothing forces otherwise', () => {
    const first = plan();
    const again = plan({
      now: '2026-11-23T10:30',
      done: [{ operation: 'cut', end: '2026-11-23T10:30', minutes: 150 }],
      order: orderOf(first),
    });
    expect(again.moved).toEqual([]);
    expect(orderOf(again).filter(id => id !== 'cut')).toEqual(orderOf(first).filter(id => id !== 'cut'));
  });

  it('keeps even a clumsy order while the deadline holds, and moves little when it does not', () => {
    const order = ['drawer', 'cut', 'glue', 'flush', 'oil', 'pack'];
    const kept = plan({ now: MONDAY, done: [], order }, '2026-12-01');
    expect(kept.moved).toEqual([]);
    // Drawer first: oil on Monday afternoon or Tuesday; either way pack on Tuesday. A day earlier is beyond any order.
    const hopeless = plan({ now: MONDAY, done: [], order }, '2026-11-23');
    expect(hopeless.deadline?.kept).toBe(false);
  });

  it('moves one operation when that saves the deadline', () => {
    const operations = [
      operation('long', 900),
      operation('oil', 30, { kind: 'finish', wait: 3 * 1440 }),
      operation('pack', 30, { after: ['oil'] }),
    ];
    const asked = {
      start: MONDAY,
      deadline: '2026-11-26',
      progress: { now: MONDAY, done: [], order: ['long', 'oil', 'pack'] },
    };
    const made = planDays(operations, setUps(), workshop(), asked, FIRST_EFFORT);
    expect(checkDays(operations, setUps(), workshop(), asked, made)).toEqual([]);
    expect(made.deadline?.kept).toBe(true);
    expect(made.moved).toHaveLength(1);
  });

  it('finds the machine in the state the last tick left it', () => {
    const operations = [operation('a', 10), operation('b', 10)];
    const machine = setUps(setUp(1, 15, ['a', 'b']));
    const progress = {
      now: '2026-11-23T09:00',
      done: [{ operation: 'a', end: '2026-11-23T09:00', minutes: 20 }],
    };
    const made = planDays(operations, machine, workshop(), { start: MONDAY, progress }, FIRST_EFFORT);
    expect(checkDays(operations, machine, workshop(), { start: MONDAY, progress }, made)).toEqual([]);
    expect(entry(made, 'b')).toMatchObject({ start: '2026-11-23T09:00', end: '2026-11-23T09:10' });
  });

  it('takes an operation done after hours as done then', () => {
    const made = plan({
      now: '2026-11-24T08:00',
      done: [{ operation: 'cut', end: '2026-11-23T21:00', minutes: 120 }],
    });
    expect(entry(made, 'cut')).toMatchObject({ start: '2026-11-23T19:00', end: '2026-11-23T21:00' });
  });
});
