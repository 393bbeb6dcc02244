import { layoutDrawing } from '../drawings/layout.ts';
import type { DisplayList } from '../drawings/list.ts';
import { PAPER } from '../drawings/manner.ts';
import { ELEVATIONS, type Elevation } from '../drawings/projection.ts';
import { toSvg } from '../drawings/svg.ts';
import { elevationView, turnedView } from '../drawings/view.ts';
import { roundTo } from '../quantities/length.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import { csv } from './csv.ts';
import { layoutsCsv, sawCutsCsv } from './layout-csv.ts';
import { instanceMarks } from './names.ts';
import { safeName } from './safe-name.ts';

/** A file as bytes with the name it is to have. */
export interface PaperFile {
  name: string;
  type: 'text/csv' | 'image/svg+xml' | 'application/pdf';
  bytes: Uint8Array;
}

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

const mm = (value: number): number => roundTo(value, 2);

/** Parts, one row to a mark: mm and kg. A measure-first part has no sizes, its blank holds the reserve. */
export function partsCsv(derived: Derived): Uint8Array {
  const { groups, instances } = derived.piece;
  const rows = groups.map(group => {
    const held = instances.find(i => i.id === group.instances[0])?.measureFirst !== undefined;
    const size = (value: number): string | number => (held ? '' : mm(value));
    return [
      group.mark,
      group.name,
      group.instances.length,
      materialName(group.material),
      group.kind,
      size(group.size.length),
      size(group.size.width),
      size(group.size.thickness),
      size(group.shoulderLength),
      mm(group.blank.length),
      mm(group.blank.width),
      mm(group.blank.thickness),
      group.mass === null ? '' : roundTo(group.mass, 3),
    ];
  });
  return csv([
    [
      'mark',
      'part',
      'quantity',
      'material',
      'kind',
      'length mm',
      'width mm',
      'thickness mm',
      'shoulders mm',
      'blank length mm',
      'blank width mm',
      'blank thickness mm',
      'mass of one kg',
    ],
    ...rows,
  ]);
}

/** What is to be bought. Prices in the currency's main unit with two decimals. */
export function shoppingCsv(derived: Derived, currency: string): Uint8Array {
  const money = (minor: number): string => (minor / 100).toFixed(2);
  return csv([
    ['quantity', 'item', 'supplier', `each ${currency}`, `in all ${currency}`],
    ...derived.cutting.buy.map(l => [l.quantity, l.item, l.supplier, money(l.unitPrice), money(l.price)]),
  ]);
}

const svg = (name: string, drawing: DisplayList): PaperFile => ({
  name: `${name}.svg`,
  type: 'image/svg+xml',
  bytes: encode(toSvg(drawing, { ground: 'print' })),
});

/** One drawing for each length and sheet used, 1 : 10. */
export function layoutSvgs(derived: Derived, show: ShowOptions): PaperFile[] {
  const marks = instanceMarks(derived.piece);
  const uses = derived.cutting.materials.flatMap(m => m.uses);
  return uses.map((use, i) =>
    svg(
      `layout-${String(i + 1).padStart(2, '0')}-${safeName(use.label, 'stock')}`,
      layoutDrawing(use, { scale: 0.1, manner: PAPER, show, marks }),
    ),
  );
}

/** The piece turned, and from the front, the right end and above. */
export function viewSvgs(derived: Derived, show: ShowOptions): PaperFile[] {
  if (derived.piece.instances.length === 0) return [];
  const options = { width: 260, height: 180, manner: PAPER, show };
  const plain = (Object.keys(ELEVATIONS) as Elevation[]).map(which =>
    svg(`view-${which}`, elevationView(derived.piece, which, options)),
  );
  return [svg('view-turned', turnedView(derived.piece, options)), ...plain];
}

/** All that a maker may take to other programs, beside the pack: lists and drawings. */
export function exportFiles(derived: Derived, show: ShowOptions): PaperFile[] {
  return [
    { name: 'parts.csv', type: 'text/csv', bytes: partsCsv(derived) },
    { name: 'to-buy.csv', type: 'text/csv', bytes: shoppingCsv(derived, show.currency) },
    { name: 'layouts.csv', type: 'text/csv', bytes: layoutsCsv(derived) },
    { name: 'saw-cuts.csv', type: 'text/csv', bytes: sawCutsCsv(derived) },
    ...layoutSvgs(derived, show),
    ...viewSvgs(derived, show),
  ];
}
