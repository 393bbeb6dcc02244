import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ROUTES } from '../../src/api/routes.ts';
import { fileName } from '../../src/server/file-name.ts';
import { act, newOffice } from './office.ts';

const anyBody = fc.oneof(
  fc.jsonValue({ maxDepth: 4 }),
  fc.record(
    {
      operations: fc.array(
        fc.record(
          {
            path: fc.array(fc.oneof(fc.string(), fc.constantFrom('parts', 'leg', '__proto__')), {
              maxLength: 4,
            }),
            value: fc.jsonValue(),
          },
          { requiredKeys: ['path'] },
        ),
        { maxLength: 3 },
      ),
      document: fc.dictionary(fc.string(), fc.jsonValue()),
      text: fc.string(),
      name: fc.string(),
    },
    { requiredKeys: [] },
  ),
);

describe('whatever is sent', () => {
  it('is answered or refused, and never breaks the server', async () => {
    const { ask } = await newOffice();
    const routes = Object.values(ROUTES);
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...routes),
        fc.string(),
        anyBody,
        fc.boolean(),
        async (route, word, body, acting) => {
          const url = route.path.replaceAll(/:\w+/g, () => encodeURIComponent(word || 'bench'));
          const full = acting && typeof body === 'object' && body !== null ? { ...act(0), ...body } : body;
          const sends = route.method === 'POST' || route.method === 'PUT';
          const { status } = await ask(route.method, url, sends ? full : undefined);
          expect(status).toBeLessThan(500);
        },
      ),
      { seed: 99, numRuns: 500 },
    );
  });
});

describe('names of files we give out', () => {
  it('are plain, whatever the job is called', () => {
    expect(fileName('Porch bench, ash', 'pdf')).toBe('porch-bench-ash.pdf');
    expect(fileName('Ébène / Tisch', 'yaml')).toBe('ebene-tisch.yaml');
    expect(fileName('../../etc/passwd', 'pdf')).toBe('etc-passwd.pdf');
    expect(fileName('CON', 'pdf')).toBe('job-con.pdf');
    expect(fileName('"\r\nSet-Cookie: a', 'pdf')).toBe('set-cookie-a.pdf');
    expect(fileName('桌', 'pdf')).toBe('job.pdf');
  });

  it('at random: never a path, a quote, a line end or a device', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), words => {
        const name = fileName(words, 'pdf');
        expect(name).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?\.pdf$/);
        expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)\.pdf$/);
      }),
      { seed: 5, numRuns: 2000 },
    );
  });
});
