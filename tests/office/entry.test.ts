import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldText, readEntry, stepped } from '../../src/office/setting-out/entry.ts';
import { parseLength } from '../../src/quantities/length.ts';
import type { ParameterValue } from '../../src/results/derived.ts';
import { q } from '../../src/results/quantity.ts';

const show = { unit: 'mm', currency: 'GBP', denominator: 64 } as const;
const length: ParameterValue = {
  id: 'length',
  label: 'Length',
  value: q('length', 1380),
  text: '1380',
  entered: true,
  min: 900,
  max: 2000,
};

const value = (typed: string, unit: 'mm' | 'cm' | 'in' = 'mm', file: 'mm' | 'in' = 'mm'): string | number => {
  const entry = readEntry(typed, length, unit, file);
  if (!entry.ok) throw new Error(`${entry.fault}; ${entry.mend}`);
  return entry.value;
};

describe('what is typed into a size', () => {
  test('a bare figure in the unit of the file stays a bare figure', () => {
    expect(value('1400')).toBe(1400);
    expect(value('1400.5')).toBe(1400.5);
  });

  test('a bare figure in another unit carries its unit into the file', () => {
    expect(value('55 1/8', 'in')).toBe('55 1/8 in');
    expect(value('140', 'cm')).toBe('140 cm');
    expect(value('1400', 'mm', 'in')).toBe('1400 mm');
  });

  test('a typed unit wins', () => {
    expect(value('1.4 m', 'in')).toBe('1.4 m');
    expect(value('4\'7"', 'mm')).toBe('4\'7"');
  });

  test('an expression is taken as it is', () => {
    expect(value('2 * leg + 1290')).toBe('2 * leg + 1290');
    expect(value('height * 3')).toBe('height * 3');
  });

  test('what is wrong is said with its mend', () => {
    expect(readEntry('13,80', length, 'mm', 'mm')).toMatchObject({ ok: false, fault: '"13,80" has a comma' });
    expect(readEntry('', length, 'mm', 'mm')).toMatchObject({ ok: false });
    expect(readEntry('12', length, 'mm', 'mm')).toMatchObject({ ok: false, fault: 'the least is 900 mm' });
    expect(readEntry('3 m', length, 'mm', 'mm')).toMatchObject({ ok: false, fault: 'the most is 2000 mm' });
  });

  test('a choice must be one of the choices', () => {
    const wood = { ...length, value: q('text', 'ash'), choices: ['ash', 'oak'] };
    expect(readEntry('oak', wood, 'mm', 'mm')).toEqual({ ok: true, value: 'oak' });
    expect(readEntry('teak', wood, 'mm', 'mm')).toMatchObject({ ok: false, mend: 'ash, oak' });
  });

  test('means the same length in the file whatever the units', () => {
    const free = { ...length };
    delete free.min;
    delete free.max;
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 9000, noNaN: true }),
        fc.constantFrom('mm', 'cm', 'in'),
        fc.constantFrom('mm', 'in'),
        (figure, unit, file) => {
          const typed = figure.toFixed(3);
          const entry = readEntry(typed, free, unit, file);
          if (!entry.ok) throw new Error(entry.fault);
          const read = parseLength(String(entry.value), file);
          const meant = parseLength(typed, unit);
          expect(read.ok && meant.ok && Math.abs(read.value - meant.value)).toBeLessThan(1e-9);
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  test('nothing typed makes it throw', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), typed => {
        expect(typeof readEntry(typed, length, 'mm', 'mm').ok).toBe('boolean');
      }),
      { seed: 8, numRuns: 500 },
    );
  });
});

describe('steps by the arrow keys', () => {
  test('one millimetre, ten with Shift, to whole millimetres', () => {
    expect(stepped('1380', length, show, 1)).toBe('1381');
    expect(stepped('1380.4', length, show, 1)).toBe('1381');
    expect(stepped('1380', length, show, -10)).toBe('1370');
  });

  test('a sixteenth in inches', () => {
    expect(stepped('54 1/4', length, { ...show, unit: 'in' }, 1)).toBe('54 5/16');
  });

  test('stops at the limits', () => {
    expect(stepped('2000', length, show, 1)).toBe('2000');
    expect(stepped('900', length, show, -10)).toBe('900');
  });
});

test("a field starts from the figure alone in the person's unit", () => {
  expect(fieldText(length, show)).toBe('1380');
  expect(fieldText(length, { ...show, unit: 'in' })).toBe('54 21/64');
  expect(fieldText({ ...length, value: undefined, text: '2 x leg' }, show)).toBe('2 x leg');
});
