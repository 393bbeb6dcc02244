/** Adds up what `npm test` and `npm run test:deep` counted. Its last line is `N passed, N failed`. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './setup/run.mjs';

const total = { passed: 0, failed: 0 };
for (const name of ['npm test', 'test:deep']) {
  const file = join(ROOT, '.vitest', `tally-${name}.json`);
  // A run that never came to its end counts as one failure.
  const tally = existsSync(file)
    ? JSON.parse(readFileSync(file, 'utf8'))
    : { passed: 0, failed: 1, minutes: 0 };
  console.log(`${name.padEnd(12)} ${tally.minutes.toFixed(2)} min`);
  total.passed += tally.passed;
  total.failed += tally.failed;
}
console.log(`${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;
