import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, run } from './run.mjs';
import { say, stop } from './say.mjs';

const OLDEST_NODE = [20, 19];

export function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1]))
    stop(`Node ${process.versions.node} is too old.`, `Install Node ${OLDEST_NODE.join('.')} or newer.`);
}

const readLock = file => JSON.parse(readFileSync(file, 'utf8')).packages;

/**
 * Does node_modules hold what package-lock.json asks for? npm keeps a list of what it put there. Optional
 * packages may be missing: those of other platforms, and native ones that could not be built.
 */
export function isInstalled(root = ROOT) {
  const kept = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(kept)) return false;
  const there = readLock(kept);
  return Object.entries(readLock(join(root, 'package-lock.json'))).every(
    ([path, wanted]) =>
      path === '' || there[path]?.version === wanted.version || (!there[path] && wanted.optional),
  );
}

export function install() {
  if (isInstalled()) return;
  say('Fetching what Scantling is built on (npm ci) ...');
  if (!run('npm', ['ci', '--no-audit', '--no-fund']))
    stop('npm ci did not succeed; its words are above.', 'Mend what they name, then run this command again.');
}
