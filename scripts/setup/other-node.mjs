import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { output, run } from './run.mjs';
import { say, stop } from './say.mjs';

/**
 * Another version of Node, brought by the registry's `node` package into a folder of its own beside the
 * project's packages. Gives the path of its program.
 */
export function otherNode(version) {
  const folder = join(tmpdir(), `scantling-node-${version}`);
  const program = join(
    folder,
    'node_modules',
    'node',
    'bin',
    process.platform === 'win32' ? 'node.exe' : 'node',
  );
  if (!existsSync(program)) fetchNode(folder, version);
  const says = output(program, ['--version']);
  if (says !== `v${version}`)
    stop(`Node ${version} could not be brought here (${says ?? 'it does not run'}).`, MEND);
  return program;
}

const MEND = 'The registry must be reachable for npm run test:deep. npm test does not need it.';

function fetchNode(folder, version) {
  say(`Fetching Node ${version} ...`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }');
  run('npm', ['install', '--prefix', folder, '--no-audit', '--no-fund', `node@${version}`]);
  // The package fetches its program in a script, which npm may hold back.
  const script = join(folder, 'node_modules', 'node', 'installArchSpecificPackage.js');
  const program = join(folder, 'node_modules', 'node', 'bin');
  if (!existsSync(program) && existsSync(script)) run(process.execPath, [script]);
}
