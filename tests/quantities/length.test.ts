import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, type LengthUnit, parseLength, roundTo } from '../../src/quantities/length.ts';

const read = (text: string, unit: LengthUnit = 'mm'): number | string => {
  const parsed = parseLength(text, unit);
  return parsed.ok ? parsed.value : parsed.fault;
};

describe('reading lengths', () => {
  test.each<[string, LengthUnit, number]>([
    ['40', 'mm', 40],
    ['40', 'cm', 400],
    ['40', 'in', 1016],
    ['40 mm', 'in', 40],
    ['4cm', 'mm', 40],
    ['1.2 m', 'mm', 1200],
    ['.5 in', 'mm', 12.7],
    ['1 3/4 in', 'mm', 44.45],
    ['1-3/4"', 'mm', 44.45],
    ['3/8', 'in', 9.525],
    ['1 3/4', 'in', 44.45],
    [`5'2"`, 'mm', 1574.8],
    [`5' 2 1/2"`, 'mm', 1587.5],
    ['5 ft', 'mm', 1524],
    ['5 ft 2 in', 'mm', 1574.8],
    ['-3 mm', 'mm', -3],
    ['\u22123', 'mm', -3],
  ])('%s in a file of %s', (text, unit, wanted) => {
    expect(read(text, unit)).toBeCloseTo(wanted, 9);
  });

  test.each([
    '',
    'mm',
    '4,5',
    '3 kg',
    '1/0 in',
    '1e999',
    'NaN',
    '--3',
    '4 5',
    '5"2\'',
    '1 3/4 mm mm',
    'a'.repeat(100),
  ])('%j is refused with an example of what may stand there', text => {
    const parsed = parseLength(text);
    expect(parsed.ok).toBe(false);
    if (!parsed.ok) expect(parsed.expected).toMatch(/40|full stop/);
  });

  test('any text is read or refused', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), text => typeof parseLength(text).ok === 'boolean'),
      { seed: 21, numRuns: 3000 },
    );
  });
});

describe('showing lengths', () => {
  test.each<[number, Parameters<typeof formatLength>[1], string]>([
    [1357, { unit: 'mm' }, '1357'],
    [126.6667, { unit: 'mm' }, '126.7'],
    [45, { unit: 'mm', trim: false, decimals: 1 }, '45.0'],
    [0.04, { unit: 'mm' }, '0'],
    [-0.04, { unit: 'mm' }, '0'],
    [-3, { unit: 'mm' }, '\u22123'],
    [1357, { unit: 'in' }, '53 27/64'],
    [44.45, { unit: 'in', denominator: 16 }, '1 3/4'],
    [9.525, { unit: 'in' }, '3/8'],
    [1200, { unit: 'm' }, '1.2'],
    [0.1 + 0.2, { unit: 'mm', decimals: 3 }, '0.3'],
  ])('%d as %o', (value, format, wanted) => {
    expect(formatLength(value, format)).toBe(wanted);
  });

  test('what is shown is read back within half of the last place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20000, max: 20000, noNaN: true }),
        fc.constantFrom<LengthUnit>('mm', 'cm', 'm', 'in'),
        (value, unit) => {
          const back = read(formatLength(value, { unit }), unit);
          expect(Math.abs(Number(back) - value)).toBeLessThanOrEqual(
            unit === 'in' ? 25.4 / 128 + 1e-9 : 0.05 + 1e-9,
          );
        },
      ),
      { seed: 22, numRuns: 1000 },
    );
  });

  test('rounding is half away from zero, without float noise', () => {
    expect([roundTo(1.005, 2), roundTo(2.5, 0), roundTo(-2.5, 0), roundTo(1.25, 1)]).toEqual([
      1.01, 3, -3, 1.3,
    ]);
  });
});
