import type { JsonObject } from '../job/edits.ts';
import { changesSince } from '../job/revisions.ts';
import type { fault } from '../results/fault.ts';
import { JOB_KIND } from '../setting-out/schema.ts';
import type { Saved } from '../store/documents.ts';
import type { Handlers } from './answers.ts';
import { created, faulty, fileOf, ok, savedReply, stateAnswer, unknown } from './answers.ts';
import { fileName } from './file-name.ts';
import type { ServerParts } from './parts.ts';

type JobRoutes =
  | 'listJobs'
  | 'listTemplates'
  | 'createJob'
  | 'importJob'
  | 'getJob'
  | 'editJob'
  | 'undoJob'
  | 'redoJob'
  | 'exportJob'
  | 'listRevisions'
  | 'freezeRevision'
  | 'getRevision'
  | 'changesSince';

export function jobHandlers(parts: ServerParts): Handlers<JobRoutes> {
  return { ...documentHandlers(parts), ...openingHandlers(parts), ...revisionHandlers(parts) };
}

/** The job of that id; the workshop is kept in the same table but is not a job. */
export async function findJob({ store }: ServerParts, id: string) {
  const state = await store.documents.get(id);
  return state?.kind === 'job' ? state : undefined;
}

/** Tells the other windows, then answers. */
export function published({ events }: ServerParts, saved: Saved, what: string, id: string) {
  if (saved.ok) events.publish({ id, version: saved.state.version });
  return savedReply(saved, what, id);
}

function documentHandlers(
  parts: ServerParts,
): Handlers<'listJobs' | 'getJob' | 'editJob' | 'undoJob' | 'redoJob' | 'exportJob'> {
  const { documents } = parts.store;
  const ofJob = async (id: string, act: () => Promise<Saved>) =>
    (await findJob(parts, id)) ? published(parts, await act(), 'job', id) : unknown('job', id);
  return {
    listJobs: async ({ query }) => ok(await parts.store.jobs(query)),
    getJob: async ({ params: { id } }) => {
      const state = await findJob(parts, id);
      return state ? ok(stateAnswer(state)) : unknown('job', id);
    },
    editJob: ({ params: { id }, body }) => ofJob(id, () => documents.edit(id, body)),
    undoJob: ({ params: { id }, body }) => ofJob(id, () => documents.undo(id, body)),
    redoJob: ({ params: { id }, body }) => ofJob(id, () => documents.redo(id, body)),
    exportJob: async ({ params: { id } }) => {
      const state = await findJob(parts, id);
      if (!state) return unknown('job', id);
      const text = parts.jobFile.write(state.document);
      const name = fileName(String(state.document.title ?? id), 'yaml');
      return fileOf({ bytes: text, mediaType: 'application/yaml', name });
    },
  };
}

function openingHandlers(parts: ServerParts): Handlers<'listTemplates' | 'createJob' | 'importJob'> {
  const open = async (document: JsonObject, faults: ReturnType<typeof fault>[]) => {
    const id = parts.newId('job');
    await parts.store.documents.create(id, 'job', document);
    parts.events.publish({ id, version: 0 });
    return created({ state: stateAnswer((await parts.store.documents.get(id))!), faults });
  };
  const openText = async (text: string, title?: string) => {
    const { document, faults } = parts.jobFile.read(text);
    if (!document) return faulty(faults);
    return open(title === undefined ? document : { ...document, title }, faults);
  };
  return {
    listTemplates: async () => ok({ templates: parts.templates.map(({ id, title }) => ({ id, title })) }),
    createJob: async ({ body: { template, text, title } }) => {
      if (text !== undefined) return openText(text, title);
      if (template === undefined) return open({ scantling: JOB_KIND, title: title ?? 'New job' }, []);
      const found = parts.templates.find(one => one.id === template);
      return found ? openText(found.text, title) : unknown('template', template);
    },
    importJob: ({ body: { text } }) => openText(text),
  };
}

function revisionHandlers(
  parts: ServerParts,
): Handlers<'listRevisions' | 'freezeRevision' | 'getRevision' | 'changesSince'> {
  const { revisions } = parts.store;
  return {
    listRevisions: async ({ params: { id } }) =>
      (await findJob(parts, id)) ? ok({ revisions: await revisions.list(id) }) : unknown('job', id),
    freezeRevision: async ({ params: { id }, body: { name, note } }) => {
      const state = await findJob(parts, id);
      const line = state && (await revisions.freeze(id, name, note));
      if (!line) return unknown('job', id);
      parts.events.publish({ id, version: line.version });
      return created(line);
    },
    getRevision: async ({ params: { id, number } }) => {
      const revision = await revisions.get(id, number);
      return revision ? ok(revision) : unknown('setting-out', number);
    },
    changesSince: async ({ params: { id }, query: { since } }) => {
      const state = await findJob(parts, id);
      if (!state) return unknown('job', id);
      const number = since ?? state.settingOut - 1;
      const revision = await revisions.get(id, number);
      if (!revision) return unknown('setting-out', number);
      const { document: _document, ...line } = revision;
      return ok({ since: line, changes: changesSince(revision, state.document) });
    },
  };
}
