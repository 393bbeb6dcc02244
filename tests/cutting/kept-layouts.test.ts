import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { checkDemands } from '../../src/cutting/check-cutting.ts';
import { madeFrom } from '../../src/cutting/kept-layouts.ts';
import { planDemands, planRest } from '../../src/cutting/plan-cutting.ts';
import { applyEdit, type JsonObject } from '../../src/job/edits.ts';
import { keepLayout, layoutDone, rackAfter, releaseLayout } from '../../src/job/layout-edits.ts';
import type { CuttingDocument } from '../../src/setting-out/cutting-schema.ts';
import { cuttingSchema } from '../../src/setting-out/cutting-schema.ts';
import { forSale, rackItem, shop, supplier, times } from './shop.ts';

const EFFORT = { seed: 1, iterations: 60 };
const sheet = forSale({
  id: 'ply',
  kind: 'sheet',
  material: 'birch-plywood',
  length: 1220,
  width: 1220,
  thickness: 18,
});
const half = rackItem({
  id: 'half',
  kind: 'offcut',
  material: 'birch-plywood',
  length: 1220,
  width: 610,
  thickness: 18,
});
const workshop = shop({ rack: [half], suppliers: [supplier(sheet)] });
const panels = times(4, { kind: 'sheet', material: 'birch-plywood', length: 600, width: 580, thickness: 18 });

function keep(done?: string): {
  document: JsonObject;
  laid: NonNullable<CuttingDocument['laid']>;
  id: string;
} {
  const plan = planDemands(panels, workshop, EFFORT);
  const use = plan.materials[0]!.uses[0]!;
  const hash = madeFrom(use, panels);
  const edit = done
    ? layoutDone({}, use, hash, done, [{ length: 610, width: 610 }])
    : keepLayout({}, use, hash);
  const applied = applyEdit({}, { operations: [edit] });
  if (!applied.ok) throw new Error(applied.faults[0]!.fault);
  const read = cuttingSchema({ short: z.string().max(200) }).parse(applied.document.cutting);
  return { document: applied.document, laid: read.laid!, id: use.id };
}

describe('layouts kept', () => {
  test('a kept layout stays whole, and only the rest is planned again', () => {
    const { laid, id } = keep();
    const more = [...panels, ...times(3, { ...panels[0]!, mark: 'N', instance: '' })].map((d, i) => ({
      ...d,
      instance: d.instance || `new${i}`,
    }));
    const plan = planRest(more, workshop, EFFORT, laid);
    expect(checkDemands(plan, more, workshop)).toEqual([]);
    const use = plan.materials[0]!.uses.find(one => one.id === id)!;
    const { kept, ...rest } = use;
    expect(rest).toEqual(laid[id]!.layout);
    expect(kept).toEqual({ stale: [] });
    expect(plan.materials[0]!.words).toMatch(/^One layout is kept as accepted\./);
  });

  test('a part that has grown marks the layout stale; it is not replaced', () => {
    const { laid, id } = keep();
    const on = laid[id]!.layout.placed[0]!.instance;
    const grown = panels.map(d => (d.instance === on ? { ...d, length: 640 } : d));
    const plan = planRest(grown, workshop, EFFORT, laid);
    const use = plan.materials.flatMap(one => one.uses).find(one => one.id === id)!;
    expect(use.placed).toEqual(laid[id]!.layout.placed);
    expect(use.kept!.stale).toEqual([`${use.placed[0]!.mark} is now 640 x 580, here 600 x 580: too small.`]);
    expect(checkDemands(plan, grown, workshop)).toEqual([]);
    use.kept!.stale = [];
    expect(checkDemands(plan, grown, workshop)[0]).toMatch(/no longer agrees and nothing says so/);
  });

  test('a part that is gone is told', () => {
    const { laid, id } = keep();
    const on = laid[id]!.layout.placed[0]!;
    const fewer = panels.filter(d => d.instance !== on.instance);
    const plan = planRest(fewer, workshop, EFFORT, laid);
    expect(plan.materials.flatMap(one => one.uses).find(one => one.id === id)!.kept!.stale[0]).toBe(
      `${on.mark}, 600 x 580: no longer wanted.`,
    );
    expect(checkDemands(plan, fewer, workshop)).toEqual([]);
  });

  test('what is cut is off the shopping list; what is accepted is still on it', () => {
    const bought = shop({ suppliers: [supplier(sheet)] });
    const plan = planDemands(panels, bought, EFFORT);
    const use = plan.materials[0]!.uses[0]!;
    const hash = madeFrom(use, panels);
    const laid = (done?: string) => ({
      [use.id]: { made_from: hash, layout: use, ...(done ? { done } : {}) },
    });
    const accepted = planRest(panels, bought, EFFORT, laid() as never);
    expect(accepted.buy).toEqual(plan.buy);
    expect(checkDemands(accepted, panels, bought)).toEqual([]);
    const cut = planRest(panels, bought, EFFORT, laid('2026-11-25') as never);
    expect(cut.buy.reduce((n, line) => n + line.quantity, 0)).toBe(
      plan.buy.reduce((n, line) => n + line.quantity, 0) - 1,
    );
    expect(checkDemands(cut, panels, bought)).toEqual([]);
  });

  test('a layout ticked done takes its stock off the rack and puts the measured offcuts on it', () => {
    const use = planDemands(panels, workshop, EFFORT).materials[0]!.uses.find(one => one.item === 'half');
    const whole: JsonObject = {
      rack: { half: { kind: 'offcut', material: 'birch-plywood', length: 1220, width: 610, thickness: 18 } },
    };
    const taken = use ?? {
      ...planDemands(panels, workshop, EFFORT).materials[0]!.uses[0]!,
      item: 'half',
      from: 'rack' as const,
      length: 1220,
      width: 610,
      price: 1000,
    };
    const edit = applyEdit(whole, {
      operations: rackAfter(whole, taken, [{ length: 598, width: 305 }], '2026-031'),
    });
    expect(edit.ok && edit.document.rack).toEqual({
      'offcut-2026-031-1': {
        kind: 'offcut',
        material: 'birch-plywood',
        label: `Offcut of ${taken.label}`,
        length: 598,
        width: 305,
        thickness: 18,
        value: Math.round((1000 * 598 * 305) / (1220 * 610)) / 100,
      },
    });
  });

  test('kept beside others, let go again', () => {
    const { document, id } = keep();
    const use = { ...planDemands(panels, workshop, EFFORT).materials[0]!.uses[0]!, id: 'other' };
    const two = applyEdit(document, { operations: [keepLayout(document, use, 'h')] });
    expect(two.ok && Object.keys((two.document.cutting as { laid: object }).laid)).toEqual([id, 'other']);
    const one = applyEdit(two.ok ? two.document : {}, { operations: [releaseLayout(id)] });
    expect(one.ok && Object.keys((one.document.cutting as { laid: object }).laid)).toEqual(['other']);
  });
});
