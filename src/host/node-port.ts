import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { WorkerPort } from './talk.ts';

/** A worker thread of Node that runs the module at `url`; TypeScript as it stands in a checkout too. */
export function nodePort(url: URL): WorkerPort {
  const worker = url.pathname.endsWith('.ts')
    ? new Worker(afterTypeScript(url), { eval: true })
    : new Worker(url);
  // A task keeps the program alive by the promise someone waits for, an idle worker does not.
  worker.unref();
  return {
    post: message => worker.postMessage(message),
    listen: (hear, fail) => {
      worker.on('message', hear);
      worker.on('error', fail);
      worker.on('exit', code => fail(new Error(`the worker ended (${code})`)));
    },
    end: () => void worker.terminate(),
  };
}

/** In a checkout the module is TypeScript: teach the thread to read that, then begin. */
function afterTypeScript(url: URL): string {
  const reader = pathToFileURL(
    createRequire(import.meta.url)
      .resolve('tsx/esm/api')
      .replace(/cjs$/, 'mjs'),
  ).href;
  return `import('${reader}').then(({ register }) => { register(); return import('${url.href}'); })`;
}
