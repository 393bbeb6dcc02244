/**
 * Writes edits to the store of a folder as fast as they are durable, telling each version once its promise is
 * kept, until it is killed. `node --import tsx tests/deep/writer.ts FOLDER [ENGINE]`.
 */
import { writeSync } from 'node:fs';
import type { EngineName } from '../../src/store/engine.ts';
import { openStore } from '../../src/store/store.ts';

const [folder, engine] = process.argv.slice(2);
const store = await openStore(folder!, engine === undefined ? {} : { engine: engine as EngineName });
await store.documents.create('bench', 'job', { title: 'Porch bench', parameters: { height: 450 } });
let { version: base } = (await store.documents.get('bench'))!;
const says = { actor: 'maker', device: 'desk', at: '2026-11-25T09:00:00.000Z' };

for (;;) {
  const act = { ...says, id: `${process.pid}-${base}`, base };
  const operations = [
    { path: ['parameters', 'height'], value: base },
    { path: ['notes', `n${base % 50}`], value: 'a line of words '.repeat(base % 40) },
  ];
  const saved =
    base % 7 === 6
      ? await store.documents.undo('bench', act)
      : await store.documents.edit('bench', { ...act, operations });
  if (!saved.ok) throw new Error(saved.why);
  base = saved.state.version;
  // Straight to the pipe: what is told has left this process before the next edit begins.
  writeSync(1, `${base}\n`);
}
