import { screw, WOOD_SCREWS, type WoodScrew } from '../reference/screws.ts';
import { timberSpecies } from '../reference/timber-species.ts';

/** Wood screws as joints choose them: size, length sold, counterbore and pilot, mm. */

/** Bits that a shop has for sinking heads, mm. */
const COUNTERBORES = [8, 10, 12, 15, 16, 20];
export const counterbore = (head: number): number => COUNTERBORES.find(d => d >= head + 0.5) ?? head + 1;

const METRIC = WOOD_SCREWS.rows.filter(s => /^\d/.test(s.key));

/** About a quarter of the thinner part: what a maker reaches for. */
export function usualSize(thinner: number): string {
  const wanted = Math.min(5, Math.max(3.5, thinner / 5));
  return METRIC.reduce((a, b) => (Math.abs(b.shankMm - wanted) < Math.abs(a.shankMm - wanted) ? b : a)).key;
}

export const known = (size: string): WoodScrew => screw(size) ?? screw('4.0')!;

const sold = (s: WoodScrew): readonly number[] =>
  s.lengthsMm.length > 0 ? s.lengthsMm : known('4.0').lengthsMm;

/** The longest length sold that is no more than wanted; the shortest when none is. */
export const soldLength = (s: WoodScrew, wanted: number): number =>
  Math.max(Math.min(...sold(s)), ...sold(s).filter(l => l <= wanted));

/** The mend for a screw that comes through: a shorter one, if one is sold. */
export function shorter(s: WoodScrew, room: number): string {
  const length = soldLength(s, room);
  return length <= room
    ? `use ${length} mm`
    : `the shortest sold is ${length} mm: sink the head less, or use thicker wood`;
}

export const isHard = (material: string): boolean => timberSpecies(material)?.kind !== 'softwood';

/** Hole for the thread in the timber that holds it, mm. */
export const pilotFor = (s: WoodScrew, material: string): number =>
  isHard(material) ? s.pilotHardwoodMm.high : (s.pilotSoftwoodMm?.high ?? s.pilotHardwoodMm.low);
