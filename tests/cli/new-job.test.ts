import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { newJobText } from '../../src/cli/new-job.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';

const workshop = readWorkshopFile(
  readFileSync(new URL('../../examples/workshop.yaml', import.meta.url), 'utf8'),
).workshop!;

test('a new job derives as it stands: no fault, no stop, stock for every part', () => {
  const { document, faults } = readJobFile(newJobText('hall-table'));
  expect(faults).toEqual([]);
  expect(document?.title).toBe('Hall table');
  const { derived } = deriveJob(document!, workshop, { today: '2026-11-25' });
  expect(derived.faults).toEqual([]);
  expect(derived.checks.filter(c => c.severity === 'stop').map(c => c.title)).toEqual([]);
  expect(derived.cutting.materials.flatMap(m => m.unplaced)).toEqual([]);
  expect(derived.price.total).toBeGreaterThan(0);
});

test('whatever the file is called, the title is safe text', () => {
  for (const name of ['"; drop', '---', '', 'a: b # c', '\u00e9tag\u00e8re'])
    expect(readJobFile(newJobText(name)).faults, name).toEqual([]);
});
