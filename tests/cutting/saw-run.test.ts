import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { resaw } from '../../src/cutting/check-sawing.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import { sawRun, tooSmall } from '../../src/cutting/saw-run.ts';
import { demand, forSale, shop, supplier, times } from './shop.ts';

const EFFORT = { seed: 1, iterations: 20 };
const workshop = shop({
  suppliers: [
    supplier(
      forSale({
        id: 'ply',
        kind: 'sheet',
        material: 'birch-plywood',
        length: 1220,
        width: 1220,
        thickness: 18,
      }),
      forSale({
        id: 'ash',
        kind: 'board',
        material: 'ash-european',
        length: 2400,
        width: 200,
        thickness: 34,
      }),
    ),
  ],
});
const panel = { kind: 'sheet' as const, material: 'birch-plywood', thickness: 18 };

describe('one order at the saw for several sheets', () => {
  test('a fence set once serves all sheets', () => {
    const plan = planDemands(times(12, { ...panel, length: 590, width: 300 }), workshop, EFFORT);
    const { uses } = plan.materials[0]!;
    expect(uses.length).toBeGreaterThan(1);
    const run = sawRun(uses);
    expect(run.settings).toBeLessThan(run.apart);
    const rip = run.steps.find(step => step.kind === 'rip' && !step.trim)!;
    expect(rip.on.length).toBe(uses.length);
  });

  test('random jobs: every cut once, and in this order every sheet can still be sawn', () => {
    const part = fc.record({
      length: fc.integer({ min: 60, max: 1100 }),
      width: fc.integer({ min: 40, max: 700 }),
    });
    let cuts = 0;
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 14 }), fc.boolean(), (parts, timber) => {
        const demands = parts.map(one =>
          demand(
            timber
              ? { length: one.length, width: Math.min(one.width, 180), thickness: 30 }
              : { ...panel, ...one },
          ),
        );
        const uses = planDemands(demands, workshop, EFFORT).materials.flatMap(material => material.uses);
        const run = sawRun(uses);
        expect(run.settings).toBeLessThanOrEqual(run.apart);
        for (const use of uses) {
          const order = run.steps.flatMap(step =>
            step.on.filter(on => on.use === use.id).flatMap(on => on.orders),
          );
          expect([...order].sort((a, b) => a - b)).toEqual(use.cuts.map(cut => cut.order));
          const again = order.map((n, i) => ({ ...use.cuts.find(cut => cut.order === n)!, order: i + 1 }));
          expect(resaw({ ...use, cuts: again })).toEqual([]);
          cuts += order.length;
        }
      }),
      { seed: 9, numRuns: 120 },
    );
    expect(cuts).toBeGreaterThan(1000);
  });

  test('CUT-15: a piece too short for the fence is told with what would hold it', () => {
    const plan = planDemands(times(2, { length: 120, width: 40, thickness: 30 }), workshop, EFFORT);
    const use = plan.materials[0]!.uses[0]!;
    expect(tooSmall(use)[0]!.words).toMatch(/rips a piece 120 long, under 300: hold it in a sled/);
    expect(tooSmall(use, 100)).toEqual([]);
  });
});
