import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import { prove } from '../../src/proof/prove.ts';
import { unsound } from '../../src/setting-out/sound-cuts.ts';
import { pieceOf } from '../setting-out/piece.ts';
import { PIECES } from './pieces/index.ts';

/**
 * Whatever a maker types for one or two figures of a joint, and chooses of its kinds, it is either refused in words or cut soundly: every cut
 * inside its part, and no two parts in one place.
 */
const measured = (type: string) =>
  JOINT_CATALOGUE.get(type)!.figures.filter(f => f.kind === 'length' || f.kind === 'count');
const TYPES = Object.keys(PIECES).filter(type => measured(type).length > 0);

describe.each(TYPES)('%s with figures at random', type => {
  const figures = measured(type);
  const sample = PIECES[type]!(20);
  const usual = pieceOf({ parts: sample.parts, joints: { j: { type, from: 'from', into: 'into' } } });
  const value = (name: string, factor: number): number => {
    const was = usual.book.number(`joints.j.${name}`) ?? 0;
    const kind = figures.find(f => f.name === name)!.kind;
    const wanted = was === 0 ? 12 * factor : was * factor;
    return kind === 'count' ? Math.max(1, Math.round(wanted)) : Math.round(wanted * 10) / 10;
  };
  const one = fc.tuple(
    fc.constantFrom(...figures.map(f => f.name)),
    fc.double({ min: 0, max: 4, noNaN: true }),
  );

  const choices = JOINT_CATALOGUE.get(type)!.figures.filter(f => f.choices);
  const chosen = fc.record(Object.fromEntries(choices.map(f => [f.name, fc.constantFrom(...f.choices!)])), {
    requiredKeys: [],
  });

  test('is refused, or sound and apart', async () => {
    const kernel = await loadMeshKernel();
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 2 }), chosen, (typed, words) => {
        const set = {
          ...sample.set,
          ...words,
          ...Object.fromEntries(typed.map(([name, f]) => [name, value(name, f)])),
        };
        const { said, piece } = pieceOf({
          parts: sample.parts,
          joints: { j: { type, from: 'from', into: 'into', set } },
        });
        if (said.length > 0) return;
        const wrong = piece.instances.flatMap(i =>
          i.cuts.flatMap(c => {
            const fault = unsound(c, i.size);
            return fault ? [`${i.id}: ${fault.fault}`] : [];
          }),
        );
        expect([set, wrong]).toEqual([set, []]);
        expect([set, prove({ piece }, kernel).overlaps]).toEqual([set, []]);
      }),
      { numRuns: 40, seed: 1901 },
    );
  });
});
