import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatMoney, parseMoney, wholeMinor } from '../../src/quantities/money.ts';
import { formatMinutes, parseMinutes } from '../../src/quantities/time.ts';

test.each([
  ['38', 3800],
  ['38.5', 3850],
  ['\u00a31,645.00', 164500],
  ['-12.40', -1240],
  ['0.01', 1],
])('%s is %i minor units', (text, wanted) => {
  expect(parseMoney(text)).toEqual({ ok: true, value: wanted });
});

test.each(['', '1.234', '1,2', 'ten', '1e9', '99999999999999999999'])('%j is no amount', text => {
  expect(parseMoney(text).ok).toBe(false);
});

test('money shown is money read', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), minor => {
      expect(
        parseMoney(
          formatMoney(minor, 'GBP')
            .replace('\u2212', '-')
            .replace(/^-\u00a3/, '-'),
        ),
      ).toEqual({ ok: true, value: minor });
    }),
    { seed: 31, numRuns: 500 },
  );
  expect([formatMoney(164500, 'GBP'), formatMoney(164550, 'EUR', false), formatMoney(5, 'NOK')]).toEqual([
    '\u00a31,645.00',
    '\u20ac1,646',
    'NOK 0.05',
  ]);
  expect([wholeMinor(0.5), wholeMinor(-0.5), wholeMinor(1.4999)]).toEqual([1, -1, 1]);
});

test.each([
  ['45 min', 45],
  ['2.5 h', 150],
  ['3 d', 4320],
  ['2 weeks', 20160],
  ['90', 90],
])('%s', (text, wanted) => {
  expect(parseMinutes(text)).toEqual({ ok: true, value: wanted });
});

test('times are shown as a maker says them', () => {
  expect([45, 60, 200, 2880, 3000].map(formatMinutes)).toEqual(['45 min', '1 h', '3 h 20', '2 d', '2 d 2 h']);
  expect(parseMinutes('soon').ok).toBe(false);
});
