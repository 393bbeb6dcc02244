import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { madeFromJob } from '../../src/cutting/kept-layouts.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { applyEdit, type JsonObject } from '../../src/job/edits.ts';
import { keepLayouts } from '../../src/job/layout-edits.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { deriveTasks } from '../../src/office/derive-tasks.ts';
import { shapeTasks } from '../../src/office/shape-tasks.ts';
import type { CuttingDocument } from '../../src/setting-out/cutting-schema.ts';
import { hasShape, solidKey } from '../../src/solids/shapes.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const document = readJobFile(example('porch-bench')).document as unknown as JsonObject;
const workshop = readWorkshopFile(example('workshop')).document as unknown as JsonObject;
const today = '2026-11-25';

describe('the deriving thread', () => {
  test('answers why of the document derived last; comparing another does not disturb it', () => {
    const tasks = deriveTasks();
    expect(tasks.why('parameters.length')).toBeUndefined();
    tasks.derive({ document, workshop, today });
    tasks.compare({ document: { ...document, parameters: {} }, workshop, today });
    expect(tasks.why('parts.stretcher.length')?.value).toEqual({ kind: 'length', value: 1357 });
    expect(tasks.why('no.such.figure')).toBeUndefined();
  });

  test('gives plain data that can cross to the screen', () => {
    const derived = deriveTasks().derive({ document, workshop, today });
    expect(structuredClone(derived)).toEqual(derived);
  });

  test('a document with faults gives what is right in it and tells the rest', () => {
    const broken = { ...document, parts: { ...(document.parts as JsonObject), odd: { kind: 'timbr' } } };
    const { faults, piece } = deriveTasks().derive({ document: broken, workshop, today });
    expect(faults.some(f => f.place.startsWith('parts.odd'))).toBe(true);
    expect(piece.instances.length).toBeGreaterThan(10);
  });
});

describe('the longer look at layouts', () => {
  test('layouts it finds cheaper stand as found once they are kept; what it cannot better it bounds', () => {
    const table = readJobFile(example('writing-table')).document as unknown as JsonObject;
    const tasks = deriveTasks();
    const before = tasks.derive({ document: table, workshop, today });
    const look = tasks.longer({ document: table, workshop, today });
    expect(look.now).toBe(before.cutting.cost);
    expect(look.cost).toBeLessThan(look.now);
    expect(look.bound).toBeLessThanOrEqual(look.cost);
    const wishes = table.cutting as CuttingDocument | undefined;
    const kept = look.uses.map(use => ({ use, madeFrom: madeFromJob(use, before, wishes) }));
    const edited = applyEdit(table, { operations: [keepLayouts(table, kept)] });
    if (!edited.ok) throw new Error('the edit is refused');
    const after = tasks.derive({ document: edited.document, workshop, today });
    expect(after.cutting.cost).toBe(look.cost);
    const uses = after.cutting.materials.flatMap(plan => plan.uses);
    expect(uses.flatMap(use => use.kept?.stale ?? [])).toEqual([]);
    expect(uses.filter(use => use.kept).length).toBe(look.uses.length);
    const blanks = (cutting: typeof after.cutting): string[] =>
      cutting.materials.flatMap(plan => plan.uses.flatMap(use => use.placed.map(p => p.instance))).sort();
    expect(blanks(after.cutting)).toEqual(blanks(before.cutting));
    const again = tasks.longer({ document: edited.document, workshop, today });
    expect(again.uses).toEqual([]);
    expect(again.bound).toBeLessThanOrEqual(again.cost);
  });
});

describe('the shaping thread', () => {
  test('gives the surface of every shape once, and only those that are not known', async () => {
    const { piece } = deriveTasks().derive({ document, workshop, today });
    const tasks = shapeTasks(loadMeshKernel);
    const keys = new Set(piece.instances.filter(hasShape).map(solidKey));
    const first = await tasks.shapes({ piece, known: [] });
    expect(new Set(first.surfaces.keys())).toEqual(keys);
    expect([...first.surfaces.values()].every(s => s.indices.length >= 36)).toBe(true);
    expect(first.checks.length).toBeGreaterThan(0);
    expect(first.checks.every(c => c.severity !== 'pending')).toBe(true);
    expect((await tasks.shapes({ piece, known: [...keys] })).surfaces.size).toBe(0);
  });
});
