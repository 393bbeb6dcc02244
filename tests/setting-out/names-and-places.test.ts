import { describe, expect, test } from 'vitest';
import { pieceOf, timber } from './piece.ts';

const stick = (over: object = {}) =>
  timber({ length: 100, width: 20, thickness: 20, at: { left: 0, front: 0, bottom: 0 }, ...over });

describe('ids', () => {
  test('a part called like the mirrored copy of another is told, and ids stay apart', () => {
    const made = pieceOf({ parts: { leg: stick({ mirror: { x: 100 } }), leg_x: stick({ length: 50 }) } });
    expect(made.said).toEqual(['parts.leg_x: a copy of leg is called leg_x too']);
    expect(made.piece.instances.map(i => [i.id, i.size.length])).toEqual([
      ['leg', 100],
      ['leg_x', 50],
    ]);
  });

  test('a mirrored copy of rail_2 is found though there is a rail', () => {
    const made = pieceOf({
      parts: { rail: stick(), rail_2: stick({ at: { left: 0, front: 200, bottom: 0 }, mirror: { x: 100 } }) },
      features: { h: { type: 'hole', on: 'rail_2_x', face: 'top', along: 10, diameter: 5 } },
    });
    expect(made.said).toEqual([]);
    expect(made.instance('rail_2_x').cuts).toHaveLength(1);
  });

  test('every place that names a copy beyond the count says so', () => {
    const made = pieceOf({
      parameters: { far: 'slat_4.left' },
      parts: {
        slat: stick({ repeat: { count: 2, along: 'y', step: 40 } }),
        rail: stick({ along: 'back', length: 300, at: { left: 100, front: 0, bottom: 0 } }),
      },
      joints: {
        listed: { type: 'mortise-and-tenon', from: 'slat', into: 'rail', pair: [['slat_5', 'rail']] },
        named: { type: 'mortise-and-tenon', from: 'slat_6', into: 'rail' },
      },
      measured: { slat_7: { width: 19 } },
      assemblies: { a: { parts: ['slat_8', 'rail'] } },
      finishes: { f: { on: ['slat_9'], steps: {} } },
    });
    for (const place of [
      'parameters.far',
      'joints.listed.pair',
      'joints.named.from',
      'measured.slat_7',
      'assemblies.a.parts',
      'finishes.f.on',
    ])
      expect(made.said.filter(s => s.startsWith(`${place}:`))).toHaveLength(1);
    expect(made.said).toHaveLength(6);
    expect(made.instance('rail').cuts).toEqual([]);
  });
});

describe('places', () => {
  test('left, right and a length that do not agree are told, and none is silently left aside', () => {
    const made = pieceOf({
      parts: {
        wrong: stick({ length: 400, at: { left: 0, right: 500, front: 0, bottom: 0 } }),
        right: stick({ length: 500, at: { left: 0, right: 500, front: 0, bottom: 0 } }),
        middle: stick({ length: 400, at: { left: 0, centre_x: 500, front: 0, bottom: 0 } }),
      },
    });
    expect(made.said).toEqual([
      'parts.wrong.at.right: left and right are 500 mm apart, the length is 400 mm',
      'parts.middle.at.centre_x: centre_x is 500 mm, the middle of left and right 200 mm',
    ]);
  });

  test('a limit is told in the unit of the file', () => {
    const made = pieceOf({ units: 'in', parameters: { w: { value: 30, max: '20 1/2' } } });
    expect(made.said).toEqual(['parameters.w: 30 in is over the most, 20 1/2 in']);
  });

  test('a choice may hold brackets and question marks', () => {
    const w = { value: 'Oak (quartered?)', choices: ['Oak (quartered?)', 'Ash'], kind: 'choice' };
    expect(pieceOf({ parameters: { w } }).said).toEqual([]);
  });

  test('measured sizes of nothing and allowances below nothing are told where they stand', () => {
    const made = pieceOf({
      parts: { a: stick({ allowance: { width: -2 } }) },
      measured: { a: { width: -3, thickness: 0 } },
      allowances: { timber: { length: -1000 } },
    });
    expect(made.said.map(s => s.split(':')[0]).sort()).toEqual([
      'allowances.timber.length',
      'measured.a.thickness',
      'measured.a.width',
      'parts.a.allowance.width',
    ]);
    expect(made.piece.groups[0]!.blank).toEqual({ length: 100, width: 20, thickness: 20 });
  });
});

describe('the cap on pieces', () => {
  test('hands count: 400 copies in 8 hands are refused', () => {
    const made = pieceOf({
      parts: {
        a: stick({ repeat: { count: 400, along: 'x', step: 5 }, mirror: { x: -10, y: -10, z: -10 } }),
      },
    });
    expect(made.said[0]).toMatch(/400 copies, each in 8 hands, are more than can be set out \(250 here\)/);
    expect(made.piece.instances).toHaveLength(8);
  });

  test('parts beyond the cap are left out and told once', () => {
    const parts = Object.fromEntries(
      Array.from({ length: 2100 }, (_, i) => [
        `p${i}`,
        { kind: 'timber', length: 10, width: 5, thickness: 5 },
      ]),
    );
    const made = pieceOf({ parts });
    expect(made.piece.instances).toHaveLength(2000);
    expect(made.said).toEqual(['parts: there are more than 2000 pieces in all']);
  });
});
