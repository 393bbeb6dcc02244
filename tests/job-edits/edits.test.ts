import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditOperation, JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';
import { applySlowly, documents, mustApply, operations, thatHold } from './documents.ts';

const bench: JsonObject = {
  title: 'Porch bench',
  parameters: { height: 450, length: 1380 },
  parts: { leg: { length: 423, width: 45 }, rail: { length: '=length', width: 60 } },
};

describe('one edit', () => {
  it('changes what it names and shares the rest', () => {
    const { document } = mustApply(bench, { path: ['parts', 'leg', 'width'], value: 42 });
    expect(document).toEqual({
      ...bench,
      parts: { ...(bench.parts as object), leg: { length: 423, width: 42 } },
    });
    expect(document.parameters).toBe(bench.parameters);
    expect((document.parts as JsonObject).rail).toBe((bench.parts as JsonObject).rail);
  });

  it('leaves the old document as it was', () => {
    const before = JSON.stringify(bench);
    mustApply(bench, { path: ['parts', 'leg'] }, { path: ['title'], value: 'Bench' });
    expect(JSON.stringify(bench)).toBe(before);
  });

  it('puts back what was taken away in its old place', () => {
    const { document, inverse } = mustApply(bench, { path: ['parts', 'leg'] });
    expect(Object.keys(document.parts as object)).toEqual(['rail']);
    const back = mustApply(document, ...inverse).document;
    expect(Object.keys(back.parts as object)).toEqual(['leg', 'rail']);
  });

  it('moves a member before a named neighbour, or last', () => {
    const rail = (bench.parts as JsonObject).rail!;
    const first = mustApply(bench, { path: ['parts', 'rail'], value: rail, before: 'leg' }).document;
    expect(Object.keys(first.parts as object)).toEqual(['rail', 'leg']);
    const last = mustApply(first, { path: ['parts', 'rail'], value: rail, before: null }).document;
    expect(Object.keys(last.parts as object)).toEqual(['leg', 'rail']);
  });

  it('makes a missing collection for a new member, and levels inside a member', () => {
    const joint = mustApply(bench, { path: ['joints', 'corner'], value: { type: 'bridle' } });
    expect(joint.document.joints).toEqual({ corner: { type: 'bridle' } });
    expect(mustApply(joint.document, ...joint.inverse).document).toEqual(bench);
    const slot = mustApply(joint.document, { path: ['joints', 'corner', 'slot', 'width'], value: 15 });
    expect(slot.document.joints).toEqual({ corner: { type: 'bridle', slot: { width: 15 } } });
  });

  it('does not make half a part out of a late change to one that is gone', () => {
    const applied = applyEdit(bench, { operations: [{ path: ['parts', 'stretcher', 'width'], value: 70 }] });
    expect(applied).toEqual({
      ok: false,
      faults: [
        {
          place: 'parts.stretcher.width',
          fault: 'parts.stretcher is not in the setting-out, so nothing in it can be changed',
          mend: 'add parts.stretcher as a whole first',
        },
      ],
    });
  });

  it('holds as a whole or not at all', () => {
    const applied = applyEdit(bench, {
      operations: [
        { path: ['title'], value: 'Changed' },
        { path: ['title', 'sub'], value: 'no' },
      ],
    });
    expect(applied.ok).toBe(false);
    expect(bench.title).toBe('Porch bench');
  });
});

describe('closed doors of edits', () => {
  const refused: [string, EditOperation][] = [
    ['prototype in the address', { path: ['__proto__', 'polluted'], value: true }],
    ['constructor in the address', { path: ['parts', 'constructor', 'prototype'], value: {} }],
    [
      'prototype in the value',
      { path: ['parts', 'x'], value: JSON.parse('{"__proto__": {"polluted": true}}') },
    ],
    ['prototype deep in a list', { path: ['a'], value: [[JSON.parse('{"b": {"prototype": 1}}')]] }],
    ['no address', { path: [], value: {} }],
    ['an empty name', { path: ['parts', ''], value: 1 }],
    ['a very long name', { path: ['x'.repeat(201)], value: 1 }],
    ['a very deep address', { path: Array.from({ length: 13 }, () => 'a'), value: 1 }],
    ['a number that is none', { path: ['a'], value: Number.NaN }],
  ];
  it.each(refused)('refuses %s', (_what, operation) => {
    const applied = applyEdit(bench, { operations: [operation] });
    expect(applied.ok).toBe(false);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('refuses a value nested too deep and one with too many members', () => {
    let deep: JsonObject = {};
    for (let level = 0; level < 60; level += 1) deep = { deep };
    expect(applyEdit(bench, { operations: [{ path: ['a'], value: deep }] }).ok).toBe(false);
    const wide = Array.from({ length: 200_001 }, () => 0);
    expect(applyEdit(bench, { operations: [{ path: ['a'], value: wide }] }).ok).toBe(false);
  });

  it('refuses thousands of operations at once', () => {
    const many = Array.from({ length: 5001 }, () => ({ path: ['a'], value: 1 }));
    expect(applyEdit({}, { operations: many }).ok).toBe(false);
  });

  it('treats names of inherited members as ordinary names', () => {
    const { document } = mustApply({}, { path: ['parts', 'toString'], value: { length: 1 } });
    expect((document.parts as JsonObject).toString).toEqual({ length: 1 });
    expect(applyEdit({}, { operations: [{ path: ['valueOf', 'x', 'y'], value: 1 }] }).ok).toBe(false);
  });
});

describe('edits, at random', () => {
  it('an edit and then its inverse change nothing, order of members included', () => {
    fc.assert(
      fc.property(documents, fc.array(operations, { maxLength: 15 }), (document, list) => {
        const applied = mustApply(document, ...thatHold(document, list));
        const back = mustApply(applied.document, ...applied.inverse);
        expect(JSON.stringify(back.document)).toBe(JSON.stringify(document));
      }),
      { seed: 2026, numRuns: 2000 },
    );
  });

  it('the inverse of the inverse is the edit again', () => {
    fc.assert(
      fc.property(documents, fc.array(operations, { maxLength: 15 }), (document, list) => {
        const applied = mustApply(document, ...thatHold(document, list));
        const back = mustApply(applied.document, ...applied.inverse);
        const again = mustApply(back.document, ...back.inverse);
        expect(JSON.stringify(again.document)).toBe(JSON.stringify(applied.document));
      }),
      { seed: 2027, numRuns: 2000 },
    );
  });

  it('agrees with the plain way of doing it, and refuses exactly what that refuses', () => {
    fc.assert(
      fc.property(documents, operations, (document, operation) => {
        const applied = applyEdit(document, { operations: [operation] });
        const plain = applySlowly(document, operation);
        expect(applied.ok ? applied.document : undefined).toEqual(plain);
      }),
      { seed: 2028, numRuns: 3000 },
    );
  });
});
