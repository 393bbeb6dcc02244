import { PAPER } from '../drawings/manner.ts';
import { turnedView } from '../drawings/view.ts';
import { boxSize } from '../geometry/box.ts';
import { formatLength } from '../quantities/length.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import { extentOf } from '../results/extent.ts';
import type { Operation } from '../results/operations.ts';
import type { JointMade, PartGroup, Piece } from '../results/piece.ts';
import { q } from '../results/quantity.ts';
import { type ShowOptions, showQuantity } from '../results/show.ts';
import { type Book, COLUMN } from './book.ts';
import { viewsPage } from './parts-page.ts';
import { type Row, table } from './table.ts';
import { STYLE } from './typeset.ts';

/** For everything given out: what goes, how large and heavy it is, its welds or masked places, in three views. */
export function outworkPages(book: Book, derived: Derived, show: ShowOptions): void {
  for (const operation of derived.operations)
    if (operation.wait?.what === 'outwork') outworkPage(book, derived, operation, show);
}

function outworkPage(book: Book, derived: Derived, operation: Operation, show: ShowOptions): void {
  const piece = partOfPiece(derived.piece, new Set(operation.instances));
  if (piece.instances.length === 0) return;
  const title = `Outwork: ${operation.title}`;
  book.startPage(title);
  book.heading(title);
  const size = boxSize(piece.bounds);
  const overall = [size.x, size.y, size.z].map(v => formatLength(v, show)).join(' \u00d7 ');
  const unit = show.unit === 'ft' ? 'in' : show.unit;
  const days = Math.round((operation.wait?.minutes ?? 0) / 1440);
  book.text(
    `${overall} ${unit} outside, ${weightOf(piece, operation, show)}; away ${days} ${days === 1 ? 'day' : 'days'}.`,
    STYLE.table,
  );
  for (const caution of operation.cautions) book.text(`${caution}.`, STYLE.remark);
  book.gap(4);
  const view = turnedView(piece, { width: COLUMN - 12, height: 96, manner: PAPER, show });
  book.drawing(view, Math.max(0, (COLUMN - view.width) / 2));
  book.gap(5);
  book.label(`What goes, in ${unit}`);
  table(
    book,
    [
      { title: 'Mark', width: 12, strong: true },
      { title: 'Part', width: 34, grow: 1 },
      { title: 'Material', width: 40 },
      { title: 'No.', width: 8, anchor: 'end' },
      { title: 'Section', width: 34, anchor: 'end' },
      { title: 'Length', width: 16, anchor: 'end', strong: true },
    ],
    piece.groups.map(group => partRow(group, operation, piece, show)),
  );
  const welds = piece.joints.filter(joint => joint.weld);
  if (operation.kind === 'assemble' && welds.length > 0) weldTable(book, welds, show);
  viewsPage(book, piece, show, title);
}

/** All that goes together; said to be unknown where one of its parts is. */
function weightOf({ groups }: Piece, operation: Operation, show: ShowOptions): string {
  if (groups.some(g => g.mass === null)) return 'weight not known';
  const mass = groups.reduce((sum, g) => sum + (g.mass ?? 0) * countIn(g, operation), 0);
  const { figure, unit } = showQuantity(q('mass', mass), show);
  return `${figure} ${unit}`;
}

const countIn = (group: PartGroup, operation: Operation): number =>
  group.instances.filter(id => operation.instances.includes(id)).length;

function partRow(group: PartGroup, operation: Operation, piece: Piece, show: ShowOptions): Row {
  const one = piece.instances.find(i => group.instances.includes(i.id));
  const length = (v: number): string => formatLength(v, show);
  const wall = one?.wall === undefined ? '' : ` \u00d7 ${length(one.wall)}`;
  const section = one?.round
    ? `${length(group.size.width)}${wall} dia`
    : `${one?.section ? `${one.section} ` : ''}${length(group.size.width)} \u00d7 ${length(group.size.thickness)}${wall}`;
  return {
    cells: [
      group.mark,
      group.name,
      materialName(group.material),
      `${countIn(group, operation)}`,
      section,
      length(group.size.length),
    ],
  };
}

/** Welds by kind of joint: how many, how long each, and the gap they are set up with. */
function weldTable(book: Book, welds: readonly JointMade[], show: ShowOptions): void {
  book.gap(5);
  book.label(`Welds, in ${show.unit === 'ft' ? 'in' : show.unit}`);
  const kinds = new Map<string, JointMade[]>();
  for (const joint of welds) {
    const key = `${joint.joint} ${Math.round(joint.weld!.length * 10)}`;
    kinds.set(key, [...(kinds.get(key) ?? []), joint]);
  }
  const gapOf = (joint: JointMade): number => joint.limits.find(l => l.figure === 'gap')?.value ?? 0;
  table(
    book,
    [
      { title: 'Where', width: 50, grow: 1 },
      { title: 'Joint', width: 36 },
      { title: 'No.', width: 10, anchor: 'end' },
      { title: 'Run each', width: 20, anchor: 'end', strong: true },
      { title: 'Gap', width: 14, anchor: 'end' },
    ],
    [...kinds.values()].map(of => ({
      cells: [
        of[0]!.joint,
        of[0]!.title,
        `${of.length}`,
        formatLength(of[0]!.weld!.length, show),
        formatLength(gapOf(of[0]!), show),
      ],
    })),
  );
  book.gap(1.5);
  book.text(
    'All round unless agreed otherwise; the welder has the last word on size and order.',
    STYLE.remark,
  );
}

/** The piece less all that stays in the shop. */
function partOfPiece(piece: Piece, ids: ReadonlySet<string>): Piece {
  const instances = piece.instances.filter(i => ids.has(i.id) && i.kind !== 'bought-in');
  return {
    ...piece,
    instances,
    groups: piece.groups.filter(g => g.instances.some(id => ids.has(id)) && g.kind !== 'bought-in'),
    joints: piece.joints.filter(joint => joint.instances.every(id => ids.has(id))),
    bounds: extentOf(instances),
  };
}
