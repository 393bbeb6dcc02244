import type { After, Operation } from '../../src/results/operations.ts';
import type { SetUp, SetUpPlan } from '../../src/results/setups.ts';
import type { Rule } from '../../src/results/source.ts';
import type { Calendar, Workshop } from '../../src/workshop/workshop.ts';

export const RULE: Rule = {
  number: 'TEST-1',
  says: 'one before the other',
  reason: 'made for a test',
  source: { text: 'test', basis: 'maker' },
};

const SOURCE = { text: 'made for a test', basis: 'maker' } as const;

export const after = (operation: string): After => ({ operation, rule: RULE, hard: true });

/** An operation with its likely minutes; low is 20 % less and high 50 % more. */
export function operation(
  id: string,
  minutes: number,
  more: Partial<Omit<Operation, 'after' | 'wait' | 'window'>> & {
    after?: string[];
    wait?: number;
    what?: NonNullable<Operation['wait']>['what'];
    window?: { minutes: number; next: string };
  } = {},
): Operation {
  const { after: needs = [], wait, what = 'dry', window, ...rest } = more;
  return {
    id,
    kind: 'cut',
    title: id,
    instances: [],
    cuts: [],
    handsOn: { low: minutes * 0.8, likely: minutes, high: minutes * 1.5, source: SOURCE },
    ...(wait === undefined ? {} : { wait: { minutes: wait, what, source: SOURCE } }),
    ...(window ? { window: { ...window, source: SOURCE } } : {}),
    after: needs.map(after),
    resources: [],
    cautions: [],
    ...rest,
  };
}

/** Monday to Friday, 8 to 12 and 13 to 17. */
export const WEEK: Calendar = {
  week: Object.fromEntries(
    [1, 2, 3, 4, 5].map(day => [
      day,
      [
        { from: 480, to: 720 },
        { from: 780, to: 1020 },
      ],
    ]),
  ),
  daysOff: [],
};

export const workshop = (calendar: Calendar = WEEK): Workshop => ({
  name: 'A shop',
  currency: 'GBP',
  machines: [],
  blades: [],
  cutters: [],
  drills: [],
  jigs: [],
  clamps: [],
  rack: [],
  suppliers: [],
  calendar,
  rates: {
    hour: 3800,
    contingency: 0.1,
    margin: 0.15,
    tax: { registered: false, rate: 0 },
    consumables: 0.05,
  },
  allowances: {
    timber: { length: 20, width: 4, thickness: 3 },
    sheet: { length: 5, width: 5, thickness: 0 },
    bar: { length: 2, width: 0, thickness: 0 },
    tube: { length: 2, width: 0, thickness: 0 },
  },
  adhesives: {},
  finishes: {},
  times: {},
  leastOffcut: { length: 300, width: 50 },
  climate: { temperature: 18, humidity: 55 },
});

export function setUp(number: number, changeOver: number, operations: string[], machine = 'saw'): SetUp {
  return {
    id: `set-up ${number}`,
    number,
    title: `Set-up ${number}`,
    machine,
    tool: 'blade',
    method: 'test',
    settings: [],
    runs: [],
    operations,
    before: [],
    after: [],
    cautions: [],
    changeOver,
    minutes: 0,
    drawing: {
      view: 'hand',
      stations: [],
      work: { width: 0, height: 0, offset: 0 },
      blade: { at: 0, kerf: 0, height: 0, tilt: 0 },
    },
  };
}

export const setUps = (...list: SetUp[]): SetUpPlan => ({
  setups: list,
  partByPart: 0,
  unmade: [],
  status: 'within',
  value: 0,
  bound: 0,
});
