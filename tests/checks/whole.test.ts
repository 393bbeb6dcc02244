import { describe, expect, it } from 'vitest';
import { spareInOpening } from '../../src/checks/doors.ts';
import { liftersFor, teamLift } from '../../src/checks/lifting.ts';
import { box } from '../../src/geometry/box.ts';
import type { Assembly, Instance } from '../../src/results/piece.ts';
import {
  at,
  checksOf,
  commission,
  input,
  joint,
  LYING,
  only,
  PORCH,
  part,
  pieceOf,
  STANDING,
  sentence,
} from './fixtures.ts';

/** Porch bench's bar: 1221 long, 19 in each rail, 1183 free. */
const barOf = (diameter: number, material = 'stainless-304') => {
  const bar = part('bar', { size: [1221, diameter, diameter], kind: 'bar', material, round: true });
  const rails = ['rail_l', 'rail_r'].map(id => part(id, { size: [340, 80, 32] }));
  return input(
    pieceOf(
      [bar, ...rails],
      [
        joint('bars', ['bar', 'rail_l'], { contact: box(19, 0, 0, 19, diameter, diameter) }),
        joint('bars', ['bar', 'rail_r'], { contact: box(1202, 0, 0, 1202, diameter, diameter) }),
      ],
    ),
  );
};

describe('CHK-21 to CHK-23: sag', () => {
  it('bends the bar of the porch bench by 3.3 mm at 16 dia, and by 10.4 at 12', () => {
    const thick = only('sag', barOf(16));
    expect([thick.severity, Math.round(thick.figure! * 10) / 10]).toEqual(['pass', 3.3]);
    expect(thick.limit).toBeCloseTo(1183 / 200, 9);
    const thin = only('sag', barOf(12));
    expect([thin.severity, Math.round(thin.figure! * 10) / 10]).toEqual(['attend', 10.4]);
    expect(thin.remedy).toBe('Make it 16 % thicker, or hold it in the middle.');
    expect(sentence(thin)).toBe('Bar sags 10.4 over 1183 under 10 kg spread evenly; 5.9 is the limit.');
  });

  it('does not know an alloy without a stiffness', () => {
    expect(only('sag', barOf(16, 'unobtainium')).severity).toBe('unknown');
  });

  const shelf = (thickness: number) =>
    input(
      pieceOf(
        [part('shelf', { size: [812, 300, thickness], kind: 'sheet', material: 'mdf' })],
        [
          joint('housed', ['shelf', 'side'], { contact: box(0, 0, 0, 6, 300, thickness) }),
          joint('housed', ['shelf', 'side'], { contact: box(806, 0, 0, 812, 300, thickness) }),
        ],
      ),
    );

  it('lets an MDF shelf of 18 over 800 sag too far under 40 kg a metre', () => {
    const check = only('sag', shelf(18));
    expect(check.severity).toBe('attend');
    // 6.5 mm published for E 2200, 18 x 300 x 800, 313.9 N in all.
    expect(check.figure).toBeCloseTo(6.5, 0);
    expect(only('sag', shelf(32)).severity).toBe('pass');
  });

  it('says nothing of a shelf held along its length', () => {
    const { piece } = shelf(18);
    const back = joint('back', ['shelf', 'back'], { contact: box(0, 300, 0, 812, 300, 18) });
    expect(checksOf('sag', input({ ...piece, joints: [...piece.joints, back] }))).toEqual([]);
  });

  it('judges a seat over its widest span as one panel', () => {
    const seat = part('seat', { size: [1380, 380, 27] });
    const held = [60, 667, 1275].map(x =>
      joint('screws', ['seat', 'rail'], { contact: box(x, 0, 0, x + 45, 340, 0) }),
    );
    const check = only('sag', input(pieceOf([seat], held)));
    expect(check.severity).toBe('pass');
    expect(sentence(check)).toMatch(/over 563 under 1300 N in the middle/);
  });

  it('does not take the next board of a panel for a support', () => {
    const boards = [0, 190].map((y, i) =>
      part(`seat_${i}`, { size: [1380, 190, 27], frame: at(LYING, 0, y, 0) }),
    );
    const held = [60, 667, 1275].flatMap(x =>
      boards.map(b => joint('screws', [b.id, 'rail'], { contact: box(x, 0, 0, x + 45, 340, 0) })),
    );
    const edge = joint('edge', ['seat_0', 'seat_1'], {
      contact: box(0, 190, 0, 1380, 190, 27),
      glue: [{ between: ['seat_0', 'seat_1'], area: 1, grain: 'long' }],
    });
    const whole = only(
      'sag',
      input(
        pieceOf(
          [part('seat', { size: [1380, 380, 27] })],
          held.map(h => ({ ...h, instances: ['seat', 'rail'] })),
        ),
      ),
    );
    expect(only('sag', input(pieceOf(boards, [...held, edge]))).figure).toBeCloseTo(whole.figure!, 9);
  });
});

