import { expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { buyingChoices } from '../../src/cutting/choices.ts';
import { boughtFigures, landed } from '../../src/cutting/orders.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import type { Supplier } from '../../src/workshop/workshop.ts';
import { demand, forSale, shop, supplier, times } from './shop.ts';

const EFFORT = { seed: 1, iterations: 60 };
const sheet = (id: string, price: number, thickness = 18) =>
  forSale({ id, kind: 'sheet', material: 'birch-plywood', length: 1220, width: 1220, thickness, price });
const panel = { kind: 'sheet' as const, material: 'birch-plywood', length: 1000, width: 1000, thickness: 18 };
const bar = forSale({ id: 'bar', kind: 'bar', material: 'brass', width: 20, thickness: 5, price: 500 });
const seller = (id: string, delivery: number, items: Supplier['items'], minimum?: number): Supplier => ({
  ...supplier(...items),
  id,
  name: id,
  delivery,
  ...(minimum === undefined ? {} : { minimum }),
});
const wanted = [demand(panel), demand({ kind: 'bar', material: 'brass', width: 20, thickness: 5 })];

test('CUT-14: a cheaper sheet is not bought when its carriage costs more than it saves', () => {
  const both = (delivery: number) =>
    shop({
      suppliers: [
        seller('metal', 300, [bar, sheet('near', 4500)]),
        seller('sheets', delivery, [sheet('far', 4000)]),
      ],
    });
  const dear = planDemands(wanted, both(1500), EFFORT);
  expect(dear.orders).toEqual([{ supplier: 'metal', goods: 5000, delivery: 300, shortfall: 0, total: 5300 }]);
  expect(checkDemands(dear, wanted, both(1500))).toEqual([]);
  const cheap = planDemands(wanted, both(400), EFFORT);
  expect(landed(cheap)).toBe(4000 + 400 + 500 + 300);
  expect(cheap.orders.map(order => order.supplier)).toEqual(['metal', 'sheets']);
  cheap.orders[0]!.delivery -= 1;
  expect(checkDemands(cheap, wanted, both(400))).toContain('the order at metal does not add');
});

test('a least order counts as what it makes the goods up to', () => {
  const workshop = shop({
    suppliers: [
      seller('metal', 0, [bar, sheet('near', 4500)]),
      seller('sheets', 0, [sheet('far', 4000)], 6000),
    ],
  });
  const plan = planDemands(wanted, workshop, EFFORT);
  expect(plan.orders.map(order => order.supplier)).toEqual(['metal']);
  const alone = shop({ suppliers: [seller('sheets', 200, [sheet('far', 4000)], 6000)] });
  const only = planDemands([wanted[0]!], alone, EFFORT);
  expect(only.orders[0]).toMatchObject({ goods: 4000, shortfall: 2000, total: 6200 });
  expect(checkDemands(only, [wanted[0]!], alone)).toEqual([]);
});

test('waste is a share of what is bought, and offcuts to keep are valued by their share of its price', () => {
  const workshop = shop({ suppliers: [seller('sheets', 0, [sheet('far', 4000)])] });
  const plan = planDemands([demand({ ...panel, length: 600, width: 1200 })], workshop, EFFORT);
  const [figures] = boughtFigures(plan);
  const use = plan.materials[0]!.uses[0]!;
  const back = use.left.filter(left => left.fate === 'back to the rack');
  const kept = back.reduce((sum, left) => sum + left.length * left.width, 0);
  expect(kept).toBeGreaterThan(0);
  expect(figures!.leftValue).toBe(Math.round((4000 * kept) / 1220 ** 2));
  expect(figures!.waste).toBeCloseTo(1 - (kept + 600 * 1200) / 1220 ** 2, 9);
});

test('the next thickness down is priced, with what follows of it', () => {
  const workshop = shop({ suppliers: [seller('sheets', 0, [sheet('a', 4000), sheet('b', 3000, 15)])] });
  const demands = [demand(panel)];
  const piece = {
    instances: [],
    groups: [],
    joints: [],
    assemblies: [],
    bounds: { min: [0, 0, 0], max: [0, 0, 0] },
    faults: [],
  };
  const plan = planDemands(demands, workshop, EFFORT);
  const choices = buyingChoices({
    piece: piece as never,
    operations: [],
    demands,
    workshop,
    plan,
    effort: EFFORT,
  });
  expect(choices).toMatchObject([
    { what: 'next thinner', from: 18, to: 15, now: 4000, after: 3000, short: 0 },
  ]);
});

test('planed stock stands against sawn stock and the hours it takes to mill', () => {
  const wood = { material: 'ash-european', width: 200, thickness: 34 };
  const workshop = shop({
    rates: { hour: 3000, contingency: 0, margin: 0, tax: { registered: false, rate: 0 }, consumables: 0 },
    suppliers: [
      seller('yard', 0, [
        forSale({ id: 'sawn', kind: 'board', ...wood, price: 3000 }),
        forSale({ id: 'planed', kind: 'planed length', ...wood, price: 5000 }),
      ]),
    ],
  });
  const demands = times(2, { length: 900, width: 80, thickness: 30 });
  const plan = planDemands(demands, workshop, EFFORT);
  const milling = [30, 20, 10].map((likely, i) => ({
    id: `${['face', 'edge', 'thickness'][i]}:ash-european`,
    handsOn: { likely },
  }));
  const piece = { instances: [], groups: [], joints: [] };
  const [planed] = buyingChoices({
    piece: piece as never,
    operations: milling as never,
    demands,
    workshop,
    plan,
    effort: EFFORT,
  });
  // 30 + 20 + 10 minutes at 30 an hour make up 30 of the 20 that planed stock costs more.
  expect(planed).toMatchObject({
    what: 'all planed',
    now: 6000,
    after: 5000,
    milling: { now: 60, after: 0 },
    short: 0,
  });
});
