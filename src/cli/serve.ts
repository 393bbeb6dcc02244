import { join } from 'node:path';
import type { JsonObject } from '../job/edits.ts';
import { migrateJob } from '../job-file/migrate.ts';
import { readJobFile, readWorkshopFile } from '../job-file/read.ts';
import { writeJobFile, writeWorkshopFile } from '../job-file/write.ts';
import { readText } from '../job-file/yaml.ts';
import { referenceVersion } from '../reference/version.ts';
import type { Fault } from '../results/fault.ts';
import type { FileForm } from '../server/parts.ts';
import { DEFAULT_PORT, startServer } from '../server/start.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import { StoreRefusal } from '../store/refusal.ts';
import type { WorkshopDocument } from '../workshop/schema.ts';
import { CannotRun } from './load.ts';
import { serverPapers } from './server-papers.ts';
import { today } from './today.ts';

export interface ServeOptions {
  data?: string;
  port?: string;
  root: string;
  programVersion: string;
}

const jobFile: FileForm = {
  read: text => asEntered(text, readJobFile(text), migrateJob),
  write: document => writeJobFile(document as unknown as JobDocument),
};
const workshopFile: FileForm = {
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

/** Starts the server and prints where it is; ends cleanly on interrupt. */
export async function serve(options: ServeOptions): Promise<void> {
  const port = options.port === undefined ? DEFAULT_PORT : Number(options.port);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new CannotRun([
      { place: '--port', fault: `${options.port} is not a port`, mend: 'give a number from 0 to 65535' },
    ]);
  try {
    const running = await startServer({
      ...(options.data === undefined ? {} : { data: options.data }),
      port,
      programVersion: options.programVersion,
      tablesHash: referenceVersion(),
      jobFile,
      workshopFile,
      papers: serverPapers(options.programVersion, today),
      examplesFolder: join(options.root, 'examples'),
      officeFolder: join(options.root, 'dist/office'),
      log: line => process.stdout.write(`${line}\n`),
    });
    process.stdout.write(`Drawing office  ${running.address}\n`);
    process.stdout.write(`Data folder     ${running.store.folder}\n`);
    const end = async (): Promise<void> => {
      await running.close();
      process.exit(0);
    };
    process.once('SIGINT', () => void end());
    process.once('SIGTERM', () => void end());
  } catch (error) {
    if (error instanceof StoreRefusal)
      throw new CannotRun([{ place: error.place, fault: error.message, mend: error.mend }]);
    throw error;
  }
}
