import { describe, expect, it } from 'vitest';
import type { JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';
import type { Saved } from '../../src/store/documents.ts';
import { act, bench, closeNow, ENGINES_HERE, newFolder, newStore, setHeight } from './folder.ts';

const heightOf = (saved: Saved): unknown => {
  if (!saved.ok) throw new Error(saved.why);
  return (saved.state.document.parameters as JsonObject).height;
};

// The same promises hold over both SQLite bindings.
describe.each(ENGINES_HERE)('documents over %s', engine => {
  it('keep every edit, undo and redo, and say what can be taken back', async () => {
    const { documents } = await newStore(newFolder(), { engine });
    await documents.create('bench', 'job', bench);
    expect(await documents.get('bench')).toMatchObject({ version: 0, canUndo: false, canRedo: false });
    expect(heightOf(await documents.edit('bench', setHeight(0, 410)))).toBe(410);
    expect(heightOf(await documents.edit('bench', setHeight(1, 400)))).toBe(400);
    expect(heightOf(await documents.undo('bench', act(2)))).toBe(410);
    expect(heightOf(await documents.undo('bench', act(3)))).toBe(450);
    expect(await documents.undo('bench', act(4))).toEqual({ ok: false, why: 'nothing' });
    expect(heightOf(await documents.redo('bench', act(4)))).toBe(410);
    const state = await documents.get('bench');
    expect(state).toMatchObject({ version: 5, canUndo: true, canRedo: true });
    expect(heightOf(await documents.edit('bench', setHeight(5, 420)))).toBe(420);
    expect(await documents.redo('bench', act(6))).toEqual({ ok: false, why: 'nothing' });
  });

  it('are there again after closing and opening', async () => {
    const folder = newFolder();
    const store = await newStore(folder, { engine });
    await store.documents.create('bench', 'job', bench);
    await store.documents.edit('bench', setHeight(0, 410));
    await store.documents.undo('bench', act(1));
    const before = await store.documents.get('bench');
    await closeNow(store);
    const again = await newStore(folder, { engine });
    expect(await again.documents.get('bench')).toEqual(before);
    expect(heightOf(await again.documents.redo('bench', act(2)))).toBe(410);
    expect(await again.damage()).toEqual([]);
  });

  it('keep papers byte for byte', async () => {
    const { issued } = await newStore(newFolder(), { engine });
    const bytes = Uint8Array.from({ length: 1000 }, (_, index) => (index * 7) % 256);
    const paper = { id: 'p1', documentId: 'bench', revision: 1, kind: 'offer', title: 'Offer 26-014' };
    const made = { mediaType: 'application/pdf', programVersion: '0.1.0', tablesHash: 'ab', keepUntil: null };
    const line = await issued.keep({ ...paper, ...made }, bytes);
    expect(await issued.get('p1')).toMatchObject({ bytes, title: 'Offer 26-014', hash: line.hash });
    expect(await issued.list('bench')).toEqual([line]);
    expect(line.hash).toMatch(/^[0-9a-f]{64}$/);
    await expect(issued.keep({ ...paper, ...made }, new Uint8Array())).rejects.toThrow();
  });
});

describe('two windows on one document', () => {
  it('an edit on a stale version is refused with the newer state, and nothing changes', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    await documents.edit('bench', setHeight(0, 410));
    const late = await documents.edit('bench', setHeight(0, 500));
    expect(late).toMatchObject({ ok: false, why: 'stale', state: { version: 1 } });
    expect(await documents.get('bench')).toMatchObject({
      version: 1,
      document: { parameters: { height: 410 } },
    });
  });

  it('the same edit sent twice is applied once', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    const edit = setHeight(0, 410);
    await documents.edit('bench', edit);
    expect(await documents.edit('bench', edit)).toMatchObject({ ok: true, state: { version: 1 } });
    expect(await documents.log('bench')).toHaveLength(1);
  });

  it('edits sent at the same moment do not mix', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    const answers = await Promise.all(
      [1, 2, 3, 4].map(height => documents.edit('bench', setHeight(0, height))),
    );
    expect(answers.filter(answer => answer.ok)).toHaveLength(1);
    expect(answers.filter(answer => !answer.ok && answer.why === 'stale')).toHaveLength(3);
  });
});

describe('the log', () => {
  it('leads back from the present to the first document by its inverses', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    await documents.edit('bench', setHeight(0, 410));
    await documents.edit('bench', { ...act(1), operations: [{ path: ['parts', 'leg'] }] });
    await documents.undo('bench', act(2));
    let document = (await documents.get('bench'))!.document;
    for (const entry of (await documents.log('bench')).reverse()) {
      const back = applyEdit(document, { operations: entry.inverse });
      if (!back.ok) throw new Error(back.faults[0]!.fault);
      document = back.document;
    }
    expect(document).toEqual(bench);
  });

  it('tells a late window only what it has not seen', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    for (const height of [1, 2, 3]) await documents.edit('bench', setHeight(height - 1, height));
    expect((await documents.log('bench', 2)).map(entry => entry.version)).toEqual([3]);
  });
});

describe('what is refused', () => {
  it('an edit with a fault changes nothing and leaves no entry', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    const bad = { ...act(0), operations: [{ path: ['parts', '__proto__'], value: {} }] };
    expect(await documents.edit('bench', bad)).toMatchObject({ ok: false, why: 'faults' });
    expect(await documents.log('bench')).toEqual([]);
    expect(await documents.get('bench')).toMatchObject({ version: 0 });
  });

  it('a document that would grow without end', async () => {
    const { documents } = await newStore();
    await documents.create('bench', 'job', bench);
    const huge = { ...act(0), operations: [{ path: ['notes'], value: 'x'.repeat(9 * 1024 * 1024) }] };
    expect(await documents.edit('bench', huge)).toMatchObject({ ok: false, why: 'faults' });
  });

  it('an unknown document, and an id that is taken', async () => {
    const { documents } = await newStore();
    expect(await documents.edit('none', setHeight(0, 1))).toEqual({ ok: false, why: 'missing' });
    expect(await documents.create('bench', 'job', bench)).toBe(true);
    expect(await documents.create('bench', 'job', { title: 'Other' })).toBe(false);
    expect(await documents.get('bench')).toMatchObject({ document: { title: 'Porch bench' } });
  });
});
