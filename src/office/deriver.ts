import { createDesk } from '../host/desk.ts';
import type { WorkerPort } from '../host/talk.ts';
import { browserPort } from './browser-port.ts';
import type { DeriveInput, DeriveTasks } from './derive-tasks.ts';
import { latestOnly } from './latest.ts';
import type { Deriver } from './ports.ts';

const spawnWorker = (): WorkerPort =>
  browserPort(new Worker(new URL('./derive.worker.ts', import.meta.url), { type: 'module' }));

/** Derives in a worker, the newest document only. */
export function workerDeriver(spawn: () => WorkerPort = spawnWorker): Deriver {
  const desk = createDesk<DeriveTasks>(spawn);
  // A thread of its own: what is typed meanwhile does not wait for it.
  const aside = createDesk<DeriveTasks>(spawn);
  // Asked of nothing, so that the thread is ready when the job has come.
  desk.run('why', '').catch(() => undefined);
  const derive = latestOnly((input: DeriveInput) => desk.run('derive', input));
  return {
    derive: (document, workshop, today) => derive({ document, workshop, today }),
    compare: (document, workshop, today) => desk.run('compare', { document, workshop, today }),
    why: figure => desk.run('why', figure),
    longer: (document, workshop, today, signal) =>
      aside.run('longer', { document, workshop, today }, { signal }),
    close: () => {
      desk.close();
      aside.close();
    },
  };
}
