import { createDesk } from '../host/desk.ts';
import type { FromWorker, WorkerPort } from '../host/talk.ts';
import type { Derived } from '../results/derived.ts';
import type { DeriveInput, DeriveTasks } from './derive-tasks.ts';
import type { Deriver } from './ports.ts';

function browserPort(): WorkerPort {
  const worker = new Worker(new URL('./derive.worker.ts', import.meta.url), { type: 'module' });
  return {
    post: message => worker.postMessage(message),
    listen: (hear, fail) => {
      worker.onmessage = (event: MessageEvent<FromWorker>) => hear(event.data);
      worker.onerror = event => fail(new Error(event.message || 'the derivation stopped'));
    },
    end: () => worker.terminate(),
  };
}

interface Next {
  input: DeriveInput;
  settle: (derived: Derived | undefined) => void;
  fail: (error: unknown) => void;
}

/**
 * Derives in a worker. One derivation runs at a time; while it runs only the newest request is kept, so that
 * typing never queues up work.
 */
export function workerDeriver(spawn: () => WorkerPort = browserPort): Deriver {
  const desk = createDesk<DeriveTasks>(spawn);
  let busy = false;
  let next: Next | undefined;
  const pump = async (): Promise<void> => {
    if (busy || !next) return;
    const { input, settle, fail } = next;
    next = undefined;
    busy = true;
    try {
      settle(await desk.run('derive', input));
    } catch (error) {
      fail(error);
    } finally {
      busy = false;
      void pump();
    }
  };
  return {
    derive: (document, workshop, today) =>
      new Promise((settle, fail) => {
        next?.settle(undefined);
        next = { input: { document, workshop, today }, settle, fail };
        void pump();
      }),
    compare: (document, workshop, today) => desk.run('compare', { document, workshop, today }),
    why: figure => desk.run('why', figure),
    close: () => desk.close(),
  };
}
