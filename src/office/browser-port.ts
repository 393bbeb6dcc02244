import type { FromWorker, WorkerPort } from '../host/talk.ts';

/** A worker of the browser, as a desk sees it. */
export const browserPort = (worker: Worker): WorkerPort => ({
  post: message => worker.postMessage(message),
  listen: (hear, fail) => {
    worker.onmessage = (event: MessageEvent<FromWorker>) => hear(event.data);
    worker.onerror = event => fail(new Error(event.message || 'the worker stopped'));
  },
  end: () => worker.terminate(),
});
