import { type MillLists, millLists } from '../cutting/mill-lists.ts';
import { formatLength } from '../quantities/length.ts';
import { formatMinutes } from '../quantities/time.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import { type ShowOptions, showSize } from '../results/show.ts';
import type { Book } from './book.ts';
import { capital, crossed } from './names.ts';
import { table } from './table.ts';
import { STYLE } from './typeset.ts';

/** Timber as two lists: broken out of the boards with its allowances, rested, and brought to size. */
export function millPages(book: Book, derived: Derived, show: ShowOptions): void {
  const lists = millLists(derived.cutting, derived.piece, derived.operations);
  if (lists.rough.length === 0) return;
  book.startPage('Milling');
  book.heading('Rough-mill: out of the boards');
  book.text('Cross-cut to rough length first, then rip. Thickness is the board\u2019s.', STYLE.remark);
  book.gap(1.5);
  table(
    book,
    [
      { title: '', width: 4, tick: true },
      { title: 'Mark', width: 17, strong: true },
      { title: 'Part', width: 40, grow: 1 },
      { title: 'No.', width: 8, anchor: 'end' },
      { title: 'Length', width: 16, anchor: 'end', strong: true },
      { title: 'Width', width: 16, anchor: 'end', strong: true },
      { title: 'Board', width: 14, anchor: 'end' },
    ],
    byUse(lists).flatMap(({ label, rows }) => [
      { cells: [crossed(capital(label))], section: true },
      ...rows.map(row => ({
        cells: [
          '',
          row.mark,
          capital(row.name),
          `${row.number}`,
          formatLength(row.length, show),
          formatLength(row.width, show),
          formatLength(row.thickness, show),
        ],
      })),
    ]),
  );
  book.gap(3);
  const rests = lists.rest.map(
    ({ material, minutes }) => `${materialName(material)} ${formatMinutes(minutes)}`,
  );
  book.text(
    rests.length > 0 ? `Rest in stick: ${rests.join(', ')}.` : 'No rest between the two.',
    STYLE.text,
  );
  book.gap(3);
  book.heading('Final-mill: to size');
  table(
    book,
    [
      { title: '', width: 4, tick: true },
      { title: 'Mark', width: 17, strong: true },
      { title: 'Part', width: 40, grow: 1 },
      { title: 'Timber', width: 36 },
      { title: 'No.', width: 8, anchor: 'end' },
      { title: 'Size', width: 42, anchor: 'end', strong: true },
    ],
    lists.final.map(row => ({
      cells: [
        '',
        row.mark,
        capital(row.name),
        materialName(row.material),
        `${row.number}`,
        row.size ? showSize(row.size, show) : `after ${row.waits}`,
      ],
    })),
  );
}

function byUse({ rough }: MillLists): { label: string; rows: MillLists['rough'] }[] {
  const uses = [...new Set(rough.map(row => row.use))];
  return uses.map(use => {
    const rows = rough.filter(row => row.use === use);
    return { label: rows[0]!.label, rows };
  });
}
