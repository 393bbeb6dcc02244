/** Builds dist/: the office for the browser, and the command line with its worker for Node. */
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build as bundle } from 'esbuild';
import { build as buildOffice } from 'vite';
import { stampBuild } from './setup/build-stamp.mjs';
import { ROOT } from './setup/run.mjs';

/** Programs for Node: name in dist/ and where each begins. */
const ENTRIES = {
  scantling: 'src/cli/main.ts',
  'node-worker': 'src/host/node-worker.ts',
};

rmSync(join(ROOT, 'dist'), { recursive: true, force: true });
await buildOffice({
  root: join(ROOT, 'src/office'),
  configFile: join(ROOT, 'vite.config.ts'),
  logLevel: 'warn',
});
await bundle({
  absWorkingDir: ROOT,
  entryPoints: Object.fromEntries(Object.entries(ENTRIES).filter(([, file]) => existsSync(join(ROOT, file)))),
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  packages: 'external',
  chunkNames: 'chunks/[name]-[hash]',
  legalComments: 'none',
  logLevel: 'warning',
});
stampBuild();
