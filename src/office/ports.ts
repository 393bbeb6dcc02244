import { createContext, useContext } from 'react';
import type { DocumentStateAnswer } from '../api/caller.ts';
import type { Answer } from '../api/routes.ts';
import type { LongerLook } from '../cutting/longer-look.ts';
import type { EditOperation, JsonObject } from '../job/edits.ts';
import type { Check } from '../results/checks.ts';
import type { Derived } from '../results/derived.ts';
import type { Fault } from '../results/fault.ts';
import type { Piece } from '../results/piece.ts';
import type { Why } from '../results/why.ts';

import type { Shapes } from './shape-tasks.ts';

/** One line of the list of jobs. */
export type JobLine = Answer<'listJobs'>['jobs'][number];

/** A job as the store keeps it. */
export type JobState = Omit<DocumentStateAnswer, 'document'> & { document: JsonObject };

/** A line of the setting-outs that were kept. */
export type KeptLine = Answer<'listRevisions'>['revisions'][number];

/** A setting-out frozen under a number. */
export interface KeptSettingOut {
  number: number;
  name: string;
  at: string;
  document: JsonObject;
}

/** Why the store would not do it, in words for the maker. */
export class Refusal extends Error {
  /** `away`: the store could not be reached; `stale`: made on an older version; `refused`: it will not do. */
  readonly why: 'away' | 'stale' | 'refused';
  /** With `stale`: the newer job to go on from. */
  readonly state: JobState | undefined;
  constructor(message: string, why: Refusal['why'] = 'refused', state?: JobState) {
    super(message);
    this.why = why;
    this.state = state;
  }
}

/** What the office asks of the server; every answer may be a Refusal. */
export interface OfficeApi {
  jobs(search: string): Promise<{ jobs: JobLine[]; total: number }>;
  templates(): Promise<{ id: string; title: string }[]>;
  /** Answers the new job's id. */
  create(title: string, template?: string): Promise<string>;
  importJob(text: string): Promise<{ id: string; faults: Fault[] }>;
  job(id: string): Promise<JobState>;
  edit(id: string, base: number, operations: readonly EditOperation[]): Promise<JobState>;
  undo(id: string, base: number): Promise<JobState>;
  redo(id: string, base: number): Promise<JobState>;
  /** Freezes the setting-out as it stands under the next number. */
  keep(id: string, name: string): Promise<JobState>;
  /** Setting-outs that were kept, newest first, and one of them whole. */
  keptList(id: string): Promise<readonly KeptLine[]>;
  kept(id: string, number: number): Promise<KeptSettingOut>;
  workshop(): Promise<JsonObject>;
  /** One edit of the workshop as it stands now; answers the workshop after it. */
  editWorkshop(make: (workshop: JsonObject) => readonly EditOperation[]): Promise<JsonObject>;
  /** Tells when a document was changed by another window or device. */
  watch(changed: (id: string, version: number) => void): () => void;
  /** Addresses of a paper of the job and of its file. */
  paper(id: string, name: string): string;
  file(id: string): string;
  /** What is ticked, with the hash of what it was ticked on. */
  ticks(id: string): Promise<Map<string, string>>;
  tick(id: string, subject: string, done: boolean, madeFrom: string): Promise<void>;
}

/** Derives away from the screen's thread. A call that is overtaken by a newer one answers undefined. */
export interface Deriver {
  derive(document: JsonObject, workshop: JsonObject, today: string): Promise<Derived | undefined>;
  /** Of the document derived last. */
  why(figure: string): Promise<Why | undefined>;
  /** Derives another document without touching the first: what the job was like before. */
  compare(document: JsonObject, workshop: JsonObject, today: string): Promise<Derived | undefined>;
  /** What a longer search over the layouts finds, beside the rest; ends when aborted. */
  longer(document: JsonObject, workshop: JsonObject, today: string, signal: AbortSignal): Promise<LongerLook>;
  close(): void;
}

/** Solids of a piece and what they say of each other; away from the screen's thread, after the figures. */
export interface Shaper {
  shapes(piece: Piece): Promise<Shapes | undefined>;
  /** Whether every part can be put in by straight motions; after the shapes. */
  ways(piece: Piece): Promise<Check[] | undefined>;
  close(): void;
}

export interface Ports {
  api: OfficeApi;
  deriver: () => Deriver;
  shaper: () => Shaper;
  /** ISO date of today at the maker's place. */
  today: () => string;
}

const PortsContext = createContext<Ports | undefined>(undefined);
export const PortsProvider = PortsContext.Provider;

export function usePorts(): Ports {
  const ports = useContext(PortsContext);
  if (!ports) throw new Error('the office needs its ports: wrap it in PortsProvider');
  return ports;
}
