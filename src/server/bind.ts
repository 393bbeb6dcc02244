import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { z } from 'zod';
import type { Route, RouteName } from '../api/routes.ts';
import { ROUTES } from '../api/routes.ts';
import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import type { Asked, Handler, Handlers, Reply } from './answers.ts';

/** Deeper than any setting-out; a body beyond it is refused before anything walks it. */
const DEEPEST_BODY = 64;

/** Gives every route its handler; what is asked is checked against the route's shapes first. */
export function bindRoutes(app: FastifyInstance, handlers: Handlers): void {
  for (const name of Object.keys(ROUTES) as RouteName[])
    bind(app, name, handlers[name] as Handler<RouteName>);
}

function bind(app: FastifyInstance, name: RouteName, handler: Handler<RouteName>): void {
  const route: Route = ROUTES[name];
  app.route({
    method: route.method,
    url: route.path,
    handler: async (request, reply) => {
      const read = readRequest(route, request);
      if (!read.ok) return reply.code(400).send({ faults: read.faults });
      return send(reply, await handler(read.asked));
    },
  });
}

type Read = { ok: true; asked: Asked<RouteName> } | { ok: false; faults: Fault[] };

function readRequest(route: Route, request: FastifyRequest): Read {
  const body = request.body ?? {};
  if (isDeeperThan(body, DEEPEST_BODY))
    return {
      ok: false,
      faults: [fault('body', 'it is nested too deep', `keep it under ${DEEPEST_BODY} levels`)],
    };
  const params = route.params.safeParse(request.params);
  const query = route.query.safeParse(request.query);
  const sent = route.body.safeParse(body);
  const faults = [...faultsOf('address', params), ...faultsOf('query', query), ...faultsOf('body', sent)];
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, asked: { params: params.data, query: query.data, body: sent.data } as Asked<RouteName> };
}

/** Walks with a list of its own, so that a hostile depth cannot exhaust the stack. */
function isDeeperThan(value: unknown, most: number): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > most) return true;
    level = level.flatMap(one => (typeof one === 'object' && one !== null ? Object.values(one) : []));
  }
  return false;
}

const faultsOf = (where: string, read: z.ZodSafeParseResult<unknown>): Fault[] =>
  read.success
    ? []
    : read.error.issues.map(issue =>
        fault(
          [where, ...issue.path.map(String)].join('.'),
          issue.message,
          'see /api/openapi.json for what is expected',
        ),
      );

function send(reply: FastifyReply, answer: Reply<unknown>): FastifyReply {
  if ('file' in answer) {
    const { bytes, mediaType, name } = answer.file;
    reply.headers({ 'content-type': mediaType, 'content-disposition': `attachment; filename="${name}"` });
    return reply.send(typeof bytes === 'string' ? bytes : Buffer.from(bytes));
  }
  const { status, ...rest } = answer;
  return reply.code(status).send('body' in rest ? rest.body : rest);
}
