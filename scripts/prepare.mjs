/**
 * Makes a checkout ready by itself, on a machine that has only Node: packages, SQLite module, built office.
 * Run by npm before `npm start` and `npm test`; does nothing that is done already.
 */
import { isBuilt } from './setup/build-stamp.mjs';
import { checkNode, install } from './setup/dependencies.mjs';
import { run } from './setup/run.mjs';
import { say, stop } from './setup/say.mjs';
import { checkSqlite } from './setup/sqlite.mjs';

checkNode();
install();
checkSqlite();
if (process.argv[2] === 'start' && !isBuilt()) {
  say('Building the drawing office ...');
  if (!run(process.execPath, ['scripts/build.mjs']))
    stop(
      'The build did not succeed; its words are above.',
      'Mend what they name, then run this command again.',
    );
}
