import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exportFiles, partsCsv, shoppingCsv } from '../../src/papers/exports.ts';
import { safeName } from '../../src/papers/safe-name.ts';
import { DERIVED } from '../drawings/bench-derived.ts';

const show = { unit: 'mm' as const, currency: 'GBP' };
const text = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

describe('lists for other programs', () => {
  it('hold each mark once, in mm and kg', () => {
    const lines = text(partsCsv(DERIVED)).trimEnd().split('\r\n');
    expect(lines).toHaveLength(DERIVED.piece.groups.length + 1);
    expect(lines[3]).toBe('C,Lower cross rail,2,Ash,timber,340,80,32,250,360,85,32,0.59');
    expect(lines[5]).toContain('126.67');
  });

  it('give a spreadsheet nothing to run', () => {
    const shopping = text(shoppingCsv(DERIVED, 'GBP'));
    expect(shopping).toContain("'=Birch plywood");
    expect(shopping).not.toMatch(/(^|,|")=/m);
    const piece = {
      ...DERIVED.piece,
      groups: DERIVED.piece.groups.map(g => ({ ...g, name: '@SUM(A1)', mark: '+1', material: '-cmd' })),
    };
    expect(text(partsCsv({ ...DERIVED, piece }))).not.toMatch(/(^|,|")[=+@-]/m);
  });

  it('come with names that hold anywhere, each once', () => {
    const files = exportFiles(DERIVED, show);
    const names = files.map(f => f.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9-]+\.(csv|svg)$/);
    expect(names).toContain('view-turned.svg');
    expect(names).toContain('layout-01-board-11.svg');
  });

  it('draw layouts at a tenth of their size', () => {
    const board = text(exportFiles(DERIVED, show).find(f => f.name === 'layout-01-board-11.svg')!.bytes);
    expect(board).toMatch(/^<svg [^>]*width="[\d.]+mm"/);
    // The stock's outline: 2900 x 280 at 1 : 10.
    const [, x0, , x1] = /d="M([\d.]+) ([\d.]+)L([\d.]+) /.exec(board)!;
    expect(Number(x1) - Number(x0)).toBeCloseTo(290, 2);
  });
});

describe('file names', () => {
  it.each([
    ['Porch bench', 'porch-bench'],
    ['../../etc/passwd', 'etc-passwd'],
    ['\u00c4sche & \u0141uk', 'asche-uk'],
    ['CON', 'con-job'],
    ['', 'job'],
    ['\u4e16\u754c', 'job'],
  ])('%s is filed as %s', (given, name) => {
    expect(safeName(given)).toBe(name);
  });

  it('are always plain, short and not empty', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), given => {
        expect(safeName(given)).toMatch(/^[a-z0-9][a-z0-9-]{0,63}$/);
      }),
      { seed: 31 },
    );
  });
});
