import { timberSpecies } from '../reference/timber-species.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import { equilibriumMoisture, siteMoisture } from '../timber/moisture.ts';
import { movementCoefficient } from '../timber/movement.ts';

/** Moisture at making where the job says none: air of 20 degrees and 50 %, a heated workshop. */
const BENCH = equilibriumMoisture(20, 50);

/**
 * How much of its width a solid board of this timber grows from the bench to the dampest of its room, as a
 * share (C times the change of moisture). 0 for boards, unknown timbers and where no room is told.
 */
export function growth(material: string, document: JobDocument): number {
  const species = timberSpecies(material);
  const coefficient = species && movementCoefficient(species, 'flat-sawn');
  const { humidity, temperature } = document.site ?? {};
  if (!coefficient || !humidity) return 0;
  const damp = siteMoisture({ humidity, temperature: temperature ?? { low: 18, high: 22 } }).high;
  return Math.max(0, coefficient.high * (damp - (document.moisture ?? BENCH)));
}
