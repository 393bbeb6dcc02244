import { describe, expect, it } from 'vitest';
import { checkDays } from '../../src/days/check-days.ts';
import { type DayOptions, FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import type { DayPlan } from '../../src/results/days.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { SetUpPlan } from '../../src/results/setups.ts';
import type { Workshop } from '../../src/workshop/workshop.ts';
import { operation, setUp, setUps, WEEK, workshop } from './making.ts';

/** 2026-11-23 is a Monday. */
const MONDAY = '2026-11-23T08:00';

function planned(
  operations: Operation[],
  more: Partial<DayOptions> & { shop?: Workshop; setUps?: SetUpPlan } = {},
): DayPlan {
  const { shop = workshop(), setUps: machine = setUps(), ...options } = more;
  const asked = { start: MONDAY, ...options };
  const plan = planDays(operations, machine, shop, asked, FIRST_EFFORT);
  expect(checkDays(operations, machine, shop, asked, plan)).toEqual([]);
  return plan;
}

const times = (plan: DayPlan, id: string): string[] =>
  plan.days.flatMap(day => day.entries.filter(e => e.operation === id).map(e => `${e.start} ${e.end}`));

describe('hands and hours', () => {
  it('splits a long task over the break and the night', () => {
    const plan = planned([operation('plane', 600)]);
    expect(times(plan, 'plane')).toEqual([
      '2026-11-23T08:00 2026-11-23T12:00',
      '2026-11-23T13:00 2026-11-23T17:00',
      '2026-11-24T08:00 2026-11-24T10:00',
    ]);
    expect(plan.status).toBe('proved best');
    expect(plan.value).toBe(600);
  });

  it('does not start a glue-up at 16:30 that would run past 17:00', () => {
    const plan = planned([operation('cut', 450), operation('glue', 45, { kind: 'glue up', after: ['cut'] })]);
    // 450 min end on Monday at 16:30; 45 min do not fit before 17:00.
    expect(times(plan, 'cut').at(-1)).toBe('2026-11-23T13:00 2026-11-23T16:30');
    expect(times(plan, 'glue')).toEqual(['2026-11-24T08:00 2026-11-24T08:45']);
  });

  it('starts a glue-up at 16:00 that ends at 17:00, but not one a minute longer', () => {
    const at = (minutes: number): string[] =>
      times(
        planned([operation('cut', 420), operation('glue', minutes, { kind: 'glue up', after: ['cut'] })]),
        'glue',
      );
    expect(at(60)).toEqual(['2026-11-23T16:00 2026-11-23T17:00']);
    expect(at(61)).toEqual(['2026-11-24T08:00 2026-11-24T09:01']);
  });

  it('tells of a glue-up longer than any span, with a mend', () => {
    const plan = planned([operation('glue', 300, { kind: 'glue up' })]);
    expect(plan.trouble).toEqual([
      {
        operation: 'glue',
        what: 'takes 5 h without a break; the longest span of the week is 4 h',
        mend: 'split it into two glue-ups, or work 1 h longer that day',
      },
    ]);
    expect(plan.status).toBe('within');
  });

  it('keeps days off and weekends free of work', () => {
    const shop = workshop({ ...WEEK, daysOff: ['2026-11-24', '2026-11-25', '2026-11-26', '2026-11-27'] });
    const plan = planned([operation('plane', 500)], { shop });
    expect(plan.days.map(day => day.date)).toEqual(['2026-11-23', '2026-11-30']);
    expect(plan.finish.likely).toBe('2026-11-30');
  });

  it('begins in the middle of a day', () => {
    const plan = planned([operation('plane', 60)], { start: '2026-11-23T11:30' });
    expect(times(plan, 'plane')).toEqual([
      '2026-11-23T11:30 2026-11-23T12:00',
      '2026-11-23T13:00 2026-11-23T13:30',
    ]);
  });
});

describe('waits', () => {
  it('run through the night and are worked through', () => {
    const plan = planned([
      operation('glue', 60, { kind: 'glue up', wait: 60, what: 'clamp' }),
      operation('flush', 30, { after: ['glue'] }),
      operation('other', 60),
    ]);
    expect(times(plan, 'glue')).toEqual(['2026-11-23T08:00 2026-11-23T09:00']);
    expect(times(plan, 'other')).toEqual(['2026-11-23T09:00 2026-11-23T10:00']);
    expect(times(plan, 'flush')).toEqual(['2026-11-23T10:00 2026-11-23T10:30']);
    expect(plan.waits).toEqual([
      {
        operation: 'glue',
        what: 'clamp',
        start: '2026-11-23T09:00',
        end: '2026-11-23T10:00',
        meanwhile: ['other'],
      },
    ]);
    expect(plan.status).toBe('proved best');
  });

  it('count over a weekend', () => {
    const plan = planned(
      [operation('oil', 60, { kind: 'finish', wait: 24 * 60 }), operation('pack', 30, { after: ['oil'] })],
      { start: '2026-11-27T14:00' },
    );
    expect(times(plan, 'pack')).toEqual(['2026-11-30T08:00 2026-11-30T08:30']);
  });

  it('hold an operation without hands-on minutes at any hour', () => {
    const plan = planned([
      operation('oil', 60, { kind: 'finish', wait: 12 * 60 }),
      operation('cure', 0, { kind: 'finish', wait: 24 * 60, what: 'cure', after: ['oil'] }),
      operation('pack', 30, { after: ['cure'] }),
    ]);
    expect(plan.waits[1]).toMatchObject({ start: '2026-11-23T21:00', end: '2026-11-24T21:00' });
    expect(times(plan, 'pack')).toEqual(['2026-11-25T08:00 2026-11-25T08:30']);
  });
});

describe('windows', () => {
  const coats = (window: number): Operation[] => [
    operation('coat 1', 60, { kind: 'finish', wait: 480, window: { minutes: window, next: 'coat 2' } }),
    operation('coat 2', 60, { kind: 'finish', after: ['coat 1'] }),
  ];

  it('hold the first coat back from Friday when the window closes within the weekend', () => {
    const plan = planned(coats(24 * 60), { start: '2026-11-27T14:00' });
    // Friday's coat would be due by Saturday night. Monday's is, 8 h on, due on Tuesday.
    expect(times(plan, 'coat 1')).toEqual(['2026-11-30T08:00 2026-11-30T09:00']);
    expect(times(plan, 'coat 2')).toEqual(['2026-12-01T08:00 2026-12-01T09:00']);
    expect(plan.trouble).toEqual([]);
  });

  it('let Friday stand when the window reaches Monday', () => {
    const plan = planned(coats(60 * 60), { start: '2026-11-27T14:00' });
    expect(times(plan, 'coat 1')).toEqual(['2026-11-27T14:00 2026-11-27T15:00']);
    expect(times(plan, 'coat 2')).toEqual(['2026-11-30T08:00 2026-11-30T09:00']);
  });

  it('look along a chain of coats, not at the next only', () => {
    const chain = [
      operation('coat 1', 30, { kind: 'finish', wait: 840, window: { minutes: 600, next: 'coat 2' } }),
      operation('coat 2', 30, {
        kind: 'finish',
        after: ['coat 1'],
        wait: 840,
        window: { minutes: 600, next: 'coat 3' },
      }),
      operation('coat 3', 30, { kind: 'finish', after: ['coat 2'] }),
    ];
    const plan = planned(chain, { start: '2026-11-26T08:00' });
    // From Thursday, coat 2 would fall on Friday and coat 3 into the weekend: all wait for Monday.
    expect(times(plan, 'coat 1')[0]).toMatch(/^2026-11-30/);
    expect(times(plan, 'coat 3')[0]).toMatch(/^2026-12-02/);
  });

  it('push other work aside rather than miss', () => {
    const plan = planned([
      operation('degrease', 20, { window: { minutes: 60, next: 'bond' } }),
      operation('bond', 30, { kind: 'glue up', after: ['degrease'] }),
      operation('long', 400),
    ]);
    const gap =
      Date.parse(`${times(plan, 'bond')[0]!.slice(0, 16)}Z`) -
      Date.parse(`${times(plan, 'degrease')[0]!.slice(17)}Z`);
    expect(gap).toBeLessThanOrEqual(60 * 60_000);
  });

  it('that no working day allows are told, with a mend', () => {
    // Work ends between 8:00 and 17:00; 12 h on it is night, and the window shuts an hour later.
    const late = [
      operation('coat 1', 60, { kind: 'finish', wait: 720, window: { minutes: 60, next: 'coat 2' } }),
      operation('coat 2', 60, { kind: 'finish', after: ['coat 1'] }),
    ];
    const short = workshop({
      week: { 1: [{ from: 480, to: 720 }], 2: [{ from: 480, to: 720 }] },
      daysOff: [],
    });
    const plan = planned(late, { shop: short });
    expect(plan.trouble).toHaveLength(1);
    expect(plan.trouble[0]).toMatchObject({
      operation: 'coat 1',
      mend: 'work an evening or a day off for it, or abrade before the next coat',
    });
    expect(times(plan, 'coat 2')).toHaveLength(1);
  });
});

describe('set-ups', () => {
  it('are paid for once when their operations can follow each other', () => {
    const operations = [operation('a', 10), operation('b', 10), operation('c', 10), operation('d', 10)];
    const plan = planned(operations, { setUps: setUps(setUp(1, 15, ['a', 'c']), setUp(2, 5, ['b', 'd'])) });
    expect(plan.handsOnMinutes.likely).toBe(60);
    expect(plan.value).toBe(60);
    expect(plan.status).toBe('proved best');
  });

  it('stay made ready on one machine while another is used', () => {
    const operations = [
      operation('a', 10),
      operation('b', 10, { after: ['a'] }),
      operation('c', 10, { after: ['b'] }),
    ];
    const plan = planned(operations, {
      setUps: setUps(setUp(1, 15, ['a', 'c'], 'saw'), setUp(2, 5, ['b'], 'drill')),
    });
    expect(plan.handsOnMinutes.likely).toBe(50);
  });

  it('are paid for twice where the order of work parts them on one machine', () => {
    const operations = [
      operation('a', 10),
      operation('b', 10, { after: ['a'] }),
      operation('c', 10, { after: ['b'] }),
    ];
    const plan = planned(operations, { setUps: setUps(setUp(1, 15, ['a', 'c']), setUp(2, 5, ['b'])) });
    expect(plan.handsOnMinutes.likely).toBe(65);
  });

  it('are made ready for the trial cut, which comes first in them', () => {
    const operations = [
      operation('trial', 4, { kind: 'test piece' }),
      operation('tenons', 20, { after: ['trial'] }),
    ];
    const plan = planned(operations, { setUps: setUps(setUp(1, 12, ['tenons'])) });
    const [trial, tenons] = plan.days[0]!.entries;
    expect(trial).toMatchObject({ operation: 'trial', setUp: 'set-up 1', changeOver: 12, minutes: 16 });
    expect(tenons?.changeOver).toBeUndefined();
  });

  it('share an operation that needs two of them', () => {
    const operations = [operation('a', 20), operation('b', 20)];
    const plan = planned(operations, { setUps: setUps(setUp(1, 6, ['a', 'b']), setUp(2, 4, ['a', 'b'])) });
    expect(plan.value).toBe(50);
    expect(plan.status).toBe('proved best');
  });
});

describe('the plan as a whole', () => {
  it('names what holds up the finish', () => {
    const plan = planned([
      operation('glue', 30, { kind: 'glue up', wait: 1440, what: 'cure' }),
      operation('flush', 30, { after: ['glue'] }),
      operation('pack', 20, { after: ['flush', 'aside'] }),
      operation('aside', 30),
    ]);
    expect(plan.critical).toEqual(['glue', 'flush', 'pack']);
  });

  it('tells the deadline and the band of the finish', () => {
    const plan = planned([operation('plane', 900)], { deadline: '2026-11-23' });
    expect(plan.deadline).toEqual({ date: '2026-11-23', kept: false, daysLate: 1 });
    // 720, 900 and 1350 min of 480 a day: second day, second day, third day.
    expect(plan.finish).toEqual({ low: '2026-11-24', likely: '2026-11-24', high: '2026-11-25' });
    expect(plan.handsOnMinutes).toEqual({ low: 720, likely: 900, high: 1350 });
    expect(planned([operation('plane', 60)], { deadline: '2026-11-23' }).deadline).toEqual({
      date: '2026-11-23',
      kept: true,
      daysLate: 0,
    });
  });

  it('is the same each time', () => {
    const operations = Array.from({ length: 30 }, (_, k) =>
      operation(`o${k}`, 17 + ((k * 37) % 90), {
        after: k > 3 ? [`o${k - 3}`] : [],
        ...(k % 4 === 0 ? { wait: 200 } : {}),
      }),
    );
    expect(JSON.stringify(planned(operations))).toBe(JSON.stringify(planned(operations)));
  });

  it('leaves out a ring of operations and tells of it', () => {
    const ring = [
      operation('a', 10, { after: ['b'] }),
      operation('b', 10, { after: ['a'] }),
      operation('c', 10),
    ];
    const plan = planned(ring);
    expect(plan.trouble.map(t => t.operation)).toEqual(['a', 'b']);
    expect(times(plan, 'c')).toHaveLength(1);
  });

  it('is none with the reason when there are no hours, or no date', () => {
    const none = planned([operation('a', 10)], { shop: workshop({ week: {}, daysOff: [] }) });
    expect(none).toMatchObject({ status: 'none', trouble: [{ what: 'the working week has no hours' }] });
    const undated = planDays(
      [operation('a', 10)],
      setUps(),
      workshop(),
      { start: '2026-02-31' },
      FIRST_EFFORT,
    );
    expect(undated).toMatchObject({ status: 'none', trouble: [{ what: 'the start is no date' }] });
  });

  it('is none for minutes that are no time, naming the operation', () => {
    for (const minutes of [Number.NaN, Number.POSITIVE_INFINITY, -5, 1e12])
      expect(planned([operation('a', 10), operation('odd', minutes)])).toMatchObject({
        status: 'none',
        trouble: [{ operation: 'odd' }],
      });
    expect(planned([operation('odd', 10, { wait: 1e12 })]).status).toBe('none');
    expect(planned([operation('a', 10)], { deadline: '2026-13-01' })).toMatchObject({
      status: 'none',
      trouble: [{ what: 'the deadline is no date' }],
    });
  });

  it('is none when days off leave no hours', () => {
    const never = { week: { 1: [{ from: 480, to: 481 }] }, daysOff: [] };
    expect(planned([operation('a', 5000)], { shop: workshop(never) })).toMatchObject({
      status: 'none',
      trouble: [{ what: 'no working hours are left' }],
    });
  });

  it('is empty and ready at once for no operations', () => {
    expect(planned([])).toMatchObject({ status: 'proved best', value: 0, finish: { likely: '2026-11-23' } });
  });
});
