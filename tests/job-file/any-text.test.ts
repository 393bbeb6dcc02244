import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { writeJobFile } from '../../src/job-file/write.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const workshop = readWorkshopFile(example('workshop')).workshop!;
const NAMES = ['porch-bench', 'writing-table', 'wall-cabinet'];

test('any text gives a document or faults, never an exception', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ maxLength: 300 }),
        fc.json({ maxDepth: 3 }),
        fc.json({ maxDepth: 3 }).map(j => `scantling: job/1\ntitle: x\nparts: ${j}\n`),
      ),
      text => {
        const { document, faults } = readJobFile(text);
        expect(document !== undefined || faults.length > 0).toBe(true);
        for (const f of faults) expect([f.place, f.fault, f.mend].every(t => t.length > 0)).toBe(true);
      },
    ),
    { seed: 41, numRuns: 600 },
  );
});

test('a demo with a few of its lines spoilt is still read, and derives without an exception', () => {
  const lines = example('porch-bench').split('\n');
  fc.assert(
    fc.property(
      fc.array(
        fc.tuple(fc.nat(lines.length - 1), fc.constantFrom('drop', 'twice', 'digit', 'word', 'tail')),
        { minLength: 1, maxLength: 3 },
      ),
      spoils => {
        const spoilt = [...lines];
        for (const [at, how] of spoils) {
          const line = spoilt[at] ?? '';
          if (how === 'drop') spoilt[at] = '';
          if (how === 'twice') spoilt[at] = `${line}\n${line}`;
          if (how === 'digit') spoilt[at] = line.replace(/\d/, '-9');
          if (how === 'word') spoilt[at] = line.replace(/[a-z]+/, 'wobble');
          if (how === 'tail') spoilt[at] = line.slice(0, Math.floor(line.length / 2));
        }
        const { document, faults } = readJobFile(spoilt.join('\n'));
        if (document) deriveJob(document, workshop, { today: '2026-11-25' });
        else expect(faults.length).toBeGreaterThan(0);
      },
    ),
    { seed: 42, numRuns: 150 },
  );
}, 60_000);

test.each(NAMES)('%s: written out and read again it is the same job', name => {
  const { document } = readJobFile(example(name));
  const again = readJobFile(writeJobFile(document!));
  expect(again.faults).toEqual([]);
  expect(again.document).toEqual(document);
});

test('older files are brought up: sizes of the draft became parameters', () => {
  const { document, faults } = readJobFile('scantling: job/0\ntitle: Old\nsizes:\n  width: 900\n');
  expect(faults).toEqual([]);
  expect(document).toMatchObject({ scantling: 'job/1', parameters: { width: 900 } });
});

test('a document from the store is checked by the same rules', () => {
  expect(
    checkJobDocument({ scantling: 'job/1', title: 'x', parts: { a: { kind: 'cheese' } } }).faults[0],
  ).toMatchObject({ place: 'parts.a.kind', mend: expect.stringContaining('timber') });
});

test('the same job gives the same results, to the letter', () => {
  for (const name of NAMES) {
    const derive = () =>
      JSON.stringify(
        deriveJob(readJobFile(example(name)).document!, workshop, { today: '2026-11-25' }).derived,
      );
    expect(derive()).toBe(derive());
  }
});
