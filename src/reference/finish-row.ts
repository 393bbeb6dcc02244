import type { Keyed } from './keys.ts';
import type { Band, Trait } from './sourced.ts';

/** What a finish is to the one that goes over or under it. */
export type FinishFamily =
  | 'oil'
  | 'hardwax oil'
  | 'wax'
  | 'soap'
  | 'shellac'
  | 'oil varnish'
  | 'water-based'
  | 'nitrocellulose'
  | 'acid-catalysed'
  | 'two-pack polyurethane'
  | 'water stain'
  | 'spirit dye'
  | 'oil stain'
  | 'ink'
  | 'filler'
  | 'metal lacquer'
  | 'patina'
  | 'epoxy';

export type FinishHazard =
  | 'rags heat and take fire'
  | 'flammable vapour'
  | 'isocyanate'
  | 'formaldehyde in cure'
  | 'sensitiser';

export interface FinishProduct extends Keyed {
  readonly name: string;
  readonly family: FinishFamily;
  /** What it goes on. */
  readonly on: 'timber' | 'metal';
  /** m2 a litre and coat. */
  readonly spreadM2PerL?: Band;
  readonly spreadM2PerKg?: Band;
  readonly coats?: Band;
  /** Wait before the surplus is wiped off. */
  readonly wipeMinutes?: Band;
  readonly touchDryMinutes?: Band;
  /** Wait before the next coat. */
  readonly recoatMinutes?: Band;
  /** The next coat goes on within this, or the surface is abraded first. */
  readonly recoatWithinMinutes?: Band;
  /** Wait for light use. */
  readonly useMinutes?: Band;
  /** Until it is through hard: before wrapping, stacking, water. */
  readonly cureMinutes?: Band;
  readonly minTemperatureC?: Band;
  readonly potLifeMinutes?: Band;
  readonly flashPointC?: Band;
  readonly vocGPerL?: Band;
  /** Last sanding grit before it. */
  readonly lastGrit?: Band;
  readonly hazards: readonly FinishHazard[];
  readonly remarks: readonly Trait[];
}

export const HOUR = 60;
export const DAY = 24 * 60;
