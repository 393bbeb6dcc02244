import { teamLift } from '../../src/checks/lifting.ts';
import { tippingLoad, tippingPull } from '../../src/checks/stability.ts';
import { type OutsideCheck, outside } from './check.ts';

export const checks: OutsideCheck[] = [
  outside({
    id: 'tip-chest',
    topic: 'stability',
    inputs: { massKg: 45, armMm: 210, heightMm: 1100 },
    published: 84.3,
    unit: 'N',
    tolerance: 0.1,
    source: 'moment balance about the front feet',
    basis: 'arithmetic',
    ours: ({ massKg, armMm, heightMm }) => tippingPull(massKg, armMm, heightMm),
  }),
  outside({
    id: 'tip-table-edge',
    topic: 'stability',
    inputs: { massKg: 30, halfBaseMm: 250, overhangMm: 200 },
    published: 367.9,
    unit: 'N at the edge',
    tolerance: 0.1,
    source: 'moment balance about the line of the feet',
    basis: 'arithmetic',
    ours: ({ massKg, halfBaseMm, overhangMm }) =>
      tippingLoad(massKg, { centre: halfBaseMm, overhang: overhangMm }, 0),
  }),
  outside({
    id: 'team-lift-50',
    topic: 'handling',
    inputs: { eachKg: 50 },
    published: { two: 66, three: 75 },
    unit: 'kg',
    tolerance: 0.7,
    source: 'https://www.firstsafetytrainingservices.co.uk/post/practical-manual-handling-techniques-1',
    basis: 'printed answer',
    ours: ({ eachKg }) => ({ two: teamLift(eachKg, 2), three: teamLift(eachKg, 3) }),
  }),
];
