import type { FastifyInstance } from 'fastify';
import { EVENTS_PATH } from '../api/routes.ts';

export interface DocumentEvent {
  id: string;
  version: number;
}

/** Tells every open window which document changed, so that they agree. */
export interface Events {
  publish(event: DocumentEvent): void;
  listen(hear: (event: DocumentEvent) => void): () => void;
}

export function createEvents(): Events {
  const listeners = new Set<(event: DocumentEvent) => void>();
  return {
    publish: event => {
      for (const hear of listeners) hear(event);
    },
    listen: hear => {
      listeners.add(hear);
      return () => listeners.delete(hear);
    },
  };
}

const MOST_WINDOWS = 50;
const KEEP_ALIVE_MS = 25_000;

/** Server-sent events (https://html.spec.whatwg.org/multipage/server-sent-events.html). */
export function serveEvents(app: FastifyInstance, events: Events): void {
  const closers = new Set<() => void>();
  app.get(EVENTS_PATH, (request, reply) => {
    if (closers.size >= MOST_WINDOWS) return reply.code(503).send({ faults: [] });
    reply.hijack();
    const { raw } = reply;
    raw.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    raw.write(': open\n\n');
    const stop = events.listen(event => raw.write(`data: ${JSON.stringify(event)}\n\n`));
    const alive = setInterval(() => raw.write(': alive\n\n'), KEEP_ALIVE_MS);
    const close = (): void => {
      clearInterval(alive);
      stop();
      closers.delete(close);
      raw.end();
    };
    closers.add(close);
    request.raw.on('close', close);
  });
  app.addHook('preClose', async () => {
    for (const close of closers) close();
  });
}
