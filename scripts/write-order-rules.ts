/** Writes docs/order-rules.md from the rules: `node --import tsx scripts/write-order-rules.ts`. */
import { writeFileSync } from 'node:fs';
import { orderRulesPage } from './order-rules-page.ts';

writeFileSync(new URL('../docs/order-rules.md', import.meta.url), orderRulesPage());
