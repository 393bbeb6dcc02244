import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EditOperation, JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';
import type { Linked } from '../../src/job/edits-history.ts';
import { afterEdit, afterRedo, afterUndo, NO_HISTORY } from '../../src/job/edits-history.ts';
import { documents, mustApply, operations } from './documents.ts';

interface Entry {
  inverse: EditOperation[];
  under: number | null;
}

/** A log that is only added to, with the chain kept as the store keeps it. */
class Log {
  entries: Entry[] = [];
  history = NO_HISTORY;
  document: JsonObject;
  constructor(document: JsonObject) {
    this.document = document;
  }
  private add(list: readonly EditOperation[], link: (entry: number) => Linked): void {
    const applied = mustApply(this.document, ...list);
    const { history, under } = link(this.entries.length);
    this.entries.push({ inverse: applied.inverse, under });
    this.history = history;
    this.document = applied.document;
  }
  edit(list: EditOperation[]): void {
    if (applyEdit(this.document, { operations: list }).ok) this.add(list, n => afterEdit(this.history, n));
  }
  undo(): void {
    const top = this.history.undo === null ? undefined : this.entries[this.history.undo];
    if (top) this.add(top.inverse, n => afterUndo(this.history, n, top.under));
  }
  redo(): void {
    const top = this.history.redo === null ? undefined : this.entries[this.history.redo];
    if (top) this.add(top.inverse, n => afterRedo(this.history, n, top.under));
  }
}

/** Two stacks of whole documents: what undo and redo mean. */
class Stacks {
  past: JsonObject[] = [];
  future: JsonObject[] = [];
  document: JsonObject;
  constructor(document: JsonObject) {
    this.document = document;
  }
  edit(list: EditOperation[]): void {
    const applied = applyEdit(this.document, { operations: list });
    if (!applied.ok) return;
    this.past.push(this.document);
    this.future = [];
    this.document = applied.document;
  }
  undo(): void {
    const last = this.past.pop();
    if (!last) return;
    this.future.push(this.document);
    this.document = last;
  }
  redo(): void {
    const next = this.future.pop();
    if (!next) return;
    this.past.push(this.document);
    this.document = next;
  }
}

const acts = fc.array(
  fc.oneof(
    { weight: 3, arbitrary: fc.array(operations, { minLength: 1, maxLength: 3 }) },
    { weight: 2, arbitrary: fc.constant('undo' as const) },
    { weight: 2, arbitrary: fc.constant('redo' as const) },
  ),
  { maxLength: 40 },
);

describe('undo and redo', () => {
  it('over the log give what two stacks of whole documents give', () => {
    fc.assert(
      fc.property(documents, acts, (start, list) => {
        const log = new Log(start);
        const stacks = new Stacks(start);
        for (const act of list) {
          if (typeof act === 'string') {
            log[act]();
            stacks[act]();
          } else {
            log.edit(act);
            stacks.edit(act);
          }
          expect(JSON.stringify(log.document)).toBe(JSON.stringify(stacks.document));
          expect(log.history.undo !== null).toBe(stacks.past.length > 0);
          expect(log.history.redo !== null).toBe(stacks.future.length > 0);
        }
      }),
      { seed: 41, numRuns: 600 },
    );
  });

  it('a new edit clears what could be redone', () => {
    const log = new Log({ parameters: { height: 450 } });
    log.edit([{ path: ['parameters', 'height'], value: 410 }]);
    log.undo();
    expect(log.history.redo).not.toBeNull();
    log.edit([{ path: ['parameters', 'height'], value: 430 }]);
    expect(log.history.redo).toBeNull();
    log.undo();
    expect(log.document).toEqual({ parameters: { height: 450 } });
    expect(log.history.undo).toBeNull();
  });
});
