import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { defaultDataFolder } from '../../src/store/data-folder.ts';
import { loadEngine, rows } from '../../src/store/engine.ts';
import { APPLICATION_ID, migrate, schemaVersion } from '../../src/store/migrate.ts';
import { MIGRATIONS, SCHEMA_VERSION } from '../../src/store/migrations.ts';
import { StoreRefusal } from '../../src/store/refusal.ts';
import { openStore, STORE_FILE } from '../../src/store/store.ts';
import { bench, closeNow, ENGINES_HERE, newFolder, newStore } from './folder.ts';

async function refusalOf(opening: Promise<unknown>): Promise<StoreRefusal> {
  const error = await opening.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(StoreRefusal);
  return error as StoreRefusal;
}

/** A process of its own that opens the store and holds it until it is killed. */
async function holder(folder: string) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/store/hold-store.ts', folder]);
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  expect(line.toString()).toContain('open');
  return child;
}

describe('one writer', () => {
  it('a second process is refused by name, and let in at once when the first is killed', async () => {
    const folder = newFolder();
    const child = await holder(folder);
    const refusal = await refusalOf(openStore(folder));
    expect(refusal.message).toContain(folder);
    expect(refusal.message).toContain(`process ${child.pid}`);
    expect(refusal.mend).toContain('--data');
    child.kill('SIGKILL');
    await once(child, 'exit');
    const store = await newStore(folder);
    expect(store.folder).toBe(folder);
  });

  it('the same process cannot open it twice, and can after closing', async () => {
    const folder = newFolder();
    const store = await newStore(folder);
    await refusalOf(openStore(folder));
    await closeNow(store);
    await newStore(folder);
  });
});

describe('files that are not ours', () => {
  it('a newer store is refused and left byte for byte as it was', async () => {
    const folder = newFolder();
    await closeNow(await newStore(folder));
    const file = join(folder, STORE_FILE);
    const before = readFileSync(file);
    // The user version in the header (file format, section 1.3), as a newer program would leave it.
    before.writeUInt32BE(SCHEMA_VERSION + 1, 60);
    writeFileSync(file, before);
    const beside = readdirSync(folder);
    const refusal = await refusalOf(openStore(folder));
    expect(refusal.message).toContain('newer Scantling');
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(folder)).toEqual(beside);
  });

  it('a file of something else is refused and left as it was', async () => {
    const folder = newFolder();
    const file = join(folder, STORE_FILE);
    writeFileSync(file, 'Dear diary');
    expect((await refusalOf(openStore(folder))).message).toContain('not a Scantling store');
    expect(readFileSync(file, 'utf8')).toBe('Dear diary');
  });

  it('a database of some other program is refused', async () => {
    const folder = newFolder();
    const connection = (await loadEngine()).open(join(folder, STORE_FILE));
    connection.exec(`pragma application_id = ${APPLICATION_ID + 1}; create table theirs (a)`);
    connection.close();
    expect((await refusalOf(openStore(folder))).message).toContain('not a Scantling store');
  });

  it('an empty file, as a full disk leaves it, is begun afresh', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, STORE_FILE), '');
    const store = await newStore(folder);
    expect(await store.documents.create('bench', 'job', bench)).toBe(true);
  });
});

describe.each(ENGINES_HERE)('bringing an old store up to date over %s', engineName => {
  const twoSteps = [
    ...MIGRATIONS.slice(0, 1),
    { number: 2, name: 'more', sql: 'create table more (a text) strict;' },
  ];

  it('first copies it aside, then takes each step', async () => {
    const folder = newFolder();
    const store = await newStore(folder, { engine: engineName });
    await store.documents.create('bench', 'job', bench);
    await closeNow(store);
    const file = join(folder, STORE_FILE);
    const engine = await loadEngine(engineName);
    const connection = engine.open(file);
    const backup = migrate(connection, file, '2026-11-25T09:00:00.000Z', twoSteps)!;
    expect(schemaVersion(connection)).toBe(2);
    connection.close();
    expect(readdirSync(join(folder, 'backups'))).toHaveLength(1);
    const copy = engine.open(backup);
    expect(schemaVersion(copy)).toBe(1);
    expect(rows<{ id: string }>(copy, 'select id from documents')).toEqual([{ id: 'bench' }]);
    copy.close();
  });

  it('a step that fails is taken back whole', async () => {
    const folder = newFolder();
    await closeNow(await newStore(folder, { engine: engineName }));
    const file = join(folder, STORE_FILE);
    const connection = (await loadEngine(engineName)).open(file);
    const broken = [
      ...MIGRATIONS.slice(0, 1),
      { number: 2, name: 'bad', sql: 'create table good (a); create oops;' },
    ];
    expect(() => migrate(connection, file, '2026-11-25T09:00:00.000Z', broken)).toThrow();
    expect(schemaVersion(connection)).toBe(1);
    expect(rows(connection, "select name from sqlite_master where name = 'good'")).toEqual([]);
    connection.close();
  });
});

describe('the SQLite binding', () => {
  it('is the first that loads; libsql stands in where better-sqlite3 does not', async () => {
    expect(ENGINES_HERE).toContain('libsql');
    expect((await loadEngine()).name).toBe(ENGINES_HERE[0]);
    const store = await newStore(newFolder(), { engine: 'libsql' });
    expect(store.engine).toBe('libsql');
  });
});

describe('the folder', () => {
  it('is made for its owner alone', async () => {
    const folder = join(newFolder(), 'deeper', 'data');
    await newStore(folder);
    if (process.platform !== 'win32') expect(statSync(folder).mode & 0o077).toBe(0);
  });

  it('is where the platform keeps such things', () => {
    expect(defaultDataFolder('darwin', {}, '/Users/m')).toBe(
      '/Users/m/Library/Application Support/Scantling',
    );
    expect(defaultDataFolder('linux', {}, '/home/m')).toBe('/home/m/.local/share/scantling');
    expect(defaultDataFolder('linux', { XDG_DATA_HOME: '/data' }, '/home/m')).toBe('/data/scantling');
    // The specification: a relative path in the variable is invalid and to be ignored.
    expect(defaultDataFolder('linux', { XDG_DATA_HOME: 'data' }, '/home/m')).toBe(
      '/home/m/.local/share/scantling',
    );
    expect(defaultDataFolder('win32', { LOCALAPPDATA: 'C:\\L' }, 'C:\\m')).toContain('Scantling');
  });

  it('can be copied whole while in use', async () => {
    const folder = newFolder();
    const store = await newStore(folder);
    await store.documents.create('bench', 'job', bench);
    mkdirSync(join(folder, "maker's"));
    const copy = join(folder, "maker's", 'copy.db');
    await store.copyTo(copy);
    const connection = (await loadEngine()).open(copy);
    expect(rows<{ id: string }>(connection, 'select id from documents')).toEqual([{ id: 'bench' }]);
    connection.close();
  });
});
