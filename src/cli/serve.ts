import { join } from 'node:path';
import { referenceVersion } from '../reference/version.ts';
import { jobFile, workshopFile } from '../server/forms.ts';
import { DEFAULT_PORT, startServer } from '../server/start.ts';
import { StoreRefusal } from '../store/refusal.ts';
import { CannotRun } from './load.ts';
import { serverPapers } from './server-papers.ts';
import { today } from './today.ts';

export interface ServeOptions {
  data?: string;
  port?: string;
  root: string;
  programVersion: string;
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
