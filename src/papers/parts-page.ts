import { PAPER, small } from '../drawings/manner.ts';
import { elevationSize, elevationView } from '../drawings/view.ts';
import { formatLength } from '../quantities/length.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import type { Instance, PartGroup, Piece } from '../results/piece.ts';
import { q } from '../results/quantity.ts';
import { type ShowOptions, showQuantity, showSize } from '../results/show.ts';
import { type Book, COLUMN } from './book.ts';
import { crossed } from './names.ts';
import { type Column, type Row, table } from './table.ts';
import { STYLE } from './typeset.ts';

/** Every part under its mark, cut sizes and blanks; then what is bought by the piece. */
export function partsPages(book: Book, derived: Derived, show: ShowOptions): void {
  const { piece } = derived;
  book.startPage('Parts');
  const unit = show.unit === 'ft' ? 'in' : show.unit;
  book.heading(['Parts, cut sizes in ', unit].join(''));
  const shouldered = piece.groups.some(g => hasShoulders(g));
  const columns: Column[] = [
    { title: 'Mark', width: 10, strong: true },
    { title: 'Part', width: 30, grow: 1 },
    { title: 'No.', width: 6, anchor: 'end' },
    { title: 'Length', width: 13, anchor: 'end', strong: true },
    { title: 'Width', width: 13, anchor: 'end' },
    { title: 'Thick', width: 11, anchor: 'end' },
    ...(shouldered ? [{ title: 'Shoulders', width: 14, anchor: 'end' as const }] : []),
    { title: 'Blank', width: 34, anchor: 'end' },
    { title: 'kg each', width: 12, anchor: 'end' },
  ];
  const total = piece.groups.reduce((sum, g) => sum + (g.mass ?? 0) * g.instances.length, 0);
  const count = piece.groups.reduce((sum, g) => sum + g.instances.length, 0);
  const heading = (group: PartGroup | undefined): string | undefined =>
    group && (group.kind === 'bought-in' ? 'Bought in' : materialName(group.material));
  const rows: Row[] = piece.groups.flatMap((group, i) => [
    ...(heading(group) === heading(piece.groups[i - 1])
      ? []
      : [{ cells: [heading(group) ?? ''], section: true }]),
    partRow(group, piece.instances, show, shouldered),
  ]);
  const blanks = columns.length - 4;
  rows.push({
    cells: [
      '',
      'All parts',
      `${count}`,
      ...Array.from({ length: blanks }, () => ''),
      showQuantity(q('mass', total), show).figure,
    ],
    total: true,
  });
  table(book, columns, rows);
  book.gap(1.5);
  book.text(
    'Length is the cut length with tenons; shoulders are between the shoulders. The blank is what the layout reserves.',
    STYLE.remark,
  );
  fasteners(book, derived);
}

const hasShoulders = (group: PartGroup): boolean =>
  Math.abs(group.shoulderLength - group.size.length) > 0.005;

function partRow(
  group: PartGroup,
  instances: readonly Instance[],
  show: ShowOptions,
  shouldered: boolean,
): Row {
  const first = instances.find(i => i.id === group.instances[0]);
  const round = first?.round ?? false;
  const held = first?.measureFirst;
  // A thing that is bought has the sizes it has: none are cut.
  const bought = group.kind === 'bought-in';
  const figure = (value: number): string => (bought && value === 0 ? '' : formatLength(value, show));
  const sizes = held
    ? ['', '', '']
    : [
        figure(group.size.length),
        round ? `${figure(group.size.width)} dia` : figure(group.size.width),
        round ? '' : figure(group.size.thickness),
      ];
  const note = held
    ? `Measure first, ${held.when}: no size is given until then. The blank holds the reserve.`
    : measuredNote(first, show);
  return {
    cells: [
      group.mark,
      group.name,
      `${group.instances.length}`,
      ...sizes,
      ...(shouldered ? [held || !hasShoulders(group) ? '' : figure(group.shoulderLength)] : []),
      bought ? '' : showSize(group.blank, show, round),
      group.mass === null ? 'not known' : showQuantity(q('mass', group.mass), show).figure,
    ],
    ...(note === undefined ? {} : { note }),
  };
}

/** Calipers' word, where it differs from the nominal size. */
function measuredNote(instance: Instance | undefined, show: ShowOptions): string | undefined {
  if (!instance?.measured) return undefined;
  const said = (['length', 'width', 'thickness'] as const).flatMap(k => {
    const value = instance.measured?.[k];
    return value === undefined ? [] : [`${k} ${formatLength(value, show)}`];
  });
  return said.length === 0 ? undefined : `Measured: ${said.join(', ')}.`;
}

function fasteners(book: Book, derived: Derived): void {
  const counts = new Map<string, { quantity: number; for: Set<string> }>();
  for (const joint of derived.piece.joints)
    for (const fastener of joint.fasteners) {
      const row = counts.get(fastener.item) ?? { quantity: 0, for: new Set<string>() };
      row.quantity += fastener.quantity;
      row.for.add(joint.title);
      counts.set(fastener.item, row);
    }
  if (counts.size === 0) return;
  book.gap(6);
  book.label('Screws, dowels and pins');
  table(
    book,
    [
      { title: 'No.', width: 12, anchor: 'end', strong: true },
      { title: 'What', width: 50 },
      { title: 'For', width: 40, grow: 1 },
    ],
    [...counts].map(([item, row]) => ({
      cells: [`${row.quantity}`, crossed(item), [...row.for].join(', ')],
    })),
  );
}

const SCALES = [1, 2, 5, 8, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100];
const VIEWS = ['front', 'plan', 'end'] as const;
const BETWEEN = 4;

/** The piece from the front, above and the right end, on one page and to one scale that a rule can read. */
export function viewsPage(book: Book, piece: Piece, show: ShowOptions, title = 'Views'): void {
  if (piece.instances.length === 0) return;
  book.startPage(title);
  const manner = small(PAPER);
  const room = { width: COLUMN, height: book.room - 10 };
  const fits = (n: number): boolean => {
    const sizes = VIEWS.map(which => elevationSize(piece, which, { manner, show }, 1 / n));
    const height = sizes.reduce((sum, v) => sum + v.height + BETWEEN, 0);
    return sizes.every(v => v.width <= room.width) && height <= room.height;
  };
  const scale = SCALES.find(fits) ?? SCALES.at(-1)!;
  book.heading(`Front, plan and right end, 1 : ${scale}`);
  for (const which of VIEWS) {
    book.drawing(elevationView(piece, which, { ...room, manner, show, scale: 1 / scale }));
    book.gap(BETWEEN);
  }
}
