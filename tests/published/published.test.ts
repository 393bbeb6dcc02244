import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { agrees, derivedRow, groupsOf, moved, readPiece, STEP } from './piece.ts';
import { PIECES } from './pieces.ts';

/** Published furniture with printed stock lists (sources beside each piece): the setting-out derives the lists. */
test('every file of examples/published has its rows here, and the other way round', () => {
  const files = readdirSync(new URL('../../examples/published/', import.meta.url)).map(f =>
    f.replace(/\.yaml$/, ''),
  );
  expect(files.sort()).toEqual(PIECES.map(p => p.id).sort());
});

const SIDES = ['length', 'width', 'thickness'] as const;
type Sizes = Record<(typeof SIDES)[number], number>;
const difference = (a: Sizes, b: Sizes): Partial<Sizes> =>
  Object.fromEntries(
    SIDES.map(k => [k, Math.round((b[k] - a[k]) * 1000) / 1000] as const).filter(([, d]) => d !== 0),
  );

describe.each(PIECES.map(p => [p.id, p] as const))('%s', (id, piece) => {
  const { document, faults } = readPiece(id);
  const { groups, faults: later } = groupsOf(document);

  test('has no fault', () => {
    expect([...faults, ...later]).toEqual([]);
  });

  test.each(piece.rows.map(r => [r.part, r] as const))('%s is the row of the list', (_part, row) => {
    const derived = derivedRow(row, groups);
    expect({ derived, agrees: agrees(row, derived) }).toEqual({ derived, agrees: true });
  });

  test.each(piece.relations.map(r => [r.parameter, r] as const))(
    `%s changed by ${STEP} mm moves exactly the rows that follow from it`,
    (parameter, relation) => {
      const { groups: after } = groupsOf(moved(document, parameter));
      const changes: Record<string, object> = {};
      for (const row of piece.rows) {
        const [before, later] = [derivedRow(row, groups), derivedRow(row, after)];
        expect(later.quantity).toBe(before.quantity);
        // All parts of a row move alike, or the row would no longer be one.
        const each = later.blanks.map(b => difference(before.blanks[0]!, b));
        for (const one of each) expect(one, row.part).toEqual(each[0]);
        const change = each[0]!;
        if (Object.keys(change).length > 0) changes[row.part] = change;
      }
      expect(changes).toEqual(relation.moves);
    },
  );
});
