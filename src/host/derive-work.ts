import { deriveJob } from '../job/derive.ts';
import type { JsonObject } from '../job/edits.ts';
import { checkJobDocument, checkWorkshopDocument } from '../job-file/read.ts';
import type { Derived } from '../results/derived.ts';
import type { Fault } from '../results/fault.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import type { Workshop } from '../workshop/workshop.ts';

export interface DeriveInput {
  /** As the store holds them; they may be half written. */
  job: JsonObject;
  workshop: JsonObject;
  /** ISO date: the start of work where the job names none. */
  today: string;
}

export interface DerivedJob {
  document: JobDocument;
  workshop: Workshop;
  derived: Derived;
}

/** What the server asks of its worker. */
export const DERIVE_WORK = {
  derive: ({ job, workshop, today }: DeriveInput): DerivedJob | { faults: Fault[] } => {
    const read = checkJobDocument(job);
    const shop = checkWorkshopDocument(workshop);
    if (!read.document || !shop.workshop) return { faults: [...read.faults, ...shop.faults] };
    const { derived } = deriveJob(read.document, shop.workshop, { today });
    const faults = [...read.faults, ...shop.faults.map(one => ({ ...one, place: `workshop.${one.place}` }))];
    return {
      document: read.document,
      workshop: shop.workshop,
      derived: { ...derived, faults: [...faults, ...derived.faults] },
    };
  },
};
