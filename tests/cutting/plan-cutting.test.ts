import { describe, expect, test } from 'vitest';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { planDemands } from '../../src/cutting/plan-cutting.ts';
import type { CuttingPlan, Demand } from '../../src/results/cutting.ts';
import type { Workshop } from '../../src/workshop/workshop.ts';
import { demand, forSale, rackItem, shop, supplier, times } from './shop.ts';

const EFFORT = { seed: 1, iterations: 120 };

function planned(demands: Demand[], workshop: Workshop): CuttingPlan {
  const plan = planDemands(demands, workshop, EFFORT);
  expect(checkDemands(plan, demands, workshop)).toEqual([]);
  return plan;
}

const bars = (length: number, price = 1000) =>
  forSale({
    id: `bar-${length}`,
    kind: 'bar',
    material: 'steel-stainless',
    length,
    width: 16,
    thickness: 16,
    round: true,
    price,
  });
const bar = (length: number): Partial<Demand> => ({
  kind: 'bar',
  material: 'steel-stainless',
  length,
  width: 16,
  thickness: 16,
  round: true,
});

describe('lengths', () => {
  test('CUT-1, CUT-2: kerf and trim decide whether the last part is short', () => {
    // 3 x 330 + 2 kerfs of 1.3 + 2 trims of 3 = 998.6: three from a metre; at 331 it would be 1001.6.
    const three = planned(times(3, bar(330)), shop({ suppliers: [supplier(bars(1000))] }));
    expect(three.materials[0]?.uses).toHaveLength(1);
    expect(three.materials[0]?.words).toBe('One bar will do.');
    const short = planned(times(3, bar(331)), shop({ suppliers: [supplier(bars(1000))] }));
    expect(short.materials[0]?.uses).toHaveLength(2);
    expect(short.materials[0]?.status).toBe('proved best');
    expect(short.materials[0]?.words).toBe('Two bars; one cannot do.');
  });

  test('cuts carry settings that the maker can set a stop to', () => {
    const plan = planned(times(2, bar(400)), shop({ suppliers: [supplier(bars(1000))] }));
    const use = plan.materials[0]!.uses[0]!;
    expect(use.cuts.map(cut => [cut.kind, cut.at, cut.setting, cut.trim ?? false])).toEqual([
      ['cross', 3, 997, true],
      ['cross', 403, 400, false],
      ['cross', 804.3, 400, false],
    ]);
    expect(use.left.map(left => [left.x, left.length, left.fate])).toEqual([
      [0, 1.7, 'waste'],
      [805.6, 194.4, 'waste'],
    ]);
  });

  test('CUT-9: the rack is used at no greater cost, and not at a greater one', () => {
    const rack = (value: number) =>
      shop({
        rack: [
          rackItem({
            id: 'r',
            kind: 'bar',
            material: 'steel-stainless',
            length: 1000,
            width: 16,
            thickness: 16,
            round: true,
            value,
          }),
        ],
        suppliers: [supplier(bars(1000))],
      });
    expect(planned([demand(bar(900))], rack(1000)).materials[0]?.uses[0]?.from).toBe('rack');
    expect(planned([demand(bar(900))], rack(1001)).materials[0]?.uses[0]?.from).toBe('buy');
    expect(planned([demand(bar(900))], rack(1000)).buy).toEqual([]);
  });

  test('a bought length stands on the shopping list with its price', () => {
    const plan = planned(times(5, bar(600)), shop({ suppliers: [supplier(bars(2000, 1500))] }));
    expect(plan.buy).toEqual([
      { id: 'bar-2000', item: 'bar-2000', supplier: 'The yard', quantity: 2, unitPrice: 1500, price: 3000 },
    ]);
    expect(plan.cost).toBe(3000);
  });
});

describe('timber', () => {
  const yard = (...items: ReturnType<typeof forSale>[]) => shop({ suppliers: [supplier(...items)] });

  test('CUT-7: boards are cross-cut first, then ripped', () => {
    const board = forSale({
      id: 'b',
      kind: 'board',
      material: 'ash-european',
      length: 3000,
      width: 220,
      thickness: 32,
    });
    const plan = planned(times(6, { length: 850, width: 60, thickness: 28 }), yard(board));
    const use = plan.materials[0]!.uses[0]!;
    expect(plan.materials[0]!.uses).toHaveLength(1);
    expect(use.cuts.filter(cut => !cut.trim)[0]?.kind).toBe('cross');
    const firstRip = use.cuts.findIndex(cut => cut.kind === 'rip' && !cut.trim);
    expect(
      use.cuts.slice(firstRip).filter(cut => cut.kind === 'cross' && cut.from <= 5 && cut.to >= 215),
    ).toEqual([]);
  });

  test('CUT-3: a measured thickness counts, not the nominal one', () => {
    const rack = (measuredThickness: number) =>
      shop({
        rack: [
          rackItem({
            id: 'r',
            kind: 'planed length',
            material: 'ash-european',
            width: 60,
            thickness: 25,
            measuredThickness,
          }),
        ],
      });
    expect(planned([demand({ width: 60, thickness: 25 })], rack(25)).materials[0]?.uses).toHaveLength(1);
    const thin = planned([demand({ width: 60, thickness: 25 })], rack(24.6));
    expect(thin.materials[0]?.unplaced).toHaveLength(1);
    expect(thin.materials[0]?.unplaced[0]?.reason).toContain('60 x 25');
  });

  test('CUT-4: a thick board is left alone while a thinner one serves, and used when none does', () => {
    const thick = forSale({
      id: 'thick',
      kind: 'planed length',
      material: 'ash-european',
      thickness: 75,
      price: 100,
    });
    const right = forSale({
      id: 'right',
      kind: 'planed length',
      material: 'ash-european',
      thickness: 27,
      price: 2000,
    });
    const slat = { width: 40, thickness: 20 };
    expect(planned([demand(slat)], yard(thick, right)).buy[0]?.id).toBe('right');
    expect(planned([demand(slat)], yard(thick)).buy[0]?.id).toBe('thick');
  });

  test('CUT-6: stock a little wider than the blank is not ripped', () => {
    const wide = (width: number) =>
      forSale({ id: 'w', kind: 'planed length', material: 'ash-european', width, thickness: 25 });
    const rips = (width: number): number =>
      planned([demand({ width: 50 })], yard(wide(width))).materials[0]!.uses[0]!.cuts.filter(
        cut => cut.kind === 'rip',
      ).length;
    expect(rips(56)).toBe(0);
    expect(rips(57)).toBe(1);
  });
});

