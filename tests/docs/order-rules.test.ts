import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { NOT_APPLIED, orderRulesPage } from '../../scripts/order-rules-page.ts';
import { ORDER_RULES } from '../../src/operations/order-rules.ts';

test('docs/order-rules.md is what the rules say (node --import tsx scripts/write-order-rules.ts)', () => {
  expect(readFileSync(new URL('../../docs/order-rules.md', import.meta.url), 'utf8')).toBe(orderRulesPage());
});

test("every rule of the trade's 67 is either applied or told why not", () => {
  const numbers = [
    ...ORDER_RULES.map(rule => Number(rule.number.slice(4))).filter(n => n <= 67),
    ...NOT_APPLIED.map(([n]) => n),
  ];
  expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 67 }, (_, i) => i + 1));
});
