import { describe, expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import { demand, forSale, shop, supplier } from './shop.ts';

const ply = { kind: 'sheet', material: 'birch-plywood', thickness: 18 } as const;

/** Panels of a wardrobe's worth of sizes on two kinds of sheet. */
function wardrobe(seed: number) {
  const sizes = [
    [905, 565],
    [640, 430],
    [1185, 295],
    [520, 515],
    [775, 350],
    [350, 180],
  ];
  const demands = sizes.flatMap(([length, width], i) =>
    Array.from({ length: 2 + ((seed + i) % 4) }, (_, k) =>
      demand({
        ...ply,
        length: length! - 15 * seed,
        width: width! + 10 * seed,
        turn: i % 2 === 0,
        mark: `P${i}`,
        instance: `p${i}_${k}`,
      }),
    ),
  );
  const workshop = shop({
    suppliers: [
      supplier(
        forSale({ id: 'whole', ...ply, length: 2440, width: 1220, price: 6000 }),
        forSale({ id: 'half', ...ply, length: 1220, width: 1220, price: 3500 }),
      ),
    ],
  });
  return { demands, workshop };
}

describe('the longer effort for sheets', () => {
  test('costs no more than the first, is cheaper for some, and the checker takes every plan', () => {
    let cheaper = 0;
    let proved = 0;
    for (let seed = 0; seed < 5; seed++) {
      const { demands, workshop } = wardrobe(seed);
      const first = planDemands(demands, workshop, { seed: 1, iterations: 120 });
      const longer = planDemands(demands, workshop, { seed: 1, iterations: 600 });
      expect(checkDemands(longer, demands, workshop)).toEqual([]);
      expect(longer.cost).toBeLessThanOrEqual(first.cost);
      for (const plan of longer.materials) {
        expect(plan.value).toBeGreaterThanOrEqual(plan.bound);
        expect(plan.status === 'proved best').toBe(plan.value <= plan.bound);
        if (plan.status === 'proved best') proved += 1;
      }
      if (longer.cost < first.cost) cheaper += 1;
    }
    expect(cheaper).toBeGreaterThan(0);
    expect(proved).toBeGreaterThan(1);
  });

  test('a plan of it is caught when a cut forgets its kerf, a blank is lost or the bound is overstated', () => {
    const { demands, workshop } = wardrobe(1);
    const plan = planDemands(demands, workshop, { seed: 1, iterations: 600 });
    const spoilt = (spoil: (copy: typeof plan) => void): string[] => {
      const copy = structuredClone(plan);
      spoil(copy);
      return checkDemands(copy, demands, workshop);
    };
    expect(spoilt(() => undefined)).toEqual([]);
    const [first] = plan.materials[0]!.uses;
    expect(first!.placed.length).toBeGreaterThan(1);
    expect(spoilt(copy => void copy.materials[0]!.uses[0]!.placed.pop())).not.toEqual([]);
    expect(spoilt(copy => (copy.materials[0]!.uses[0]!.placed[1]!.x -= 1))).not.toEqual([]);
    expect(spoilt(copy => (copy.materials[0]!.bound = copy.materials[0]!.value + 1))).not.toEqual([]);
  });
});
