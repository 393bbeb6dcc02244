import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { defaultDataFolder } from '../store/data-folder.ts';
import type { EngineName } from '../store/engine.ts';
import { StoreRefusal } from '../store/refusal.ts';
import type { Store } from '../store/store.ts';
import { openStore } from '../store/store.ts';
import { createApp } from './app.ts';
import { createEvents } from './events.ts';
import type { FileForm, Paper } from './parts.ts';
import { readTemplates, seed } from './seed.ts';

const LOOPBACK = '127.0.0.1';
export const DEFAULT_PORT = 4731;

export interface StartOptions {
  /** Data folder; the platform's own when absent. */
  data?: string;
  /** 0 takes any free one. */
  port?: number;
  engine?: EngineName;
  programVersion: string;
  tablesHash: string;
  jobFile: FileForm;
  workshopFile: FileForm;
  papers: readonly Paper[];
  /** Demo jobs and workshop for the first start. */
  examplesFolder: string;
  officeFolder: string;
  log?: (line: string) => void;
}

export interface Running {
  /** `http://127.0.0.1:4731/` */
  address: string;
  store: Store;
  /** Ids of the demo jobs put in, on the first start. */
  seeded: string[];
  close(): Promise<void>;
}

/**
 * Opens the store, seeds it on the first start, and serves the drawing office on loopback alone.
 * Throws `StoreRefusal` when the data folder or the port cannot be had.
 */
export async function startServer(options: StartOptions): Promise<Running> {
  const store = await openStore(
    options.data ?? defaultDataFolder(),
    options.engine === undefined ? {} : { engine: options.engine },
  );
  try {
    return await serve(store, options);
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function serve(store: Store, options: StartOptions): Promise<Running> {
  const { jobFile, workshopFile, papers, programVersion, tablesHash, examplesFolder, officeFolder, log } =
    options;
  const templates = readTemplates(examplesFolder, jobFile);
  const seeded = await seed(store, examplesFolder, templates, { jobFile, workshopFile });
  const newId = (prefix: string): string => `${prefix}-${randomBytes(6).toString('hex')}`;
  const parts = { store, jobFile, workshopFile, papers, programVersion, tablesHash, templates, newId };
  let port = 0;
  const app = await createApp({
    parts: { ...parts, events: createEvents() },
    officeFolder,
    token: randomBytes(32).toString('hex'),
    port: () => port,
    ...(log === undefined ? {} : { log }),
  });
  port = await listen(app.server, () => app.listen({ host: LOOPBACK, port: options.port ?? DEFAULT_PORT }));
  return {
    address: `http://${LOOPBACK}:${port}/`,
    store,
    seeded,
    close: async () => {
      await app.close();
      await store.close();
    },
  };
}

async function listen(
  server: { address(): string | AddressInfo | null },
  start: () => Promise<string>,
): Promise<number> {
  try {
    await start();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw error;
    throw new StoreRefusal('port', 'The port is in use by another program', 'give another with --port N');
  }
  return (server.address() as AddressInfo).port;
}
