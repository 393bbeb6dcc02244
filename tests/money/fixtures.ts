import type { PriceInput } from '../../src/money/index.ts';
import {
  commission,
  cuttingPlan,
  dayPlan,
  joint,
  operation,
  part,
  pieceOf,
  setUpPlan,
  stock,
  workshop,
} from '../checks/fixtures.ts';

const piece = pieceOf(
  [part('seat', { size: [1000, 500, 20] }), part('rail', { size: [500, 60, 20] })],
  [
    joint('j', ['seat', 'rail'], {
      glue: [{ between: ['seat', 'rail'], area: 500_000, grain: 'long' }],
    }),
  ],
  [
    {
      id: 'all',
      name: 'The whole',
      instances: ['seat', 'rail'],
      assemblies: [],
      joints: ['j:seat+rail'],
      glue: 'pva',
      dryFit: true,
      order: 1,
    },
  ],
);

/** A small job: one board off the rack, two operations, one change-over, no tax. */
export const job = (given: Partial<PriceInput> = {}): PriceInput => ({
  piece,
  operations: [operation('rip'), operation('plane', { kind: 'prepare' })],
  cutting: cuttingPlan([stock()]),
  setups: setUpPlan(),
  days: dayPlan(),
  commission: commission(),
  workshop: workshop(),
  ...given,
});
