import { cutShapes } from '../results/cut-shapes.ts';
import type { ExactKernel } from '../results/kernel.ts';
import type { Instance } from '../results/piece.ts';
import { facetError } from '../solids/facet-error.ts';
import { SolidCache } from '../solids/shapes.ts';
import type { Proved } from './prove.ts';

/** Exact solids that only touch share nothing but rounding, mm3. */
const NOTHING = 0.01;

/**
 * Overlaps that the mesh kernel found, measured again with true round faces: what turns out to be facets goes, the
 * rest carries its exact volume. Where the exact solid of a part strays from the meshed one by more than facets
 * can, it is not believed and the mesh kernel's figure stands.
 */
export function confirmOverlaps(proved: Proved, instances: readonly Instance[], exact: ExactKernel): Proved {
  if (proved.overlaps.length === 0) return proved;
  const by = new Map(instances.map(i => [i.id, i]));
  const cache = new SolidCache(exact);
  const believed = (i: Instance): boolean => {
    const most = facetError(
      i,
      i.cuts.flatMap(c => cutShapes(c, i.size)),
    );
    const volume = cache.of(i).volume();
    return Math.abs(volume - (proved.volumes[i.id] ?? volume)) <= most + 1e-6 * volume;
  };
  const overlaps = proved.overlaps.flatMap(o => {
    const [a, b] = [by.get(o.a), by.get(o.b)];
    if (!a || !b || !believed(a) || !believed(b)) return [o];
    const volume = exact.shared(cache.of(a), a.frame, cache.of(b), b.frame);
    return volume > NOTHING ? [{ ...o, volume }] : [];
  });
  cache.keep([]);
  return { ...proved, overlaps, kernel: `${proved.kernel}, ${exact.name}` };
}
