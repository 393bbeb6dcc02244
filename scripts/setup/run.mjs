import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Root of the project. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Runs a command in the project with its output shown. True when it ended well. */
export const run = (command, args, environment = {}) =>
  spawnSync(command, args, {
    cwd: ROOT,
    stdio: ['ignore', 2, 2],
    env: { ...process.env, ...environment },
    shell: process.platform === 'win32',
  }).status === 0;

/** Runs a command quietly and gives what it printed, or undefined when it failed. */
export function output(command, args) {
  const done = spawnSync(command, args, { cwd: ROOT, encoding: 'utf8' });
  return done.status === 0 ? done.stdout.trim() : undefined;
}
