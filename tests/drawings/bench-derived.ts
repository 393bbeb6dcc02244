import type { Check } from '../../src/results/checks.ts';
import type { CuttingPlan, Placed, SawCut, StockUse } from '../../src/results/cutting.ts';
import type { DayEntry, DayPlan } from '../../src/results/days.ts';
import type { Derived } from '../../src/results/derived.ts';
import { say } from '../../src/results/message.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Price } from '../../src/results/price.ts';
import { mm } from '../../src/results/quantity.ts';
import type { CardDrawing, SetUp, SetUpPlan } from '../../src/results/setups.ts';
import { PIECE } from './bench-piece.ts';

/** A whole result by hand round the bench: small, but with every kind of thing a paper must show. */

const placed = (
  mark: string,
  instance: string,
  x: number,
  y: number,
  length: number,
  width: number,
): Placed => ({
  mark,
  instance,
  x,
  y,
  length,
  width,
  turned: false,
  purpose: mark.startsWith('test') ? 'test piece' : 'part',
});

const cut = (
  order: number,
  kind: SawCut['kind'],
  at: number,
  from: number,
  to: number,
  setting = at,
): SawCut => ({
  order,
  kind,
  at,
  from,
  to,
  setting,
});

const board: StockUse = {
  id: 'board-11',
  item: 'board-11',
  label: 'board 11',
  from: 'rack',
  kind: 'board',
  material: 'ash',
  length: 2900,
  width: 280,
  thickness: 34,
  round: false,
  kerf: 3,
  trim: { end: 40, edge: 0 },
  price: 0,
  placed: [
    placed('E1', 'seat_1', 40, 0, 1400, 132),
    placed('E2', 'seat_2', 40, 135, 1400, 132),
    placed('E3', 'seat_3', 1443, 0, 1400, 132),
    placed('test E', '', 1443, 135, 1400, 132),
  ],
  cuts: [
    cut(1, 'cross', 1440, 0, 280),
    cut(2, 'cross', 2843, 0, 280, 1400),
    cut(3, 'rip', 132, 40, 1440),
    cut(4, 'rip', 132, 1443, 2843),
    cut(5, 'rip', 267, 40, 1440, 132),
    cut(6, 'rip', 267, 1443, 2843, 132),
  ],
  left: [
    { x: 0, y: 0, length: 40, width: 280, fate: 'waste' },
    { x: 2846, y: 0, length: 54, width: 280, fate: 'waste' },
  ],
};

const plank: StockUse = {
  ...board,
  id: 'board-5',
  item: 'board-5',
  label: 'board 5',
  length: 1900,
  width: 215,
  thickness: 52,
  placed: [
    ...[0, 1, 2, 3].map(i =>
      placed(`A${i + 1}`, ['leg', 'leg_x', 'leg_y', 'leg_xy'][i]!, 30, i * 53, 443, 50),
    ),
    placed('B1', 'bearer', 476, 0, 270, 65),
    placed('B2', 'bearer_x', 476, 68, 270, 65),
  ],
  cuts: [
    cut(1, 'cross', 473, 0, 215),
    cut(2, 'cross', 746, 0, 215),
    cut(3, 'rip', 50, 30, 473),
    cut(4, 'rip', 103, 30, 473, 50),
    cut(5, 'rip', 156, 30, 473, 50),
    cut(6, 'rip', 209, 30, 473, 50),
    cut(7, 'rip', 65, 476, 746),
    cut(8, 'rip', 133, 476, 746, 65),
  ],
  left: [
    { x: 0, y: 0, length: 30, width: 215, fate: 'waste' },
    { x: 749, y: 0, length: 1151, width: 215, fate: 'back to the rack' },
  ],
};

const bar: StockUse = {
  ...board,
  id: 'buy:bar-16:1',
  item: 'bar-16',
  label: 'stainless bar 16',
  from: 'buy',
  kind: 'bar',
  material: 'stainless',
  length: 3000,
  width: 16,
  thickness: 16,
  round: true,
  kerf: 1.5,
  trim: { end: 5, edge: 0 },
  price: 3840,
  placed: [placed('G', 'bar', 5, 0, 1188, 16)],
  cuts: [cut(1, 'cross', 1193, 0, 16)],
  left: [{ x: 1194.5, y: 0, length: 1805.5, width: 16, fate: 'back to the rack' }],
};

