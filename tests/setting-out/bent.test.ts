import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facetsOf } from '../../src/drawings/facets.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../../src/job-file/read.ts';
import type { BentCut } from '../../src/results/cuts.ts';
import { partVolume } from '../../src/results/part-volume.ts';
import { airOf, type Bend, developedLength } from '../../src/setting-out/bent.ts';
import { bendStations } from '../../src/setups/methods/bend.ts';
import { pieceOf, proofOf } from './piece.ts';

const flat = (over: object = {}, feature: object = {}) =>
  pieceOf({
    parts: {
      bracket: {
        ...{ kind: 'bar', material: 'mild-steel', length: 80, width: 25, thickness: 60 },
        ...{ along: 'right', facing: 'up', at: { left: 0, front: 0, bottom: 0 } },
        ...over,
      },
    },
    features: { bend: { type: 'bent', on: 'bracket', form: 'L', size: 5, ...feature } },
  });

const form = fc.constantFrom<Bend['form']>('L', 'U', 'Z');

describe('bent flats', () => {
  it('an angle of 80 and 60 in 5 mm: legs to the tangents and one bend allowance', () => {
    const made = flat();
    expect(made.said).toEqual([]);
    // Straight 70 and 50; the bend (pi / 2) (5 + 0.42 x 5) = 11.15.
    expect(made.piece.groups[0]!.blank).toEqual({
      length: expect.closeTo(131.153, 2),
      width: 25,
      thickness: 5,
    });
  });

  it.each(['L', 'U', 'Z'])(
    '%s: what stays of the box has the volume of its legs and bends, in solid and drawing',
    async f => {
      const made = flat({ length: 120 }, { form: f, radius: 8, ...(f === 'Z' ? { along: 70 } : {}) });
      expect(made.said).toEqual([]);
      const bracket = made.instance('bracket');
      const bends = f === 'L' ? 1 : 2;
      const straight = f === 'L' ? 107 + 47 : f === 'U' ? 94 + 2 * 47 : 57 + 34 + 120 - 65 - 13;
      // Bends come as eight chords a quarter: their ring is that of the chords, not of the circle.
      const ring = 16 * 0.5 * Math.sin(Math.PI / 16) * (13 * 13 - 8 * 8) * 0.5;
      const volume = 25 * (straight * 5 + bends * ring);
      expect(partVolume(bracket, bracket.cuts)).toBeCloseTo(volume, 3);
      const proved = await proofOf(made);
      expect(proved.overlaps).toEqual([]);
      const seen = facetsOf(bracket, 0).reduce((sum, facet) => {
        const [p, ...rest] = facet.points;
        return rest.slice(1).reduce((s, q, i) => {
          const [a, b] = [rest[i]!, q];
          const cross = [
            (a.y - p!.y) * (b.z - p!.z) - (a.z - p!.z) * (b.y - p!.y),
            (a.z - p!.z) * (b.x - p!.x) - (a.x - p!.x) * (b.z - p!.z),
            (a.x - p!.x) * (b.y - p!.y) - (a.y - p!.y) * (b.x - p!.x),
          ] as const;
          const area = Math.hypot(...cross) / 2;
          return s + ((facet.normal.x * p!.x + facet.normal.y * p!.y + facet.normal.z * p!.z) * area) / 3;
        }, sum);
      }, 0);
      expect(seen).toBeCloseTo(volume, 2);
    },
  );

  it('the straight bar is as long as its neutral line, which lies between the inside and the outside of the legs', () => {
    fc.assert(
      fc.property(
        form,
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 1, max: 10 }),
        fc.integer({ min: 30, max: 50 }),
        (f, stock, radius, k) => {
          const size = { length: 150, width: 20, thickness: 80 };
          const bend: Bend = { form: f, stock, radius, riser: 70, kFactor: k / 100 };
          const length = developedLength(bend, size);
          const outside = f === 'L' ? 230 : f === 'U' ? 310 : 70 + 80 + 150 - (70 - stock);
          const bends = f === 'L' ? 1 : 2;
          expect(length).toBeLessThan(outside);
          expect(length).toBeGreaterThan(outside - bends * 2 * (stock + radius));
          // Two quarter rings of a wider K make the bar longer by pi / 2 t for each whole K.
          const wider = developedLength({ ...bend, kFactor: k / 100 + 0.1 }, size);
          expect(wider - length).toBeCloseTo(bends * (Math.PI / 2) * 0.1 * stock, 9);
          expect(airOf(bend, size).every(o => o.every(([x, z]) => x >= -1e-9 && z >= -1e-9))).toBe(true);
        },
      ),
      { seed: 4 },
    );
  });

  it('marks for the bends: from one mark to the next lie the bend and the straight between', () => {
    const made = flat({ length: 120 }, { form: 'U', radius: 5 });
    const cut = made.instance('bracket').cuts[0] as BentCut;
    const [first, second] = bendStations(cut, 120, 60);
    const allowance = (Math.PI / 2) * (5 + 0.42 * 5);
    expect(first).toBe(50);
    expect(second! - first!).toBeCloseTo(allowance + 100, 9);
    expect(second! + allowance + 50).toBeCloseTo(cut.developed, 9);
    const step = flat({ length: 120 }, { form: 'Z', radius: 5, along: 70 }).instance('bracket')
      .cuts[0] as BentCut;
    const [z1, z2] = bendStations(step, 120, 60);
    expect(z1).toBeCloseTo(60, 9);
    expect(z2! - z1!).toBeCloseTo(allowance + 40, 9);
    expect(z2! + allowance + (120 - 65 - 10)).toBeCloseTo(step.developed, 9);
  });

  it.each([
    [{ radius: 3 }, 'a bend of 3 mm inside is tighter than 5 mm of mild-steel bears'],
    [{ radius: 60 }, 'too short for a radius of 60'],
    [{ form: undefined }, 'no form is named'],
  ])('a bend that cannot be is told with what would work: %j', (feature, words) => {
    expect(flat({}, feature).said.join()).toContain(words);
  });

  it('the straight bar is bought and sawn, the bend is made in the vice at its marks, and trial bends move K', () => {
    const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));
    const job = {
      scantling: 'job/1',
      title: 'Bracket',
      parts: {
        bracket: {
          ...{ kind: 'bar', material: 'mild-steel', length: 80, width: 25, thickness: 60 },
          ...{ along: 'right', facing: 'up', at: { left: 0, front: 0, bottom: 0 } },
        },
      },
      features: { bend: { type: 'bent', on: 'bracket', form: 'L', size: 5 } },
    };
    const { document } = checkJobDocument(job);
    const { derived } = deriveJob(document!, workshop!, { today: '2026-11-25' });
    expect(derived.faults).toEqual([]);
    const bends = derived.setups.setups.filter(s => s.title.startsWith('Bends'));
    expect(bends).toHaveLength(1);
    expect(bends[0]!.settings.map(s => s.value)).toContainEqual({ kind: 'length', value: 70 });
    const other = deriveJob(document!, { ...workshop!, kFactor: 0.33 }, { today: '2026-11-25' }).derived;
    expect(derived.piece.groups[0]!.blank.length - other.piece.groups[0]!.blank.length).toBeCloseTo(
      (Math.PI / 2) * 0.09 * 5,
      2,
    );
  });
});
