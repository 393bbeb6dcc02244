import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { slotMoves } from '../../src/setups/pocket.ts';
import { part, pieceOf, pocket, shop, without } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 120 };
const figure = (setUp: SetUp | undefined, name: string): number =>
  setUp?.settings.find(s => s.name === name)?.value.value as number;
const plan = (piece: Parameters<typeof planSetUps>[0], workshop = shop()) =>
  planSetUps(piece, [], workshop, EFFORT);

describe('grooves', () => {
  // A groove 6.2 wide, 10 deep in the edge of a stile 55 x 21, its near wall 7.4 from the face side.
  const groove = (from = 0, to = 636) =>
    pocket('groove', 'g', box(from, 0, 7.4, to, 10, 13.6), { face: 'backEdge', run: 'x' });
  const stile = (cut = groove()) => pieceOf([part('stile', [636, 55, 21], [cut])]);

  it('SET-1, SET-9: grooving blade 5.0: fence 7.4 from the face side, last pass 8.6', () => {
    const [setUp] = plan(stile()).setups;
    expect(setUp?.tool).toContain('grooving blade');
    expect(figure(setUp, 'fence')).toBeCloseTo(7.4, 9);
    expect(setUp?.settings[0]?.to).toBe('near teeth');
    expect(figure(setUp, 'last pass')).toBeCloseTo(8.6, 9);
    expect(figure(setUp, 'blade height')).toBe(10);
    expect(setUp?.runs[0]?.down).toBe('backEdge');
    expect(setUp?.runs[0]?.against).toBe('face');
  });

  it('a stopped groove is refused at the saw and goes to the router table with stops', () => {
    const [setUp] = plan(stile(groove(45, 591))).setups;
    expect(setUp?.machine).toBe('router table');
    expect(setUp?.refused?.[0]?.reason).toContain('stops short of the end');
    expect(figure(setUp, 'start')).toBe(45);
    expect(figure(setUp, 'finish')).toBe(591);
    expect(figure(setUp, 'bit')).toBe(6);
    expect(setUp?.after).toContain('Square the ends with a chisel');
  });

  it('a cutter larger than the groove is refused with its figure; the plane takes it', () => {
    const thin = pieceOf([
      part(
        'side',
        [400, 57, 10],
        [pocket('groove', 'g', box(0, 5, 8, 400, 7, 10), { face: 'face', run: 'x' })],
      ),
    ]);
    const found = plan(thin);
    expect(found.setups[0]?.machine).toBe('hand tools');
    expect(found.setups[0]?.refused?.map(r => r.reason)).toEqual([
      'the narrowest kerf, 2.8, is wider than the 2.0 groove',
      'the smallest straight cutter, 6.0, is larger than the 2.0 way',
      'the smallest straight cutter, 6.0, is larger than the 2.0 way',
    ]);
    expect(plan(thin, without(shop(), 'hand tools')).unmade[0]?.reason).toContain(
      'wider than the 2.0 groove',
    );
  });

  it('a fence beyond the table is refused', () => {
    const wide = pieceOf([
      part(
        'top',
        [1200, 900, 20],
        [pocket('groove', 'g', box(0, 40, 12, 1200, 46, 20), { face: 'face', run: 'x' })],
      ),
    ]);
    const [setUp] = plan(wide).setups;
    expect(setUp?.refused?.[0]?.reason).toMatch(
      /^the fence would stand at 85\d\.\d, the table of the table saw ends at 800\.0$/,
    );
    expect(setUp?.machine).toBe('hand router');
  });

  it('SET-8: follows the measured sheet: 18 nominal came 17.6, housing 17.7 with 0.1 play', () => {
    const shelf = part('shelf', [435, 251, 18], [], {
      kind: 'sheet',
      material: 'plywood-birch',
      measured: { thickness: 17.6 },
    });
    // The shelf stands with its thickness along the side's length.
    const side = part(
      'side',
      [720, 278, 18],
      [
        pocket('housing', 'h.1', box(300, 0, 12, 318, 278, 18), {
          by: 'h',
          run: 'y',
          clearance: 0.1,
          mate: { instance: 'shelf', cut: '' },
        }),
      ],
      {
        frame: {
          origin: { x: 0, y: 0, z: 0 },
          x: { x: 0, y: 0, z: 1 },
          y: { x: 0, y: 1, z: 0 },
          z: { x: -1, y: 0, z: 0 },
        },
      },
    );
    const [setUp] = plan(pieceOf([side, shelf])).setups;
    expect(setUp?.wanted?.value.value).toBeCloseTo(17.7, 9);
    expect(setUp?.wanted?.how).toBe('Shelf 17.6 measured + 0.1 play');
    expect(figure(setUp, 'stop')).toBe(300);
    // Kerf 5: last pass 17.7 - 5.0 further.
    expect(figure(setUp, 'last pass')).toBeCloseTo(312.7, 9);
  });
});

