import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../../src/job-file/read.ts';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import { packPages } from '../../src/papers/pack.ts';
import { pdfRuler } from '../../src/papers/pdf-fonts.ts';
import { COATER, table, WELDER } from '../operations/steel-table.ts';
import { collisions, overPage, wordsOf } from './page-check.ts';

const workshop = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8')).workshop!;
const info = {
  title: 'Steel table',
  number: '35',
  settingOut: 1,
  date: '2026-11-25',
  programVersion: 'test',
  currency: 'GBP',
  unit: 'mm' as const,
};

test('what is given out has its drawing: sizes, weight, parts and welds, and nothing runs over another', async () => {
  const ruler = pdfRuler(await readPaperFonts());
  const job = table({
    frame: { outwork: WELDER },
    coat: { outwork: { ...COATER, note: 'Black, fine texture' } },
  });
  const { derived } = deriveJob(checkJobDocument(job).document!, workshop, { today: '2026-11-25' });
  const pages = packPages(derived, info, ruler);
  for (const page of pages) {
    expect(overPage(page, ruler)).toEqual([]);
    expect(collisions(page, ruler)).toEqual([]);
  }
  const welding = pages.find(p => p.title === 'Outwork: Frame to The welder for welding')!;
  const said = wordsOf(welding);
  // 30 x 30 x 2 is 224 mm2; 5.56 m outside less a mitre of 15 mm in the mean at eight ends, 7850 kg/m3 (EN 10219 nominal).
  const kg = ((5560 - 8 * 15) * 224 * 7850) / 1e9;
  for (const word of ['900', '500', '720', kg.toFixed(2), 'away 4 days', 'Welded mitre', '144.9', '120'])
    expect(said).toContain(word);
  const coat = pages.find(p => p.title === 'Outwork: Powder coat by The coater')!;
  expect(wordsOf(coat)).toContain('Black, fine texture');
  expect(wordsOf(coat)).not.toContain('Welds');
});

test('a job with nothing given out has no such page', async () => {
  const ruler = pdfRuler(await readPaperFonts());
  const { derived } = deriveJob(checkJobDocument(table()).document!, workshop, { today: '2026-11-25' });
  expect(packPages(derived, info, ruler).some(p => p.title.startsWith('Outwork'))).toBe(false);
});
