import type { JsonObject } from './edits.ts';
import type { Change } from './edits-changes.ts';
import { diffDocuments } from './edits-changes.ts';

/** A setting-out as it stood when it was named: frozen, numbered from 1 within its job. */
export interface Revision {
  number: number;
  name: string;
  note: string;
  /** ISO 8601 instant. */
  at: string;
  /** Version of the document it was taken from. */
  version: number;
  document: JsonObject;
}

/** The setting-out being worked on has the number after the last frozen one. */
export const settingOutNumber = (frozen: readonly Pick<Revision, 'number'>[]): number =>
  frozen.reduce((most, revision) => Math.max(most, revision.number), 0) + 1;

/** What has changed since the revision was frozen. */
export const changesSince = (revision: Revision, now: JsonObject): Change[] =>
  diffDocuments(revision.document, now);
