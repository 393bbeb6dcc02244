import { expect, test } from 'vitest';
import { labelPages } from '../../src/papers/label-pages.ts';
import { layoutsCsv, sawCutsCsv } from '../../src/papers/layout-csv.ts';
import { DERIVED as bench } from '../drawings/bench-derived.ts';
import { wordsOf } from './page-check.ts';

const SHOW = { unit: 'mm' as const, currency: 'GBP' };
const cut = bench.piece.groups.filter(group => group.kind !== 'bought-in');
const count = cut.reduce((sum, group) => sum + group.instances.length, 0);

test('every part that is cut has a label: singles each on a page, sheets of twenty-four', () => {
  expect(labelPages(bench, '31', SHOW, 'single')).toHaveLength(count);
  const sheets = labelPages(bench, '31', SHOW, 'A4');
  expect(sheets).toHaveLength(Math.ceil(count / 24));
  for (const group of cut) expect(wordsOf(sheets[0]!)).toContain(group.name);
});

test('tables of layouts hold every blank and every cut once', () => {
  const text = (bytes: Uint8Array): string[] => new TextDecoder().decode(bytes).trim().split('\r\n');
  const uses = bench.cutting.materials.flatMap(material => material.uses);
  const placed = uses.reduce((sum, use) => sum + use.placed.length + use.left.length, 0);
  expect(text(layoutsCsv(bench))).toHaveLength(1 + placed);
  expect(text(sawCutsCsv(bench))).toHaveLength(1 + uses.reduce((sum, use) => sum + use.cuts.length, 0));
});
