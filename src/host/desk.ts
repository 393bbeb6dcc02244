import type { Progress } from '../results/solver.ts';
import type { FromWorker, WorkerPort } from './talk.ts';
import type { Tasks } from './work.ts';

export interface Watch {
  progress?: Progress;
  signal?: AbortSignal;
}

/** Hands tasks to a worker, one at a time, in the order they were asked. */
export interface Desk<T extends Tasks> {
  /** Rejects with the signal's reason when aborted, or with what went wrong. */
  run<K extends keyof T & string>(
    task: K,
    input: Parameters<T[K]>[0],
    watch?: Watch,
  ): Promise<Awaited<ReturnType<T[K]>>>;
  close(): void;
}

interface Job {
  id: number;
  task: string;
  input: unknown;
  watch: Watch;
  settle: (result: never) => void;
  fail: (error: unknown) => void;
}

/**
 * A worker's thread cannot be interrupted, so to abort a task that runs its worker is ended; the next task
 * gets a fresh one. The same mends a worker that broke down.
 */
export function createDesk<T extends Tasks>(spawn: () => WorkerPort): Desk<T> {
  const waiting: Job[] = [];
  let running: Job | undefined;
  let port: WorkerPort | undefined;
  let count = 0;

  const finish = (job: Job, end: () => void): void => {
    if (running !== job) return;
    running = undefined;
    end();
    next();
  };
  const replace = (): void => {
    port?.end();
    port = undefined;
  };
  const hear = (message: FromWorker): void => {
    const job = running;
    if (!job || message.id !== job.id) return;
    if (message.kind === 'progress') job.watch.progress?.(message.done, message.of, message.best);
    else if (message.kind === 'done') finish(job, () => job.settle(message.result as never));
    else finish(job, () => job.fail(new Error(message.words)));
  };
  const open = (): WorkerPort => {
    const opened = spawn();
    opened.listen(hear, error => {
      if (port !== opened) return;
      replace();
      if (running) finishRunning(error);
    });
    return opened;
  };
  const finishRunning = (error: unknown): void => {
    const job = running!;
    finish(job, () => job.fail(error));
  };
  const next = (): void => {
    if (running) return;
    running = waiting.shift();
    if (!running) return;
    port ??= open();
    port.post({ id: running.id, task: running.task, input: running.input });
  };
  const abort = (job: Job): void => {
    const place = waiting.indexOf(job);
    if (place >= 0) {
      waiting.splice(place, 1);
      job.fail(job.watch.signal!.reason);
    } else if (running === job) {
      replace();
      finishRunning(job.watch.signal!.reason);
    }
  };
  return {
    run: (task, input, watch = {}) =>
      new Promise((settle, fail) => {
        watch.signal?.throwIfAborted();
        const job: Job = { id: ++count, task, input, watch, settle, fail };
        watch.signal?.addEventListener('abort', () => abort(job), { once: true });
        waiting.push(job);
        next();
      }),
    close: () => {
      replace();
      const closed = new Error('the desk is closed');
      for (const job of waiting.splice(0)) job.fail(closed);
      if (running) finishRunning(closed);
    },
  };
}
