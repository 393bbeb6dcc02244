import type { FastifyError, FastifyInstance } from 'fastify';
import Fastify from 'fastify';
import { describeApi } from '../api/openapi.ts';
import { fault } from '../results/fault.ts';
import type { Handlers } from './answers.ts';
import { ok } from './answers.ts';
import { bindRoutes } from './bind.ts';
import type { Doors } from './doors.ts';
import { closeDoors } from './doors.ts';
import { serveEvents } from './events.ts';
import { jobHandlers } from './jobs.ts';
import { serveOffice } from './office-files.ts';
import { paperHandlers } from './papers.ts';
import type { ServerParts } from './parts.ts';
import { recordHandlers } from './records.ts';
import { workshopHandlers } from './workshop.ts';

const LARGEST_BODY = 4 * 1024 * 1024;
const SLOWEST_REQUEST_MS = 30_000;

export interface AppOptions extends Doors {
  parts: ServerParts;
  officeFolder: string;
  /** One line for a request or failure; it never holds what was asked or answered, which may be a client's. */
  log?: (line: string) => void;
}

/** The server without its port: doors, routes, office. */
export async function createApp({
  parts,
  officeFolder,
  log,
  ...doors
}: AppOptions): Promise<FastifyInstance> {
  const app = Fastify({
    bodyLimit: LARGEST_BODY,
    requestTimeout: SLOWEST_REQUEST_MS,
    forceCloseConnections: true,
    // Node answers nothing to a name in the path that climbs out; nor does Fastify.
    routerOptions: { maxParamLength: 128 },
  });
  app.removeContentTypeParser('text/plain');
  closeDoors(app, doors);
  answerFailures(app, log);
  serveEvents(app, parts.events);
  bindRoutes(app, handlersOf(parts));
  await serveOffice(app, officeFolder, doors.token);
  return app;
}

function handlersOf(parts: ServerParts): Handlers {
  const description = describeApi(parts.programVersion);
  return {
    ...jobHandlers(parts),
    ...workshopHandlers(parts),
    ...recordHandlers(parts),
    ...paperHandlers(parts),
    openapi: async () => ok(description),
    about: async () =>
      ok({
        program: 'Scantling',
        version: parts.programVersion,
        engine: parts.store.engine,
        folder: parts.store.folder,
      }),
  };
}

function answerFailures(app: FastifyInstance, log: AppOptions['log']): void {
  app.addHook('onResponse', async (request, reply) => {
    const route = request.routeOptions.url ?? 'no route';
    log?.(`${request.method} ${route} ${reply.statusCode} ${Math.round(reply.elapsedTime)} ms`);
  });
  app.setErrorHandler((error: FastifyError, _request, reply) => {
    const status = error.statusCode ?? 500;
    if (status < 500) return reply.code(status).send({ faults: [sentWrong(error)] });
    // The message may quote what was sent, so only the kind of failure and the place in the code are told.
    log?.([`failure: ${error.name} ${error.code ?? ''}`, ...stackOf(error)].join('\n'));
    return reply.code(500).send({ faults: [OUR_FAULT] });
  });
}

const stackOf = (error: Error): string[] =>
  (error.stack ?? '').split('\n').filter(line => /^\s+at /.test(line));

const sentWrong = (error: FastifyError) =>
  fault('request', REASONS[error.code] ?? 'it cannot be read', 'see /api/openapi.json for what is expected');

const REASONS: Record<string, string> = {
  FST_ERR_CTP_BODY_TOO_LARGE: `it is larger than ${LARGEST_BODY / 1024} kB`,
  FST_ERR_CTP_INVALID_MEDIA_TYPE: 'it is not JSON',
  FST_ERR_CTP_EMPTY_JSON_BODY: 'it is empty',
};

const OUR_FAULT = fault(
  'server',
  'something went wrong in Scantling itself; nothing that was saved is lost',
  'try again; if it stays, the terminal window shows where it failed',
);
