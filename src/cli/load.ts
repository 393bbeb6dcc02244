import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { type Deriving, deriveJob } from '../job/derive.ts';
import { checkWorkshopDocument, readJobFile, readWorkshopFile } from '../job-file/read.ts';
import type { Fault } from '../results/fault.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import { WORKSHOP_KIND } from '../workshop/schema.ts';
import type { Workshop } from '../workshop/workshop.ts';

/** A job as the command line works with it. */
export interface Loaded {
  document: JobDocument;
  workshop: Workshop;
  deriving: Deriving;
  /** Of the job file, the workshop file and the derivation, with lines where known. */
  faults: Fault[];
  /** File of the workshop, or undefined when the defaults stand in. */
  workshopFile: string | undefined;
}

export class CannotRun extends Error {
  readonly faults: Fault[];
  constructor(faults: Fault[]) {
    super(faults.map(f => f.fault).join('; '));
    this.faults = faults;
  }
}

export interface LoadOptions {
  workshop?: string;
  today: string;
}

const WORKSHOP_NAME = 'workshop.yaml';

function readFile(path: string, what: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const why =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'this is a folder'
          : 'it cannot be read';
    throw new CannotRun([{ place: path, fault: `${what}: ${why}`, mend: 'check the path' }]);
  }
}

const DISK: Record<string, string> = {
  ENOENT: 'the folder it should stand in is not there',
  ENOTDIR: 'a file stands where a folder is needed',
  EEXIST: 'a file of this name is in the way',
  EACCES: 'this may not be written',
  EPERM: 'this may not be written',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
};

/** Writes to the disk; what the disk refuses is told by its path. */
export function onDisk(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? '';
    if (!(code in DISK)) throw error;
    throw new CannotRun([{ place: path, fault: DISK[code]!, mend: 'choose another place to write to' }]);
  }
}

/** The workshop file named, else `workshop.yaml` beside the job or one folder up. */
function findWorkshop(job: string, named: string | undefined): string | undefined {
  if (named !== undefined) return resolve(named);
  const folder = dirname(resolve(job));
  return [folder, dirname(folder)].map(f => join(f, WORKSHOP_NAME)).find(existsSync);
}

/** Reads job and workshop and derives; throws CannotRun only when nothing at all can be made of them. */
export function load(job: string, options: LoadOptions): Loaded {
  const read = readJobFile(readFile(job, 'the job file'));
  if (!read.document) throw new CannotRun(read.faults);
  const workshopFile = findWorkshop(job, options.workshop);
  const shop = workshopFile
    ? readWorkshopFile(readFile(workshopFile, 'the workshop file'))
    : checkWorkshopDocument({ scantling: WORKSHOP_KIND, name: 'No workshop file' });
  if (!shop.workshop) throw new CannotRun(shop.faults.map(f => ({ ...f, place: `workshop: ${f.place}` })));
  const deriving = deriveJob(read.document, shop.workshop, { today: options.today });
  const faults = [
    ...read.faults,
    ...shop.faults.map(f => ({ ...f, place: `workshop: ${f.place}` })),
    ...deriving.derived.faults.map(read.locate),
  ];
  return { document: read.document, workshop: shop.workshop, deriving, faults, workshopFile };
}
