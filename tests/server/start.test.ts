import { mkdirSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createCaller } from '../../src/api/caller.ts';
import { EVENTS_PATH, TOKEN_META } from '../../src/api/routes.ts';
import type { Running, StartOptions } from '../../src/server/start.ts';
import { startServer } from '../../src/server/start.ts';
import { StoreRefusal } from '../../src/store/refusal.ts';
import { afterThis, listPaper, newFolder, plainForm, setHeight } from './office.ts';

function options(folder = newFolder()): StartOptions {
  const examplesFolder = join(folder, 'examples');
  mkdirSync(examplesFolder, { recursive: true });
  writeFileSync(join(examplesFolder, 'bench.yaml'), 'title: Porch bench\nparameters: {height: 450}\n');
  writeFileSync(join(examplesFolder, 'table.yaml'), 'title: Writing table\n');
  writeFileSync(join(examplesFolder, 'broken.yaml'), '{{');
  writeFileSync(join(examplesFolder, 'workshop.yaml'), 'name: Lived-in shop\n');
  const officeFolder = join(folder, 'office');
  mkdirSync(officeFolder, { recursive: true });
  writeFileSync(join(officeFolder, 'index.html'), '<!doctype html><html><head></head></html>');
  return {
    data: join(folder, 'data'),
    port: 0,
    programVersion: '0.1.0',
    tablesHash: 'beef',
    jobFile: plainForm,
    workshopFile: plainForm,
    papers: [listPaper],
    examplesFolder,
    officeFolder,
  };
}

async function started(given: StartOptions): Promise<Running & { end: () => Promise<void> }> {
  const running = await startServer(given);
  let open = true;
  const end = async (): Promise<void> => {
    if (open) await running.close();
    open = false;
  };
  afterThis(end);
  return { ...running, end };
}

/** The token, read as the page's own script reads it. */
async function caller(running: Running) {
  const page = await (await fetch(running.address)).text();
  const token = new RegExp(`<meta name="${TOKEN_META}" content="([0-9a-f]{64})">`).exec(page)![1]!;
  return { token, call: createCaller(token, fetch, running.address.replace(/\/$/, '')) };
}

describe('starting', () => {
  it('seeds on the first start alone, in the order of the files', async () => {
    const given = options();
    const first = await started(given);
    expect(first.seeded).toEqual(['bench', 'table']);
    const { call } = await caller(first);
    const list = await call('listJobs');
    expect(list.ok && list.body.jobs.map(job => job.title)).toEqual(['Porch bench', 'Writing table']);
    const workshop = await call('getWorkshop');
    expect(workshop.ok && workshop.body.document).toEqual({ name: 'Lived-in shop' });
    await call('editJob', { params: { id: 'bench' }, body: setHeight(0, 410) });
    await first.end();
    const second = await started(given);
    expect(second.seeded).toEqual([]);
    const job = await (await caller(second)).call('getJob', { params: { id: 'bench' } });
    expect(job).toMatchObject({ ok: true, body: { document: { parameters: { height: 410 } } } });
  });

  it('has a new token each time, and the old one opens nothing', async () => {
    const given = options();
    const first = await started(given);
    const old = await caller(first);
    await first.end();
    const second = await started({ ...given, port: Number(new URL(first.address).port) });
    expect((await caller(second)).token).not.toBe(old.token);
    expect(await old.call('createClient', { body: { name: 'Hale' } })).toMatchObject({
      ok: false,
      status: 403,
    });
  });

  it('listens on loopback alone', async () => {
    const { address } = await started(options());
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const outside = Object.values(networkInterfaces())
      .flat()
      .filter(one => one?.family === 'IPv4' && !one.internal)
      .map(one => one!.address);
    for (const host of outside) {
      const reached = await new Promise<boolean>(resolve => {
        const socket = connect({ host, port: Number(new URL(address).port) });
        socket.on('connect', () => resolve(true)).on('error', () => resolve(false));
        socket.setTimeout(1000, () => resolve(false));
        afterThis(() => void socket.destroy());
      });
      expect(reached).toBe(false);
    }
  });

  it('says so when the port or the data folder is taken, and lets go of the folder', async () => {
    const first = await started(options());
    const port = Number(new URL(first.address).port);
    const other = options();
    await expect(startServer({ ...other, port })).rejects.toBeInstanceOf(StoreRefusal);
    await expect(startServer({ ...other, data: first.store.folder })).rejects.toThrow(/in use/);
    await started(other);
  });

  it('answers plainly when it cannot be reached', async () => {
    const running = await started(options());
    const { call } = await caller(running);
    await running.end();
    expect(await call('listJobs')).toMatchObject({ ok: false, status: 0, faults: [{ place: 'server' }] });
  });
});

describe('two windows', () => {
  it('the second hears at once what the first has changed', async () => {
    const running = await started(options());
    const { call } = await caller(running);
    const stop = new AbortController();
    const stream = await fetch(running.address.replace(/\/$/, EVENTS_PATH), { signal: stop.signal });
    expect(stream.headers.get('content-type')).toBe('text/event-stream');
    const reader = stream.body!.pipeThrough(new TextDecoderStream()).getReader();
    await call('editJob', { params: { id: 'bench' }, body: setHeight(0, 410) });
    let heard = '';
    while (!heard.includes('data: ')) heard += (await reader.read()).value ?? '';
    expect(heard).toContain('data: {"id":"bench","version":1}');
    stop.abort();
    await reader.cancel().catch(() => {});
  });

  it('an open stream does not hold up the close', async () => {
    const running = await started(options());
    const stream = await fetch(running.address.replace(/\/$/, EVENTS_PATH));
    const before = performance.now();
    await running.end();
    expect(performance.now() - before).toBeLessThan(2000);
    await stream.body!.cancel().catch(() => {});
  });
});
