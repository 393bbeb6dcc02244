import type { z } from 'zod';
import type { Fault } from '../results/fault.ts';
import type { Answer, GivenBody, GivenParams, GivenQuery, RouteName } from './routes.ts';
import { ROUTES, TOKEN_HEADER } from './routes.ts';
import type { documentState } from './shapes.ts';

export type DocumentStateAnswer = z.output<typeof documentState>;

export type Called<N extends RouteName> =
  | { ok: true; body: Answer<N> }
  | { ok: false; status: number; faults: Fault[]; state?: DocumentStateAnswer };

export interface Given<N extends RouteName> {
  params?: GivenParams<N>;
  query?: GivenQuery<N>;
  body?: GivenBody<N>;
}

export type Caller = <N extends RouteName>(name: N, given?: Given<N>) => Promise<Called<N>>;

/** Path and query of a call; also the address of a file to open or save. */
export function addressOf<N extends RouteName>(
  name: N,
  given: Pick<Given<N>, 'params' | 'query'> = {},
): string {
  const params = (given.params ?? {}) as Record<string, string | number>;
  const path = ROUTES[name].path.replaceAll(/:(\w+)/g, (_whole, key: string) =>
    encodeURIComponent(String(params[key])),
  );
  const query = Object.entries((given.query ?? {}) as Record<string, string | number | undefined>)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${encodeURIComponent(key)}=${encodeURIComponent(String(value))}`);
  return query.length === 0 ? path : `${path}?${query.join('&')}`;
}

/** The server was started again: the token of this page is of the start before. */
const isOldToken = (status: number, body: unknown): boolean =>
  status === 403 && ((body as { faults?: Fault[] }).faults ?? []).some(f => f.place === TOKEN_HEADER);

/**
 * Calls the server by the names of its routes. Nothing is thrown: a server that cannot be reached answers
 * with status 0 and a fault.
 * @param renew gives the token of the server's present start; a change refused for an old one is tried once more
 */
export function createCaller(
  token: string,
  fetcher: typeof fetch = fetch,
  base = '',
  renew?: () => Promise<string | undefined>,
): Caller {
  let secret = token;
  const call: Caller = async (name, given = {}) => {
    const { method } = ROUTES[name];
    const sends = method === 'POST' || method === 'PUT';
    const ask = (): Promise<Response> =>
      fetcher(base + addressOf(name, given), {
        method,
        headers: {
          ...(method === 'GET' ? {} : { [TOKEN_HEADER]: secret }),
          ...(sends ? { 'content-type': 'application/json' } : {}),
        },
        ...(sends ? { body: JSON.stringify(given.body ?? {}) } : {}),
      });
    try {
      let response = await ask();
      let body: unknown = await response.json();
      if (isOldToken(response.status, body)) {
        const fresh = await renew?.();
        if (fresh !== undefined && fresh !== secret) {
          secret = fresh;
          response = await ask();
          body = await response.json();
        }
      }
      if (response.ok) return { ok: true, body: body as Answer<typeof name> };
      return { ok: false, status: response.status, ...(body as { faults: Fault[] }) };
    } catch {
      return { ok: false, status: 0, faults: [UNREACHABLE] };
    }
  };
  return call;
}

const UNREACHABLE: Fault = {
  place: 'server',
  fault: 'the drawing office is not running',
  mend: 'start it again; what was saved is there',
};
