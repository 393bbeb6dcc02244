import { type Fault, fault } from '../results/fault.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import { makeDoor } from './door.ts';
import { makeDrawer } from './drawer.ts';
import type { Made } from './made.ts';
import { makePanel } from './panel.ts';

export interface Expanded {
  /** The job with what its builders made beside what the maker wrote himself. */
  document: JobDocument;
  faults: Fault[];
  /** The builder's own place for a place within what it made; other places as they are. */
  placeOf(place: string): string;
}

const COLLECTIONS = ['parameters', 'parts', 'joints', 'features', 'assemblies'] as const;

/**
 * Makes the parts and joints of every drawer and door. What the maker wrote wins nothing: an id that is both
 * built and written is a fault, and the written one is kept.
 */
export function expandBuilders(document: JobDocument): Expanded {
  const built: { place: string; made: Made }[] = [
    ...Object.entries(document.drawers ?? {}).map(([id, d]) => ({
      place: `drawers.${id}`,
      made: makeDrawer(id, d, document),
    })),
    ...Object.entries(document.doors ?? {}).map(([id, d]) => ({
      place: `doors.${id}`,
      made: makeDoor(id, d, document),
    })),
    ...Object.entries(document.panels ?? {}).map(([id, d]) => ({
      place: `panels.${id}`,
      made: makePanel(id, d, document),
    })),
  ];
  if (built.length === 0) return { document, faults: [], placeOf: place => place };
  const faults: Fault[] = [];
  for (const { place, made } of built)
    for (const r of made.refused ?? []) faults.push(fault(`${place}.${r.field}`, r.fault, r.mend));
  const owner = new Map<string, string>();
  const whole: JobDocument = { ...document };
  for (const collection of COLLECTIONS) {
    const all: Record<string, unknown> = { ...document[collection] };
    for (const { place, made } of built)
      for (const [id, entry] of Object.entries(made[collection])) {
        if (Object.hasOwn(all, id)) {
          faults.push(
            fault(
              place,
              `it makes ${id}, and ${id} stands under ${collection} already`,
              'give the other another id',
            ),
          );
          continue;
        }
        all[id] = entry;
        owner.set(`${collection}.${id}`, place);
      }
    Object.assign(whole, { [collection]: all });
  }
  return {
    document: whole,
    faults,
    placeOf: place => owner.get(place.split('.').slice(0, 2).join('.')) ?? place,
  };
}
