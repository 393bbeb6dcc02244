import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { jointPictures, jointsPage } from '../../scripts/joint-pages.ts';
import { JOINTS } from '../../src/joints/index.ts';

const DOCS = new URL('../../docs/', import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, DOCS), 'utf8');

test('docs/joints.md is what the catalogue says (node --import tsx scripts/write-joints.ts)', () => {
  expect(text('joints.md')).toBe(jointsPage());
});

test('every joint has its drawing, made from its sample, and no other lies there', () => {
  const pictures = jointPictures();
  expect([...pictures.keys()].sort()).toEqual(JOINTS.map(j => `${j.type}.svg`).sort());
  expect(readdirSync(new URL('joints/', DOCS)).sort()).toEqual([...pictures.keys()].sort());
  for (const [name, svg] of pictures) {
    expect(text(`joints/${name}`), name).toBe(svg);
    expect(svg).toMatch(/<path/);
  }
});
