import { describe, expect, it } from 'vitest';
import type { JointMade } from '../../src/results/piece.ts';
import { siteMoisture } from '../../src/timber/moisture.ts';
import { checksOf, commission, input, joint, only, PORCH, part, pieceOf, sentence } from './fixtures.ts';

/** The brass door of the wall cabinet: 0.9 brass on 4 MDF, 294 x 529. */
const brass = (measured?: number) =>
  part('brass', {
    size: [529, 294, 0.9],
    kind: 'sheet',
    material: 'brass-sheet',
    ...(measured === undefined ? {} : { measured: { thickness: measured } }),
  });
const core = part('core', { size: [529, 294, 4], kind: 'sheet', material: 'mdf' });
const bonded = (bond: Partial<NonNullable<JointMade['bond']>>, measured?: number, site = true) =>
  input(
    pieceOf(
      [brass(measured), core],
      [
        joint('facing', ['brass', 'core'], {
          bond: { sheet: 'brass', core: 'core', adhesive: 'epoxy', glueLine: 0.1, bothFaces: true, ...bond },
        }),
      ],
    ),
    site
      ? {
          commission: commission({
            site: {
              ...PORCH,
              name: 'kitchen',
              humidity: { low: 40, high: 65 },
              temperature: { low: 18, high: 22 },
            },
            moistureAtMaking: 9,
          }),
        }
      : {},
  );

describe('CHK-11: recess against sheet and glue line', () => {
  it.each([
    [1.0, 0.9, 'pass'],
    [1.0, 1.02, 'attend'],
    [1.3, 0.9, 'attend'],
    [1.0, undefined, 'unknown'],
  ])('recess %f, sheet measured %s: %s', (recessDepth, measured, severity) => {
    expect(only('recess', bonded({ recessDepth }, measured)).severity).toBe(severity);
  });

  it('offers the depth that fits as an edit', () => {
    const check = only('recess', bonded({ recessDepth: 0.8 }, 1.02));
    expect(check.mend).toEqual({
      parameter: 'joints.facing.recess.depth',
      value: 1.12,
      label: 'Recess 1.12 mm deep',
      edit: { path: ['joints', 'facing', 'set', 'recess.depth'], value: '1.12 mm' },
    });
    expect(check.title).toBe('Brass will stand proud by 0.32 mm');
  });
});

describe('CHK-12: bow of a sheet bonded on one face', () => {
  it('speaks when the brass lies on one face only', () => {
    const check = only('bow', bonded({ bothFaces: false }));
    expect(check.severity).toBe('stop');
    // Timoshenko 1925: k = 6 e (1 + m)^2 / (h (3 (1 + m)^2 + (1 + m n)(m^2 + 1/(m n)))), bow k L^2/8.
    const [t1, t2, e1, e2] = [0.9, 4, 103400, 2300];
    const room = siteMoisture({ humidity: { low: 40, high: 65 }, temperature: { low: 18, high: 22 } });
    const percent = Math.max(room.high - 9, 9 - room.low);
    const strain = 0.0005 * percent + 20.5e-6 * 4;
    const [m, n] = [t1 / t2, e1 / e2];
    const under = 3 * (1 + m) ** 2 + (1 + m * n) * (m * m + 1 / (m * n));
    const curvature = (6 * strain * (1 + m) ** 2) / ((t1 + t2) * under);
    expect(check.figure).toBeCloseTo((curvature * 529 ** 2) / 8, 6);
    expect(sentence(check)).toMatch(/^Brass on one face only: core bows \d+\.?\d? over 529 /);
  });

  it('leaves a sheet let into solid timber to the check of what is held across the grain', () => {
    const { piece, ...rest } = bonded({ bothFaces: false, recessDepth: 1 });
    const oak = { ...piece.instances[1]!, kind: 'timber' as const, material: 'oak-european' };
    const inlaid = { ...rest, piece: { ...piece, instances: [piece.instances[0]!, oak] } };
    expect(checksOf('bow', inlaid)).toEqual([]);
  });

  it('passes both faces, and does not know without a room', () => {
    expect(only('bow', bonded({})).severity).toBe('pass');
    expect(only('bow', bonded({ bothFaces: false }, undefined, false)).severity).toBe('unknown');
  });
});
