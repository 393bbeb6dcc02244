import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffDocuments, operationsBetween, sameJson } from '../../src/job/edits-changes.ts';
import { changesSince, settingOutNumber } from '../../src/job/revisions.ts';
import { documents, mustApply } from './documents.ts';

describe('what changed', () => {
  it('lists paths with old and new, lists as whole values', () => {
    const before = { title: 'Bench', parts: { leg: { length: 423 }, key: { length: 90 } }, coats: [1, 2] };
    const after = {
      title: 'Bench',
      parts: { leg: { length: 383 }, post: { length: 278 } },
      coats: [1, 2, 3],
    };
    expect(diffDocuments(before, after)).toEqual([
      { path: ['parts', 'leg', 'length'], old: 423, new: 383 },
      { path: ['parts', 'key'], old: { length: 90 } },
      { path: ['parts', 'post'], new: { length: 278 } },
      { path: ['coats'], old: [1, 2], new: [1, 2, 3] },
    ]);
  });

  it('takes member order for no difference', () => {
    expect(diffDocuments({ a: { b: 1, c: 2 } }, { a: { c: 2, b: 1 } })).toEqual([]);
    expect(sameJson([{ b: 1, c: 2 }], [{ c: 2, b: 1 }])).toBe(true);
    expect(sameJson([1, 2], [2, 1])).toBe(false);
  });

  it('numbers the working setting-out after the last frozen one', () => {
    expect(settingOutNumber([])).toBe(1);
    expect(settingOutNumber([{ number: 1 }, { number: 2 }])).toBe(3);
    const frozen = { number: 1, name: 'as offered', note: '', at: '', version: 4, document: { a: 1 } };
    expect(changesSince(frozen, { a: 2 })).toEqual([{ path: ['a'], old: 1, new: 2 }]);
  });

  it('at random: the operations between two documents turn one into the other, and nothing more', () => {
    fc.assert(
      fc.property(documents, documents, (before, after) => {
        const list = operationsBetween(before, after);
        expect(mustApply(before, ...list).document).toEqual(after);
        expect(list.length === 0).toBe(sameJson(before, after));
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
