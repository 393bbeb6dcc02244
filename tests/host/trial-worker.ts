import { parentPort } from 'node:worker_threads';
import type { ToWorker } from '../../src/host/talk.ts';
import { work } from '../../src/host/work.ts';
import { TRIALS } from './trial-tasks.ts';

parentPort!.on('message', (message: ToWorker) =>
  work(TRIALS, message, answer => parentPort!.postMessage(answer)),
);
