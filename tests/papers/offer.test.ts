import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import type { PaperFonts } from '../../src/papers/fonts.ts';
import { offerLetter, offerPages, stageAmounts } from '../../src/papers/offer.ts';
import { pdfRuler, type Ruler } from '../../src/papers/pdf-fonts.ts';
import { DERIVED } from '../drawings/bench-derived.ts';
import { OFFER } from './offer-info.ts';
import { collisions, overPage, wordsOf } from './page-check.ts';
import { readPdf } from './read-pdf.ts';

let fonts: PaperFonts;
let ruler: Ruler;
beforeAll(async () => {
  fonts = await readPaperFonts();
  ruler = pdfRuler(fonts);
});

describe('an offer', () => {
  it('is one page with one price, what is made and what is not', () => {
    const pages = offerPages(DERIVED, OFFER, ruler);
    expect(pages).toHaveLength(1);
    const said = wordsOf(pages[0]!);
    for (const part of [
      'A bench for the porch',
      '\u00a3617.64',
      'Fixing to the wall',
      'Open until',
      '4 December 2026',
      'Ready Tuesday 8 December 2026.',
    ])
      expect(said).toContain(part);
    expect(overPage(pages[0]!, ruler)).toEqual([]);
    expect(collisions(pages[0]!, ruler)).toEqual([]);
  });

  it('goes on to a second page when it has much to say, and loses none of it', () => {
    const long = { ...OFFER, make: Array.from({ length: 16 }, (_, i) => `${OFFER.make[0]} Paragraph ${i}.`) };
    const pages = offerPages(DERIVED, long, ruler);
    expect(pages.length).toBeGreaterThan(1);
    const said = pages.map(wordsOf).join(' ');
    expect(said).toContain('Paragraph 15.');
    expect(said).toContain('For the workshop');
    for (const page of pages) expect(overPage(page, ruler)).toEqual([]);
  });

  it('says nothing of costs, hours or margin', () => {
    const said = offerPages(DERIVED, OFFER, ruler).map(wordsOf).join(' ');
    for (const line of DERIVED.price.lines) expect(said).not.toContain(line.label);
  });

  it('shows tax where there is any', () => {
    const price = { ...DERIVED.price, net: 50_000, tax: 10_000, total: 60_000 };
    const said = offerPages({ ...DERIVED, price }, OFFER, ruler)
      .map(wordsOf)
      .join(' ');
    for (const sum of ['\u00a3500.00', '\u00a3100.00', '\u00a3600.00']) expect(said).toContain(sum);
  });

  it('is the same file for the same input', async () => {
    const [a, b] = [await offerLetter(DERIVED, OFFER, fonts), await offerLetter(DERIVED, OFFER, fonts)];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
    const read = readPdf(await offerLetter(DERIVED, { ...OFFER, compress: false }, fonts));
    expect(read.pages[0]).toContain('What is not included');
  });

  it('splits a price into stages that add up to it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5_000_000 }), fc.integer({ min: 1, max: 6 }), (total, n) => {
        const amounts = stageAmounts(
          total,
          Array.from({ length: n }, () => 1 / n),
        );
        expect(amounts).toHaveLength(n);
        expect(amounts.reduce((a, b) => a + b, 0)).toBe(total);
      }),
      { seed: 41 },
    );
    expect(stageAmounts(164_500, [0.4, 0.35, 0.25])).toEqual([65_800, 57_575, 41_125]);
  });
});
