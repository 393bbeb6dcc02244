import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import type { CuttingPlan, Demand, StockUse } from '../../src/results/cutting.ts';
import type { RackItem, SupplierItem, Workshop } from '../../src/workshop/workshop.ts';
import { demand, forSale, rackItem, shop, supplier } from './shop.ts';

const EFFORT = { seed: 3, iterations: 40 };
const size = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map(n => n / 10);

const timberParts = fc.array(
  fc.record({ length: size(120, 1900), width: size(20, 180), thickness: fc.constantFrom(18, 22, 27, 45) }),
  { maxLength: 14 },
);
const panels = fc.array(
  fc.record({
    length: size(80, 1500),
    width: size(60, 1000),
    thickness: fc.constantFrom(12, 18),
    turn: fc.boolean(),
    across: fc.boolean(),
  }),
  { maxLength: 14 },
);
const barParts = fc.array(fc.record({ length: size(100, 2500) }), { maxLength: 14 });

const timberStock = fc.record({
  kind: fc.constantFrom('board' as const, 'planed length' as const),
  length: size(900, 3600),
  width: size(40, 300),
  thickness: fc.constantFrom(20, 27, 32, 52),
  price: fc.integer({ min: 0, max: 6000 }),
});
const jobs = fc.record({
  kerf: size(0, 6),
  timberParts,
  panels,
  barParts,
  timberBought: fc.array(timberStock, { maxLength: 4 }),
  timberRack: fc.array(
    fc.record({ stock: timberStock, quantity: fc.integer({ min: 1, max: 3 }), measured: fc.boolean() }),
    { maxLength: 5 },
  ),
  sheets: fc.array(
    fc.record({
      length: size(1200, 2500),
      width: size(900, 1250),
      price: fc.integer({ min: 1000, max: 9000 }),
    }),
    { minLength: 1, maxLength: 2 },
  ),
  offcuts: fc.array(
    fc.record({ length: size(200, 1300), width: size(150, 900), value: fc.integer({ min: 0, max: 3000 }) }),
    { maxLength: 3 },
  ),
  bars: fc.array(fc.record({ length: size(1000, 6000), price: fc.integer({ min: 200, max: 3000 }) }), {
    minLength: 1,
    maxLength: 3,
  }),
});
type Job = typeof jobs extends fc.Arbitrary<infer T> ? T : never;

function build(job: Job): { demands: Demand[]; workshop: Workshop } {
  const demands = [
    ...job.timberParts.map(part => demand(part)),
    ...job.panels.map(part =>
      demand({ ...part, across: part.across && !part.turn, kind: 'sheet', material: 'birch-plywood' }),
    ),
    ...job.barParts.map(part => demand({ ...part, kind: 'bar', material: 'brass', width: 20, thickness: 5 })),
  ];
  const bought: SupplierItem[] = [
    ...job.timberBought.map((stock, i) => forSale({ id: `t${i}`, material: 'ash-european', ...stock })),
    ...job.sheets.flatMap((stock, i) =>
      [12, 18].map(thickness =>
        forSale({ id: `s${i}-${thickness}`, kind: 'sheet', material: 'birch-plywood', thickness, ...stock }),
      ),
    ),
    ...job.bars.map((stock, i) =>
      forSale({ id: `b${i}`, kind: 'bar', material: 'brass', width: 20, thickness: 5, ...stock }),
    ),
  ];
  const rack: RackItem[] = [
    ...job.timberRack.map(({ stock: { price, ...stock }, quantity, measured }, i) =>
      rackItem({
        id: `rt${i}`,
        material: 'ash-european',
        ...stock,
        quantity,
        value: price,
        ...(measured ? { measuredThickness: stock.thickness - 0.7 } : {}),
      }),
    ),
    ...job.offcuts.map((stock, i) =>
      rackItem({ id: `ro${i}`, kind: 'offcut', material: 'birch-plywood', thickness: 18, ...stock }),
    ),
  ];
  const blade = (use: 'rip' | 'metal') => ({
    id: use,
    machine: 's',
    name: use,
    kerf: job.kerf,
    diameter: 250,
    use,
  });
  return {
    demands,
    workshop: shop({ blades: [blade('rip'), blade('metal')], rack, suppliers: [supplier(...bought)] }),
  };
}

