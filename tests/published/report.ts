import { agrees, derivedRow, groupsOf, isTyped, readPiece } from './piece.ts';
import { PIECES } from './pieces.ts';

/** Pieces, rows matched, and how many lengths are typed and how many derived, as a Markdown table. */
export function publishedTable(): string {
  const total = { rows: 0, matched: 0, drawing: 0, typed: 0, derived: 0 };
  const lines = PIECES.map(piece => {
    const { document } = readPiece(piece.id);
    const { groups } = groupsOf(document);
    const printed = piece.rows.filter(r => r.basis === 'printed');
    const matched = printed.filter(r => agrees(r, derivedRow(r, groups))).length;
    const drawing = piece.rows.length - printed.length;
    const typed = piece.rows.filter(r => r.ids.every(id => isTyped(document, id))).length;
    const derived = piece.rows.length - typed;
    total.rows += printed.length;
    total.matched += matched;
    total.drawing += drawing;
    total.typed += typed;
    total.derived += derived;
    return `| ${piece.id} | ${piece.check} | ${matched} / ${printed.length} | ${drawing} | ${typed} | ${derived} | ${piece.left.length} |`;
  });
  return [
    '| piece | check | rows matched | from drawing | lengths typed | lengths derived | told, not reproduced |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...lines,
    `| ${PIECES.length} pieces | | ${total.matched} / ${total.rows} | ${total.drawing} | ${total.typed} | ${total.derived} | |`,
  ].join('\n');
}