/** Four legs 45 square under a seat; `out` is how far the seat overhangs them at front and back. */
function bench(out: number, name = 'Seat'): Instance[] {
  const legs = [
    [out, 60],
    [out, 1275],
    [335 - out, 60],
    [335 - out, 1275],
  ].map(([y, x], i) => part(`leg_${i}`, { size: [423, 45, 45], frame: at(STANDING, x!, y!, 0) }));
  return [...legs, part('seat', { name, size: [1380, 380, 27], frame: at(LYING, 0, 0, 423) })];
}

describe('CHK-24 to CHK-26: does it tip', () => {
  const titled = (title: string, parts: Instance[]) =>
    input(pieceOf(parts), { commission: commission({ title }) });

  it.each([
    [20, 'pass'],
    [140, 'stop'],
  ])('a seat that overhangs its feet by %i: %s', (out, severity) => {
    expect(only('stability', titled('Porch bench', bench(out))).severity).toBe(severity);
  });

  it.each([
    [-150, 'It tips to the front'],
    [150, 'It tips to the back'],
  ])('a seat shifted %i tips the way it is shifted', (by, title) => {
    const shifted = bench(20).map(p => (p.id === 'seat' ? { ...p, frame: at(LYING, 0, by, 423) } : p));
    const check = only('stability', titled('Porch bench', shifted));
    expect([check.severity, check.title]).toEqual(['stop', title]);
  });

  it('balances by hand: 600 N 60 inside the edge against 20 N at seat height', () => {
    const check = only('stability', titled('Porch bench', bench(20)));
    const mass = (4 * 423 * 45 * 45 + 1380 * 380 * 27) * 685e-9;
    // Ends: feet 60 from the edge, centre 630 in. Sides: feet 20 from the edge, centre 170 in.
    const ends = (mass * 9.81 * 630 + 600 * 0) / 450;
    const fronts = (mass * 9.81 * 170 + 600 * 40) / 450;
    expect(check.figure).toBeCloseTo(Math.min(ends, fronts), 6);
  });

  it.each([
    [20, 'pass'],
    [175, 'attend'],
  ])('a table that overhangs its feet by %i: %s', (out, severity) => {
    expect(only('stability', titled('Small table', bench(out, 'Top'))).severity).toBe(severity);
  });

  it('asks for the wall behind a tall shallow cabinet, and lets a low one be', () => {
    const cabinet = (height: number, depth: number) =>
      titled('Cabinet', [part('side', { size: [height, depth, 20], frame: STANDING })]);
    const upright = (height: number, depth: number) => ({
      ...cabinet(height, depth),
      piece: pieceOf([
        part('side', {
          size: [height, depth, 600],
          frame: {
            origin: { x: 0, y: 0, z: 0 },
            x: { x: 0, y: 0, z: 1 },
            y: { x: 0, y: 1, z: 0 },
            z: { x: 1, y: 0, z: 0 },
          },
        }),
      ]),
    });
    expect(only('stability', upright(1800, 60)).severity).toBe('attend');
    expect(only('stability', upright(1000, 400)).severity).toBe('pass');
    expect(checksOf('stability', upright(600, 60))).toEqual([]);
  });

  it('does not know when a mass is missing, and leaves hanging pieces alone', () => {
    const odd = bench(20).map(p => (p.id === 'seat' ? { ...p, material: 'unobtainium' } : p));
    expect(only('stability', titled('Porch bench', odd)).severity).toBe('unknown');
    const hung = bench(20).map(p => ({ ...p, frame: at(p.frame, 0, 0, 1200) }));
    expect(checksOf('stability', titled('Porch bench', hung))).toEqual([]);
  });
});

