import type { Progress } from '../results/solver.ts';
import type { FromWorker, ToWorker } from './talk.ts';

/** Work that can be handed to a worker: plain data in, plain data out. */
export type Task<I, R> = (input: I, progress: Progress) => R | Promise<R>;
export type Tasks = Record<string, Task<never, unknown>>;

/** The worker's side: does what is asked, one after another, and tells of progress and failure. */
export async function work(
  tasks: Tasks,
  { id, task, input }: ToWorker,
  tell: (message: FromWorker) => void,
): Promise<void> {
  try {
    const act = tasks[task];
    if (!act) throw new Error(`there is no task ${task}`);
    const progress: Progress = (done, of, best) => tell({ id, kind: 'progress', done, of, best });
    tell({ id, kind: 'done', result: await act(input as never, progress) });
  } catch (error) {
    tell({ id, kind: 'failed', words: error instanceof Error ? error.message : String(error) });
  }
}
