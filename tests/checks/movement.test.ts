import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { MovementRoom } from '../../src/results/piece.ts';
import {
  at,
  checksOf,
  commission,
  hole,
  input,
  joint,
  LYING,
  only,
  PORCH,
  part,
  pieceOf,
  sentence,
  tenon,
} from './fixtures.ts';

/** The porch bench's seat: 380 wide, outer screws 140 from its middle. */
const seat = part('seat', { size: [1380, 380, 27] });
const bearer = part('bearer', { size: [340, 60, 45] });

const bench = (room: Partial<MovementRoom>, given = {}) =>
  input(
    pieceOf(
      [seat, bearer],
      [
        joint('seat_screws', ['seat', 'bearer'], {
          type: 'screwed',
          room: { instance: 'seat', width: 140, swell: 2, shrink: 2, what: 'slotted screw', ...room },
        }),
      ],
    ),
    { commission: commission({ site: PORCH, moistureAtMaking: 12, ...given }) },
  );

describe('CHK-1: room to move', () => {
  it('moves the seat of the porch bench by its species, its width and the moisture of the porch', () => {
    const check = only('movement', bench({}, { moistureAtMaking: 9 }));
    // 140 x 0.0031 x (high - 9): ash 0.0028 to 0.0034, and the porch at 75 % and 3 degC reaches 15 %.
    expect(check.figure).toBeGreaterThan(2.4);
    expect(check.figure).toBeLessThan(2.8);
    expect(check.severity).toBe('stop');
    expect(check.title).toBe('Seat slots are too short');
    expect(sentence(check)).toMatch(
      /^Seat swells 2\.\d at the outer screws on its way to 14\.9; the slot gives 2\.$/,
    );
  });

  it('offers the slot that would do, as an edit', () => {
    const check = only('movement', bench({ swell: 0.5, shrink: 0.5 }));
    // 140 x 0.0034 x (14.9 - 12) = 1.4 each way at the greatest coefficient: a slot of 2.8.
    expect(check.mend).toEqual({
      parameter: 'joints.seat_screws.slot',
      value: 2.8,
      label: 'Slot travel 2.8 mm',
      edit: { path: ['joints', 'seat_screws', 'set', 'slot'], value: '2.8 mm' },
    });
  });

  it('passes when the slots give enough both ways', () => {
    expect(only('movement', bench({})).severity).toBe('pass');
  });

  it('attends when only the greatest published coefficient asks for more', () => {
    const check = only('movement', bench({ swell: 1.28, shrink: 2 }));
    expect(check.severity).toBe('attend');
    expect(check.figure).toBeLessThanOrEqual(check.limit! + 0.05);
  });

  it('looks at shrinking as well as at swelling', () => {
    const check = only('movement', bench({ swell: 5, shrink: 0.2 }));
    expect(check.severity).toBe('stop');
    expect(check.say.template).toContain('shrinks');
  });

  it('does not know without a room, nor without a movement of the timber', () => {
    expect(only('movement', input(bench({}).piece)).severity).toBe('unknown');
    const odd = pieceOf(
      [part('seat', { size: [1380, 380, 27], material: 'bog-oak-of-nowhere' }), bearer],
      bench({}).piece.joints,
    );
    expect(only('movement', { ...bench({}), piece: odd }).severity).toBe('unknown');
  });

  it('names the greatest of several places, once for each joint', () => {
    const { piece, ...rest } = bench({});
    const inner = joint('seat_screws', ['seat', 'bearer'], {
      id: 'seat_screws:inner',
      room: { instance: 'seat', width: 40, swell: 2, shrink: 2, what: 'slotted screw' },
    });
    const check = only('movement', { piece: { ...piece, joints: [inner, ...piece.joints] }, ...rest });
    expect(check.figure).toBeCloseTo(only('movement', bench({})).figure!, 9);
  });

  it('never passes a room smaller than the need, nor stops a larger one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 5, max: 20, noNaN: true }),
        (width, swell, shrink, moistureAtMaking) => {
          const check = only('movement', bench({ width, swell, shrink }, { moistureAtMaking }));
          const lack = check.figure! - check.limit!;
          expect(check.severity === 'stop').toBe(lack > 0.05);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
});

describe('CHK-2: wide boards that nothing gives room', () => {
  const wide = part('top', { size: [1300, 650, 24], material: 'walnut-european' });

  it('tells what the top moves through the year', () => {
    const check = only(
      'movement',
      input(pieceOf([wide]), { commission: commission({ site: PORCH }) }),
      'CHK-2',
    );
    expect(check.severity).toBe('note');
    expect(check.figure).toBeGreaterThan(5);
  });

  it('counts boards glued edge to edge as one width', () => {
    const boards = [0, 127, 254].map((y, i) =>
      part(`seat_${i}`, { size: [1380, 127, 27], frame: at(LYING, 0, y, 0) }),
    );
    const glued = [0, 1].map(i =>
      joint('boards', [`seat_${i}`, `seat_${i + 1}`], {
        glue: [{ between: [`seat_${i}`, `seat_${i + 1}`], area: 1380 * 27, grain: 'long' }],
      }),
    );
    const site = { commission: commission({ site: PORCH }) };
    const check = only('movement', input(pieceOf(boards, glued), site), 'CHK-2');
    const one = only('movement', input(pieceOf([part('seat', { size: [1380, 381, 27] })]), site), 'CHK-2');
    expect(check.figure).toBeCloseTo(one.figure!, 9);
    expect(checksOf('movement', input(pieceOf(boards), site), 'CHK-2')).toEqual([]);
  });

  it('does not know without a room, and says nothing of narrow boards', () => {
    expect(only('movement', input(pieceOf([wide])), 'CHK-2').severity).toBe('unknown');
    expect(checksOf('movement', input(pieceOf([part('rail', { size: [900, 60, 22] })])))).toEqual([]);
  });
});

describe('CHK-3: glued across the grain', () => {
  const rail = (width: number) => part('apron', { size: [560, width, 22], material: 'walnut-european' });
  const leg = part('leg', {
    size: [716, 42, 42],
    material: 'walnut-european',
    frame: {
      origin: { x: 560, y: 0, z: 0 },
      x: { x: 0, y: 1, z: 0 },
      y: { x: 1, y: 0, z: 0 },
      z: { x: 0, y: 0, z: -1 },
    },
  });
  const glued = (width: number, given = {}) =>
    input(
      pieceOf(
        [rail(width), leg],
        [
          joint('apron_to_leg', ['apron', 'leg'], {
            contact: box(560, 0, 0, 560, width, 22),
            glue: [{ between: ['apron', 'leg'], area: 3000, grain: 'cross' }],
            ...given,
          }),
        ],
      ),
      { commission: commission({ site: PORCH }) },
    );

  it.each([
    [60, 'pass'],
    [140, 'attend'],
    [240, 'stop'],
  ])('%i mm wide: %s', (width, severity) => {
    const check = only('restrained', glued(width));
    expect(check.severity).toBe(severity);
    expect(check.figure).toBeCloseTo(width, 9);
  });

  it('takes the width the joint itself gives', () => {
    const room: MovementRoom = { instance: 'apron', width: 50, swell: 0, shrink: 0, what: 'glued' };
    expect(only('restrained', glued(140, { room })).severity).toBe('pass');
  });

  it('takes the width of the tenon, not of the rail', () => {
    const { piece, ...rest } = glued(140);
    const tenoned = {
      ...piece.instances[0]!,
      cuts: [tenon({ id: 'apron_to_leg.1', y: { low: 30, high: 30 } })],
    };
    const check = only('restrained', { ...rest, piece: { ...piece, instances: [tenoned, leg] } });
    expect([check.severity, check.figure]).toEqual(['pass', 80]);
  });

  it.each([
    [[130, 250], 'attend', 120],
    [[20, 360], 'stop', 340],
    [[190, 190], 'pass', 0],
  ] as const)('screws without slots at %s across a top: %s', (ys, severity, width) => {
    const cuts = ys.map((y, i) =>
      hole({ id: `fix.${i}`, role: 'pilot', face: 'back', at: vec(100, y, 0), direction: vec(0, 0, 1) }),
    );
    const top = part('top', { size: [600, 380, 24], cuts });
    const held = joint('fix', ['rail', 'top'], {
      type: 'screwed',
      fasteners: [{ item: '4.0 x 40', kind: 'screw', quantity: 2, length: 40, diameter: 4 }],
      room: { instance: 'top', width: 170, swell: 0, shrink: 0, what: 'glued' },
    });
    const check = only('restrained', input(pieceOf([top, part('rail', { size: [380, 60, 22] })], [held])));
    expect([check.severity, check.figure]).toEqual([severity, width]);
  });

  it('says nothing of a dry joint or of boards that move together', () => {
    expect(checksOf('restrained', glued(240, { dry: true }))).toEqual([]);
    const beside = pieceOf(
      [part('a', { size: [500, 200, 20] }), part('b', { size: [500, 200, 20] })],
      [joint('edge', ['a', 'b'], { glue: [{ between: ['a', 'b'], area: 1, grain: 'long' }] })],
    );
    expect(checksOf('restrained', input(beside))).toEqual([]);
  });
});
