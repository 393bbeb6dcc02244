import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Cut, HoleCut } from '../../src/results/cuts.ts';
import { checksOf, hole, input, joint, only, part, pieceOf, pocket, sentence, tenon } from './fixtures.ts';

const withCuts = (
  cuts: Cut[],
  size: [number, number, number] = [400, 45, 45],
  kind: 'timber' | 'sheet' = 'timber',
) =>
  input(
    pieceOf([
      part('leg', { size, cuts, kind, material: kind === 'sheet' ? 'birch-plywood' : 'ash-european' }),
    ]),
  );

describe('CHK-5: wood behind', () => {
  const blind = (depth: number) =>
    withCuts([hole({ id: 'bars.1', role: 'bar', at: vec(200, 22, 45), depth, diameter: 16 })]);

  it.each([
    [20, 'pass', 25],
    [43, 'attend', 2],
    [45, 'stop', 0],
  ])('hole %i deep in 45: %s', (depth, severity, left) => {
    const check = only('wood behind', blind(depth), 'CHK-5');
    expect([check.severity, check.figure]).toEqual([severity, left]);
  });

  it('counts what a taper takes off the far side', () => {
    const tapered = withCuts([
      hole({ id: 'pin.1', at: vec(390, 22, 45), depth: 35 }),
      {
        id: 'taper.1',
        by: 'taper',
        stage: { when: 'part' },
        kind: 'taper',
        face: 'back',
        from: 100,
        to: 400,
        amount: 9,
      },
    ]);
    expect(only('wood behind', tapered, 'CHK-5').figure).toBeCloseTo(45 - 35 - 8.7, 9);
  });

  it.each([
    ['face', box(100, 10, 5, 150, 20, 45), 5],
    ['back', box(100, 10, 0, 150, 20, 41), 4],
    ['faceEdge', box(100, 7, 10, 150, 45, 20), 7],
    ['backEdge', box(100, 0, 10, 150, 44, 20), 1],
  ] as const)('measures behind a mortise entered from the %s', (face, b, left) => {
    expect(only('wood behind', withCuts([pocket({ id: 'm.1', face, box: b })]), 'CHK-5').figure).toBe(left);
  });

  it('leaves alone what goes through on purpose', () => {
    const through = withCuts([hole({ id: 'a.1', at: vec(200, 22, 45), depth: 45, through: true })]);
    expect(checksOf('wood behind', through, 'CHK-5')).toEqual([]);
  });
});

describe('CHK-6 and CHK-7: wood beside holes', () => {
  it.each([
    [22, 'pass'],
    [6.5, 'attend'],
    [4, 'stop'],
  ])('a dowel hole of 8 with its centre %f from the edge: %s', (y, severity) => {
    const check = only(
      'wood beside',
      withCuts([hole({ id: 'd.1', role: 'dowel', at: vec(200, y, 45) })]),
      'CHK-6',
    );
    expect(check.severity).toBe(severity);
  });

  const screw = (x: number, y: number, kind: 'timber' | 'sheet') => {
    const base = withCuts(
      [hole({ id: 's.1', role: 'clearance', at: vec(x, y, 18), diameter: 4.5, depth: 18, through: true })],
      [400, 60, 18],
      kind,
    );
    const screws = joint('s', ['leg'], {
      fasteners: [{ item: '4.0 x 40', kind: 'screw', quantity: 1, length: 40, diameter: 4 }],
    });
    return { ...base, piece: { ...base.piece, joints: [screws] } };
  };

  it.each([
    [200, 30, 'timber', 'pass'],
    [200, 5, 'timber', 'attend'],
    [15, 30, 'timber', 'attend'],
    [15, 30, 'sheet', 'pass'],
  ] as const)('a screw of 4 at %i, %i in %s: %s', (x, y, kind, severity) => {
    expect(only('screw edge', screw(x, y, kind), 'CHK-7').severity).toBe(severity);
  });

  it('does not stop a screw on the very edge: it is a remembered rule', () => {
    const check = only('screw edge', screw(200, 0, 'timber'), 'CHK-7');
    expect([check.severity, check.basis]).toEqual(['attend', 'memory']);
  });
});

describe('CHK-8: walls of a mortise', () => {
  it.each([
    [box(100, 17, 15, 160, 28, 45), 'pass'],
    [box(100, 3, 15, 160, 14, 45), 'attend'],
    [box(4, 17, 15, 60, 28, 45), 'attend'],
    [box(7, 17, 15, 60, 28, 45), 'note'],
  ] as const)('%#', (b, severity) => {
    expect(only('mortise walls', withCuts([pocket({ id: 'm.1', box: b })]), 'CHK-8').severity).toBe(severity);
  });
});

