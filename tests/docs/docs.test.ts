import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { JSON_SCHEMAS, schemaText } from '../../src/job-file/json-schema.ts';
import { readJobFile } from '../../src/job-file/read.ts';
import { JOINTS } from '../../src/joints/index.ts';

const ROOT = new URL('../../', import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, ROOT), 'utf8');

test.each(['job', 'workshop'] as const)(
  'docs/schema/%s.json is what the code says (node --import tsx scripts/write-schemas.ts)',
  kind => {
    expect(text(`docs/schema/${kind}.json`)).toBe(schemaText(kind));
  },
);

/** Every name of a field anywhere in a schema. */
function fields(schema: unknown, found = new Set<string>()): Set<string> {
  if (Array.isArray(schema)) for (const s of schema) fields(s, found);
  else if (typeof schema === 'object' && schema !== null)
    for (const [key, value] of Object.entries(schema)) {
      if (key === 'properties') for (const name of Object.keys(value as object)) found.add(name);
      fields(value, found);
    }
  return found;
}

test('every field of both files is explained in docs/job-file.md', () => {
  const page = text('docs/job-file.md');
  const known = new Set([...page.matchAll(/[`{,:.\s(]([a-z][a-z_0-9]*)/g)].map(m => m[1]!));
  const missing = [...fields([JSON_SCHEMAS.job(), JSON_SCHEMAS.workshop()])].filter(
    f => !known.has(f) && !['tue', 'wed', 'thu', 'fri', 'sat'].includes(f),
  );
  expect(missing).toEqual([]);
});

test('every joint is named in docs/job-file.md', () => {
  for (const j of JOINTS) expect(text('docs/job-file.md')).toContain(`\`${j.type}\``);
});

test('the annotated example is a job file: its only faults are the sizes left out for brevity', () => {
  const yaml = /```yaml\n([\s\S]*?)```/.exec(text('docs/job-file.md'))![1]!;
  expect(readJobFile(yaml).faults).toEqual([]);
});

test('links between the pages lead somewhere', () => {
  const pages = [
    'README.md',
    'ARCHITECTURE.md',
    ...readdirSync(new URL('docs', ROOT))
      .filter(f => f.endsWith('.md'))
      .map(f => `docs/${f}`),
  ];
  for (const page of pages)
    for (const [, link] of text(page).matchAll(/\]\((?!https?:)([^)#]+)\)/g))
      expect(existsSync(new URL(link!, new URL(page, ROOT))), `${page}: ${link}`).toBe(true);
});