describe('CHK-27: knees', () => {
  const table = (rail: number) =>
    input(
      pieceOf([
        part('leg', { size: [716, 42, 42], frame: STANDING }),
        part('rail', { size: [1136, 42, 16], frame: at(LYING, 42, 0, rail) }),
      ]),
      {
        commission: commission({ title: 'Writing table' }),
      },
    );

  it.each([
    [624, 'pass', 174],
    [600, 'attend', 150],
  ])('a rail %i above the floor: %s', (rail, severity, clear) => {
    const check = only('knees', table(rail));
    expect([check.severity, check.figure]).toEqual([severity, clear]);
  });

  it('speaks of tables only', () => {
    expect(checksOf('knees', { ...table(600), commission: commission({ title: 'Cabinet' }) })).toEqual([]);
  });
});

describe('CHK-28: doors', () => {
  const big = (width: number, doors = PORCH.doors) =>
    input(pieceOf([part('top', { size: [1300, width, 740] })]), {
      commission: commission({ site: { ...PORCH, doors } }),
    });

  it.each([
    [650, 'pass'],
    [750, 'pass'],
    [1970, 'attend'],
    [2100, 'stop'],
  ])('740 by %i end first through 760 by 1980: %s', (width, severity) => {
    const long = input(pieceOf([part('top', { size: [2500, width, 735] })]), {
      commission: commission({ site: PORCH }),
    });
    expect(only('doors', long).severity).toBe(severity);
  });

  it('does not know without a door', () => {
    expect(only('doors', big(650, [])).severity).toBe('unknown');
    expect(only('doors', input(big(650).piece)).severity).toBe('unknown');
  });

  it('carries each last glue-up by itself', () => {
    const [top, under] = [part('top', { size: [2600, 900, 30] }), part('under', { size: [1500, 700, 600] })];
    const glueUp = (id: string): Assembly => ({
      id,
      name: id,
      instances: [id],
      assemblies: [],
      joints: [],
      dryFit: true,
      order: 1,
    });
    const piece = pieceOf([top, under], [], [glueUp('top'), glueUp('under')]);
    const check = only('doors', input(piece, { commission: commission({ site: PORCH }) }));
    expect(check.severity).toBe('pass');
    expect(check.figure).toBe(160);
  });

  it('turns a piece either way up', () => {
    const door = { name: 'lift', width: 760, height: 1980 };
    expect(spareInOpening([2000, 900, 300], door)).toBe(460);
    expect(spareInOpening([2000, 1990, 750], door)).toBe(-10);
  });
});

describe('CHK-29: lifting', () => {
  const heavy = (length: number) => input(pieceOf([part('block', { size: [length, 200, 200] })]));

  it.each([
    [500, 'pass', 'One lifts it'],
    [800, 'note', 'One lifts it'],
    [1100, 'attend', 'Two lift it'],
    [1350, 'attend', 'Three lift it, or it comes apart'],
    [2000, 'attend', 'Too heavy to lift whole'],
  ])('%i of 200 square ash: %s', (length, severity, title) => {
    const check = only('lifting', heavy(length));
    expect([check.severity, check.title]).toEqual([severity, title]);
  });

  it('does not know without a density; a team lifts less than the sum of its men', () => {
    const odd = input(pieceOf([part('block', { size: [500, 200, 200], material: 'unobtainium' })]));
    expect(only('lifting', odd).severity).toBe('unknown');
    expect(teamLift(25, 2)).toBeCloseTo(33.33, 2);
    expect([25, 25.1, 33.4, 37.6].map(liftersFor)).toEqual([1, 2, 3, undefined]);
  });
});
