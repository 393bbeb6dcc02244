import { stringify } from 'yaml';
import type { JobDocument } from '../setting-out/schema.ts';
import type { WorkshopDocument } from '../workshop/schema.ts';

/** A document as a file: keys in the order they were written, long text folded, quotes only where needed. */
export const writeJobFile = (document: JobDocument): string =>
  stringify(document, { lineWidth: 100, aliasDuplicateObjects: false });
export const writeWorkshopFile = (document: WorkshopDocument): string =>
  stringify(document, { lineWidth: 100, aliasDuplicateObjects: false });
