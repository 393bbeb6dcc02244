import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createCaller } from '../../src/api/caller.ts';
import { TOKEN_META } from '../../src/api/routes.ts';
import type { JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';
import type { EngineName } from '../../src/store/engine.ts';
import type { Store } from '../../src/store/store.ts';
import { openStore } from '../../src/store/store.ts';
import { ENGINES_HERE } from '../store/folder.ts';

const pause = (ms: number): Promise<void> => new Promise(resolve => setTimeout(resolve, ms));

async function inFolder(act: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-kill-'));
  try {
    await act(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Spread over the time of some hundred edits, the same every run. */
const delays = (count: number, longest: number): number[] =>
  Array.from({ length: count }, (_, n) => (n * 7919) % longest);

/** Lets the writer write, kills it, and gives the last version it told. */
async function writeAndKill(folder: string, engine: EngineName, after: number): Promise<number> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/deep/writer.ts', folder, engine]);
  let told = '';
  let trouble = '';
  child.stdout.on('data', part => {
    told += part;
  });
  child.stderr.on('data', part => {
    trouble += part;
  });
  const ended = once(child, 'close');
  while (!told.includes('\n') && child.exitCode === null) await pause(5);
  await pause(after);
  child.kill('SIGKILL');
  await ended;
  expect(trouble).toBe('');
  // The last line may be cut off by the kill; whole lines were told.
  return Number(told.slice(0, told.lastIndexOf('\n')).split('\n').at(-1));
}

/** The log is whole, and leads back from the document to the first one. */
async function checkWhole(store: Store, first: JsonObject): Promise<number> {
  expect(await store.damage()).toEqual([]);
  const state = (await store.documents.get('bench'))!;
  const log = await store.documents.log('bench');
  expect(log.map(entry => entry.version)).toEqual(log.map((_, index) => index + 1));
  expect(log.length).toBe(state.version);
  let document = state.document;
  for (const { inverse } of log.reverse()) {
    const back = applyEdit(document, { operations: inverse });
    if (!back.ok) throw new Error(back.faults[0]!.fault);
    document = back.document;
  }
  expect(document).toEqual(first);
  return state.version;
}

describe.each(ENGINES_HERE)('a store over %s, killed while writing', engine => {
  it('keeps every edit it said was saved, and is whole, twenty times over', () =>
    inFolder(async folder => {
      for (const after of delays(20, 400)) {
        const told = await writeAndKill(folder, engine, after);
        const store = await openStore(folder, { engine });
        const kept = await checkWhole(store, { title: 'Porch bench', parameters: { height: 450 } });
        await store.close();
        expect(told).toBeGreaterThan(0);
        expect(kept).toBeGreaterThanOrEqual(told);
        // At most the one edit whose answer the kill swallowed.
        expect(kept).toBeLessThanOrEqual(told + 1);
      }
    }));
});

async function startOffice(folder: string) {
  const args = ['--import', 'tsx', 'src/cli/main.ts', 'start', '--data', folder, '--port', '0'];
  const child = spawn(process.execPath, args);
  const ended = once(child, 'close');
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', part => {
      said += part;
    });
  return { child, ended, said: () => said };
}

async function addressOf(office: Awaited<ReturnType<typeof startOffice>>): Promise<string> {
  for (;;) {
    const found = /http:\/\/127\.0\.0\.1:\d+/.exec(office.said());
    if (found) return found[0];
    if (office.child.exitCode !== null) throw new Error(`it ended: ${office.said()}`);
    await pause(10);
  }
}

async function callerOf(address: string) {
  const page = await (await fetch(address)).text();
  return createCaller(new RegExp(`"${TOKEN_META}" content="(\\w+)"`).exec(page)![1]!, fetch, address);
}

const id = 'porch-bench';
const note = (n: number, base: number) => ({
  id: `note-${n}`,
  at: '2026-11-25T09:00:00.000Z',
  base,
  operations: [{ path: ['notes'], value: `note ${n}` }],
});

describe('the drawing office, killed while edits come in', () => {
  it('has every edit it answered; the one without an answer can be sent again and counts once', () =>
    inFolder(async folder => {
      let sent = 0;
      for (const after of delays(6, 300)) {
        const office = await startOffice(folder);
        const call = await callerOf(await addressOf(office));
        const begun = await call('getJob', { params: { id } });
        if (!begun.ok) throw new Error(begun.faults[0]!.fault);
        let base = begun.body.version;
        // What was sent last time without an answer.
        const again = await call('editJob', { params: { id }, body: note(sent, base) });
        if (!again.ok) throw new Error(again.faults[0]!.fault);
        expect(again.body.document.notes).toBe(`note ${sent}`);
        base = again.body.version;
        setTimeout(() => office.child.kill('SIGKILL'), after);
        for (;;) {
          sent += 1;
          const answer = await call('editJob', { params: { id }, body: note(sent, base) });
          if (!answer.ok) break;
          base = answer.body.version;
        }
        await office.ended;
        const store = await openStore(folder);
        const log = await store.documents.log(id);
        const kept = log.map(entry => entry.id);
        expect(new Set(kept).size).toBe(kept.length);
        for (let n = 0; n < sent; n += 1) expect(kept).toContain(`note-${n}`);
        expect(await store.damage()).toEqual([]);
        await store.close();
      }
      expect(sent).toBeGreaterThan(20);
    }));

  it('seeds its demo jobs whole though it was killed again and again on its first start', () =>
    inFolder(async folder => {
      for (const after of delays(12, 900)) {
        const office = await startOffice(folder);
        await pause(300 + after);
        office.child.kill('SIGKILL');
        await office.ended;
      }
      const office = await startOffice(folder);
      const call = await callerOf(await addressOf(office));
      const jobs = await call('listJobs');
      const ids = jobs.ok ? jobs.body.jobs.map(job => job.id) : [];
      expect(ids).toContain('porch-bench');
      expect(new Set(ids).size).toBe(ids.length);
      expect(await call('getWorkshop')).toMatchObject({ ok: true });
      office.child.kill('SIGTERM');
      await office.ended;
    }));
});
