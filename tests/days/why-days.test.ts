import { describe, expect, it } from 'vitest';
import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { whyDays } from '../../src/days/why-days.ts';
import { operation, setUp, setUps, workshop } from './making.ts';

const OPERATIONS = [
  operation('glue:frame', 60, { kind: 'glue up', wait: 1440, what: 'cure' }),
  operation('flush', 30, { after: ['glue:frame'] }),
  operation('aside', 10),
];
const PLAN = planDays(
  OPERATIONS,
  setUps(setUp(1, 12, ['aside'])),
  workshop(),
  { start: '2026-11-23T08:00' },
  FIRST_EFFORT,
);

describe('why', () => {
  it('answers for the finish with the chain that holds it up', () => {
    const why = whyDays('days.finish', OPERATIONS, PLAN);
    expect(why?.value).toEqual({ kind: 'date', value: '2026-11-24' });
    expect(why?.inputs.map(i => i.figure)).toEqual([
      'days.start',
      'operations.glue:frame.minutes',
      'operations.glue:frame.wait',
      'operations.flush.minutes',
    ]);
  });

  it('answers for minutes with their source', () => {
    const why = whyDays('operations.flush.minutes', OPERATIONS, PLAN);
    expect(why).toMatchObject({ value: { kind: 'time', value: 30 }, how: 'entered' });
    expect(why?.source).toEqual({ text: 'made for a test', basis: 'maker' });
    expect(whyDays('operations.glue:frame.wait', OPERATIONS, PLAN)?.value?.value).toBe(1440);
  });

  it('adds up the hands-on work, change-overs included', () => {
    const why = whyDays('days.handsOn', OPERATIONS, PLAN);
    expect(why?.value?.value).toBe(112);
    expect(why?.inputs.reduce((sum, i) => sum + Number(i.value?.value), 0)).toBe(112);
  });

  it('has no answer for other figures', () => {
    expect(whyDays('parts.leg.length', OPERATIONS, PLAN)).toBeUndefined();
    expect(whyDays('operations.nothing.minutes', OPERATIONS, PLAN)).toBeUndefined();
    expect(whyDays('operations.flush.wait', OPERATIONS, PLAN)).toBeUndefined();
  });
});
