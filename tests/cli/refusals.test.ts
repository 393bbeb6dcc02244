import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FOLDER = mkdtempSync(join(tmpdir(), 'scantling-refusals-'));

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

const PART = 'kind: timber, material: oak-european, length: 100, width: 20, thickness: 10';
const file = (name: string, text: string): string => {
  const path = join(FOLDER, name);
  writeFileSync(path, `scantling: job/1\ntitle: Trial\n${text}`);
  return path;
};
/** Two parts that share 50 x 20 x 10 mm. */
const TWO = `parts:
  a: { ${PART}, at: { left: 0, front: 0, bottom: 0 } }
  b: { ${PART}, at: { left: 50, front: 0, bottom: 0 } }
`;

test('a folder that is a file is an error of the command, not a check that says stop', async () => {
  const job = file('in-the-way.yaml', TWO);
  const { code, err } = await scantling('derive', job, '--out', job);
  expect(code).toBe(2);
  expect(err).toMatch(/in-the-way\.yaml: a file of this name is in the way\. Choose another place/);
  expect(err).not.toMatch(/\n\s+at /);
});

test('a new job in a folder that is not there is refused in words', async () => {
  const { code, err } = await scantling('new', join(FOLDER, 'nowhere', 'table.yaml'));
  expect(code).toBe(2);
  expect(err).toMatch(/the folder it should stand in is not there/);
  expect(readdirSync(FOLDER)).not.toContain('nowhere');
});

test('a day that is none is refused before anything is reckoned', async () => {
  for (const day of ['2026-13-45', '2027-02-29', 'soon']) {
    const { code, err, out } = await scantling('days', 'examples/porch-bench.yaml', '--date', day);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/Write a day as 2026-11-30/);
  }
});

test('a name cannot steer the terminal', async () => {
  const job = file('steering.yaml', TWO.replace('a: {', 'a: { name: "Rail \\e[2J\\e]0;x\\a\\0",'));
  const { out } = await scantling('parts', job);
  expect(out).toMatch(/Rail/);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must be missing.
  expect(out).not.toMatch(/[\x00-\x08\x0b-\x1f\x7f]/);
});

test('an overlap that the maker has judged and set aside is a note with his reason', async () => {
  const overlap = async (text: string) => {
    const { out } = await scantling('check', file('judged.yaml', text), '--json');
    const found = JSON.parse(out) as { check: string; severity: string; remedy: string }[];
    return found.find(c => c.check === 'overlap');
  };
  expect(await overlap(TWO)).toMatchObject({ severity: 'stop', figure: 10000 });
  expect(await overlap(`${TWO}overruled: { "overlap:a+b": { reason: Let in by hand } }\n`)).toMatchObject({
    severity: 'note',
    remedy: 'Set aside: Let in by hand',
  });
});

test('the mass of one of several bought-in parts is what was entered', async () => {
  const { code, out } = await scantling('why', 'examples/wall-cabinet.yaml', 'parts.hinge_2.mass', '--json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ figure: 'parts.hinge.mass', how: 'entered' });
});