describe('random jobs with kerf and trim', () => {
  test('every plan is accepted by the checker, and no value lies below its bound', () => {
    fc.assert(
      fc.property(jobs, job => {
        const { demands, workshop } = build(job);
        const plan = planDemands(demands, workshop, EFFORT);
        expect(checkDemands(plan, demands, workshop)).toEqual([]);
        for (const material of plan.materials) expect(material.value).toBeGreaterThanOrEqual(material.bound);
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });

  test('at an effort that generates columns for sheets and boards too', () => {
    fc.assert(
      fc.property(jobs, job => {
        const { demands, workshop } = build(job);
        const plan = planDemands(demands, workshop, { seed: 3, iterations: 600 });
        expect(checkDemands(plan, demands, workshop)).toEqual([]);
        const quick = planDemands(demands, workshop, EFFORT);
        const missing = (one: CuttingPlan): number =>
          one.materials.reduce((n, plan) => n + plan.unplaced.length, 0);
        if (missing(plan) === missing(quick)) expect(plan.cost).toBeLessThanOrEqual(quick.cost);
      }),
      { seed: 8, numRuns: 8 },
    );
  });

  test('the same job gives the same plan', () => {
    fc.assert(
      fc.property(jobs, job => {
        const { demands, workshop } = build(job);
        expect(planDemands(demands, workshop, EFFORT)).toEqual(planDemands(demands, workshop, EFFORT));
      }),
      { seed: 5, numRuns: 25 },
    );
  });

  test('more trials never cost more', () => {
    fc.assert(
      fc.property(jobs, job => {
        const { demands, workshop } = build(job);
        const few = planDemands(demands, workshop, { seed: 3, iterations: 10 });
        const many = planDemands(demands, workshop, { seed: 3, iterations: 120 });
        const missing = (plan: CuttingPlan): number =>
          plan.materials.reduce((n, one) => n + one.unplaced.length, 0);
        expect(missing(many)).toBeLessThanOrEqual(missing(few));
        if (missing(many) === missing(few)) expect(many.cost).toBeLessThanOrEqual(few.cost);
      }),
      { seed: 6, numRuns: 25 },
    );
  });
});

/** Ways to spoil a piece of stock's layout; each returns false when this use has nothing to spoil. */
const SABOTAGE: Record<string, (use: StockUse, plan: CuttingPlan) => boolean> = {
  'moves a part': use => shift(use, 'x', 0.5),
  'moves a part sideways': use => shift(use, 'y', 0.5),
  'makes a part longer': use => shift(use, 'length', 1),
  'makes a part narrower': use => shift(use, 'width', -1),
  'drops a part': use => use.placed.pop() !== undefined,
  'places a part twice': use => {
    if (use.placed[0]) use.placed.push({ ...use.placed[0] });
    return use.placed.length > 0;
  },
  'drops a cut': use => use.cuts.pop() !== undefined,
  'moves a cut': use => {
    if (use.cuts[0]) use.cuts[0].at += 0.5;
    return use.cuts.length > 0;
  },
  'sets the fence wrong': use => {
    if (use.cuts[0]) use.cuts[0].setting += 0.5;
    return use.cuts.length > 0;
  },
  'cuts in another order': use => {
    if (use.cuts.length > 1) use.cuts.reverse();
    return use.cuts.length > 1;
  },
  'forgets the kerf': use => {
    use.kerf += 0.7;
    return true;
  },
  'makes a leftover larger': use => {
    if (use.left[0]) use.left[0].length += 2;
    return use.left.length > 0;
  },
  'invents a leftover': use => {
    use.left.push({ x: 0, y: 0, length: 1, width: 1, fate: 'waste' });
    return true;
  },
  'turns the grain': use => {
    const part = use.placed.find(one => Math.abs(one.length - one.width) > 5);
    if (part) part.turned = !part.turned;
    return part !== undefined && use.kind === 'sheet';
  },
  'lengthens the stock': use => {
    use.length += 10;
    return true;
  },
  'makes it cheaper': use => {
    use.price -= 1;
    return true;
  },
  'hides the waste': (_, plan) => {
    plan.materials[0]!.waste += 0.01;
    return true;
  },
  'claims too high a bound': (_, plan) => {
    plan.materials[0]!.bound = plan.materials[0]!.value + 1;
    return true;
  },
  'buys one more': (_, plan) => {
    if (plan.buy[0]) plan.buy[0].quantity += 1;
    return plan.buy.length > 0;
  },
  'sends a leftover the other way': use => {
    const left = use.left[0];
    if (left) left.fate = left.fate === 'waste' ? 'back to the rack' : 'waste';
    return left !== undefined;
  },
};

function shift(use: StockUse, key: 'x' | 'y' | 'length' | 'width', by: number): boolean {
  const part = use.placed[0];
  if (part) part[key] += by;
  return part !== undefined;
}

describe('a sabotaged plan is always caught', () => {
  test.each(Object.entries(SABOTAGE))('%s', (_, spoil) => {
    let spoiled = 0;
    fc.assert(
      fc.property(jobs, fc.nat(), (job, pick) => {
        const { demands, workshop } = build(job);
        const plan = planDemands(demands, workshop, { seed: 3, iterations: 4 });
        const uses = plan.materials.flatMap(material => material.uses);
        const use = uses[pick % Math.max(1, uses.length)];
        fc.pre(use !== undefined);
        if (!spoil(use!, plan)) return;
        spoiled += 1;
        expect(checkDemands(plan, demands, workshop)).not.toEqual([]);
      }),
      { seed: 77, numRuns: 40 },
    );
    expect(spoiled).toBeGreaterThan(5);
  });
});
