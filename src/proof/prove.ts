import { type Box, box, boxToWorld, intersectBoxes } from '../geometry/box.ts';
import type { Derived } from '../results/derived.ts';
import type { SolidKernel } from '../results/kernel.ts';
import type { Instance } from '../results/piece.ts';
import type { Progress } from '../results/solver.ts';
import { hasShape, SolidCache } from '../solids/shapes.ts';
import { type Fit, fitsOf } from './fits.ts';

/** What the second tier found out about a derived job. */
export interface Proved {
  /** Volume of each part after all cuts, mm3, by the kernel. */
  volumes: Record<string, number>;
  /** Pairs of parts that share room they should not. */
  overlaps: Overlap[];
  /** The play of mating cuts, as stated and as found on the solids. */
  fits: Fit[];
  /** Pairs whose boxes meet and which were looked at. */
  pairs: number;
  kernel: string;
  /** False when it was stopped before the end: what is missing is not known, never passed. */
  complete: boolean;
}

export interface Overlap {
  a: string;
  b: string;
  /** mm3 */
  volume: number;
}

/** Below this two solids only touch: the kernel's facets and the play of cuts drawn past a face. */
const TOUCHING = 2;

/**
 * Makes every solid and measures what mating parts share (design, section 6). Solids are re-used by content.
 * Stops early when the signal says so and then says that it is not complete.
 */
export function prove(
  derived: Pick<Derived, 'piece'>,
  kernel: SolidKernel,
  options: { cache?: SolidCache; signal?: AbortSignal; progress?: Progress } = {},
): Proved {
  const cache = options.cache ?? new SolidCache(kernel);
  const shaped = derived.piece.instances.filter(hasShape);
  const volumes: Record<string, number> = {};
  // Looked up once: a key is the whole description of a part.
  const solids = new Map(shaped.map(i => [i.id, cache.of(i)]));
  for (const [id, solid] of solids) volumes[id] = solid.volume();
  const pairs = meeting(shaped.filter(i => !i.loose));
  const overlaps: Overlap[] = [];
  let done = 0;
  let complete = true;
  for (const [a, b] of pairs) {
    if (options.signal?.aborted) {
      complete = false;
      break;
    }
    const volume = kernel.shared(solids.get(a.id)!, a.frame, solids.get(b.id)!, b.frame);
    if (volume > TOUCHING) overlaps.push({ a: a.id, b: b.id, volume });
    options.progress?.(++done, pairs.length, overlaps.length);
  }
  const fits = complete ? fitsOf(derived.piece, cache) : [];
  cache.keep(derived.piece.instances);
  if (!options.cache) cache.keep([]);
  return { volumes, overlaps, fits, pairs: pairs.length, kernel: kernel.name, complete };
}

const worldBox = (i: Instance): Box =>
  boxToWorld(i.frame, box(0, 0, 0, i.size.length, i.size.width, i.size.thickness));

function meeting(instances: Instance[]): [Instance, Instance][] {
  const boxes = instances.map(worldBox);
  return instances.flatMap((a, i) =>
    instances
      .slice(i + 1)
      .flatMap((b, k): [Instance, Instance][] =>
        intersectBoxes(boxes[i]!, boxes[i + 1 + k]!) ? [[a, b]] : [],
      ),
  );
}
