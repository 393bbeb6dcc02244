import { parentPort } from 'node:worker_threads';
import { DERIVE_WORK } from './derive-work.ts';
import type { ToWorker } from './talk.ts';
import { work } from './work.ts';

/** The thread in which the server derives. */
parentPort?.on('message', (message: ToWorker) =>
  work(DERIVE_WORK, message, answer => parentPort?.postMessage(answer)),
);
