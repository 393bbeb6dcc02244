import type { DisplayList } from '../drawings/list.ts';
import type { LengthUnit } from '../quantities/length.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import { Book, type PaperInfo } from './book.ts';
import { cardPage } from './card-page.ts';
import { checksPages } from './checks-page.ts';
import { cuttingPages } from './cutting-pages.ts';
import { daysPages } from './days-page.ts';
import type { PaperFonts } from './fonts.ts';
import { markingPages } from './marking-pages.ts';
import { millPages } from './mill-pages.ts';
import { outworkPages } from './outwork-pages.ts';
import { partsPages, viewsPage } from './parts-page.ts';
import { writePdf } from './pdf.ts';
import { pdfRuler, type Ruler } from './pdf-fonts.ts';
import { contents, summaryPage } from './summary-page.ts';

export interface PackInfo extends PaperInfo {
  /** ISO 4217. */
  currency: string;
  unit: LengthUnit;
  decimals?: number;
  /** Left out in tests that read the file. */
  compress?: boolean;
}

/** The pages of the job pack as display lists in millimetres: what the PDF holds, and a screen may show. */
export function packPages(derived: Derived, info: PackInfo, ruler: Ruler): DisplayList[] {
  const show: ShowOptions = {
    unit: info.unit,
    currency: info.currency,
    ...(info.decimals === undefined ? {} : { decimals: info.decimals }),
  };
  const book = new Book(info, ruler);
  const { contentsAt } = summaryPage(book, derived, show);
  partsPages(book, derived, show);
  viewsPage(book, derived.piece, show);
  markingPages(book, derived, show);
  cuttingPages(book, derived, show);
  millPages(book, derived, show);
  outworkPages(book, derived, show);
  for (const setup of derived.setups.setups) cardPage(book, setup, derived, show);
  daysPages(book, derived);
  checksPages(book, derived, show);
  contents(book, contentsAt);
  return book.finish();
}

/**
 * The job pack as the bytes of a PDF: summary, parts, views, cutting, a card for each set-up, days, checks. The
 * same input gives the same bytes: the only date in it is `info.date`.
 */
export function jobPack(derived: Derived, info: PackInfo, fonts: PaperFonts): Promise<Uint8Array> {
  const ruler = pdfRuler(fonts);
  const facts = {
    title: `${info.title}, job pack`,
    subject: `Commission ${info.number}, setting-out ${info.settingOut}`,
    date: info.date,
    programVersion: info.programVersion,
    ...(info.compress === undefined ? {} : { compress: info.compress }),
  };
  return writePdf(packPages(derived, info, ruler), fonts, facts, ruler);
}