const sheet: StockUse = {
  ...board,
  id: 'buy:ply-9:1',
  item: 'ply-9',
  label: 'birch plywood 9',
  from: 'buy',
  kind: 'sheet',
  material: 'birch-plywood',
  length: 1250,
  width: 625,
  thickness: 9,
  trim: { end: 10, edge: 10 },
  price: 2150,
  placed: [placed('F', 'shelf', 10, 10, 605, 120)],
  cuts: [
    { ...cut(1, 'rip', 10, 0, 1250), trim: true, setting: 615 },
    cut(2, 'rip', 130, 0, 1250, 120),
    { ...cut(3, 'cross', 10, 10, 130), trim: true, setting: 1240 },
    cut(4, 'cross', 615, 10, 130, 605),
  ],
  left: [
    { x: 0, y: 133, length: 1250, width: 492, fate: 'back to the rack' },
    { x: 618, y: 10, length: 632, width: 120, fate: 'waste' },
  ],
};

const CUTTING: CuttingPlan = {
  materials: [
    {
      material: 'ash',
      section: 'for the seat at 27, legs and rails at 45',
      kind: 'timber',
      uses: [board, plank],
      unplaced: [],
      cost: 4200,
      waste: 0.34,
      words: 'Two boards; one cannot do.',
      notes: [],
      status: 'proved best',
      value: 4200,
      bound: 4200,
    },
    {
      material: 'stainless',
      section: '16 dia',
      kind: 'bar',
      uses: [bar],
      unplaced: [],
      cost: 3840,
      waste: 0.01,
      words: 'One bar; shorter stock cannot do.',
      notes: [],
      status: 'proved best',
      value: 3840,
      bound: 3840,
    },
    {
      material: 'birch-plywood',
      section: '9',
      kind: 'sheet',
      uses: [sheet],
      unplaced: [],
      cost: 2150,
      waste: 0.12,
      words: 'One half sheet. Most of it goes back whole.',
      notes: ['The supplier gives no price for 12.'],
      status: 'within',
      value: 2150,
      bound: 1990,
    },
  ],
  buy: [
    {
      id: 'bar-16',
      item: 'Stainless bar 16 dia, 3000',
      supplier: 'The metal yard',
      quantity: 1,
      unitPrice: 3840,
      price: 3840,
    },
    {
      id: 'ply-9',
      item: '=Birch plywood 9, 1250 \u00d7 625',
      supplier: 'The board yard',
      quantity: 1,
      unitPrice: 2150,
      price: 2150,
    },
  ],
  cost: 10190,
};

export const JIG_CARD: CardDrawing = {
  view: 'end-on jig',
  stations: [
    { at: 0, label: 'fence', strong: false },
    { at: 18.2, label: 'jig', strong: false },
    { at: 39.7, label: 'blade', strong: true },
    { at: 42.7, label: 'kerf', strong: false },
    { at: 50.3, label: 'work', strong: false },
  ],
  work: { width: 32.1, height: 74, offset: 18.2 },
  blade: { at: 39.7, kerf: 3, height: 45, tilt: 0 },
  jig: 18.2,
  seen: 'along the feed, fence on the right',
  zero: 'fence',
  plane: 'section',
  grain: 'up',
  regions: [
    { what: 'fence', a: { from: -13, to: 0 }, h: { from: 0, to: 62 }, label: 'fence' },
    { what: 'jig', a: { from: 0, to: 18.2 }, h: { from: 0, to: 74 }, label: 'upright jig' },
    { what: 'work', a: { from: 18.2, to: 50.3 }, h: { from: 0, to: 74 } },
    { what: 'waste', a: { from: 42.7, to: 50.3 }, h: { from: 0, to: 45 } },
    { what: 'second waste', a: { from: 18.2, to: 28.8 }, h: { from: 0, to: 45 } },
    { what: 'tool', a: { from: 39.7, to: 42.7 }, h: { from: 0, to: 45 } },
  ],
  measures: [
    { from: { a: 50.3, h: 0 }, to: { a: 50.3, h: 45 }, value: 45 },
    { from: { a: 28.8, h: 11 }, to: { a: 39.7, h: 11 }, value: 10.9 },
  ],
  mark: { what: 'face side', a: 18.2, h: 55 },
};

