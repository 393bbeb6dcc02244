import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { afterEach } from 'vitest';
import { parse, stringify } from 'yaml';
import { TOKEN_HEADER } from '../../src/api/routes.ts';
import type { Json, JsonObject } from '../../src/job/edits.ts';
import { createApp } from '../../src/server/app.ts';
import { createEvents } from '../../src/server/events.ts';
import type { FileForm, Paper, ServerParts } from '../../src/server/parts.ts';
import { WORKSHOP_ID } from '../../src/server/parts.ts';
import { openStore } from '../../src/store/store.ts';

export const TOKEN = 'a'.repeat(64);
export const PORT = 4731;
export const HOST = `127.0.0.1:${PORT}`;

const endings: (() => Promise<void> | void)[] = [];
afterEach(async () => {
  for (const end of endings.splice(0).reverse()) await end();
});
export const afterThis = (end: () => Promise<void> | void): number => endings.push(end);

export function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-server-'));
  afterThis(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Files as plain YAML: the server is tested apart from what a job file may hold. */
export const plainForm: FileForm = {
  read: text => {
    try {
      const document = parse(text) as JsonObject;
      if (typeof document === 'object' && document !== null) return { document, faults: [] };
    } catch {
      // Falls through to the fault.
    }
    return { faults: [{ place: 'file', fault: 'it cannot be read', mend: 'write YAML' }] };
  },
  write: document => stringify(document),
};

/** A paper whose bytes show what it was made from. */
export const listPaper: Paper = {
  name: 'parts.csv',
  kind: 'parts',
  title: 'parts list',
  mediaType: 'text/csv',
  make: async (job, _workshop, settingOut) =>
    job.parts === undefined
      ? { faults: [{ place: 'parts', fault: 'there are none', mend: 'add a part' }] }
      : { bytes: new TextEncoder().encode([...Object.keys(job.parts as object), settingOut].join('\n')) },
};

export interface Office {
  app: FastifyInstance;
  parts: ServerParts;
  log: string[];
  /** Asks as the office's own page does: right host, right token. */
  ask(method: 'GET' | 'POST' | 'PUT' | 'DELETE', url: string, body?: unknown): Promise<Answered>;
  /** Asks with exactly these headers. */
  raw(options: InjectOptions): Promise<Answered>;
}

export interface Answered {
  status: number;
  headers: Record<string, unknown>;
  text: string;
  /** JSON of the answer, read with `toMatchObject`. */
  body: unknown;
}

export const bench = {
  title: 'Porch bench',
  number: '26-014',
  parameters: { height: 450 },
  parts: { leg: { length: 423 } },
};

export async function newOffice(): Promise<Office> {
  const folder = newFolder();
  const officeFolder = join(folder, 'office');
  mkdirSync(join(officeFolder, 'assets'), { recursive: true });
  writeFileSync(
    join(officeFolder, 'index.html'),
    '<!doctype html><html><head><title>Scantling</title></head></html>',
  );
  writeFileSync(join(officeFolder, 'assets', 'main-abc123.js'), 'export {};');
  writeFileSync(join(folder, 'secret.txt'), 'not yours');
  const store = await openStore(join(folder, 'data'));
  await store.documents.create(WORKSHOP_ID, 'workshop', { name: 'Shop', rates: { hour: 3800 } });
  await store.documents.create('bench', 'job', bench);
  let ids = 0;
  const parts: ServerParts = {
    store,
    events: createEvents(),
    jobFile: plainForm,
    workshopFile: plainForm,
    templates: [{ id: 'stool', title: 'Stool', text: 'title: Stool\nparts: {leg: {length: 400}}\n' }],
    papers: [listPaper],
    programVersion: '0.1.0',
    tablesHash: 'beef',
    newId: prefix => `${prefix}-${++ids}`,
  };
  const log: string[] = [];
  const app = await createApp({
    parts,
    officeFolder,
    token: TOKEN,
    port: () => PORT,
    log: line => log.push(line),
  });
  afterThis(() => store.close());
  afterThis(() => app.close());
  const raw = async (options: InjectOptions): Promise<Answered> => {
    const response = await app.inject(options);
    const isJson = String(response.headers['content-type'] ?? '').startsWith('application/json');
    const body: unknown = isJson ? response.json() : undefined;
    return { status: response.statusCode, headers: response.headers, text: response.body, body };
  };
  const ask: Office['ask'] = (method, url, body) =>
    raw({
      method,
      url,
      headers: { host: HOST, [TOKEN_HEADER]: TOKEN },
      ...(body === undefined ? {} : { payload: body as object }),
    });
  return { app, parts, log, ask, raw };
}

let acts = 0;
export const act = (base: number) => ({ id: `act-${++acts}`, at: '2026-11-25T09:00:00.000Z', base });
export const setHeight = (base: number, height: Json) => ({
  ...act(base),
  operations: [{ path: ['parameters', 'height'], value: height }],
});
