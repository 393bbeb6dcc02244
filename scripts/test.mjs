/** `npm test`: static checks, unit and property tests, one production build, one browser run. */
import { needBrowser } from './setup/browser.mjs';
import { check, runTiers, together, vitest } from './setup/tiers.mjs';

const tool = path => `node_modules/${path}`;
const node = process.execPath;
// Looked for first: without a browser nothing is run, rather than most of it.
const browser = needBrowser();

runTiers('npm test', [
  together('static checks', [
    check('format and lint', node, [tool('@biomejs/biome/bin/biome'), 'ci', '.']),
    check('types', node, [tool('typescript/bin/tsc'), '--noEmit', '-p', '.']),
    check('unused code and dependencies', node, [tool('knip/bin/knip.js')]),
  ]),
  vitest('unit and property tests', 'vitest.config.ts'),
  check('production build', node, ['scripts/build.mjs']),
  vitest('built office and browser', 'vitest.browser.config.ts', { environment: { CHROMIUM_PATH: browser } }),
]);
