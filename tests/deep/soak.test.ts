import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openStore, STORE_FILE } from '../../src/store/store.ts';
import { ENGINES_HERE } from '../store/folder.ts';

const EDITS = 10_000;
const MEGABYTE = 1024 * 1024;

describe.each(ENGINES_HERE)('a long day at the desk over %s', engine => {
  it('ten thousand edits, undos and redos: still whole, quick, and small in memory and log', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'scantling-soak-'));
    const store = await openStore(folder, { engine });
    await store.documents.create('bench', 'job', { title: 'Porch bench', parts: { leg: { length: 423 } } });
    const says = { actor: 'maker', device: 'desk', at: '2026-11-25T09:00:00.000Z' };
    let begun = 0;
    let slowest = 0;
    for (let base = 0; base < EDITS; base += 1) {
      const act = { ...says, id: `act-${base}`, base };
      const operations = [{ path: ['parts', `part${base % 40}`], value: { length: base } }];
      const started = performance.now();
      const saved = await (base % 5 === 3
        ? store.documents.undo('bench', act)
        : base % 5 === 4
          ? store.documents.redo('bench', act)
          : store.documents.edit('bench', { ...act, operations }));
      slowest = Math.max(slowest, performance.now() - started);
      expect(saved.ok).toBe(true);
      // After the first thousand the program has grown to its working size.
      if (base === 1000) begun = process.memoryUsage().rss;
    }
    expect(process.memoryUsage().rss - begun).toBeLessThan(250 * MEGABYTE);
    expect(statSync(join(folder, `${STORE_FILE}-wal`)).size).toBeLessThan(32 * MEGABYTE);
    expect(slowest).toBeLessThan(2000);
    expect(await store.damage()).toEqual([]);
    expect(await store.documents.log('bench')).toHaveLength(EDITS);
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  });
});
