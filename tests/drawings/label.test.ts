import { expect, test } from 'vitest';
import { labelItems } from '../../src/drawings/label.ts';
import { codeModules, scanCode } from '../../src/drawings/scan-code.ts';

/** A dark ring, a light ring and a dark heart: what a finder is (ISO/IEC 18004, 6.3.3). */
const FINDER = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111'];

test('the code has its finders in three corners and the timing line between them', () => {
  const rows = codeModules('2026-031 leg_x').map(row => row.map(dark => (dark ? '1' : '0')).join(''));
  const n = rows.length;
  expect((n - 21) % 4).toBe(0);
  const corner = (r: number, c: number): string[] => rows.slice(r, r + 7).map(row => row.slice(c, c + 7));
  expect(corner(0, 0)).toEqual(FINDER);
  expect(corner(0, n - 7)).toEqual(FINDER);
  expect(corner(n - 7, 0)).toEqual(FINDER);
  expect(rows[6]!.slice(8, n - 8)).toMatch(/^(10)*1$/);
});

test('its drawing covers the dark modules and no more, within its quiet ground', () => {
  const rows = codeModules('A');
  const side = rows.length + 8;
  const [, drawn] = scanCode('A', 0, 0, side);
  if (drawn?.kind !== 'path') throw new Error('no code');
  const corners = drawn.d.filter(command => command[0] !== 'Z').map(command => [command[1], command[2]]);
  let area = 0;
  for (let i = 0; i < corners.length; i += 4)
    area += (corners[i + 1]![0]! - corners[i]![0]!) * (corners[i + 2]![1]! - corners[i + 1]![1]!);
  expect(area).toBeCloseTo(rows.flat().filter(Boolean).length, 6);
  expect(Math.min(...(corners.flat() as number[]))).toBeCloseTo(4, 6);
  expect(Math.max(...(corners.flat() as number[]))).toBeCloseTo(side - 4, 6);
});

test('another text is another code', () => {
  expect(codeModules('2026-031 leg_x')).not.toEqual(codeModules('2026-031 leg_y'));
});

test('the grain arrow runs the way of the grain, and is left out where there is none', () => {
  const label = {
    mark: 'A',
    name: 'Side',
    size: '720 x 278 x 18',
    material: 'Birch plywood',
    lipped: ['face edge' as const],
    shape: 2.6,
    code: '1 side',
  };
  const along = (grain: 'length' | 'width' | 'free') =>
    labelItems({ ...label, grain }, 70, 37).flatMap(item =>
      item.kind === 'polyline' && item.points.length === 2 ? [item.points] : [],
    );
  const [[a, b]] = along('length') as [[[number, number], [number, number]]];
  expect(a[1]).toBeCloseTo(b[1], 6);
  const [[c, d]] = along('width') as [[[number, number], [number, number]]];
  expect(c[0]).toBeCloseTo(d[0], 6);
  expect(along('free')).toEqual([]);
});
