import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import { demand, forSale, shop, supplier } from './shop.ts';

const EFFORT = { seed: 1, iterations: 30 };
const workshop = shop({
  suppliers: [
    supplier(
      forSale({
        id: 'ply',
        kind: 'sheet',
        material: 'birch-plywood',
        length: 2440,
        width: 1220,
        thickness: 18,
      }),
    ),
  ],
});
const sheet = { kind: 'sheet' as const, material: 'birch-plywood', thickness: 18 };
const front = (
  at: number,
  length: number,
  width: number,
  lie: 'end to end' | 'side by side',
  across = false,
) => demand({ ...sheet, length, width, across, run: { word: 'fronts', at, lie } });

test('CUT-16: a row of fronts comes end to end from one strip, in its order and a kerf apart', () => {
  const fronts = [
    front(2, 500, 200, 'end to end'),
    front(0, 400, 200, 'end to end'),
    front(1, 450, 180, 'end to end'),
  ];
  const plan = planDemands(fronts, workshop, EFFORT);
  expect(checkDemands(plan, fronts, workshop)).toEqual([]);
  const placed = [...plan.materials[0]!.uses[0]!.placed].sort((a, b) => a.x - b.x);
  expect(placed.map(one => one.length)).toEqual([400, 450, 500]);
  expect(placed[1]!.x - placed[0]!.x).toBeCloseTo(400 + 3.2, 6);
  const [a, b] = plan.materials[0]!.uses[0]!.placed;
  [a!.instance, b!.instance] = [b!.instance, a!.instance];
  expect(checkDemands(plan, fronts, workshop).some(words => words.includes('does not follow on'))).toBe(true);
});

test('a run longer than any sheet is named part by part, and the rest is planned', () => {
  const fronts = [0, 1, 2].map(at => front(at, 900, 200, 'end to end'));
  const other = demand({ ...sheet, length: 300, width: 300 });
  const plan = planDemands([...fronts, other], workshop, EFFORT);
  expect(plan.materials.flatMap(one => one.unplaced).map(one => one.demand.mark)).toEqual(
    fronts.map(one => one.mark),
  );
  expect(plan.materials.flatMap(one => one.uses).flatMap(use => use.placed)).toHaveLength(1);
  expect(checkDemands(plan, [...fronts, other], workshop)).toEqual([]);
});

test('random runs among other parts: every plan is accepted', () => {
  const size = (least: number, most: number) => fc.integer({ min: least, max: most });
  let placed = 0;
  fc.assert(
    fc.property(
      fc.array(fc.record({ length: size(60, 400), width: size(60, 300) }), { minLength: 2, maxLength: 4 }),
      fc.array(fc.record({ length: size(60, 900), width: size(60, 500) }), { maxLength: 8 }),
      fc.constantFrom('end to end' as const, 'side by side' as const),
      fc.boolean(),
      (run, others, lie, across) => {
        const demands = [
          ...run.map((one, at) => front(at, one.length, one.width, lie, across)),
          ...others.map(one => demand({ ...sheet, ...one })),
        ];
        const plan = planDemands(demands, workshop, EFFORT);
        expect(checkDemands(plan, demands, workshop)).toEqual([]);
        placed += plan.materials.flatMap(one => one.uses).flatMap(use => use.placed).length;
      },
    ),
    { seed: 21, numRuns: 120 },
  );
  expect(placed).toBeGreaterThan(500);
});