describe('CHK-9: cuts that meet', () => {
  // Writing table: legs 42, apron tenons 28 long set back 4, mortises 30 deep on two faces.
  const leg = (deep: number, mitred = false) => {
    const tip = mitred ? { mitredTip: { side: 'low' as const } } : {};
    const cuts = [
      pocket({
        id: 'side.1',
        by: 'side',
        face: 'face',
        box: box(10, 27, 42 - deep, 70, 35, 42),
        mate: { instance: 'side', cut: 'side.1' },
      }),
      pocket({
        id: 'back.1',
        by: 'back',
        face: 'faceEdge',
        box: box(10, 42 - deep, 27, 70, 42, 35),
        mate: { instance: 'back', cut: 'back.1' },
      }),
    ];
    return input(
      pieceOf([
        part('leg', { size: [716, 42, 42], cuts }),
        part('side', { size: [562, 92, 22], cuts: [tenon({ id: 'side.1', length: 28, ...tip })] }),
        part('back', { size: [1192, 92, 22], cuts: [tenon({ id: 'back.1', length: 28, ...tip })] }),
      ]),
    );
  };

  it('finds mortises that meet in one leg, and how deep plain ones may be', () => {
    const check = only('cuts meet', leg(30));
    expect(check.severity).toBe('stop');
    // The other mortise begins 42 - 35 = 7 under the face.
    expect(check.remedy).toBe('Mitre the tenon tips, or keep plain mortises to 6 mm deep.');
  });

  it('passes mitred tips with a note, and mortises that keep apart', () => {
    expect(only('cuts meet', leg(30, true)).severity).toBe('note');
    expect(only('cuts meet', leg(6)).severity).toBe('pass');
  });

  it.each([
    [5, 'stop'],
    [7, 'pass'],
  ])('two dowel holes of 8 side by side, %i apart both ways: %s', (apart, severity) => {
    // Their square boxes overlap at both; round, they are 7.1 and 9.9 apart.
    const pair = [
      hole({ id: 'a.1', role: 'dowel', at: vec(100, 15, 45), depth: 20 }),
      hole({ id: 'b.1', role: 'dowel', at: vec(100 + apart, 15 + apart, 45), depth: 20 }),
    ];
    expect(only('cuts meet', withCuts(pair)).severity).toBe(severity);
  });

  it('leaves alone a peg drilled through the glued joint', () => {
    const pegged = input(
      pieceOf([
        part('leg', {
          size: [700, 45, 45],
          cuts: [
            pocket({ id: 'rail.1', box: box(100, 17, 15, 160, 28, 45) }),
            hole({
              id: 'peg.1',
              face: 'faceEdge',
              at: vec(130, 45, 30),
              direction: vec(0, -1, 0),
              depth: 45,
              through: true,
              stage: { when: 'after', assembly: 'end' },
            }),
          ],
        }),
      ]),
    );
    expect(only('cuts meet', pegged).severity).toBe('pass');
  });
});

describe('CHK-10: screws that come through', () => {
  const screwed = (length: number) => {
    const clearance = hole({
      id: 'fix.1',
      role: 'clearance',
      face: 'back',
      at: vec(20, 30, 0),
      direction: vec(0, 0, 1),
      diameter: 4.5,
      depth: 20,
      through: true,
    });
    const fix = joint('fix', ['batten', 'top'], {
      fasteners: [{ item: `4.0 x ${length}`, kind: 'screw', quantity: 1, length, diameter: 4 }],
    });
    return input(
      pieceOf(
        [
          part('batten', { size: [300, 60, 20], cuts: [clearance] }),
          part('top', {
            size: [300, 400, 24],
            frame: { origin: vec(0, 0, 20), x: vec(1, 0, 0), y: vec(0, 1, 0), z: vec(0, 0, 1) },
          }),
        ],
        [fix],
      ),
    );
  };

  it.each([
    [40, 'pass'],
    [42, 'attend'],
    [45, 'stop'],
  ])('%i through 20 into 24: %s', (length, severity) => {
    const check = only('screw length', screwed(length));
    expect([check.severity, check.figure, check.limit]).toEqual([severity, length, 41]);
    expect(sentence(check)).toBe(`${length} through batten and top; the longest that stays inside is 41.`);
  });

  it('counts from the floor of a counterbore', () => {
    const { piece, ...rest } = screwed(40);
    const batten = piece.instances[0]!;
    const bore = hole({
      ...(batten.cuts[0] as HoleCut),
      id: 'fix.2',
      role: 'plain',
      diameter: 10,
      depth: 5,
      through: false,
    });
    const bored = {
      ...rest,
      piece: { ...piece, instances: [{ ...batten, cuts: [...batten.cuts, bore] }, piece.instances[1]!] },
    };
    const check = only('screw length', bored);
    expect([check.severity, check.limit]).toEqual(['stop', 36]);
  });
});