describe('rebates', () => {
  const rebate = part(
    'stile',
    [600, 50, 22],
    [pocket('rebate', 'r', box(0, 40, 0, 600, 50, 12), { face: 'back', run: 'x' })],
  );

  it('SET-10: two cuts; 10 - 3 = 7 flat, then 22 - 12 = 10 on edge with the strip free', () => {
    const [first, second] = plan(pieceOf([rebate])).setups;
    expect(figure(first, 'fence')).toBeCloseTo(7, 9);
    expect(first?.settings[0]?.how).toBe('as drawn 10.0, less kerf 3.0');
    expect(figure(first, 'blade height')).toBe(12);
    expect(first?.runs[0]).toMatchObject({ down: 'back', against: 'faceEdge' });
    expect(figure(second, 'fence')).toBeCloseTo(10, 9);
    expect(figure(second, 'blade height')).toBe(10);
    expect(second?.runs[0]).toMatchObject({ down: 'faceEdge', against: 'face' });
    expect(second?.cautions).toContain('Waste 9.0 falls free on the left. Leave it until the blade stands.');
    expect(second?.before[0]).toContain('(set-up 1)');
  });

  it('one kerf of fence moves the inner wall by one kerf', () => {
    const [first] = plan(pieceOf([rebate])).setups;
    const wall = (fence: number): number => fence + 3;
    expect(wall(figure(first, 'fence'))).toBeCloseTo(10, 9);
    expect(wall(figure(first, 'fence') + 3)).toBeCloseTo(13, 9);
  });

  it('across the end of a side: from the stop, kerfs inside, far teeth at 12', () => {
    const side = part(
      'side',
      [720, 278, 18],
      [pocket('rebate', 'r', box(708, 0, 6, 720, 278, 18), { face: 'face', run: 'y' })],
      { kind: 'sheet', material: 'plywood-birch' },
    );
    const [setUp] = plan(pieceOf([side])).setups;
    expect(figure(setUp, 'stop')).toBe(12);
    expect(setUp?.settings[0]?.to).toBe('far teeth');
    expect(figure(setUp, 'blade height')).toBe(12);
    expect(setUp?.runs[0]?.against).toBe('end2');
    expect(setUp?.removal?.moves.at(-1)).toBeCloseTo(-7, 9);
  });
});

describe('mortises', () => {
  const mortise = (corner: 'square' | 'round', width = 10) =>
    pieceOf([
      part(
        'leg',
        [400, 45, 45],
        [pocket('mortise', 'm', box(180, 15, 45 - 17 - width, 240, 45, 28), { face: 'faceEdge', corner })],
      ),
    ]);

  // The nearer end of 400 is end 2: 400 - 240 = 160.
  it('square: chisel as wide, face side to the fence at 17', () => {
    const [setUp] = plan(mortise('square')).setups;
    expect(setUp?.machine).toBe('chisel mortiser');
    expect(figure(setUp, 'fence')).toBe(17);
    expect(figure(setUp, 'depth')).toBe(30);
    expect(figure(setUp, 'bit')).toBe(10);
    expect(setUp?.runs[0]?.along).toEqual({ from: 160, to: 220 });
  });

  it('11 wide with chisels of 8, 10, 12: two rows of the 10, the second 1.0 further', () => {
    const [setUp] = plan(mortise('square', 11)).setups;
    expect(figure(setUp, 'bit')).toBe(10);
    expect(figure(setUp, 'last pass') - figure(setUp, 'fence')).toBeCloseTo(1, 9);
  });

  it('round: slot mortiser, cutter 10, height 17 + 5 = 22, stops 180 and 240', () => {
    const [setUp] = plan(mortise('round')).setups;
    expect(setUp?.machine).toBe('slot mortiser');
    expect(figure(setUp, 'height')).toBe(22);
    expect(figure(setUp, 'start')).toBe(160);
    expect(figure(setUp, 'finish')).toBe(220);
    expect(setUp?.after).toContain('Ends stay round: the tenon is rounded to them');
  });

  it('SET-19: right through, half + 2 from both sides', () => {
    const through = pieceOf([
      part(
        'leg',
        [400, 45, 45],
        [pocket('mortise', 'm', box(180, 0, 18, 240, 45, 28), { face: 'faceEdge', through: true })],
      ),
    ]);
    const [setUp] = plan(through).setups;
    expect(figure(setUp, 'depth')).toBe(24.5);
    expect(setUp?.runs[0]?.lays?.map(l => l.entry)).toEqual(['faceEdge', 'backEdge']);
    expect(new Set(setUp?.runs[0]?.lays?.map(l => l.against))).toEqual(new Set(['face']));
  });
});

