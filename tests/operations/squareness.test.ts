import { describe, expect, it } from 'vitest';
import { WORLD } from '../../src/geometry/frame.ts';
import { vec } from '../../src/geometry/vector.ts';
import { planOperations } from '../../src/operations/plan-operations.ts';
import { diagonalMm, outerDiagonalMm, pushInMm } from '../../src/operations/squareness.ts';
import { assembly, byId, commission, copy, joint, piece, shop, size } from './making.ts';

/** Two stiles and two rails of a frame 800 x 600, laid flat. */
const FRAME = [
  copy('stile.1', size(800, 50, 20)),
  copy('stile.2', size(800, 50, 20), [], { frame: { ...WORLD, origin: vec(0, 550, 0) } }),
  copy('rail.1', size(500, 50, 20), [], {
    frame: { origin: vec(50, 50, 0), x: vec(0, 1, 0), y: vec(-1, 0, 0), z: vec(0, 0, 1) },
  }),
  copy('rail.2', size(500, 50, 20), [], {
    frame: { origin: vec(800, 50, 0), x: vec(0, 1, 0), y: vec(-1, 0, 0), z: vec(0, 0, 1) },
  }),
];

describe('squareness', () => {
  it('is told by the diagonals', () => {
    expect(diagonalMm(800, 600)).toBe(1000);
    expect(pushInMm(1003, 997)).toBe(3);
    expect(outerDiagonalMm(FRAME)).toBeCloseTo(1000, 9);
  });

  it('stands on the glue-up of a frame with four corners, and not on fewer', () => {
    const cautions = (corners: number): string => {
      const joints = FRAME.slice(0, 2)
        .flatMap(stile => FRAME.slice(2).map(rail => joint('corner', [rail.id, stile.id])))
        .slice(0, corners);
      const whole = piece(FRAME, joints, [
        assembly(
          'frame',
          FRAME.map(f => f.id),
          joints,
        ),
      ]);
      return byId(planOperations(whole, commission(), shop()).operations, 'glue:frame').cautions.join('\n');
    };
    expect(cautions(4)).toContain('Outer diagonals 1000 mm: push the longer in by half the difference');
    expect(cautions(3)).not.toContain('Outer diagonals');
  });
});
