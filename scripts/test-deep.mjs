/** `npm run test:deep`: fuzz, kills while writing, migrations, soak; then the unit tests on another Node. */
import { otherNode } from './setup/other-node.mjs';
import { runTiers, vitest } from './setup/tiers.mjs';

const node24 = otherNode('24.21.0');

runTiers('test:deep', [
  vitest('deep tests', 'vitest.deep.config.ts'),
  vitest('unit tests on Node 24', 'vitest.config.ts', { node: node24 }),
]);
