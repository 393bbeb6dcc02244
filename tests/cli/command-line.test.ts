import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

function scantling(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise(resolve => {
    execFile(
      process.execPath,
      ['--import', 'tsx', 'src/cli/main.ts', ...args],
      { cwd: ROOT, env: { ...process.env, NO_COLOR: '1' }, maxBuffer: 1e8 },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

test('parts --json is the stable list', async () => {
  const { code, out } = await scantling('parts', 'examples/porch-bench.yaml', '--json');
  expect(code).toBe(0);
  const rows = JSON.parse(out) as Record<string, unknown>[];
  const stretcher = rows.find(r => r.name === 'Stretcher');
  expect(stretcher).toMatchObject({
    quantity: 1,
    material: 'ash-european',
    kind: 'timber',
    length: 1357,
    width: 70,
    thickness: 32,
    shoulderLength: 1183,
    measured: null,
    blank: { length: 1377, width: 75, thickness: 37 },
  });
  for (const row of rows)
    expect(Object.keys(row).sort()).toEqual([
      'blank',
      'kind',
      'length',
      'mark',
      'mass',
      'material',
      'measured',
      'name',
      'quantity',
      'shoulderLength',
      'thickness',
      'width',
    ]);
});

test('a part measured first has null sizes and its reserve in the blank', async () => {
  const { out } = await scantling('parts', 'examples/writing-table.yaml', '--json');
  const side = (JSON.parse(out) as { name: string; length: number | null; blank: { width: number } }[]).find(
    r => r.name === 'Drawer side',
  );
  expect(side).toMatchObject({ length: null, blank: { width: 57 + 5 + 2 } });
});

test('check, price and why speak in their stable words', async () => {
  const checks = JSON.parse((await scantling('check', 'examples/porch-bench.yaml', '--json')).out) as Record<
    string,
    unknown
  >[];
  for (const c of checks)
    expect(c).toMatchObject({
      check: expect.any(String),
      subject: expect.any(String),
      severity: expect.any(String),
      source: expect.any(String),
      basis: expect.any(String),
      remedy: expect.any(String),
      say: expect.any(Object),
    });
  expect(checks.some(c => c.check === 'overlap' && c.severity === 'pass')).toBe(true);
  const price = JSON.parse((await scantling('price', 'examples/porch-bench.yaml', '--json')).out) as {
    net: number;
    tax: number;
    total: number;
    lines: { amount: number }[];
  };
  expect(price.lines.reduce((sum, l) => sum + l.amount, 0)).toBe(price.net);
  expect(price.net + price.tax).toBe(price.total);
  const why = JSON.parse(
    (await scantling('why', 'examples/porch-bench.yaml', 'joints.cross.tenon.thickness', '--json')).out,
  ) as { value: { value: number }; rule: { number: string } };
  expect([why.value.value, why.rule.number]).toEqual([11, 'MT-1']);
});

test('exit codes: 2 for a faulty file, with what derives still printed; 2 for what cannot run', async () => {
  const faulty = await scantling('parts', 'tests/fixtures/broken/negative-size.yaml');
  expect([faulty.code, faulty.out.includes('leg'), faulty.err]).toEqual([
    2,
    true,
    expect.stringContaining('line 21: parts.rail.width'),
  ]);
  expect((await scantling('parts', 'no-such-file.yaml')).code).toBe(2);
  expect((await scantling('why', 'examples/porch-bench.yaml', 'parts.nothing.length')).code).toBe(2);
});

test('exit code 1 when a check says stop', async () => {
  const { code } = await scantling('check', 'tests/fixtures/stop.yaml', '-w', 'examples/workshop.yaml');
  expect(code).toBe(1);
});

test('derive writes results, tables, layouts and the pack', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'scantling-'));
  const { code } = await scantling('derive', 'examples/porch-bench.yaml', '--out', folder);
  expect(code).toBe(0);
  const files = readdirSync(folder);
  for (const file of [
    'parts.json',
    'cut.json',
    'setups.json',
    'days.json',
    'check.json',
    'price.json',
    'parts.csv',
    'pack.pdf',
  ])
    expect(files).toContain(file);
  expect(readFileSync(join(folder, 'pack.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
}, 60_000);
