import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Kysely, SqliteDialect } from 'kysely';
import { Clients } from './clients.ts';
import { Documents } from './documents.ts';
import { Done } from './done.ts';
import type { Connection, Engine, EngineName } from './engine.ts';
import { loadEngine, rows } from './engine.ts';
import { Issued } from './issued.ts';
import type { JobList, JobQuery } from './jobs.ts';
import { listJobs } from './jobs.ts';
import { copyInto, migrate, refuseForeignFile } from './migrate.ts';
import { Revisions } from './revisions.ts';
import type { Tables } from './schema.ts';
import { takeWriterLock } from './writer-lock.ts';

/** Everything kept in one data folder. Every write is on the disk before its promise is kept. */
export interface Store {
  folder: string;
  /** SQLite binding in use. */
  engine: EngineName;
  /** Copy made before the schema was brought up to date, if it was. */
  backup: string | undefined;
  documents: Documents;
  revisions: Revisions;
  clients: Clients;
  issued: Issued;
  done: Done;
  jobs(query?: JobQuery): Promise<JobList>;
  /** A whole copy of the store as it stands, in a new file. */
  copyTo(file: string): Promise<void>;
  /** Faults SQLite finds in its file; empty when it is sound. */
  damage(): Promise<string[]>;
  close(): Promise<void>;
}

export interface StoreOptions {
  engine?: EngineName;
  now?: () => Date;
}

export const STORE_FILE = 'scantling.db';

/**
 * Opens the store of a data folder, made if it is not there, for this process alone.
 * Throws `StoreRefusal` when the folder is in use, or its file is foreign or newer (and is then left untouched).
 */
export async function openStore(folder: string, options: StoreOptions = {}): Promise<Store> {
  const home = resolve(folder);
  mkdirSync(home, { recursive: true, mode: 0o700 });
  const now = () => (options.now?.() ?? new Date()).toISOString();
  const file = join(home, STORE_FILE);
  refuseForeignFile(file);
  const engine = await loadEngine(options.engine);
  const lock = takeWriterLock(engine, home, now());
  try {
    const { connection, backup } = openFile(engine, file, now());
    return storeOver(connection, { folder: home, engine: engine.name, backup, now, release: lock.release });
  } catch (error) {
    lock.release();
    throw error;
  }
}

function openFile(engine: Engine, file: string, stamp: string): { connection: Connection; backup?: string } {
  const connection = engine.open(file);
  try {
    connection.exec('pragma journal_mode = wal');
    connection.exec('pragma synchronous = full');
    connection.exec('pragma foreign_keys = on');
    connection.exec('pragma busy_timeout = 2000');
    // What is erased is overwritten, not only unlinked.
    connection.exec('pragma secure_delete = on');
    const backup = migrate(connection, file, stamp);
    return { connection, ...(backup === undefined ? {} : { backup }) };
  } catch (error) {
    connection.close();
    throw error;
  }
}

interface Frame {
  folder: string;
  engine: EngineName;
  backup: string | undefined;
  now: () => string;
  release: () => void;
}

function storeOver(connection: Connection, { folder, engine, backup, now, release }: Frame): Store {
  const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: connection }) });
  return {
    folder,
    engine,
    backup,
    documents: new Documents(db, now),
    revisions: new Revisions(db, now),
    clients: new Clients(db, now),
    issued: new Issued(db, now),
    done: new Done(db),
    jobs: query => listJobs(db, query),
    copyTo: async file => copyInto(connection, file),
    damage: async () =>
      rows<{ integrity_check: string }>(connection, 'pragma integrity_check')
        .map(row => row.integrity_check)
        .filter(line => line !== 'ok'),
    close: async () => {
      // All of it in the one file, for whoever copies that by hand.
      connection.exec('pragma wal_checkpoint(truncate)');
      // Kysely closes the connection only if it was ever used.
      await db.destroy();
      connection.close();
      release();
    },
  };
}
