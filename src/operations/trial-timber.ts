import { materialDensity } from '../reference/materials.ts';
import { middle } from '../reference/sourced.ts';
import type { RackItem } from '../workshop/workshop.ts';
import type { PartView, View } from './view.ts';

/** How far a timber for trials may be off the part's own in density: softer or harder it cuts otherwise. */
const LIKE = { low: 0.8, high: 1.25 };

/**
 * Timber of a trial piece: a cheaper one from the rack where it is about as hard and large enough, else the part's
 * own. A joint is tried for its size, not for its looks (common practice).
 * @param length of the trial piece, mm
 */
export function trialTimber({ workshop }: View, part: PartView, length: number): string {
  const { material } = part.first;
  const own = densityOf(material);
  if (part.kind !== 'timber' || own === undefined) return material;
  const mine = workshop.rack.filter(i => i.material === material && i.value > 0).map(worth);
  if (mine.length === 0) return material;
  const cheapest = workshop.rack
    .filter(item => {
      const density = densityOf(item.material);
      return (
        (item.kind === 'board' || item.kind === 'offcut' || item.kind === 'planed length') &&
        item.quantity > 0 &&
        item.value > 0 &&
        worth(item) < Math.min(...mine) &&
        density !== undefined &&
        density >= own * LIKE.low &&
        density <= own * LIKE.high &&
        item.length >= length &&
        item.width >= part.blank.width &&
        (item.measuredThickness ?? item.thickness) >= part.blank.thickness
      );
    })
    .sort((a, b) => worth(a) - worth(b) || (a.id < b.id ? -1 : 1))[0];
  return cheapest?.material ?? material;
}

/** Value by volume, minor units a mm3. */
const worth = (item: RackItem): number => item.value / Math.max(1, item.length * item.width * item.thickness);

/** Middle density of a timber, kg/m3. */
function densityOf(material: string): number | undefined {
  const found = materialDensity(material);
  if (found?.kind !== 'timber') return undefined;
  return typeof found.densityKgM3 === 'number' ? found.densityKgM3 : middle(found.densityKgM3);
}
