import { join } from 'node:path';
import type { JsonObject } from '../job/edits.ts';
import { type checkJobDocument, readJobFile, readWorkshopFile } from '../job-file/read.ts';
import { writeJobFile, writeWorkshopFile } from '../job-file/write.ts';
import { referenceVersion } from '../reference/version.ts';
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
  read: text =>
    readJobFile(text) as { document?: JsonObject; faults: ReturnType<typeof checkJobDocument>['faults'] },
  write: document => writeJobFile(document as unknown as JobDocument),
};
const workshopFile: FileForm = {
  read: text =>
    readWorkshopFile(text) as {
      document?: JsonObject;
      faults: ReturnType<typeof checkJobDocument>['faults'];
    },
  write: document => writeWorkshopFile(document as unknown as WorkshopDocument),
};

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
