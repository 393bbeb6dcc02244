/** The numbered rules by which a job is priced. */
import type { Rule } from '../results/source.ts';

const practice = (number: string, says: string, reason: string): Rule => ({
  number,
  says,
  reason,
  source: { text: 'common practice', basis: 'common practice' },
});

export const MON_1 = practice(
  'MON-1',
  'Bought stock is charged whole. Rack stock is charged at its value, less the share that goes back to the rack.',
  'Waste is paid by the piece that makes it; used stock is not free.',
);

export const MON_2 = practice(
  'MON-2',
  'Glue and finish with a price of their own are counted out; abrasives, rags and the rest are a share of the stock.',
  'Small things that nobody counts add up.',
);

export const MON_3 = practice(
  'MON-3',
  'Work is hands-on minutes and change-overs at the hourly rate; waiting is not charged.',
  'The rate carries the overheads; the maker does something else while glue dries.',
);

export const MON_4 = practice(
  'MON-4',
  'Contingency is a share of material and work, margin a share of that with the contingency. Lines the maker states stand as stated.',
  'What cannot be foreseen is carried before profit is counted.',
);

export const MON_6 = practice(
  'MON-6',
  'A change is priced as the new offer less the old, and the work and stock of begun parts that cannot follow. A blank that is still uncut may be cut down; a jointed part that differs is made again.',
  'What is already cut is paid for by the change, not by the maker.',
);

export { MON_5 } from './tax.ts';
