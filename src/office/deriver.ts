import type { JsonObject } from '../job/edits.ts';
import type { Derived } from '../results/derived.ts';
import type { Why } from '../results/why.ts';
import type { Ask, Told } from './derive-talk.ts';
import type { Deriver } from './ports.ts';

interface Waiting {
  settle: (told: Told) => void;
  fail: (error: Error) => void;
}

/**
 * Talks to the worker that derives. Only one derivation runs at a time; while it runs, only the newest
 * request is kept, so that typing never queues up work.
 */
export function workerDeriver(): Deriver {
  const worker = new Worker(new URL('./derive.worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, Waiting>();
  let count = 0;
  let busy = false;
  let next:
    | { ask: Ask; settle: (derived: Derived | undefined) => void; fail: (e: Error) => void }
    | undefined;

  worker.onmessage = (event: MessageEvent<{ id: number; told: Told }>) => {
    const { id, told } = event.data;
    waiting.get(id)?.settle(told);
    waiting.delete(id);
  };
  worker.onerror = event => {
    for (const { fail } of waiting.values()) fail(new Error(event.message || 'the derivation stopped'));
    waiting.clear();
  };
  const send = (ask: Ask): Promise<Told> =>
    new Promise((settle, fail) => {
      const id = ++count;
      waiting.set(id, { settle, fail });
      worker.postMessage({ id, ask });
    });
  const derivedOf = (told: Told): Derived | undefined => {
    if (told.kind === 'failed') throw new Error(told.words);
    return told.kind === 'derived' ? told.derived : undefined;
  };
  const pump = async (): Promise<void> => {
    if (busy || !next) return;
    const { ask, settle, fail } = next;
    next = undefined;
    busy = true;
    try {
      settle(derivedOf(await send(ask)));
    } catch (error) {
      fail(error instanceof Error ? error : new Error(String(error)));
    } finally {
      busy = false;
      void pump();
    }
  };
  return {
    derive: (document: JsonObject, workshop: JsonObject, today: string) =>
      new Promise((settle, fail) => {
        next?.settle(undefined);
        next = { ask: { kind: 'derive', document, workshop, today }, settle, fail };
        void pump();
      }),
    compare: async (document, workshop, today) =>
      derivedOf(await send({ kind: 'compare', document, workshop, today })),
    why: async (figure): Promise<Why | undefined> => {
      const told = await send({ kind: 'why', figure });
      return told.kind === 'why' ? told.why : undefined;
    },
    close: () => worker.terminate(),
  };
}
