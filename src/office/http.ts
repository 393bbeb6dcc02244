import { addressOf, type Called, createCaller, type DocumentStateAnswer } from '../api/caller.ts';
import { EVENTS_PATH, type RouteName, TOKEN_META } from '../api/routes.ts';
import type { JsonObject } from '../job/edits.ts';
import type { Fault } from '../results/fault.ts';
import { type JobState, type OfficeApi, Refusal } from './ports.ts';

const faultWords = (faults: readonly Fault[]): string =>
  faults.map(f => `${f.place}: ${f.fault}; ${f.mend}`).join('. ') || 'the drawing office did not answer';

function opened<N extends RouteName>(called: Called<N>): Extract<Called<N>, { ok: true }>['body'] {
  if (called.ok) return called.body;
  const why = called.status === 0 ? 'away' : called.status === 409 ? 'stale' : 'refused';
  throw new Refusal(faultWords(called.faults), why, called.state && stateOf(called.state));
}

const stateOf = (answer: DocumentStateAnswer): JobState => ({
  ...answer,
  document: answer.document as JsonObject,
});

/** The token that the server's page carries now: it changes when the server is started again. */
async function presentToken(): Promise<string | undefined> {
  const page = await (await fetch('/', { cache: 'no-store' })).text();
  const read = new DOMParser().parseFromString(page, 'text/html');
  return read.querySelector<HTMLMetaElement>(`meta[name="${TOKEN_META}"]`)?.content;
}

/** The office's side of the server, by the routes of the api. */
export function httpApi(): OfficeApi {
  const token = document.querySelector<HTMLMetaElement>(`meta[name="${TOKEN_META}"]`)?.content ?? '';
  const call = createCaller(token, fetch.bind(globalThis), '', presentToken);
  const act = (base: number) => ({ id: crypto.randomUUID(), at: new Date().toISOString(), base });
  return {
    jobs: async search => opened(await call('listJobs', { query: { search, limit: 200 } })),
    templates: async () => opened(await call('listTemplates')).templates,
    create: async (title, template) =>
      opened(await call('createJob', { body: { title, ...(template === undefined ? {} : { template }) } }))
        .state.id,
    importJob: async text => {
      const { state, faults } = opened(await call('importJob', { body: { text } }));
      return { id: state.id, faults: faults as Fault[] };
    },
    job: async id => stateOf(opened(await call('getJob', { params: { id } }))),
    edit: async (id, base, operations) =>
      stateOf(
        opened(
          await call('editJob', {
            params: { id },
            body: { ...act(base), operations: operations.map(o => ({ ...o, path: [...o.path] })) },
          }),
        ),
      ),
    undo: async (id, base) => stateOf(opened(await call('undoJob', { params: { id }, body: act(base) }))),
    redo: async (id, base) => stateOf(opened(await call('redoJob', { params: { id }, body: act(base) }))),
    keep: async (id, name) => {
      opened(await call('freezeRevision', { params: { id }, body: { name } }));
      return stateOf(opened(await call('getJob', { params: { id } })));
    },
    keptList: async id => opened(await call('listRevisions', { params: { id } })).revisions,
    kept: async (id, number) => {
      const kept = opened(await call('getRevision', { params: { id, number } }));
      return { ...kept, document: kept.document as JsonObject };
    },
    workshop: async () => opened(await call('getWorkshop')).document as JsonObject,
    editWorkshop: async make => {
      const now = opened(await call('getWorkshop'));
      const operations = make(now.document as JsonObject).map(o => ({ ...o, path: [...o.path] }));
      if (operations.length === 0) return now.document as JsonObject;
      return opened(await call('editWorkshop', { body: { ...act(now.version), operations } }))
        .document as JsonObject;
    },
    watch: changed => {
      const events = new EventSource(EVENTS_PATH);
      events.onmessage = event => {
        const told = JSON.parse(event.data) as { id: string; version: number };
        changed(told.id, told.version);
      };
      return () => events.close();
    },
    paper: (id, name) => addressOf('paper', { params: { id, name } }),
    file: id => addressOf('exportJob', { params: { id } }),
    ticks: async id => {
      const { ticks } = opened(await call('listTicks', { params: { id } }));
      const done = new Map<string, string>();
      for (const tick of ticks)
        if (tick.done) done.set(tick.subject, tick.madeFrom);
        else done.delete(tick.subject);
      return done;
    },
    tick: async (id, subject, done, madeFrom) => {
      const { at, id: own } = act(0);
      opened(await call('addTick', { params: { id }, body: { id: own, at, subject, done, madeFrom } }));
    },
  };
}
