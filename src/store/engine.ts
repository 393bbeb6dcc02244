import type { SqliteDatabase } from 'kysely';

export const ENGINES = ['better-sqlite3', 'libsql'] as const;
export type EngineName = (typeof ENGINES)[number];

/** What the store needs of an SQLite binding; both bindings offer it. */
export interface Connection extends SqliteDatabase {
  exec(sql: string): unknown;
}

export interface Engine {
  name: EngineName;
  open(file: string): Connection;
}

type Binding = new (file: string, options: { timeout: number }) => Connection;

const LOADERS: Record<EngineName, () => Promise<{ default: unknown }>> = {
  'better-sqlite3': () => import('better-sqlite3'),
  libsql: () => import('libsql'),
};

/**
 * The SQLite binding to work with: better-sqlite3 where its native module is there and loads, else libsql,
 * which brings its binary with it. `only` takes that one or fails.
 */
export async function loadEngine(only?: EngineName): Promise<Engine> {
  const failures: string[] = [];
  for (const name of only ? [only] : ENGINES) {
    try {
      return await tried(name);
    } catch (error) {
      failures.push(`${name}: ${(error as Error).message.split('\n')[0]}`);
    }
  }
  throw new Error(`No SQLite module can be loaded. ${failures.join('; ')}. Run npm ci again.`);
}

async function tried(name: EngineName): Promise<Engine> {
  const Binding = (await LOADERS[name]()).default as Binding;
  const open = (file: string): Connection => new Binding(file, { timeout: 0 });
  // The native part loads with the first connection, so try one before relying on it.
  open(':memory:').close();
  return { name, open };
}

/** Rows of a statement without parameters. */
export const rows = <T>(connection: Connection, sql: string): T[] =>
  connection.prepare(sql).all([]) as readonly unknown[] as T[];
