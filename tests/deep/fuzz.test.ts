import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import type { EditOperation, JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';
import { operationsBetween } from '../../src/job/edits-changes.ts';
import { checkJobDocument, readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { documents, mustApply, operations, thatHold } from '../job-edits/documents.ts';

describe('edits, with many runs', () => {
  it('an edit and its inverse change nothing; the differences between two documents lead from one to the other', () => {
    fc.assert(
      fc.property(documents, documents, fc.array(operations, { maxLength: 20 }), (before, after, list) => {
        const applied = mustApply(before, ...thatHold(before, list));
        const back = mustApply(applied.document, ...applied.inverse).document;
        expect(JSON.stringify(back)).toBe(JSON.stringify(before));
        expect(mustApply(before, ...operationsBetween(before, after)).document).toEqual(after);
      }),
      { seed: 20_261_125, numRuns: 40_000 },
    );
  });
});

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');

/** Every place of a document that can be set, as paths. */
function placesOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [path];
  return [
    ...(path.length > 0 ? [path] : []),
    ...Object.entries(value).flatMap(([key, one]) => placesOf(one, [...path, key])),
  ];
}

const hostile = fc.oneof(
  fc.constantFrom<unknown>(
    0,
    -1,
    1e9,
    1e-9,
    null,
    '',
    'abc',
    '40 mm',
    '1/0',
    '2 * height',
    '-5 in',
    'min()',
    [],
    {},
    true,
  ),
  fc.integer({ min: -2000, max: 2000 }),
  fc.string({ maxLength: 12 }),
);

describe.each(['porch-bench', 'writing-table'])('%s, with wrong things written anywhere', name => {
  const read = readJobFile(example(name));
  const document = read.document as unknown as JsonObject;
  const { workshop } = readWorkshopFile(example('workshop'));
  const places = placesOf(document);

  it('still opens, and everything derived is plain data', () => {
    const change = fc.record({
      path: fc.constantFrom(...places),
      value: fc.option(hostile, { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), list => {
        const held = thatHold(document, list as EditOperation[]);
        const edited = applyEdit(document, { operations: held });
        if (!edited.ok) throw new Error(edited.faults[0]!.fault);
        const checked = checkJobDocument(edited.document);
        if (!checked.document) return expect(checked.faults.length).toBeGreaterThan(0);
        const { derived } = deriveJob(checked.document, workshop!, { today: '2026-11-25' });
        expect(() => structuredClone(derived)).not.toThrow();
        expect(Number.isInteger(derived.price.total)).toBe(true);
      }),
      { seed: 404, numRuns: 400 },
    );
  });

  it('a file with lines cut, doubled or swapped is read or refused, and never throws', () => {
    const lines = example(name).split('\n');
    const where = fc.integer({ min: 0, max: lines.length - 1 });
    fc.assert(
      fc.property(fc.array(fc.tuple(where, where, fc.nat(2)), { minLength: 1, maxLength: 4 }), acts => {
        const mangled = [...lines];
        for (const [from, to, act] of acts) {
          if (act === 0) mangled.splice(from, 1);
          else if (act === 1) mangled.splice(to, 0, mangled[from] ?? '');
          else mangled[from] = (mangled[from] ?? '').slice(0, to % 20);
        }
        const { document: kept, faults } = readJobFile(mangled.join('\n'));
        if (!kept) expect(faults.length).toBeGreaterThan(0);
      }),
      { seed: 405, numRuns: 3000 },
    );
  });
});
