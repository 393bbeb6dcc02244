/**
 * The store with 10,000 jobs: list, search, open, one durable edit. Budget: list and search under 50 ms.
 * `npm run measure -- store [jobs] [engine]`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { EngineName } from '../src/store/engine.ts';
import type { Store } from '../src/store/store.ts';
import { openStore } from '../src/store/store.ts';

const BUDGET_MS = 50;
const WOODS = ['ash', 'oak', 'walnut', 'cherry', 'beech', 'elm', 'maple'];
const PIECES = ['porch bench', 'wall cabinet', 'writing table', 'bookcase', 'bedside chest', 'hall stand'];

export async function run([jobs = '10000', engine]: string[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-measure-'));
  const store = await openStore(folder, engine === undefined ? {} : { engine: engine as EngineName });
  try {
    await fill(store, Number(jobs));
    console.log(
      `${jobs} jobs of about ${Math.round(JSON.stringify(document(1)).length / 1024)} kB in ${store.engine}`,
    );
    await time('list, first page', () => store.jobs());
    await time('list, page 50', () => store.jobs({ offset: 4900 }));
    await time('search, one word, many found', () => store.jobs({ search: 'walnut' }));
    await time('search, two words and a client', () => store.jobs({ search: 'bench customer 17' }));
    await time('search, nothing found', () => store.jobs({ search: 'wardrobe' }));
    await time('open one', () => store.documents.get('job-77'));
    let base = 0;
    await time('one edit, on the disk', async () => {
      const operations = [{ path: ['parameters', 'height'], value: base }];
      const act = { id: `edit-${base}`, actor: 'maker', device: 'desk', at: '2026-11-25T09:00:00Z', base };
      await store.documents.edit('job-77', { ...act, operations });
      base += 1;
    });
  } finally {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function fill(store: Store, jobs: number): Promise<void> {
  for (let n = 0; n < 200; n += 1)
    await store.clients.save(`client-${n}`, {
      name: `Customer ${n}`,
      address: '',
      email: '',
      phone: '',
      notes: '',
    });
  for (let n = 0; n < jobs; n += 1) await store.documents.create(`job-${n}`, 'job', document(n));
}

/** About the size of a setting-out with forty parts. */
function document(n: number) {
  const part = { kind: 'timber', material: 'ash', length: 'clear + 2 * tenon', width: 60, thickness: 32 };
  return {
    title: `${WOODS[n % 7]} ${PIECES[n % 6]}`,
    number: `${20 + (n % 7)}-${n}`,
    client: `client-${n % 200}`,
    brief: 'Stands in an unheated porch; wet boots, two people seated. '.repeat(4),
    parameters: { height: 450, length: 1380 },
    parts: Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`part${index}`, part])),
  };
}

async function time(what: string, act: () => Promise<unknown>): Promise<void> {
  const times: number[] = [];
  for (let turn = 0; turn < 15; turn += 1) {
    const started = performance.now();
    await act();
    times.push(performance.now() - started);
  }
  times.sort((a, b) => a - b);
  const worst = times[times.length - 1]!;
  const middle = times[Math.floor(times.length / 2)]!;
  const verdict = worst > BUDGET_MS ? `over ${BUDGET_MS} ms` : `within ${BUDGET_MS} ms`;
  console.log(`${what.padEnd(34)} median ${middle.toFixed(1)} ms, worst ${worst.toFixed(1)} ms, ${verdict}`);
}
