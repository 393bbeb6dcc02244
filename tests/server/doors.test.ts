import { describe, expect, it } from 'vitest';
import { TOKEN_HEADER, TOKEN_META } from '../../src/api/routes.ts';
import { contentPolicy } from '../../src/server/doors.ts';
import { HOST, newOffice, PORT, setHeight, TOKEN } from './office.ts';

const body = JSON.stringify(setHeight(0, 410));
const json = { 'content-type': 'application/json' };

describe('Host', () => {
  it.each([HOST, `localhost:${PORT}`, `[::1]:${PORT}`])('answers to %s', async host => {
    const { raw } = await newOffice();
    expect((await raw({ url: '/api/jobs', headers: { host } })).status).toBe(200);
  });

  it.each([
    'evil.example',
    `evil.example:${PORT}`,
    `127.0.0.1:${PORT + 1}`,
    'localhost',
    `127.0.0.1.evil.example:${PORT}`,
  ])('refuses %s, page and all', async host => {
    const { raw } = await newOffice();
    for (const url of ['/', '/api/jobs', '/assets/main-abc123.js'])
      expect((await raw({ url, headers: { host } })).status).toBe(421);
  });
});

describe('Origin', () => {
  it.each([
    'http://evil.example',
    'null',
    `https://${HOST}`,
    `http://127.0.0.1:${PORT + 1}`,
    `http://${HOST}.evil.example`,
  ])('refuses %s even with the token', async origin => {
    const { raw, parts } = await newOffice();
    const headers = { host: HOST, origin, [TOKEN_HEADER]: TOKEN, ...json };
    expect((await raw({ method: 'POST', url: '/api/jobs/bench/edits', headers, payload: body })).status).toBe(
      403,
    );
    expect((await raw({ url: '/api/jobs', headers })).status).toBe(403);
    expect(await parts.store.documents.get('bench')).toMatchObject({ version: 0 });
  });

  it('takes its own', async () => {
    const { raw } = await newOffice();
    const headers = { host: HOST, origin: `http://${HOST}`, [TOKEN_HEADER]: TOKEN, ...json };
    expect((await raw({ method: 'POST', url: '/api/jobs/bench/edits', headers, payload: body })).status).toBe(
      200,
    );
  });

  it('lets another site link to the page, and to nothing under /api', async () => {
    const { raw } = await newOffice();
    for (const site of ['cross-site', 'same-site']) {
      const headers = { host: HOST, 'sec-fetch-site': site };
      expect((await raw({ url: '/', headers })).status).toBe(200);
      expect((await raw({ url: '/api/jobs', headers })).status).toBe(403);
    }
    const own = { host: HOST, 'sec-fetch-site': 'same-origin' };
    expect((await raw({ url: '/api/jobs', headers: own })).status).toBe(200);
  });
});

describe('token of the start', () => {
  it.each([undefined, '', 'a', 'b'.repeat(64), `${TOKEN}a`])('no change with %s', async token => {
    const { raw, parts } = await newOffice();
    const headers = { host: HOST, ...json, ...(token === undefined ? {} : { [TOKEN_HEADER]: token }) };
    for (const [method, url] of [
      ['POST', '/api/jobs/bench/edits'],
      ['PUT', '/api/workshop'],
      ['DELETE', '/api/clients/hale'],
    ] as const) {
      const answer = await raw({ method, url, headers, payload: body });
      expect(answer.status).toBe(403);
      expect(answer.body).toMatchObject({ faults: [{ mend: 'load the page again' }] });
    }
    expect(await parts.store.documents.get('bench')).toMatchObject({ version: 0 });
  });

  it('is in the served page and in no other answer', async () => {
    const { raw } = await newOffice();
    const headers = { host: HOST };
    const page = await raw({ url: '/', headers });
    expect(page.text).toContain(`<meta name="${TOKEN_META}" content="${TOKEN}">`);
    expect((await raw({ url: '/jobs/bench', headers })).text).toContain(TOKEN);
    for (const url of ['/api/about', '/api/openapi.json', '/api/jobs', '/nothing.js']) {
      const { text, headers: sent } = await raw({ url, headers });
      expect(text + JSON.stringify(sent)).not.toContain(TOKEN);
    }
  });
});

describe('what the browser is told', () => {
  it('no inline script, no framing, no sniffing, nothing kept but built files', async () => {
    const { raw } = await newOffice();
    const { headers, text } = await raw({ url: '/', headers: { host: HOST } });
    const policy = String(headers['content-security-policy']);
    const scripts = policy.split('; ').find(part => part.startsWith('script-src'));
    expect(scripts).toBe("script-src 'self' 'wasm-unsafe-eval'");
    const nonce = /csp-nonce" content="([0-9a-f]{32})"/.exec(text)![1]!;
    expect(policy).toBe(contentPolicy(nonce));
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
    });
    const built = await raw({ url: '/assets/main-abc123.js', headers: { host: HOST } });
    expect(built.headers['cache-control']).toContain('immutable');
    const again = await raw({ url: '/', headers: { host: HOST } });
    expect(again.text).not.toContain(nonce);
  });

  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/assets/%2e%2e/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
  ])('no file outside the office: %s', async url => {
    const { raw } = await newOffice();
    expect((await raw({ url, headers: { host: HOST } })).text).not.toContain('not yours');
  });
});

describe('what is too much or not for us', () => {
  it('a body that is too large, too deep, not JSON, or aims at a prototype', async () => {
    const { raw, parts } = await newOffice();
    const headers = { host: HOST, [TOKEN_HEADER]: TOKEN };
    const post = async (payload: string, type = 'application/json') =>
      (
        await raw({
          method: 'POST',
          url: '/api/jobs/bench/edits',
          headers: { ...headers, 'content-type': type },
          payload,
        })
      ).status;
    expect(await post(JSON.stringify({ a: 'x'.repeat(5 * 1024 * 1024) }))).toBe(413);
    expect(await post(`{"a":${'['.repeat(100_000)}${']'.repeat(100_000)}}`)).toBe(400);
    expect(await post('{"a":')).toBe(400);
    expect(await post('a=1', 'text/plain')).toBe(415);
    expect(await post('a=1', 'application/x-www-form-urlencoded')).toBe(415);
    expect(await post(body.replace('"height"', '"__proto__"'))).toBe(422);
    expect(await post(body.replace('410', '{"__proto__": {"polluted": true}}'))).toBe(400);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
    expect(await parts.store.documents.get('bench')).toMatchObject({ version: 0 });
  });
});

describe('the log', () => {
  it('tells route, answer and time, and nothing of the client', async () => {
    const { ask, log, parts } = await newOffice();
    const hale = { name: 'Oznur Hale', address: '3 Quarrystone Row', email: 'oznur@hale.example' };
    await ask('POST', '/api/clients', hale);
    await ask('PUT', '/api/clients/client-1', { ...hale, phone: 'Quarrystone' });
    await ask('GET', '/api/jobs?search=Quarrystone');
    await ask('POST', '/api/clients', { ...hale, wrong: 'Quarrystone' });
    parts.store.clients.save = () => Promise.reject(new Error('cannot keep Quarrystone'));
    expect((await ask('POST', '/api/clients', hale)).status).toBe(500);
    const told = log.join('\n');
    expect(told).toMatch(/^POST \/api\/clients 201 \d+ ms$/m);
    expect(told).toMatch(/^GET \/api\/jobs 200 \d+ ms$/m);
    expect(told).toMatch(/failure: Error[\s\S]* at /);
    expect(told).not.toMatch(/Quarrystone|Hale|oznur/i);
  });
});
