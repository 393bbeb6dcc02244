import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Cut } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Piece } from '../../src/results/piece.ts';
import { seeded } from '../../src/setups/ordering/random.ts';
import { hole, operation, part, pieceOf, pocket, tenon } from './fixtures.ts';

/** A random job: parts of like and unlike sections with every kind of cut, and operations over them. */
export function randomJob(seed: number): { piece: Piece; operations: Operation[] } {
  const random = seeded(seed);
  const pick = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const instances = Array.from({ length: pick(1, 14) }, (_, i) => {
    const length = pick(12, 90) * 10;
    const width = pick(30, 120);
    const thickness = pick(12, 45);
    const cuts: Cut[] = [];
    const centre = (thickness - 8) / 2;
    if (random() < 0.5)
      cuts.push(
        tenon('t1', { length: pick(15, 60), z: { low: centre, high: random() < 0.5 ? centre : centre / 2 } }),
      );
    if (random() < 0.3)
      cuts.push(
        pocket('mortise', 'm', box(60, width - 25, centre, 90, width, centre + 8), {
          face: 'faceEdge',
          corner: random() < 0.5 ? 'square' : 'round',
        }),
      );
    if (random() < 0.3)
      cuts.push(pocket('groove', 'g', box(0, 0, centre, length, 8, centre + 6), { face: 'backEdge' }));
    if (random() < 0.3)
      cuts.push(pocket('rebate', 'r', box(0, width - 9, 0, length, width, 6), { face: 'back' }));
    if (random() < 0.3)
      cuts.push(
        pocket('housing', 'h', box(100, 0, thickness - 6, 100 + pick(6, 30), width, thickness), { run: 'y' }),
      );
    if (random() < 0.4)
      cuts.push(
        hole('h1', {
          at: vec(pick(10, 100), width / 2, thickness),
          diameter: [4, 5, 6, 8, 16, 7.7][pick(0, 5)]!,
        }),
      );
    if (random() < 0.2)
      cuts.push({
        kind: 'end-cut',
        id: 'e',
        by: 'e',
        stage: ON_PART,
        end: 'end2',
        mitre: [0, 30, 45][pick(0, 2)]!,
        bevel: 0,
      });
    if (random() < 0.2)
      cuts.push({
        kind: 'chamfer',
        id: 'c',
        by: 'c',
        stage: ON_PART,
        edges: [{ a: 'face', b: 'faceEdge' }],
        size: 3,
      });
    return part(`p${i}`, [length, width, thickness], cuts);
  });
  const operations: Operation[] = [];
  for (const instance of instances)
    for (const cut of instance.cuts) {
      const after = operations.filter(() => random() < 0.12).map(o => o.id);
      operations.push(operation(`${instance.id}.${cut.id}`, [[instance.id, cut.id]], after));
    }
  return { piece: pieceOf(instances), operations };
}
