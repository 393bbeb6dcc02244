import { describe, expect, it } from 'vitest';
import { ALL_TABLES } from '../../src/reference/version.ts';

const BASES = ['read', 'memory', 'computed', 'common practice'];

interface Found {
  readonly path: string;
  readonly row: Record<string, unknown>;
}

/** Every object of the tables that names a source, wherever it lies. */
function sourced(value: unknown, path: string): Found[] {
  if (typeof value !== 'object' || value === null) return [];
  const row = value as Record<string, unknown>;
  const own = 'source' in row || 'basis' in row ? [{ path, row }] : [];
  return [...own, ...Object.entries(row).flatMap(([name, inner]) => sourced(inner, `${path}.${name}`))];
}

const rows = sourced(ALL_TABLES, 'tables');

describe('the tables', () => {
  it('hold a great many rows with a source', () => {
    expect(rows.length).toBeGreaterThan(1500);
  });

  it('give each row a source and a basis', () => {
    const silent = rows.filter(
      ({ row }) =>
        typeof row.source !== 'string' ||
        row.source.length < 3 ||
        (!BASES.includes(String(row.basis)) && !('by' in row)),
    );
    expect(silent.map(({ path }) => path)).toEqual([]);
  });

  it('never call a remembered value read', () => {
    const doubtful = rows.filter(
      ({ row }) =>
        row.basis === 'read' && /^remembered, unverified$|^remembered trade/.test(String(row.source)),
    );
    expect(doubtful.map(({ path }) => path)).toEqual([]);
  });

  it('have the lower end of each band below the upper', () => {
    const turned = rows.filter(
      ({ row }) => typeof row.low === 'number' && typeof row.high === 'number' && row.low > row.high,
    );
    expect(turned.map(({ path }) => path)).toEqual([]);
  });

  it('hold no broken number', () => {
    const broken = rows.filter(({ row }) =>
      Object.values(row).some(value => typeof value === 'number' && !Number.isFinite(value)),
    );
    expect(broken.map(({ path }) => path)).toEqual([]);
  });

  it('point to nothing but public sources', () => {
    const inside = rows.filter(({ row }) =>
      /job map|\.csv|same page|^same$|recalled/i.test(String(row.source)),
    );
    expect(inside.map(({ path }) => path)).toEqual([]);
  });
});
