import { timingSafeEqual } from 'node:crypto';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { TOKEN_HEADER } from '../api/routes.ts';
import { fault } from '../results/fault.ts';

/** Names by which this machine reaches itself. Nothing else may speak to the server. */
const LOOPBACK_NAMES = ['127.0.0.1', 'localhost', '[::1]'];

export interface Doors {
  /** Secret of this start, in the served page and nowhere else. */
  token: string;
  port: () => number;
}

const hostsOf = (port: number): string[] => LOOPBACK_NAMES.map(name => `${name}:${port}`);

const READING = new Set(['GET', 'HEAD']);

/**
 * Refuses what does not come from our own page: a foreign Host (a name made to point at this machine), a
 * foreign Origin, a request a browser marks as another site's, and a change without this start's token.
 */
export function closeDoors(app: FastifyInstance, { token, port }: Doors): void {
  app.addHook('onRequest', async (request, reply) => {
    closeToOthers(reply);
    const hosts = hostsOf(port());
    if (!hosts.includes(request.headers.host ?? '')) return refuse(reply, 421, 'Host');
    const { origin } = request.headers;
    if (origin !== undefined && !hosts.some(host => origin === `http://${host}`))
      return refuse(reply, 403, 'Origin');
    if (isOtherSite(request)) return refuse(reply, 403, 'Sec-Fetch-Site');
    if (!READING.has(request.method) && !sameSecret(request.headers[TOKEN_HEADER], token))
      return reply.code(403).send({ faults: [EARLIER_START] });
  });
}

const EARLIER_START = fault(
  TOKEN_HEADER,
  'this page is from an earlier start of the drawing office',
  'load the page again',
);

function refuse(reply: FastifyReply, status: number, header: string): FastifyReply {
  const what = fault(
    header,
    'the request does not come from the drawing office itself',
    'open the printed address',
  );
  return reply.code(status).send({ faults: [what] });
}

/** A link from elsewhere may open the page, but nothing under /api. */
const isOtherSite = (request: FastifyRequest): boolean =>
  request.url.startsWith('/api') &&
  ['cross-site', 'same-site'].includes(String(request.headers['sec-fetch-site'] ?? ''));

function sameSecret(given: string | string[] | undefined, token: string): boolean {
  const a = Buffer.from(String(given ?? ''));
  const b = Buffer.from(token);
  return a.length === b.length && timingSafeEqual(a, b);
}

function closeToOthers(reply: FastifyReply): void {
  reply.headers({
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'content-security-policy': contentPolicy(),
    'cache-control': 'no-store',
  });
}

/**
 * Scripts only from our own files (WebAssembly may be compiled), none inline. Style elements need the page's
 * nonce; style attributes, as in drawings, may stand.
 */
export const contentPolicy = (nonce?: string): string =>
  [
    "default-src 'none'",
    "script-src 'self' 'wasm-unsafe-eval'",
    `style-src 'self'${nonce === undefined ? '' : ` 'nonce-${nonce}'`}`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "frame-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