describe('sheets', () => {
  const sheet = (over = {}) =>
    forSale({
      id: 's',
      kind: 'sheet',
      material: 'birch-plywood',
      length: 2440,
      width: 1220,
      thickness: 18,
      price: 8000,
      ...over,
    });
  const panel = (length: number, width: number, over: Partial<Demand> = {}): Partial<Demand> => ({
    kind: 'sheet',
    material: 'birch-plywood',
    length,
    width,
    thickness: 18,
    ...over,
  });

  test('four panels that fill a sheet lie on one', () => {
    const plan = planned(times(4, panel(1213, 603)), shop({ suppliers: [supplier(sheet())] }));
    expect(plan.materials[0]?.words).toBe('One sheet will do.');
  });

  test('grain along the part keeps it straight, free grain may turn it, grain across turns it', () => {
    const workshop = shop({ suppliers: [supplier(sheet())] });
    const straight = planned([demand(panel(1215, 700))], workshop).materials[0]!.uses[0]!.placed[0]!;
    expect([straight.turned, straight.length]).toEqual([false, 1215]);
    const across = planned([demand(panel(700, 1215, { across: true }))], workshop);
    expect(across.materials[0]?.uses[0]?.placed[0]).toMatchObject({ turned: true, length: 1215, width: 700 });
    const fixed = planned([demand(panel(1000, 1300))], workshop);
    expect(fixed.materials[0]?.unplaced[0]?.reason).toContain('after trim');
    expect(planned([demand(panel(1000, 1300, { turn: true }))], workshop).materials[0]?.unplaced).toEqual([]);
  });

  test('CUT-8: what is left goes back when it reaches the least offcut either way', () => {
    const plan = planned([demand(panel(2430, 1000))], shop({ suppliers: [supplier(sheet())] }));
    const back = plan.materials[0]!.uses[0]!.left.filter(left => left.fate === 'back to the rack');
    expect(back.map(left => [left.length, left.width])).toEqual([[2435, 211.8]]);
  });

  test('three panels larger than half a sheet take three', () => {
    const plan = planned(times(3, panel(1300, 700)), shop({ suppliers: [supplier(sheet())] }));
    expect(plan.materials[0]).toMatchObject({
      status: 'proved best',
      value: 24000,
      bound: 24000,
      words: 'Three sheets; two cannot do.',
    });
  });
});

describe('what cannot be planned is named and the rest is planned', () => {
  const workshop = shop({
    rack: [
      rackItem({ id: 'short', kind: 'planed length', material: 'ash-european', length: 600, quantity: 1 }),
    ],
    suppliers: [
      supplier(forSale({ id: 'x', kind: 'planed length', material: 'oak-european', price: Number.NaN })),
    ],
  });

  test.each([
    ['a part longer than any stock', { length: 5000 }, 'after trim'],
    ['a material nobody has', { material: 'teak' }, 'No teak'],
    ['a section nobody has', { width: 300 }, 'of section 300 x 25'],
    ['a missing size', { length: Number.NaN }, 'its length is missing'],
    ['a negative size', { width: -4 }, 'its width is -4 mm'],
    ['no price', { material: 'oak-european' }, 'has no price'],
  ])('%s', (_, over, words) => {
    const plan = planned([demand({ width: 80, thickness: 40 }), demand(over)], workshop);
    const missing = plan.materials.flatMap(material => material.unplaced);
    expect(missing).toHaveLength(1);
    expect(missing[0]?.reason).toContain(words);
    expect(missing[0]?.mend).not.toBe('');
    expect(plan.materials.flatMap(material => material.uses)).toHaveLength(1);
  });

  test('a rack that runs out', () => {
    const plan = planned(times(3, { width: 80, thickness: 40 }), workshop);
    expect(plan.materials[0]?.uses).toHaveLength(1);
    expect(plan.materials[0]?.unplaced).toHaveLength(2);
    expect(plan.materials[0]?.status).toBe('stopped');
    expect(plan.materials[0]?.unplaced[0]?.reason).toContain('runs out');
  });

  test('a kerf wider than the stock leaves one piece on it', () => {
    const wide = shop({
      blades: [{ id: 'c', machine: 'saw', name: 'x', kerf: 500, diameter: 250, use: 'cross' }],
      suppliers: [supplier(forSale({ id: 'x', kind: 'planed length', material: 'ash-european' }))],
    });
    const plan = planned(times(2, { width: 80, thickness: 40, length: 600 }), wide);
    expect(plan.materials[0]?.uses).toHaveLength(2);
  });
});

test('ten thousand pieces are planned within seconds', () => {
  const demands = [300, 412, 555, 618, 701].flatMap(length => times(2000, bar(length)));
  const began = process.cpuUsage();
  planned(demands, shop({ suppliers: [supplier(bars(3000), bars(6000, 1950))] }));
  // Processor time, so that a busy machine does not fail it.
  expect(process.cpuUsage(began).user / 1e6).toBeLessThan(10);
});