export const LONG_CARD: CardDrawing = {
  view: 'cross-cut',
  stations: [
    { at: 0, label: 'stop', strong: false },
    { at: 1183, label: 'blade', strong: true },
    { at: 1186, label: 'kerf', strong: false },
    { at: 1203, label: 'work', strong: false },
  ],
  work: { width: 1203, height: 32, offset: 0 },
  blade: { at: 1183, kerf: 3, height: 37, tilt: 0 },
  seen: 'facing the sled, stop on the right',
  zero: 'stop',
  plane: 'section',
  grain: 'across',
  regions: [
    { what: 'stop', a: { from: -12, to: 0 }, h: { from: 0, to: 37 }, label: 'stop' },
    { what: 'work', a: { from: 0, to: 1203 }, h: { from: 0, to: 32 } },
    { what: 'waste', a: { from: 1186, to: 1203 }, h: { from: 0, to: 32 } },
    { what: 'tool', a: { from: 1183, to: 1186 }, h: { from: 0, to: 37 } },
  ],
  measures: [{ from: { a: 1203, h: 0 }, to: { a: 1203, h: 37 }, value: 37 }],
};

export const DRILL_CARD: CardDrawing = {
  view: 'drill',
  stations: [
    { at: 0, label: 'fence', strong: false },
    { at: 22.5, label: 'drill centre', strong: true },
    { at: 45, label: 'work', strong: false },
  ],
  work: { width: 45, height: 60, offset: 0 },
  blade: { at: 17, kerf: 11, height: 30, tilt: 0 },
  seen: 'facing the machine, fence behind the work',
  zero: 'fence',
  plane: 'section',
  grain: 'end-on',
  regions: [
    { what: 'fence', a: { from: -13, to: 0 }, h: { from: 0, to: 60 }, label: 'fence' },
    { what: 'work', a: { from: 0, to: 45 }, h: { from: 0, to: 60 } },
    { what: 'tool', a: { from: 17, to: 28 }, h: { from: 30, to: 60 }, label: 'drill' },
  ],
  measures: [{ from: { a: 45, h: 30 }, to: { a: 45, h: 60 }, value: 30 }],
};

const cheeks: SetUp = {
  id: 'cheeks',
  number: 2,
  title: 'Tenon cheeks, lower cross rail',
  machine: 'Table saw',
  tool: 'rip blade, kerf 3.0, upright jig (own, 18.2)',
  method: 'upright in the jig',
  settings: [
    { name: 'fence', value: mm(39.7), how: 'jig 18.2 + 21.5' },
    { name: 'blade height', value: mm(45), how: 'leg, measured 45.0' },
  ],
  wanted: { label: 'tenon', value: mm(10.9), how: 'mortise 11.0 less 0.1' },
  kerfSide: 'in the waste, away from the fence',
  runs: ['rail', 'rail_x'].flatMap(instance =>
    (['end1', 'end2'] as const).map(end => ({
      instance,
      mark: 'C',
      cut: end === 'end1' ? 'rail.2' : 'rail.3',
      end,
      down: end,
      against: 'face' as const,
      passes: ['face', 'turned'],
    })),
  ),
  operations: ['cheeks'],
  testPiece: { mark: 'test C', length: 360, width: 85, thickness: 32, material: 'ash' },
  correction: {
    share: 'half',
    tooBig: 'Too thick: bring the fence closer by half the difference.',
    tooSmall: 'Too thin: away by half.',
  },
  before: ['Shoulders are cut (set-up 1).', 'Rails and test piece came through the thicknesser in one pass.'],
  after: ['Leave the jig set until both end frames are dry fitted.'],
  cautions: [
    'Crown guard off for this cut: clamp the work in the jig, hands high on the jig.',
    'Waste falls free on the left. Leave it until the blade stands.',
    'Both cheeks shift: an error on the fence shows twice in the tenon.',
  ],
  changeOver: 12,
  minutes: 24,
  drawing: JIG_CARD,
};

const crossCut: SetUp = {
  ...cheeks,
  id: 'stretcher-length',
  number: 1,
  title: 'Stretcher to length',
  tool: 'cross-cut blade, kerf 3.0, sled',
  method: 'across on the sled',
  settings: [
    { name: 'stop', value: mm(1183), how: 'shoulder 1183' },
    { name: 'blade height', value: mm(37), how: 'work 32 + 5' },
  ],
  runs: [
    { instance: 'stretcher', mark: 'D', cut: 'end.1', down: 'back', against: 'backEdge', passes: ['cut'] },
  ],
  before: ['One end is square.'],
  after: [],
  cautions: ['Hold the work against the stop until the blade stands.'],
  drawing: LONG_CARD,
};
delete (crossCut as Partial<SetUp>).wanted;
delete (crossCut as Partial<SetUp>).correction;
delete (crossCut as Partial<SetUp>).testPiece;

const SETUPS: SetUpPlan = {
  setups: [crossCut, cheeks],
  partByPart: 74,
  unmade: [],
  status: 'proved best',
  value: 20,
  bound: 20,
};

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
