import { expect, test } from 'vitest';
import { BUILDER_RULES } from '../../src/builders/rules.ts';
import { CHECK_RULES } from '../../src/checks/index.ts';
import { CUTTING_RULES } from '../../src/cutting/rules.ts';
import { JOINTS } from '../../src/joints/index.ts';
import * as money from '../../src/money/rules.ts';
import { ORDER_RULES } from '../../src/operations/order-rules.ts';
import type { Rule } from '../../src/results/source.ts';
import { SET_RULES } from '../../src/setups/rules.ts';

/** Every numbered rule of the product: one number, one rule, with what it says, why, and whose word it is. */
const isRule = (v: unknown): v is Rule => typeof v === 'object' && v !== null && 'number' in v && 'says' in v;
const ALL: Rule[] = [
  ...new Set([
    ...JOINTS.flatMap(j => j.rules),
    ...CHECK_RULES,
    ...BUILDER_RULES,
    ...CUTTING_RULES,
    ...ORDER_RULES,
    ...Object.values(SET_RULES).filter(isRule),
    ...Object.values(money).filter(isRule),
  ]),
];

test('there are rules of every kind', () => {
  for (const prefix of ['MT-', 'CHK-', 'CUT-', 'ORD-', 'SET-', 'MON-'])
    expect(
      ALL.some(r => r.number.startsWith(prefix)),
      prefix,
    ).toBe(true);
});

test('no two rules share a number', () => {
  const seen = new Map<string, string>();
  const twice = ALL.filter(r => seen.has(r.number) && seen.get(r.number) !== r.says).map(r => r.number);
  for (const r of ALL) seen.set(r.number, r.says);
  expect(twice).toEqual([]);
  expect(new Set(ALL.map(r => r.number)).size).toBe(ALL.length);
});

test('every rule says what, why, and on whose word', () => {
  for (const r of ALL)
    expect([r.number, r.says.length > 10, r.reason.length > 2, r.source.text.length > 3]).toEqual([
      r.number,
      true,
      true,
      true,
    ]);
});
