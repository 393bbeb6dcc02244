import type { JsonObject } from '../job/edits.ts';
import { migrateJob } from '../job-file/migrate.ts';
import { readJobFile, readWorkshopFile } from '../job-file/read.ts';
import { writeJobFile, writeWorkshopFile } from '../job-file/write.ts';
import { readText } from '../job-file/yaml.ts';
import type { Fault } from '../results/fault.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import type { WorkshopDocument } from '../workshop/schema.ts';
import type { FileForm } from './parts.ts';

export const jobFile: FileForm = {
  read: text => asEntered(text, readJobFile(text), migrateJob),
  write: document => writeJobFile(document as unknown as JobDocument),
};
export const workshopFile: FileForm = {
  read: text => asEntered(text, readWorkshopFile(text), value => ({ value })),
  write: document => writeWorkshopFile(document as unknown as WorkshopDocument),
};

/** A file that opens is kept as it was entered, what is wrong in it too: it is told, not taken away. */
function asEntered(
  text: string,
  { document, faults }: { document?: unknown; faults: Fault[] },
  migrated: (value: Record<string, unknown>) => { value: unknown },
): ReturnType<FileForm['read']> {
  if (!document) return { faults };
  const { value } = migrated(readText(text).value as Record<string, unknown>);
  // Through JSON, as the store keeps it.
  return { document: JSON.parse(JSON.stringify(value)) as JsonObject, faults };
}
