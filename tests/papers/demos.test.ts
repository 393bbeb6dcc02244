import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import { instanceMarks } from '../../src/papers/names.ts';
import { packPages } from '../../src/papers/pack.ts';
import { pdfRuler, type Ruler } from '../../src/papers/pdf-fonts.ts';
import { collisions, overPage, wordsOf } from './page-check.ts';

const read = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');

let ruler: Ruler;
beforeAll(async () => {
  ruler = pdfRuler(await readPaperFonts());
});

describe.each(['porch-bench', 'writing-table', 'wall-cabinet'])('the pack of the demo %s', name => {
  const workshop = readWorkshopFile(read('workshop')).workshop!;
  const { derived } = deriveJob(readJobFile(read(name)).document!, workshop, { today: '2026-11-25' });
  const info = {
    title: derived.title,
    number: '31',
    settingOut: 1,
    date: '2026-11-25',
    programVersion: '0.1.0',
    currency: 'GBP',
    unit: 'mm' as const,
  };

  it.each(['mm', 'in'] as const)('keeps every text on the paper and clear of every other, in %s', unit => {
    for (const page of packPages(derived, { ...info, unit }, ruler)) {
      expect(overPage(page, ruler)).toEqual([]);
      expect(collisions(page, ruler)).toEqual([]);
    }
  });

  it('has a card for every set-up, and on it every part that runs there', () => {
    const pages = packPages(derived, info, ruler);
    const marks = instanceMarks(derived.piece);
    for (const setup of derived.setups.setups) {
      const cards = pages.filter(
        p => p.title === `Set-up ${setup.number}` || p.title.startsWith(`Set-up ${setup.number},`),
      );
      const said = cards.map(wordsOf).join(' ');
      expect(said).toContain(`Set-up ${setup.number}`);
      for (const run of setup.runs) expect(said).toContain(marks.get(run.instance));
      for (const word of [...setup.before, ...setup.after, ...setup.cautions].join(' ').split(' '))
        expect(said).toContain(word);
    }
  });
});
