import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, box, boxToWorld, corners } from '../../src/geometry/box.ts';
import { build, overlaps } from './build.ts';

const ply = { material: 'birch-plywood', thickness: 18 };
const veneer = { material: 'oak-european', thickness: 0.6 };
const shelf = {
  along: 'right',
  facing: 'up',
  at: { left: 100, front: 20, bottom: 300 },
  length: 600,
  width: 250,
  core: ply,
};
const round = (v: number): number => Math.round(v * 1000) / 1000;

/** Extents of everything made, in the world. */
function extents(made: ReturnType<typeof build>) {
  const all = made.piece.instances.flatMap(i =>
    corners(boxToWorld(i.frame, box(0, 0, 0, i.size.length, i.size.width, i.size.thickness))),
  );
  const { min, max } = boundsOf(all);
  return { min: [min.x, min.y, min.z].map(round), max: [max.x, max.y, max.z].map(round) };
}

describe('made-up panels', () => {
  it('a lipping makes the core smaller, and the whole keeps its size', () => {
    const lipping = { material: 'oak-european', thickness: 8, edges: ['front', 'left', 'right'] };
    const made = build({ panels: { s: { ...shelf, lipping } } });
    expect(made.said).toEqual([]);
    expect(made.size('s_core')).toMatchObject({ length: 584, width: 242, thickness: 18 });
    expect(made.size('s_lip_front')).toMatchObject({ length: 600, width: 18, thickness: 8 });
    expect(made.size('s_lip_left')).toMatchObject({ length: 242 });
    expect(extents(made)).toEqual({ min: [100, 20, 300], max: [700, 270, 318] });
  });

  it.each(['before faces', 'after faces'])(
    'lipped %s: the whole keeps its size and nothing shares room',
    async when => {
      const made = build({
        panels: {
          s: {
            ...shelf,
            faces: { face: veneer, back: veneer, glue_line: 0.1 },
            lipping: { material: 'oak-european', thickness: 8, edges: ['front', 'back', 'left'], when },
          },
        },
      });
      expect(made.said).toEqual([]);
      expect(await overlaps(made)).toEqual([]);
      const { min, max } = extents(made);
      // The glue lines are reckoned in the build-up and have no body of their own.
      expect([min[0], min[1], max[0], max[1]]).toEqual([100, 20, 700, 270]);
      expect(made.book.number('parameters.s_build_up')).toBeCloseTo(18 + 2 * 0.7, 9);
      const face = made.size('s_face');
      expect([face.length, face.width]).toEqual(when === 'before faces' ? [600, 250] : [592, 234]);
      expect(made.size('s_lip_front').width).toBeCloseTo(when === 'before faces' ? 18 : 19.4, 9);
    },
  );

  it('the build-up follows the core as measured, not as ordered', () => {
    const job = { panels: { s: { ...shelf, faces: { face: veneer, back: veneer, glue_line: 0.1 } } } };
    const made = build({ ...job, measured: { s_core: { thickness: 17.4 } } });
    expect(made.said).toEqual([]);
    expect(made.book.number('parameters.s_build_up')).toBeCloseTo(17.4 + 1.4, 9);
  });

  it('mirrored twice, each of the four copies is glued up', () => {
    const lipping = { material: 'oak-european', thickness: 8, edges: ['front'] };
    const made = build({ panels: { s: { ...shelf, lipping, mirror: { x: 900, z: 600 } } } });
    expect(made.said).toEqual([]);
    const glued = made.piece.assemblies.filter(a => a.id !== 'whole');
    expect(glued.map(a => [a.id, [...a.instances].sort()])).toEqual(
      ['', '_x', '_z', '_xz'].map(c => [`s${c}`, [`s_core${c}`, `s_lip_front${c}`]]),
    );
  });

  it('a lipping on the face of the panel is refused, not forgotten', () => {
    const lipping = { material: 'oak-european', thickness: 8, edges: ['top', 'front'] };
    const made = build({ panels: { s: { ...shelf, lipping } } });
    expect(made.said).toEqual(['panels.s.lipping.edges: top is a face of the panel and no edge of it']);
    expect(made.size('s_lip_front').length).toBe(600);
  });

  it('one face alone is bonded one-sided, which the bow check reads', () => {
    const made = build({
      panels: { s: { ...shelf, faces: { face: { material: 'brass', thickness: 0.9 } } } },
    });
    expect(made.piece.joints.map(j => j.bond?.bothFaces)).toEqual([false]);
    const both = build({ panels: { s: { ...shelf, faces: { face: veneer, back: veneer } } } });
    expect(both.piece.joints.map(j => j.bond?.bothFaces)).toEqual([true, true]);
  });

  it('lying and standing any way, with any edges lipped, the whole is as big as asked', async () => {
    const ways = [
      ['right', 'up', ['left', 'right', 'front', 'back']],
      ['right', 'down', ['left', 'right', 'front', 'back']],
      ['up', 'front', ['left', 'right', 'bottom', 'top']],
      ['up', 'left', ['front', 'back', 'bottom', 'top']],
      ['back', 'right', ['front', 'back', 'bottom', 'top']],
      ['right', 'back', ['left', 'right', 'bottom', 'top']],
    ] as const;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...ways).chain(([along, facing, edges]) =>
          fc.record({
            along: fc.constant(along),
            facing: fc.constant(facing),
            edges: fc.subarray([...edges], { minLength: 1 }),
          }),
        ),
        fc.constantFrom('before faces', 'after faces'),
        fc.constantFrom({}, { face: veneer, back: veneer }, { face: veneer }),
        async ({ along, facing, edges }, when, faces) => {
          const made = build({
            panels: {
              s: {
                ...{ along, facing, length: 500, width: 300, core: ply, faces },
                at: { left: 10, front: 20, bottom: 30 },
                lipping: { material: 'oak-european', thickness: 5, edges, when },
              },
            },
          });
          expect(made.said).toEqual([]);
          expect(await overlaps(made)).toEqual([]);
          const { min, max } = extents(made);
          const spans = max.map((v, k) => round(v - min[k]!)).sort((a, b) => a - b);
          const thick = 18 + Object.keys(faces).length * 0.6;
          expect(spans).toEqual([round(thick), 300, 500]);
          expect(min).toEqual([10, 20, 30]);
        },
      ),
      { seed: 9, numRuns: 30 },
    );
  });
});
