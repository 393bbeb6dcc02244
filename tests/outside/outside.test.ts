import { describe, expect, it } from 'vitest';
import { compare, outsideChecks, outsideMarkdown } from './report.ts';

const checks = await outsideChecks();

describe('figures published outside', () => {
  it('finds the checks, each under its own name, each with a source', () => {
    expect(checks.length).toBeGreaterThan(60);
    expect(new Set(checks.map(check => check.id)).size).toBe(checks.length);
    expect(checks.filter(check => !check.source || !check.basis)).toEqual([]);
  });

  it.each(checks.map(check => [check.id, check] as const))('%s', (_, check) => {
    const row = compare(check);
    expect(
      row.agrees,
      `published ${row.published}, ours ${row.ours} ${row.unit}, off by ${row.difference}`,
    ).toBe(true);
  });

  it('sees a wrong figure, a missing one and one too many', () => {
    const check = { id: 'x', topic: '', unit: '', source: 's', basis: 'b', tolerance: 0.1 };
    expect(compare({ ...check, published: 1, ours: () => 1.2 }).agrees).toBe(false);
    expect(compare({ ...check, published: [1, 2], ours: () => [1] }).agrees).toBe(false);
    expect(compare({ ...check, published: { a: 1 }, ours: () => ({ a: 1, b: 2 }) }).agrees).toBe(false);
    expect(compare({ ...check, published: 1, ours: () => Number.NaN }).agrees).toBe(false);
    expect(compare({ ...check, published: 1, ours: () => 1.1 }).agrees).toBe(true);
  });

  it('prints a table with one line a check', () => {
    expect(outsideMarkdown(checks.map(compare)).split('\n')).toHaveLength(checks.length + 2);
  });
});
