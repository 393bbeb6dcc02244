import './no-eval.ts';
import type { FromWorker, ToWorker } from '../host/talk.ts';
import { work } from '../host/work.ts';
import { deriveTasks } from './derive-tasks.ts';

/** The thread in which the office derives. */
const tasks = deriveTasks();
const tell = (message: FromWorker): void => postMessage(message);
addEventListener('message', (event: MessageEvent<ToWorker>) => void work(tasks, event.data, tell));
