import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  allSources,
  FIRST_OUTER_ROW,
  readSource,
  rowOf,
  SRC,
  withoutComments,
  wrongWays,
} from './imports.ts';

const files = allSources();
const core = files.filter(file => rowOf(file.folder) < FIRST_OUTER_ROW);

describe('floors of the house', () => {
  it('are looked at: the test sees the files and their imports', () => {
    expect(files.length).toBeGreaterThan(60);
    expect(core.length).toBeGreaterThan(40);
    expect(files.reduce((sum, file) => sum + file.imports.length, 0)).toBeGreaterThan(files.length);
  });

  it('every folder has its row', () => {
    expect(files.filter(file => rowOf(file.folder) < 0).map(file => file.path)).toEqual([]);
  });

  it('every import names a file that is there', () => {
    const lost = files.flatMap(file =>
      file.imports
        .filter(name => !name.startsWith('..') && !existsSync(join(SRC, name)))
        .map(name => `${file.path}: ${name}`),
    );
    expect(lost).toEqual([]);
  });

  it('imports go down, never sideways or up', () => {
    expect(wrongWays(files)).toEqual([]);
  });
});

/** Clock, chance, files, network, processes. A date made from a given value is no clock. */
const OUTSIDE: readonly [string, RegExp][] = [
  ['the clock', /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b|\bTemporal\.Now\b/],
  ['chance', /\bMath\.random\b|\bcrypto\./],
  ['the network', /\bfetch\(|\bXMLHttpRequest\b|\bWebSocket\b/],
  ['the process', /\bprocess\.|\bglobalThis\.process\b/],
  ['a timer', /\bset(?:Timeout|Interval|Immediate)\(/],
  ['text run as code', /\beval\(|\bnew Function\(/],
];

/** Heavy kernels are injected; screens, servers and stores stay outside. */
const OUTER_PACKAGES =
  /^(node:|manifold-3d|highs|pdfkit|fastify|@fastify|kysely|better-sqlite3|libsql|react|three)/;

describe('the core is pure', () => {
  it.each(OUTSIDE)('it never asks for %s', (_what, pattern) => {
    expect(core.filter(file => pattern.test(file.code)).map(file => file.path)).toEqual([]);
  });

  it('it imports no file access, kernel, server, store or screen', () => {
    const outer = core.flatMap(file =>
      file.packages.filter(name => OUTER_PACKAGES.test(name)).map(name => `${file.path}: ${name}`),
    );
    expect(outer).toEqual([]);
  });
});

describe('this test can fail', () => {
  it('sees imports of every form, in one line or many, and not those in comments', () => {
    const text = [
      "import type {\n  A,\n} from '../store/store.ts';",
      "export { b } from '../papers/pack.ts';",
      "import './side.ts';",
      "const c = await import('../office/app.tsx');",
      "new Worker(new URL('../host/worker.ts', import.meta.url));",
      "// import x from '../cli/main.ts';",
      "/* from '../cli/main.ts' */ const url = 'http://a // b'; import d from 'zod';",
    ].join('\n');
    const file = readSource('money/price.ts', text);
    expect(file.imports).toEqual([
      'store/store.ts',
      'papers/pack.ts',
      'money/side.ts',
      'office/app.tsx',
      'host/worker.ts',
    ]);
    expect(file.packages).toEqual(['zod']);
    expect(wrongWays([file])).toHaveLength(4);
  });

  it('refuses sideways and upwards, and lets down and home', () => {
    const from = (path: string, name: string) => wrongWays([readSource(path, `import a from '${name}';`)]);
    expect(from('money/price.ts', '../checks/check.ts')).toEqual([
      'money/price.ts (row 6) imports checks/check.ts (row 6)',
    ]);
    expect(from('money/price.ts', '../job/derive.ts')).toHaveLength(1);
    expect(from('money/price.ts', '../../tests/x.ts')).toHaveLength(1);
    expect(from('money/price.ts', './lines.ts')).toEqual([]);
    expect(from('money/deep/price.ts', '../../results/price.ts')).toEqual([]);
  });

  it('keeps strings and takes comments out', () => {
    expect(withoutComments("a('//'); // b\nc(/* d */`e//f`)")).toBe("a('//'); \nc(`e//f`)");
  });
});
