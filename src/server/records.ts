import type { Handlers } from './answers.ts';
import { created, ok, unknown } from './answers.ts';
import { findJob } from './jobs.ts';
import type { ServerParts } from './parts.ts';

type RecordRoutes =
  | 'listClients'
  | 'createClient'
  | 'getClient'
  | 'saveClient'
  | 'eraseClient'
  | 'listMeasurements'
  | 'addMeasurement'
  | 'listTicks'
  | 'addTick';

export function recordHandlers(parts: ServerParts): Handlers<RecordRoutes> {
  return { ...clientHandlers(parts), ...doneHandlers(parts) };
}

function clientHandlers({
  store: { clients },
  newId,
}: ServerParts): Handlers<'listClients' | 'createClient' | 'getClient' | 'saveClient' | 'eraseClient'> {
  const answer = async (id: string) => {
    const client = await clients.get(id);
    return client ? ok(client) : unknown('client', id);
  };
  return {
    listClients: async () => ok({ clients: await clients.list() }),
    createClient: async ({ body }) => created(await clients.save(newId('client'), body)),
    getClient: ({ params: { id } }) => answer(id),
    saveClient: async ({ params: { id }, body }) =>
      (await clients.get(id)) ? ok(await clients.save(id, body)) : unknown('client', id),
    eraseClient: async ({ params: { id } }) =>
      (await clients.erase(id)) ? answer(id) : unknown('client', id),
  };
}

function doneHandlers(
  parts: ServerParts,
): Handlers<'listMeasurements' | 'addMeasurement' | 'listTicks' | 'addTick'> {
  const { done } = parts.store;
  return {
    listMeasurements: async ({ params: { id } }) => {
      if (!(await findJob(parts, id))) return unknown('job', id);
      const measurements = await done.measurements(id);
      return ok({ measurements: measurements.map(({ documentId: _job, ...one }) => one) });
    },
    addMeasurement: async ({ params: { id }, body }) => {
      if (!(await findJob(parts, id))) return unknown('job', id);
      await done.measure({ ...body, documentId: id });
      return created({});
    },
    listTicks: async ({ params: { id } }) => {
      if (!(await findJob(parts, id))) return unknown('job', id);
      const ticks = await done.ticks(id);
      return ok({ ticks: ticks.map(({ documentId: _job, ...one }) => one) });
    },
    addTick: async ({ params: { id }, body }) => {
      if (!(await findJob(parts, id))) return unknown('job', id);
      await done.tick({ ...body, documentId: id });
      return created({});
    },
  };
}
