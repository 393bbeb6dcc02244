import type { JsonObject } from '../job/edits.ts';
import type { Fault } from '../results/fault.ts';
import type { Store } from '../store/store.ts';
import type { Events } from './events.ts';

/** Reads and writes files of one kind. A file with faults may still give a document. */
export interface FileForm {
  read(text: string): { document?: JsonObject; faults: Fault[] };
  write(document: JsonObject): string;
}

export interface Template {
  id: string;
  title: string;
  text: string;
}

/** A paper that can be made from a job: PDF, DXF, CSV, calendar. */
export interface Paper {
  /** As in the address: `pack.pdf`. */
  name: string;
  /** `pack`, `offer`, `invoice`. */
  kind: string;
  title: string;
  mediaType: string;
  make(
    job: JsonObject,
    workshop: JsonObject,
    settingOut: number,
  ): Promise<{ bytes: Uint8Array } | { faults: Fault[] }>;
}

/** What the handlers work with; all of it given by the caller, so tests can give their own. */
export interface ServerParts {
  store: Store;
  events: Events;
  jobFile: FileForm;
  workshopFile: FileForm;
  templates: readonly Template[];
  papers: readonly Paper[];
  programVersion: string;
  tablesHash: string;
  newId: (prefix: string) => string;
}

export const WORKSHOP_ID = 'workshop';
