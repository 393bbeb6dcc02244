import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../../src/job-file/read.ts';
import { checkCards } from '../../src/proof/simulator-check.ts';
import { spoilt } from '../../src/proof/simulator-spoil.ts';
import { PIECES } from '../joints/pieces/index.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));

const jobOf = (type: string, t: number) => {
  const { parts, set } = PIECES[type]!(t);
  const { document } = checkJobDocument({
    scantling: 'job/1',
    title: type,
    parts,
    joints: { j: { type, from: 'from', into: 'into', ...(set ? { set } : {}) } },
  });
  return deriveJob(document!, workshop!, { today: '2026-11-25' }).derived;
};

describe('every joint of the catalogue, by its cards', () => {
  it.each(Object.keys(PIECES))('%s comes out as designed at three sizes', type => {
    for (const t of [12, 20, 45]) {
      const { piece, setups } = jobOf(type, t);
      expect(checkCards(piece, setups.setups).wrong, `${t} mm`).toEqual([]);
    }
  });

  it('one kerf of any placing figure is found out, on every card that can be repeated', () => {
    let moved = 0;
    const missed: string[] = [];
    for (const type of Object.keys(PIECES)) {
      const { piece, setups } = jobOf(type, 20);
      const unsure = new Set(checkCards(piece, setups.setups).notSimulated.map(n => n.setUp));
      for (const card of setups.setups.filter(s => !unsure.has(s.id) && s.removal?.shape !== 'size')) {
        const cards = spoilt(setups.setups, card.id, 1);
        if (!cards) continue;
        moved++;
        if (!checkCards(piece, cards).wrong.some(w => w.setUp === card.id))
          missed.push(`${type}: ${card.title}`);
      }
    }
    expect(missed).toEqual([]);
    expect(moved).toBeGreaterThan(80);
  });
});
