import { describe, expect, test } from 'vitest';
import { readJobFile } from '../../src/job-file/read.ts';

const HEAD = 'scantling: job/1\ntitle: Trial\n';
const said = (text: string): string[] => readJobFile(text).faults.map(f => `${f.line}: ${f.fault}`);

describe('closed doors of the file', () => {
  test('a forbidden word brought in as an alias for an id is refused', () => {
    expect(said(`${HEAD}notes: &a __proto__\nparts:\n  ? *a\n  : { kind: timber }\n`)).toEqual([
      '5: an id is made from an alias or a list',
    ]);
    expect(({} as { kind?: string }).kind).toBeUndefined();
  });

  test('tens of thousands of ids are compared in one pass, and twins are still found', () => {
    const many = Array.from({ length: 29000 }, (_, i) => `  p${i}: 1`).join('\n');
    expect(said(`${HEAD}parameters:\n${many}\n  p7: 2\n  p8: 3\n`)).toEqual([
      '29004: the same id stands here twice',
      '29005: the same id stands here twice',
    ]);
  });

  test('brackets without end are told as depth', () => {
    expect(said(`${HEAD}notes: ${'['.repeat(100_000)}`)[0]).toBe('3: the entries are nested too deep');
  });

  test('a byte order mark and the line ends of another system change nothing', () => {
    const text = `${HEAD}parts:\n  a: { kind: timber, length: 10, width: 5, thickness: 4 }\n`;
    const other = readJobFile(`\ufeff${text.replace(/\n/g, '\r\n')}`);
    expect(other.faults).toEqual([]);
    expect(other.document).toEqual(readJobFile(text).document);
  });

  test('ids that are words of the program itself are plain ids', () => {
    const { document, faults } = readJobFile(
      `${HEAD}parameters: { toString: 4, valueOf: 5, hasOwnProperty: 3 }\n`,
    );
    expect(faults).toEqual([]);
    expect(Object.keys(document!.parameters!)).toEqual(['toString', 'valueOf', 'hasOwnProperty']);
  });
});

describe('a file with very many faults', () => {
  test('still opens: each fault is told once and the sound entries are kept', () => {
    const bad = Array.from({ length: 1000 }, (_, i) => `  p${i}: { kind: nonsense, width: [], colour: red }`);
    const { document, faults } = readJobFile(
      `${HEAD}parts:\n${bad.join('\n')}\n  sound: { kind: timber, length: 10 }\n`,
    );
    expect(Object.keys(document!.parts!)).toEqual(['sound']);
    expect(faults.filter(f => f.place === 'parts.p999.kind').map(f => [f.line, f.fault])[0]).toEqual([
      1003,
      '"nonsense" is not one of the words known here',
    ]);
    expect(new Set(faults.map(f => f.place)).size).toBeGreaterThan(2000);
  });

  test('several faults of one part are told, and what is missing takes only that part along', () => {
    const { document, faults } = readJobFile(
      `${HEAD}parts:\n  a: { kind: timber, colour: red, shine: high, width: [] }\n  b: { width: [], length: 4 }\n  c: { kind: bar }\n`,
    );
    expect(document!.parts).toEqual({ a: { kind: 'timber' }, c: { kind: 'bar' } });
    expect(faults.map(f => f.place)).toEqual(
      expect.arrayContaining([
        'parts.a.colour',
        'parts.a.shine',
        'parts.a.width',
        'parts.b.width',
        'parts.b.kind',
      ]),
    );
  });

  test('faults in a list take out the items that are wrong and no others', () => {
    const { document } = readJobFile(`${HEAD}finishes:\n  oil: { on: [leg, 4, rail, 5, top], steps: {} }\n`);
    expect(document!.finishes!.oil!.on).toEqual(['leg', 'rail', 'top']);
  });
});
