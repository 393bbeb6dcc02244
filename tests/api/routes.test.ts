import { describe, expect, it } from 'vitest';
import { addressOf, createCaller } from '../../src/api/caller.ts';
import { describeApi } from '../../src/api/openapi.ts';
import { ROUTES, TOKEN_HEADER } from '../../src/api/routes.ts';
import type { JsonObject } from '../../src/job/edits.ts';

describe('description of the routes', () => {
  const description = describeApi('0.1.0');
  const paths = description.paths as Record<string, Record<string, JsonObject>>;

  it('holds every route once, with its path parameters', () => {
    const described = Object.values(paths).flatMap(path => Object.values(path).map(one => one.operationId));
    expect(described.sort()).toEqual(Object.keys(ROUTES).sort());
    for (const [path, methods] of Object.entries(paths))
      for (const operation of Object.values(methods)) {
        const named = [...path.matchAll(/\{(\w+)\}/g)].map(match => match[1]);
        const given = (operation.parameters as { in: string; name: string }[]).filter(
          one => one.in === 'path',
        );
        expect(given.map(one => one.name).sort()).toEqual(named.sort());
      }
  });

  it('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(description))).toEqual(description);
    expect(description.openapi).toBe('3.1.0');
  });

  it('no two routes share an address and a method', () => {
    const doors = Object.values(ROUTES).map(route => `${route.method} ${route.path}`);
    expect(new Set(doors).size).toBe(doors.length);
  });
});

describe('calling by name', () => {
  it('fills in path and query', () => {
    expect(addressOf('getJob', { params: { id: 'bench' } })).toBe('/api/jobs/bench');
    expect(addressOf('listJobs', { query: { search: 'a & b', limit: 5 } })).toBe(
      '/api/jobs?search=a%20%26%20b&limit=5',
    );
    expect(addressOf('listJobs')).toBe('/api/jobs');
  });

  it('sends the token with changes and not with reading', async () => {
    const sent: RequestInit[] = [];
    const fetcher = (async (_url: string, init: RequestInit) => {
      sent.push(init);
      return new Response('{}');
    }) as typeof fetch;
    const call = createCaller('token-of-this-start', fetcher);
    await call('listJobs');
    await call('createClient', { body: { name: 'Hale' } });
    await call('eraseClient', { params: { id: 'hale' } });
    expect(sent.map(init => (init.headers as Record<string, string>)[TOKEN_HEADER])).toEqual([
      undefined,
      'token-of-this-start',
      'token-of-this-start',
    ]);
    expect(sent.map(init => init.body)).toEqual([undefined, '{"name":"Hale"}', undefined]);
  });

  it('after a restart a refused change is tried once with the new token', async () => {
    const sent: (string | undefined)[] = [];
    const fetcher = (async (_url: string, init: RequestInit) => {
      const token = (init.headers as Record<string, string>)[TOKEN_HEADER];
      sent.push(token);
      return token === 'new'
        ? new Response('{}')
        : new Response(JSON.stringify({ faults: [{ place: TOKEN_HEADER, fault: 'old', mend: 'load' }] }), {
            status: 403,
          });
    }) as typeof fetch;
    const call = createCaller('old', fetcher, '', async () => 'new');
    expect((await call('createClient', { body: { name: 'Hale' } })).ok).toBe(true);
    expect((await call('createClient', { body: { name: 'Hale' } })).ok).toBe(true);
    expect(sent).toEqual(['old', 'new', 'new']);
    const stuck = createCaller('old', fetcher, '', async () => 'old');
    expect(await stuck('createClient', { body: { name: 'Hale' } })).toMatchObject({ ok: false, status: 403 });
  });
});
