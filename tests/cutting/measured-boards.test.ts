import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import type { CuttingPlan, Demand } from '../../src/results/cutting.ts';
import type { RackItem, Workshop } from '../../src/workshop/workshop.ts';
import { demand, rackItem, shop, times } from './shop.ts';

const EFFORT = { seed: 1, iterations: 60 };

function planned(demands: Demand[], workshop: Workshop): CuttingPlan {
  const plan = planDemands(demands, workshop, EFFORT);
  expect(checkDemands(plan, demands, workshop)).toEqual([]);
  return plan;
}

const board = (over: Partial<RackItem> = {}): RackItem =>
  rackItem({
    id: 'board',
    kind: 'board',
    material: 'ash-european',
    length: 2000,
    width: 200,
    thickness: 34,
    ...over,
  });

describe('boards measured one by one', () => {
  test('CUT-11: a knot right across is cross-cut out, and the blanks lie on either side', () => {
    const knot = { what: 'knot' as const, from: 900, to: 1000 };
    const plan = planned(times(2, { length: 850, width: 180 }), shop({ rack: [board({ avoid: [knot] })] }));
    const use = plan.materials[0]!.uses[0]!;
    expect(use.placed.map(placed => placed.x).sort((a, b) => a - b)).toEqual([25, 1000]);
    // CUT-7: end, length, bad piece, length; only then is anything ripped.
    const kinds = use.cuts.map(cut => cut.kind);
    expect(kinds.lastIndexOf('cross')).toBeLessThan(kinds.indexOf('rip'));
  });

  test('CUT-11: sapwood along an edge is ripped off first', () => {
    const sap = { what: 'sapwood' as const, from: 0, to: 2000, low: 0, high: 40 };
    const rack = [board({ avoid: [sap] })];
    const use = planned(times(1, { length: 900, width: 150 }), shop({ rack })).materials[0]!.uses[0]!;
    expect(use.placed[0]!.y).toBeGreaterThanOrEqual(40);
    const two = planned(times(1, { length: 900, width: 160 }), shop({ rack }));
    expect(two.materials[0]!.unplaced).toHaveLength(1);
  });

  test('a board narrower at one end gives its wide blanks from the wide end', () => {
    const rack = [board({ width: 240, widthFar: 140 })];
    const plan = planned(times(1, { length: 600, width: 198 }), shop({ rack }));
    expect(plan.materials[0]!.uses[0]!.placed[0]!.x).toBe(25);
    // 240 less 100 x 1225 / 2000 is 178.75 at the far end of 1200; the trimmed edge leaves 168.75 above.
    expect(planned(times(1, { length: 1200, width: 168 }), shop({ rack })).materials[0]!.unplaced).toEqual(
      [],
    );
    const wide = planned(times(1, { length: 1200, width: 172 }), shop({ rack }));
    expect(wide.materials[0]!.unplaced).toHaveLength(1);
  });

  test('CUT-12: a clear part does not come from rough timber, and is told so', () => {
    const plan = planned(
      [demand({ grade: 'clear', thickness: 30 })],
      shop({ rack: [board({ grade: 'rough' })] }),
    );
    expect(plan.materials[0]!.unplaced[0]!.reason).toBe('part asks for clear timber; board is rough.');
    const sound = planned(
      [demand({ grade: 'sound', thickness: 30 })],
      shop({ rack: [board({ grade: 'clear' })] }),
    );
    expect(sound.materials[0]!.unplaced).toEqual([]);
  });

  test('CUT-13: parts that match come from one board though two cheaper ones would share them', () => {
    const rack = [
      board({ id: 'a', length: 1000, value: 100 }),
      board({ id: 'b', length: 1000, value: 100 }),
      board({ id: 'long', length: 2100, value: 900 }),
    ];
    const two = times(2, { length: 900, width: 180, thickness: 30 });
    const free = planned(two, shop({ rack }));
    expect(free.materials[0]!.uses).toHaveLength(2);
    const matched = planned(
      two.map(d => ({ ...d, oneBoard: 'top' })),
      shop({ rack }),
    );
    expect(matched.materials[0]!.uses.map(use => use.id)).toEqual(['long']);
    const none = planned(
      two.map(d => ({ ...d, oneBoard: 'top' })),
      shop({ rack: rack.slice(0, 2) }),
    );
    expect(none.materials[0]!.notes[0]).toMatch(/^No one board holds all of top: it comes from 2/);
  });

  const size = (min: number, max: number) => fc.integer({ min, max });
  const boards = fc.array(
    fc.record({
      length: size(900, 3200),
      width: size(110, 320),
      widthFar: size(110, 320),
      avoid: fc.array(
        fc
          .record({ from: size(0, 2800), long: size(10, 300), low: size(0, 250), high: size(5, 120) })
          .map(a => ({
            what: 'knot' as const,
            from: a.from,
            to: a.from + a.long,
            low: a.low,
            high: a.low + a.high,
          })),
        { maxLength: 6 },
      ),
    }),
    { minLength: 1, maxLength: 4 },
  );
  const parts = fc.array(
    fc.record({
      length: size(120, 1500),
      width: size(20, 200),
      oneBoard: fc.option(fc.constant('top'), { nil: undefined }),
    }),
    { minLength: 1, maxLength: 12 },
  );
  const made = (
    shapes: readonly Partial<RackItem>[],
    wanted: readonly { length: number; width: number; oneBoard: string | undefined }[],
  ) => ({
    workshop: shop({ rack: shapes.map((shape, i) => board({ id: `b${i}`, ...shape })) }),
    demands: wanted.map(({ oneBoard, ...part }) => demand({ ...part, ...(oneBoard ? { oneBoard } : {}) })),
  });

  test('random boards: every plan is accepted by the checker', () => {
    let placed = 0;
    fc.assert(
      fc.property(boards, parts, (shapes, wanted) => {
        const { workshop, demands } = made(shapes, wanted);
        const plan = planned(demands, workshop);
        placed += plan.materials.flatMap(material => material.uses.flatMap(use => use.placed)).length;
      }),
      { seed: 11, numRuns: 150 },
    );
    expect(placed).toBeGreaterThan(300);
  });

  test('a board drawn with less wood or more defects than it has is caught', () => {
    let caught = 0;
    fc.assert(
      fc.property(boards, parts, (shapes, wanted) => {
        const { workshop, demands } = made(shapes, wanted);
        const plan = planned(demands, workshop);
        const use = plan.materials.flatMap(material => material.uses)[0];
        const on = use?.placed[0];
        if (!use || !on) return;
        const id = use.item;
        const spoilt = workshop.rack.map(item =>
          item.id === id
            ? {
                ...item,
                avoid: [{ what: 'knot' as const, from: on.x, to: on.x + 20, low: on.y, high: on.y + 5 }],
              }
            : item,
        );
        use.avoid = spoilt.find(item => item.id === id)!.avoid!;
        const words = checkDemands(plan, demands, { ...workshop, rack: spoilt });
        expect(words.some(word => word.endsWith('lies on a knot'))).toBe(true);
        caught += 1;
      }),
      { seed: 12, numRuns: 40 },
    );
    expect(caught).toBeGreaterThan(20);
  });
});
