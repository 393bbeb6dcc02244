import { randomBytes } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { TOKEN_META } from '../api/routes.ts';
import { fault } from '../results/fault.ts';
import { contentPolicy } from './doors.ts';

const YEAR_SECONDS = 31_536_000;

/**
 * Serves the built office. Its page carries the token of this start and a nonce of its own; every address
 * that is not a file or an API route gives the page, which shows what the address names.
 */
export async function serveOffice(app: FastifyInstance, folder: string, token: string): Promise<void> {
  if (existsSync(folder))
    await app.register(fastifyStatic, {
      root: folder,
      index: false,
      wildcard: true,
      cacheControl: false,
      decorateReply: false,
      setHeaders: (reply, path) => {
        // Built files carry a hash of what is in them.
        if (path.startsWith(join(folder, 'assets')))
          reply.header('cache-control', `public, max-age=${YEAR_SECONDS}, immutable`);
      },
    });
  const page = (reply: FastifyReply) => sendPage(reply, join(folder, 'index.html'), token);
  app.get('/', (_request, reply) => page(reply));
  app.get('/index.html', (_request, reply) => page(reply));
  app.setNotFoundHandler((request, reply) => {
    const isPage = request.method === 'GET' && !/^\/api(\/|$)|\.\w+$/.test(request.url.split('?')[0]!);
    return isPage ? page(reply) : reply.code(404).send({ faults: [NOT_HERE] });
  });
}

const NOT_HERE = fault('address', 'there is nothing at this address', 'begin at the printed address');

function sendPage(reply: FastifyReply, file: string, token: string): FastifyReply {
  if (!existsSync(file))
    return reply
      .code(503)
      .type('text/plain')
      .send('The drawing office is not built. Run npm run build, then start again.');
  const nonce = randomBytes(16).toString('hex');
  const metas = `<meta name="${TOKEN_META}" content="${token}"><meta property="csp-nonce" content="${nonce}">`;
  return reply
    .header('content-security-policy', contentPolicy(nonce))
    .type('text/html; charset=utf-8')
    .send(readFileSync(file, 'utf8').replace('<head>', `<head>${metas}`));
}
