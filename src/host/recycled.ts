import { createDesk, type Desk } from './desk.ts';
import type { WorkerPort } from './talk.ts';
import type { Task } from './work.ts';

/** Tasks whose answers say how much memory their thread holds, bytes. */
type Telling = Record<string, Task<never, Promise<{ memory: number }>>>;

/**
 * A desk whose thread is ended once it holds more than `most` bytes: wasm memory grows and never shrinks, so the
 * next task begins in a fresh one. Tasks are done one at a time.
 */
export function recycledDesk<T extends Telling>(
  spawn: () => WorkerPort,
  most: number,
): Pick<Desk<T>, 'run' | 'close'> {
  let desk = createDesk<T>(spawn);
  let turn: Promise<unknown> = Promise.resolve();
  return {
    run: (task, input, watch) => {
      const done = turn.then(() => desk.run(task, input, watch));
      turn = done.then(
        ({ memory }) => {
          if (memory <= most) return;
          desk.close();
          desk = createDesk<T>(spawn);
        },
        () => undefined,
      );
      return done;
    },
    close: () => desk.close(),
  };
}
