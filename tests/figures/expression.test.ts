import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate, FigureFault } from '../../src/figures/evaluate.ts';
import { parseExpression } from '../../src/figures/expression.ts';
import { lengthOf, type Measure, numberOf } from '../../src/figures/measure.ts';

const names: Record<string, Measure> = {
  width: lengthOf(900),
  'rail.length': lengthOf(560),
  n: numberOf(3),
  timber: { type: 'text', value: 'oak' },
};
const read = (name: string): Measure => {
  const found = names[name];
  if (!found) throw new FigureFault(`there is no figure ${name}`, '');
  return found;
};
const run = (text: string): Measure => {
  const parsed = parseExpression(text);
  if (!parsed.ok) throw new FigureFault(parsed.fault, parsed.mend);
  return evaluate(parsed.node, read);
};
const value = (text: string): number | string | boolean => run(text).value;

describe('expressions', () => {
  test.each([
    ['width / 2 - 30 mm', 420],
    ['(width - 2 * 45 mm) / 3', 270],
    ['1 3/4 in + 1/4 in', 50.8],
    [`5'2" + 0 mm`, 1574.8],
    ['2 ft - 24 in', 0],
    ['max(10 mm, 1 in, 12 mm)', 25.4],
    ['round(width / 7, 1 mm)', 129],
    ['ceil(width / 400 mm)', 3],
    ['floor(2.9)', 2],
    ['abs(-3 mm)', 3],
    ['sqrt(width * width)', 900],
    ['sin(30 deg)', 0.5],
    ['tan(45)', 1],
    ['atan(1) + 0 deg', 45],
    ['width > 800 mm ? 3 : 2', 3],
    [`timber == 'oak' ? 20 mm : 25 mm`, 20],
    ['rail.length + n * 10 mm', 590],
    ['n > 2 && width < 1 m', true],
    ['-width + 1000 mm', 100],
  ])('%s', (text, wanted) => {
    expect(value(text)).toBe(wanted);
  });

  test.each([
    ['40 mm + 3', 'a length plus a plain number', 'write the unit: 3 mm'],
    ['width * width - 3 mm', 'an area minus a length', 'same kind'],
    ['width / 0', 'divides by nothing', 'other than 0'],
    ['round(width)', 'needs a step', 'round(x, 1 mm)'],
    ['sin(3 mm)', 'an angle is needed', '5 deg'],
    ['asin(2)', 'does not exist', 'between -1 and 1'],
    ['width ? 1 : 2', 'the question before ?', 'comparison'],
    ['wobble(3)', 'there is no wobble', 'min, max'],
    ['min()', 'takes 1 to 20 figures', 'mend the list'],
    ['width[0]', 'a name may only be words', 'rail.length'],
    ['width = 3', 'cannot be read', 'signs and parentheses'],
    ['(width', 'cannot be read', 'signs and parentheses'],
    [`timber + 3 mm`, 'is a word', 'number or a length'],
    ['width == 3', 'a length == a plain number', 'unit'],
  ])('%s is refused: %s', (text, fault, mend) => {
    try {
      run(text);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(FigureFault);
      expect((error as FigureFault).message).toContain(fault);
      expect((error as FigureFault).mend).toContain(mend);
    }
  });

  test('depth, length and count have their limits', () => {
    expect(parseExpression(`${'('.repeat(150)}1${')'.repeat(150)}`).ok).toBe(true);
    expect(parseExpression(`${'-'.repeat(60)}1`).ok).toBe(false);
    expect(parseExpression(`${'1+'.repeat(190)}1`).ok).toBe(false);
    expect(parseExpression('x'.repeat(500)).ok).toBe(false);
  });

  test('any text is read or refused, and nothing of the program is reached', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 60 }), fc.stringMatching(/^[a-z0-9 .+*/()'"<>=?:,-]{0,60}$/)),
        text => {
          const parsed = parseExpression(text);
          if (!parsed.ok) return parsed.fault.length > 0 && parsed.mend.length > 0;
          try {
            evaluate(parsed.node, read);
          } catch (error) {
            return error instanceof FigureFault;
          }
          return true;
        },
      ),
      { seed: 11, numRuns: 2000 },
    );
    for (const text of ['constructor.constructor', '__proto__.x', 'this.process', 'globalThis'])
      expect(() => run(text), text).toThrow(FigureFault);
  });

  test('sums of lengths agree with sums of numbers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 1, max: 9 }),
        (a, b, k) => {
          expect(value(`(${a} mm + ${b} mm) * ${k}`)).toBe((a + b) * k);
          expect(value(`${a} mm - ${b} mm`)).toBe(a - b);
        },
      ),
      { seed: 12, numRuns: 300 },
    );
  });
});
