import { labelItems, partLabels } from '../drawings/label.ts';
import { type DisplayList, type Item, place } from '../drawings/list.ts';
import { list, PAPER } from '../drawings/manner.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import type { PaperFonts } from './fonts.ts';
import { instanceMarks } from './names.ts';
import type { PackInfo } from './pack.ts';
import { writePdf } from './pdf.ts';

/** Labels on A4, three by eight of 70 by 37 mm as label sheets come, or each on a page of its own. */
export type LabelForm = 'A4' | 'single';

const LABEL = { width: 70, height: 37 };
const SHEET = { width: 210, height: 297, across: 3, down: 8, top: 0.5 };

/** One label for every copy that is cut, as display lists in millimetres. */
export function labelPages(derived: Derived, job: string, show: ShowOptions, form: LabelForm): DisplayList[] {
  const labels = partLabels(derived.piece, instanceMarks(derived.piece), job, show, materialName);
  const drawn = labels.map(label => labelItems(label, LABEL.width, LABEL.height));
  const title = (from: number, to: number): string => `Labels ${from}${to > from ? ` to ${to}` : ''}`;
  if (form === 'single')
    return drawn.map((items, i) => list(PAPER, title(i + 1, i + 1), LABEL.width, LABEL.height, items));
  const each = SHEET.across * SHEET.down;
  return Array.from({ length: Math.ceil(drawn.length / each) }, (_, page) => {
    const on = drawn.slice(page * each, (page + 1) * each);
    const items = on.flatMap((label, i): Item[] =>
      place(label, (i % SHEET.across) * LABEL.width, SHEET.top + Math.floor(i / SHEET.across) * LABEL.height),
    );
    return list(PAPER, title(page * each + 1, page * each + on.length), SHEET.width, SHEET.height, items);
  });
}

/** The labels as the bytes of a PDF; the same input gives the same bytes. */
export function labelPack(
  derived: Derived,
  info: PackInfo,
  fonts: PaperFonts,
  form: LabelForm = 'A4',
): Promise<Uint8Array> {
  const show: ShowOptions = { unit: info.unit, currency: info.currency };
  const facts = {
    title: `${info.title}, labels`,
    subject: `Commission ${info.number}, setting-out ${info.settingOut}`,
    date: info.date,
    programVersion: info.programVersion,
    ...(info.compress === undefined ? {} : { compress: info.compress }),
  };
  return writePdf(labelPages(derived, info.number, show, form), fonts, facts);
}