describe('recess, halving, taper', () => {
  it('SET-21: a recess for a sheet measured 0.92 drawn 1.0 for 0.9 is set 1.02 deep, by the hand router', () => {
    const sheet = part('plate', [200, 100, 0.9], [], {
      kind: 'sheet',
      material: 'brass',
      measured: { thickness: 0.92 },
    });
    const panel = part(
      'panel',
      [300, 200, 12],
      [
        pocket('recess', 'let.1', box(50, 50, 11, 250, 150, 12), {
          by: 'let',
          mate: { instance: 'plate', cut: '' },
        }),
      ],
    );
    const [setUp] = plan(pieceOf([panel, sheet])).setups;
    expect(setUp?.machine).toBe('hand router');
    expect(figure(setUp, 'depth')).toBeCloseTo(1.02, 9);
  });

  it('a halving to the measured mate: 60 came 60.4, notch 60.5 with 0.1 play', () => {
    const frame = {
      origin: { x: 0, y: 0, z: 0 },
      x: { x: 0, y: 1, z: 0 },
      y: { x: -1, y: 0, z: 0 },
      z: { x: 0, y: 0, z: 1 },
    };
    const post = part('post', [500, 60, 20], [], { frame, measured: { width: 60.4 } });
    const rail = part(
      'rail',
      [700, 60, 20],
      [
        pocket('halving', 'x.1', box(320, 0, 10, 380, 60, 20), {
          by: 'x',
          run: 'y',
          clearance: 0.1,
          mate: { instance: 'post', cut: '' },
        }),
      ],
    );
    const [setUp] = plan(pieceOf([rail, post])).setups;
    expect(setUp?.wanted?.value.value).toBeCloseTo(60.5, 9);
    expect(figure(setUp, 'blade height')).toBe(10);
    expect(setUp?.removal?.moves.at(-1)).toBeCloseTo(55.5, 9);
  });

  it('SET-20: taper 9 over 110: offset 9, angle atan(9/110) = 4.677', () => {
    const leg = part(
      'leg',
      [423, 45, 45],
      [
        {
          kind: 'taper',
          id: 't',
          by: 't',
          stage: { when: 'part' },
          face: 'back',
          from: 110,
          to: 0,
          amount: 9,
        },
      ],
    );
    const [setUp] = plan(pieceOf([leg])).setups;
    expect(setUp?.method).toBe('on the taper sled');
    expect(figure(setUp, 'offset')).toBe(9);
    expect(figure(setUp, 'angle')).toBeCloseTo(4.677, 3);
    expect(figure(setUp, 'from')).toBe(110);
    expect(figure(setUp, 'blade height')).toBe(50);
  });
});

describe('moves over a wide slot', () => {
  it('SET-9: start at one wall, end at the other, and leave nothing standing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 120, noNaN: true }),
        fc.double({ min: 0.5, max: 25, noNaN: true }),
        (slot, kerf) => {
          fc.pre(kerf <= slot);
          const moves = slotMoves(slot, kerf);
          expect(moves[0]).toBe(0);
          expect(Math.abs((moves.at(-1) ?? 0) + kerf - slot)).toBeLessThan(0.03);
          moves.slice(1).forEach((m, i) => {
            expect(m - moves[i]!).toBeLessThanOrEqual(kerf + 1e-9);
          });
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });
});
