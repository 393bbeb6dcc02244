import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Connection, Engine } from './engine.ts';
import { StoreRefusal } from './refusal.ts';

export interface WriterLock {
  release(): void;
}

/**
 * Only one process may write to a data folder. The lock is an SQLite file held in an exclusive transaction:
 * the system lets go of it when the process ends, however it ends, so a killed one leaves nothing to clean up.
 */
export function takeWriterLock(engine: Engine, folder: string, since: string): WriterLock {
  const connection = engine.open(join(folder, 'writer.lock'));
  const note = join(folder, 'writer.json');
  try {
    connection.exec('begin exclusive');
  } catch (error) {
    connection.close();
    if (!isBusy(error)) throw error;
    throw inUse(folder, note);
  }
  writeFileSync(note, JSON.stringify({ process: process.pid, since }));
  return { release: () => release(connection, note) };
}

const isBusy = (error: unknown): boolean =>
  /SQLITE_BUSY|locked/i.test(`${(error as { code?: string }).code} ${error}`);

function release(connection: Connection, note: string): void {
  rmSync(note, { force: true });
  connection.exec('rollback');
  connection.close();
}

function inUse(folder: string, note: string): StoreRefusal {
  const holder = readHolder(note);
  return new StoreRefusal(
    folder,
    `The data folder ${folder} is in use by another Scantling${holder}`,
    'close that one first, or start this one with --data and another folder',
  );
}

function readHolder(note: string): string {
  try {
    const { process: id, since } = JSON.parse(readFileSync(note, 'utf8')) as {
      process: number;
      since: string;
    };
    return ` (process ${id}, since ${since})`;
  } catch {
    return '';
  }
}
