import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './run.mjs';

const STAMP = join(ROOT, 'dist', '.built-from');
const SOURCES = ['src', 'scripts/build.mjs', 'vite.config.ts', 'package.json', 'package-lock.json'];

function filesOf(path) {
  const full = join(ROOT, path);
  if (!existsSync(full)) return [];
  if (!statSync(full).isDirectory()) return [path];
  return readdirSync(full, { recursive: true, encoding: 'utf8' })
    .map(name => join(path, name))
    .filter(name => statSync(join(ROOT, name)).isFile())
    .sort();
}

/** Hash of everything the build is made from. */
export function sourcesHash() {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap(filesOf)) hash.update(file).update(readFileSync(join(ROOT, file)));
  return hash.digest('hex');
}

export const isBuilt = () => existsSync(STAMP) && readFileSync(STAMP, 'utf8') === sourcesHash();

export function stampBuild() {
  mkdirSync(join(ROOT, 'dist'), { recursive: true });
  writeFileSync(STAMP, sourcesHash());
}
