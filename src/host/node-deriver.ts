import { existsSync } from 'node:fs';
import type { DERIVE_WORK } from './derive-work.ts';
import type { Desk } from './desk.ts';
import { createDesk } from './desk.ts';
import { nodePort } from './node-port.ts';
import type { WorkerPort } from './talk.ts';

/** Beside this file in a checkout; in the built program beside it or one folder up. */
const PLACES = ['./node-worker.ts', './node-worker.js', '../node-worker.js'];

function workerUrl(): URL {
  const found = PLACES.map(place => new URL(place, import.meta.url)).find(url => existsSync(url));
  if (!found) throw new Error('the worker that derives is not built');
  return found;
}

/** A new thread of the server's worker. */
export const serverThread = (): WorkerPort => nodePort(workerUrl());

/** Derives in a thread of its own, so that the server goes on answering. */
export const createNodeDeriver = (): Desk<typeof DERIVE_WORK> => createDesk(serverThread);
