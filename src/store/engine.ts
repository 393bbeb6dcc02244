import type { SqliteDatabase, SqliteStatement } from 'kysely';

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
  const open = (file: string): Connection => keepingStatements(new Binding(file, { timeout: 0 }));
  // The native part loads with the first connection, so try one before relying on it.
  open(':memory:').close();
  return { name, open };
}

/** The store asks in some dozens of ways; beyond this something writes values into its SQL. */
const MOST_STATEMENTS = 300;

/**
 * Prepares each statement once. Preparing afresh costs time, and libsql gives the memory of old statements
 * back so late that a long day of edits would fill it.
 */
function keepingStatements(connection: Connection): Connection {
  const kept = new Map<string, SqliteStatement>();
  return {
    exec: sql => connection.exec(sql),
    prepare: sql => {
      const found = kept.get(sql) ?? connection.prepare(sql);
      if (kept.size >= MOST_STATEMENTS) kept.clear();
      kept.set(sql, found);
      return found;
    },
    close: () => {
      kept.clear();
      connection.close();
    },
  };
}

/** Rows of a statement without parameters. */
export const rows = <T>(connection: Connection, sql: string): T[] =>
  connection.prepare(sql).all([]) as readonly unknown[] as T[];
