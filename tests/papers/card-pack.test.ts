import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { cardPack, cardPages } from '../../src/papers/card-pack.ts';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import { pdfRuler } from '../../src/papers/pdf-fonts.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));
const { document } = readJobFile(readFileSync('examples/porch-bench.yaml', 'utf8'));
const info = {
  title: 'Porch bench',
  number: '31',
  settingOut: 1,
  date: '2026-11-25',
  programVersion: 'test',
  currency: 'GBP',
  unit: 'mm' as const,
};

it('the cards alone as a PDF: a page for each set-up at least, trials in their rows, the same bytes twice', async () => {
  const derivedOf = (extra: object) =>
    deriveJob({ ...document!, ...extra }, workshop!, { today: '2026-11-25' }).derived;
  const plain = derivedOf({});
  const fonts = await readPaperFonts();
  const pages = cardPages(plain, info, pdfRuler(fonts));
  expect(pages.length).toBeGreaterThanOrEqual(plain.setups.setups.length);
  const card = plain.setups.setups.find(s => s.correction && s.wanted)!;
  const set = card.settings[0]!.value.value as number;
  const tried = derivedOf({
    trials: { [card.id]: { '1': { set, measured: (card.wanted!.value.value as number) + 0.2 } } },
  });
  const words = (list: typeof pages): string => JSON.stringify(list.map(p => p.items));
  expect(words(cardPages(tried, info, pdfRuler(fonts)))).not.toBe(words(pages));
  const [a, b] = await Promise.all([cardPack(plain, info, fonts), cardPack(plain, info, fonts)]);
  expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
  expect(Buffer.from(a.slice(0, 5)).toString()).toBe('%PDF-');
});
