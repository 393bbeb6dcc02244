import type { Check } from '../../src/results/checks.ts';
import type { DayEntry, DayPlan } from '../../src/results/days.ts';
import type { Derived } from '../../src/results/derived.ts';
import { say } from '../../src/results/message.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Price } from '../../src/results/price.ts';
import { mm } from '../../src/results/quantity.ts';
import { CUTTING } from './bench-cutting.ts';
import { PIECE } from './bench-piece.ts';
import { SETUPS } from './bench-setups.ts';

/** A whole result by hand round the bench: small, but with every kind of thing a paper must show. */

const operation = (id: string, kind: Operation['kind'], title: string, minutes: number): Operation => ({
  id,
  kind,
  title,
  instances: [],
  cuts: [],
  handsOn: {
    low: minutes * 0.8,
    likely: minutes,
    high: minutes * 1.4,
    source: { text: 'common practice', basis: 'common practice' },
  },
  after: [],
  resources: ['hands'],
  cautions: [],
});

const OPERATIONS: Operation[] = [
  operation('glue-seat', 'glue up', 'Glue up the seat', 80),
  operation('length', 'cut', 'Stretcher to length', 20),
  operation('cheeks', 'cut', 'Tenon cheeks, lower cross rails', 100),
  operation('fit', 'dry fit', 'Dry fit both end frames', 60),
  operation('glue-ends', 'glue up', 'Glue both end frames', 75),
  operation('sand', 'sand', 'Sand to 180', 150),
  {
    ...operation('oil-1', 'finish', 'First coat of oil', 60),
    wait: { minutes: 1080, what: 'dry', source: { text: 'the tin', basis: 'maker' } },
    window: { minutes: 2880, next: 'oil-2', source: { text: 'the tin', basis: 'maker' } },
  },
  operation('oil-2', 'finish', 'Second coat of oil', 60),
];

const entry = (id: string, day: string, from: string, to: string, minutes: number): DayEntry => ({
  operation: id,
  title: OPERATIONS.find(o => o.id === id)!.title,
  start: `${day}T${from}`,
  end: `${day}T${to}`,
  minutes,
  piece: { part: 1, of: 1 },
});

const day = (date: string, entries: DayEntry[]) => ({
  date,
  working: [
    { from: `${date}T08:00`, to: `${date}T12:30` },
    { from: `${date}T13:15`, to: `${date}T17:00` },
  ],
  entries,
});

const DAYS: DayPlan = {
  start: '2026-11-25T08:00',
  days: [
    day('2026-11-25', [
      entry('glue-seat', '2026-11-25', '08:00', '09:20', 80),
      entry('length', '2026-11-25', '09:20', '09:40', 20),
      entry('cheeks', '2026-11-25', '09:40', '11:20', 100),
      entry('fit', '2026-11-25', '13:15', '14:15', 60),
    ]),
    day('2026-11-26', [entry('glue-ends', '2026-11-26', '08:00', '09:15', 75)]),
    day('2026-11-27', [entry('sand', '2026-11-27', '08:00', '10:30', 150)]),
    day('2026-11-30', [entry('oil-1', '2026-11-30', '08:00', '09:00', 60)]),
    day('2026-12-01', [entry('oil-2', '2026-12-01', '08:00', '09:00', 60)]),
  ],
  waits: [
    {
      operation: 'glue-seat',
      what: 'clamp',
      start: '2026-11-25T09:20',
      end: '2026-11-26T09:20',
      meanwhile: ['length', 'cheeks'],
    },
    {
      operation: 'glue-ends',
      what: 'cure',
      start: '2026-11-26T09:15',
      end: '2026-11-27T09:15',
      meanwhile: [],
    },
    { operation: 'oil-1', what: 'dry', start: '2026-11-30T09:00', end: '2026-12-01T03:00', meanwhile: [] },
    { operation: 'oil-2', what: 'cure', start: '2026-12-01T09:00', end: '2026-12-08T09:00', meanwhile: [] },
  ],
  finish: { low: '2026-12-07', likely: '2026-12-08', high: '2026-12-10' },
  handsOnMinutes: { low: 480, likely: 605, high: 840 },
  deadline: { date: '2026-12-11', kept: true, daysLate: 0 },
  critical: ['glue-seat', 'oil-1', 'oil-2'],
  trouble: [],
  status: 'within',
  value: 1100,
  bound: 980,
};

const check = (severity: Check['severity'], title: string, text: string, remedy: string): Check => ({
  check: 'movement',
  subject: 'seat',
  severity,
  title,
  figure: 2.5,
  limit: 1.75,
  unit: 'length',
  source: 'Wood Handbook, Forest Products Laboratory, 2021',
  basis: 'read',
  remedy,
  say: say(text, { move: mm(2.5), room: mm(1.75) }),
});

const CHECKS: Check[] = [
  check(
    'stop',
    'Seat slots are too short',
    'Seat moves {move} at the outer screws; the slot gives {room}.',
    'Make slots 10 long.',
  ),
  check(
    'attend',
    'The bar is trapped',
    'The bar goes in as the end frames close. No later way in.',
    'Keep to the order of work.',
  ),
  {
    ...check(
      'unknown',
      'Moisture of the seat boards',
      'Board 11 has not been measured since it came.',
      'Enter a reading.',
    ),
    figure: null,
    limit: null,
  },
  check('note', 'The bar sags', 'Under 10 kg spread evenly the bar sags {move}.', 'Nothing to do.'),
  check('pass', 'Tenon is a third of the rail', 'Tenon 10.9 in a rail of 32.', ''),
];

const line = (id: string, label: string, amount: number, how: string) => ({
  id,
  label,
  amount,
  how,
  source: { text: 'workshop rates', basis: 'workshop' as const },
  inputs: [],
});

const PRICE: Price = {
  currency: 'GBP',
  lines: [
    line('material', 'Material', 10190, 'ash, bar, sheet'),
    line('hours', 'Hours', 41800, '11 h \u00d7 38.00'),
    line('contingency', 'Contingency', 4159, '8 %'),
    line('margin', 'Margin', 5615, '10 %'),
  ],
  net: 61764,
  tax: 0,
  total: 61764,
  low: 54000,
  high: 72000,
  hours: { low: 480, likely: 660, high: 840 },
};

export const DERIVED: Derived = {
  title: 'Porch bench',
  parameters: [],
  piece: PIECE,
  operations: OPERATIONS,
  cutting: CUTTING,
  setups: SETUPS,
  days: DAYS,
  checks: CHECKS,
  price: PRICE,
  faults: [],
};
