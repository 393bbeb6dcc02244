/** All checks against published figures as rows, and as a table to print. */
import { readdir } from 'node:fs/promises';
import { named, type OutsideCheck } from './check.ts';

export interface OutsideRow {
  readonly id: string;
  readonly topic: string;
  readonly published: string;
  readonly ours: string;
  /** The greatest over the figures of the check. */
  readonly difference: number;
  readonly tolerance: number;
  readonly unit: string;
  readonly source: string;
  readonly basis: string;
  /** Every published figure has its counterpart, and none is further off than the tolerance. */
  readonly agrees: boolean;
}

/** All checks of the `*.checks.ts` files beside this one, by file name, then in their order. */
export async function outsideChecks(): Promise<OutsideCheck[]> {
  const here = new URL('./', import.meta.url);
  const files = (await readdir(here)).filter(name => name.endsWith('.checks.ts')).sort();
  const modules = await Promise.all(
    files.map(async name => {
      const { checks }: { checks: OutsideCheck[] } = await import(new URL(name, here).href);
      return checks;
    }),
  );
  return modules.flat();
}

/** Runs one check. */
export function compare(check: OutsideCheck): OutsideRow {
  const { id, topic, tolerance, unit, source, basis } = check;
  const published = named(check.published);
  const ours = new Map(named(check.ours()));
  const differences = published.map(([name, value]) => Math.abs((ours.get(name) ?? Number.NaN) - value));
  const difference = differences.some(Number.isNaN) ? Number.NaN : Math.max(...differences);
  const many = published.length > 6;
  return {
    id,
    topic,
    published: many ? `${published.length} values` : published.map(([, value]) => shown(value)).join(', '),
    ours: many ? 'all compared' : published.map(([name]) => shown(ours.get(name))).join(', '),
    difference,
    tolerance,
    unit,
    source,
    basis,
    // Float noise must not fail an exact tolerance.
    agrees:
      ours.size === published.length &&
      difference <= tolerance + 1e-12 * Math.max(1, ...published.map(([, v]) => Math.abs(v))),
  };
}

export async function outsideRows(): Promise<OutsideRow[]> {
  return (await outsideChecks()).map(compare);
}

/** The rows as a Markdown table. */
export function outsideMarkdown(rows: readonly OutsideRow[]): string {
  const head = ['check', 'published', 'ours', 'difference', 'allowed', 'unit', 'basis', 'source'];
  const lines = rows.map(row => [
    row.id,
    row.published,
    row.ours,
    shown(row.difference),
    shown(row.tolerance),
    row.unit,
    row.basis,
    row.source,
  ]);
  return [head, head.map(() => '---'), ...lines]
    .map(cells => `| ${cells.map(cell => cell.replace(/\|/g, '\\|')).join(' | ')} |`)
    .join('\n');
}

const shown = (value: number | undefined): string =>
  value === undefined ? 'none' : String(Number(value.toPrecision(6)));
