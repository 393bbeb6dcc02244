import type { DisplayList } from '../drawings/list.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import { Book } from './book.ts';
import { cardPage } from './card-page.ts';
import type { PaperFonts } from './fonts.ts';
import type { PackInfo } from './pack.ts';
import { writePdf } from './pdf.ts';
import { pdfRuler, type Ruler } from './pdf-fonts.ts';

/** One page for each set-up, in their order, for the bench: nothing else of the job. */
export function cardPages(derived: Derived, info: PackInfo, ruler: Ruler): DisplayList[] {
  const show: ShowOptions = {
    unit: info.unit,
    currency: info.currency,
    ...(info.decimals === undefined ? {} : { decimals: info.decimals }),
  };
  const book = new Book(info, ruler);
  for (const setup of derived.setups.setups) cardPage(book, setup, derived, show);
  return book.finish();
}

/** The cards as the bytes of a PDF; the same input gives the same bytes. */
export function cardPack(derived: Derived, info: PackInfo, fonts: PaperFonts): Promise<Uint8Array> {
  const ruler = pdfRuler(fonts);
  const facts = {
    title: `${info.title}, set-up cards`,
    subject: `Commission ${info.number}, setting-out ${info.settingOut}`,
    date: info.date,
    programVersion: info.programVersion,
    ...(info.compress === undefined ? {} : { compress: info.compress }),
  };
  return writePdf(cardPages(derived, info, ruler), fonts, facts, ruler);
}
