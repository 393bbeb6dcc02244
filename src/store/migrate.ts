import { closeSync, existsSync, mkdirSync, openSync, readSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Connection } from './engine.ts';
import { rows } from './engine.ts';
import type { Migration } from './migrations.ts';
import { MIGRATIONS, SCHEMA_VERSION } from './migrations.ts';
import { StoreRefusal } from './refusal.ts';

/** Written into the file's header, so that a file of something else is known by name. ASCII "SCAN". */
export const APPLICATION_ID = 0x5343414e;

const HEADER_BYTES = 100;
const MAGIC = 'SQLite format 3\0';
const VERSION_OFFSET = 60;
const APPLICATION_OFFSET = 68;

/**
 * Looks at the header without opening the database, so that a refused file stays byte for byte as it was.
 * Layout: https://www.sqlite.org/fileformat2.html section 1.3 (user version at 60, application id at 68).
 */
export function refuseForeignFile(file: string): void {
  const header = readHeader(file);
  if (header === undefined) return;
  const ours = header.toString('latin1', 0, 16) === MAGIC;
  const application = ours ? header.readUInt32BE(APPLICATION_OFFSET) : 0;
  if (!ours || (application !== APPLICATION_ID && application !== 0))
    throw new StoreRefusal(file, `${file} is not a Scantling store`, 'choose another data folder');
  refuseNewer(file, header.readUInt32BE(VERSION_OFFSET));
}

function readHeader(file: string): Buffer | undefined {
  if (!existsSync(file)) return undefined;
  const handle = openSync(file, 'r');
  const header = Buffer.alloc(HEADER_BYTES);
  const read = readSync(handle, header, 0, HEADER_BYTES, 0);
  closeSync(handle);
  return read === 0 ? undefined : header;
}

function refuseNewer(file: string, version: number, known = SCHEMA_VERSION): void {
  if (version > known)
    throw new StoreRefusal(
      file,
      `${file} was written by a newer Scantling (store version ${version}, this one knows ${known})`,
      'use that newer version, or choose another data folder; the file has been left as it was',
    );
}

export const schemaVersion = (connection: Connection): number =>
  rows<{ user_version: number }>(connection, 'pragma user_version')[0]!.user_version;

/**
 * Brings an open database up to the newest schema, each step whole or not at all. One that already holds data
 * is first copied to `backups/` beside it. Gives the name of the copy, if one was made.
 */
export function migrate(
  connection: Connection,
  file: string,
  stamp: string,
  steps: readonly Migration[] = MIGRATIONS,
): string | undefined {
  const version = schemaVersion(connection);
  refuseNewer(file, version, steps.length);
  if (version === steps.length) return undefined;
  const backup = version > 0 ? backupBefore(connection, file, version, stamp) : undefined;
  for (const { number, sql } of steps.slice(version)) {
    const script = `begin immediate; ${sql} pragma user_version = ${number}; commit;`;
    try {
      connection.exec(`pragma application_id = ${APPLICATION_ID}`);
      connection.exec(script);
    } catch (error) {
      if (schemaVersion(connection) < number) connection.exec('rollback');
      throw error;
    }
  }
  return backup;
}

function backupBefore(connection: Connection, file: string, version: number, stamp: string): string {
  const folder = join(dirname(file), 'backups');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const copy = join(folder, `before-version-${version + 1}-${stamp.replaceAll(/[^0-9TZ]/g, '')}.db`);
  copyInto(connection, copy);
  return copy;
}

/** A whole, compact copy of the database as it stands. The file must not be there yet. */
export const copyInto = (connection: Connection, copy: string): void => {
  connection.exec(`vacuum into '${copy.replaceAll("'", "''")}'`);
};
