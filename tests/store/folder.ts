import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import type { JsonObject } from '../../src/job/edits.ts';
import { ENGINES, loadEngine } from '../../src/store/engine.ts';
import type { Store, StoreOptions } from '../../src/store/store.ts';
import { openStore } from '../../src/store/store.ts';

/** The SQLite bindings that load here; libsql, which brings its binary, always does. */
export const ENGINES_HERE = (
  await Promise.all(
    ENGINES.map(name =>
      loadEngine(name).then(
        () => [name],
        () => [],
      ),
    ),
  )
).flat();

const folders: string[] = [];
const stores: Store[] = [];

afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A folder of its own for one test, gone after it. */
export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-store-'));
  folders.push(folder);
  return folder;
}

/** Each reading of this clock is a second later than the one before. */
export function tickingClock(): () => Date {
  let second = 0;
  return () => new Date(Date.UTC(2026, 10, 25, 9, 0, second++));
}

export async function newStore(folder = newFolder(), options: StoreOptions = {}): Promise<Store> {
  const store = await openStore(folder, { now: tickingClock(), ...options });
  stores.push(store);
  return store;
}

/** Closes the store now rather than after the test. */
export async function closeNow(store: Store): Promise<void> {
  stores.splice(stores.indexOf(store), 1);
  await store.close();
}

export const bench: JsonObject = {
  title: 'Porch bench',
  number: '26-014',
  client: 'hale',
  brief: 'For an unheated porch.',
  parameters: { height: 450 },
  parts: { leg: { length: 423 } },
};

let acts = 0;
/** An act with an id of its own. */
export function act(base: number) {
  acts += 1;
  return { id: `act-${acts}`, actor: 'maker', device: 'desk', at: '2026-11-25T09:00:00.000Z', base };
}

export const setHeight = (base: number, height: number) => ({
  ...act(base),
  operations: [{ path: ['parameters', 'height'], value: height }],
});
