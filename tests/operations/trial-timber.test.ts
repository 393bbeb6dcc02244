import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import type { RackItem, Workshop } from '../../src/workshop/workshop.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));
const { document } = readJobFile(readFileSync('examples/porch-bench.yaml', 'utf8'));

const board = (material: string, value: number, more: Partial<RackItem> = {}): RackItem => ({
  id: material,
  kind: 'board',
  material,
  label: material,
  length: 1200,
  width: 200,
  thickness: 60,
  round: false,
  quantity: 1,
  value,
  ...more,
});

const trials = (...rack: RackItem[]): string[] => {
  const shop: Workshop = { ...workshop!, rack };
  const { operations } = deriveJob(document!, shop, { today: '2026-11-25' }).derived;
  return [...new Set(operations.flatMap(o => o.testPiece?.material ?? []))].sort();
};

describe('a trial piece may be of cheaper timber', () => {
  const ash = board('ash-european', 9000);
  it('about as hard, large enough and cheaper by volume', () => {
    expect(trials(ash, board('beech-european', 3000))).toEqual(['beech-european']);
  });
  it('not softer, not dearer, not too thin', () => {
    expect(trials(ash, board('lodgepole-pine', 500))).toEqual(['ash-european']);
    expect(trials(ash, board('beech-european', 12000))).toEqual(['ash-european']);
    expect(trials(ash, board('beech-european', 3000, { thickness: 20 }))).toEqual(['ash-european']);
    expect(trials(board('beech-european', 3000))).toEqual(['ash-european']);
  });
  it('one piece serves several trials: each is sawn off before the next', () => {
    const { setups } = deriveJob(document!, workshop!, { today: '2026-11-25' }).derived;
    const cheeks = setups.setups.find(s => s.title.startsWith('Tenon cheeks'))!;
    // 300 long, 150 held, 45 of tenon and 5 of sawing each.
    expect(cheeks.testPiece).toMatchObject({ length: 300, serves: 3 });
  });
});
