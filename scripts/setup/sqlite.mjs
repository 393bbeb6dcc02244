import { existsSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { ROOT, run } from './run.mjs';
import { say, stop } from './say.mjs';

const require = createRequire(import.meta.url);

function loads(name) {
  try {
    const Database = require(name);
    new Database(':memory:').close();
    return true;
  } catch {
    return false;
  }
}

/** What was tried for which Node, so that a machine that cannot compile is not asked at every start. */
const TRIED = join(ROOT, 'node_modules', `.scantling-sqlite-${process.versions.modules}`);

/**
 * The store works over better-sqlite3, whose native part is fetched ready-made or compiled when it is
 * installed. Where neither was possible it is tried once more here, then libsql takes its place.
 */
export function checkSqlite() {
  if (loads('better-sqlite3')) return;
  if (existsSync(join(ROOT, 'node_modules', 'better-sqlite3')) && !existsSync(TRIED)) {
    say('Building the SQLite module ...');
    run('npm', ['rebuild', 'better-sqlite3', '--foreground-scripts']);
    writeFileSync(TRIED, '');
    // A module that failed to load is loaded afresh only in a new process.
    if (run(process.execPath, ['-e', "new (require('better-sqlite3'))(':memory:').close()"])) return;
  }
  if (!loads('libsql'))
    stop(
      'No SQLite module can be loaded.',
      'Remove node_modules and run this command again on a supported system.',
    );
  say(
    'SQLite: better-sqlite3 can be neither had ready-made nor compiled here, so libsql is used in its place.',
  );
}
