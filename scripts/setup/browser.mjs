import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './run.mjs';
import { say, stop } from './say.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable'];

function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** A browser named in CHROMIUM_PATH or found on the search path. */
export function findBrowser() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (isProgram(named)) return named;
    stop(
      `CHROMIUM_PATH names ${named}, which cannot be run.`,
      'Set it to the path of a Chromium, or unset it.',
    );
  }
  const folders = (process.env.PATH ?? '').split(delimiter).filter(folder => folder !== '');
  return NAMES.flatMap(name => folders.map(folder => join(folder, name))).find(isProgram);
}

const MEND = [
  'Install Chromium and run npm test again, e.g. on Debian or Ubuntu:',
  '  sudo apt-get update && sudo apt-get install -y chromium',
  'or point CHROMIUM_PATH at one.',
].join('\n');

/** The browser for the tests; asks the system's package manager for it when allowed to. Never goes without. */
export function needBrowser() {
  const found = findBrowser();
  if (found) return found;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get'))
    stop('The browser tests need Chromium, and there is none.', MEND);
  say('Installing Chromium for the browser tests ...');
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  if (!run('apt-get', ['update'], quiet) || !run('apt-get', ['install', '-y', 'chromium'], quiet))
    stop('Chromium could not be installed.', MEND);
  return findBrowser() ?? stop('Chromium was installed but is not on the search path.', MEND);
}
