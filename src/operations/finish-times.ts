import type { FinishFamily } from '../reference/finish-row.ts';
import { finishProduct } from '../reference/finishes.ts';
import type { Band } from '../reference/sourced.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { Wait } from './times.ts';

/** Times of one finish: the workshop's own figures first, then the tables. */
export interface ProductTimes {
  name: string;
  /** Row of the time table that speaks of laying it on. */
  work: string;
  recoat?: Wait;
  /** From the coat until the next is too late without abrading. */
  within?: Wait;
  cure?: Wait;
  ragsHeat: boolean;
  cautions: string[];
}

const WORK: Record<FinishFamily, string> = {
  oil: 'coat-oil',
  'hardwax oil': 'coat-hardwax-oil',
  wax: 'coat-wax',
  soap: 'coat-soap',
  shellac: 'coat-shellac',
  'oil varnish': 'coat-varnish',
  'water-based': 'coat-varnish',
  nitrocellulose: 'coat-spray',
  'acid-catalysed': 'coat-spray',
  'two-pack polyurethane': 'coat-spray',
  'water stain': 'coat-stain',
  'spirit dye': 'coat-stain',
  'oil stain': 'coat-stain',
  ink: 'coat-ink',
  filler: 'coat-stain',
  'metal lacquer': 'coat-metal',
  patina: 'coat-metal',
  epoxy: 'seal-end-grain',
};

/**
 * Recoat waits take the longest that a source gives, since a coat too soon spoils the work; hardening takes
 * the least ("a week at least"). Where the longest wait would shut the recoat window it is the least.
 * Undefined for an unknown product.
 */
export function productTimes(workshop: Workshop, product: string): ProductTimes | undefined {
  const own = workshop.finishes[product];
  const table = finishProduct(own?.like ?? product);
  if (!own && !table) return undefined;
  const workshops = (minutes: number | undefined): Wait | undefined =>
    minutes === undefined
      ? undefined
      : { minutes, text: `workshop: ${own?.name ?? product}`, basis: 'workshop' };
  const within = workshops(own?.recoatWithinMinutes) ?? ofBand(table?.recoatWithinMinutes, 'low');
  const longest = ofBand(table?.recoatMinutes ?? table?.touchDryMinutes, 'high');
  const fits = !within || !longest || longest.minutes < within.minutes;
  const recoat =
    workshops(own?.recoatMinutes) ??
    (fits ? longest : ofBand(table?.recoatMinutes ?? table?.touchDryMinutes, 'low'));
  const cure = workshops(own?.cureMinutes) ?? ofBand(table?.cureMinutes ?? table?.useMinutes, 'low');
  return {
    name: own?.name ?? table?.name ?? product,
    work: table ? WORK[table.family] : 'coat-varnish',
    ...(recoat ? { recoat } : {}),
    ...(within ? { within } : {}),
    ...(cure ? { cure } : {}),
    ragsHeat: table?.hazards.includes('rags heat and take fire') ?? false,
    cautions: (table?.hazards ?? []).filter(h => h !== 'rags heat and take fire').map(h => HAZARDS[h]),
  };
}

const HAZARDS = {
  'flammable vapour': 'Flammable vapour: no flame, no sparks, open the doors',
  isocyanate: 'Isocyanate: air-fed mask, nobody else in the room',
  'formaldehyde in cure': 'Gives off formaldehyde as it hardens: air the room',
  sensitiser: 'Sensitises skin: gloves',
} as const;

const ofBand = (band: Band | undefined, end: 'low' | 'high'): Wait | undefined =>
  band && { minutes: band[end], text: band.source, basis: band.basis };
