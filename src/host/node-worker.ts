import { parentPort } from 'node:worker_threads';
import { DERIVE_WORK } from './derive-work.ts';
import { loadExactKernel } from './exact-kernel-node.ts';
import { exactTasks } from './exact-work.ts';
import type { ToWorker } from './talk.ts';
import { work } from './work.ts';

const TASKS = { ...DERIVE_WORK, ...exactTasks(loadExactKernel) };

/** The thread in which the server derives; the exact kernel is loaded there when first asked for. */
parentPort?.on('message', (message: ToWorker) =>
  work(TASKS, message, answer => parentPort?.postMessage(answer)),
);
