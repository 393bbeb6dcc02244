/** Writes docs/schema from the code: `node --import tsx scripts/write-schemas.ts`. */
import { writeFileSync } from 'node:fs';
import { schemaText } from '../src/job-file/json-schema.ts';

for (const kind of ['job', 'workshop'] as const)
  writeFileSync(new URL(`../docs/schema/${kind}.json`, import.meta.url), schemaText(kind));
