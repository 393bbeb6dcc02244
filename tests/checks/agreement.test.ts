import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../../src/job-file/read.ts';
import { sayText } from '../../src/results/show.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));

function judged(agree: object, more: object = {}) {
  const { document, faults } = checkJobDocument({
    scantling: 'job/1',
    title: 'Chain',
    parameters: { height: 700, knee: 600, frieze: 76, top: 24, lost: 'nowhere + 1 mm' },
    agree,
    ...more,
  });
  expect(faults).toEqual([]);
  const { derived } = deriveJob(document!, workshop!, { today: '2026-11-25' });
  return { derived, found: derived.checks.filter(c => c.check === 'agreement') };
}

test('a chain that closes passes', () => {
  const { found } = judged({ up: { label: 'Height', figure: 'height', with: 'knee + frieze + top' } });
  expect(found).toMatchObject([{ severity: 'pass', subject: 'up', figure: 0 }]);
});

test('a chain that does not close tells both sums and the difference', () => {
  const { found } = judged({ up: { label: 'Height', figure: 'height', with: 'knee + frieze + 20 mm' } });
  expect(found).toMatchObject([{ severity: 'attend', figure: 4, limit: 0.1 }]);
  expect(sayText(found[0]!.say, { unit: 'mm', currency: 'GBP' }).replaceAll('\u202f', ' ')).toBe(
    'Height: height is 700 mm, knee + frieze + 20 mm is 696 mm; 4 mm apart.',
  );
});

test('a figure that cannot be worked out is unknown, never passed', () => {
  const { found } = judged({ up: { figure: 'height', with: 'lost' } });
  expect(found).toMatchObject([{ severity: 'unknown', figure: null }]);
});

test('it may be set aside with a reason, until the figure changes', () => {
  const agree = { up: { label: 'Height', figure: 'height', with: 'knee + frieze + 20 mm' } };
  const { found } = judged(agree, { overruled: { 'agreement:up': { reason: 'as the book prints it' } } });
  expect(found).toMatchObject([{ severity: 'note' }]);
});
