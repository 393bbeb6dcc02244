import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { say } from '../../src/results/message.ts';
import { mm, type QuantityKind, q, text } from '../../src/results/quantity.ts';
import {
  fillSay,
  type ShowOptions,
  sayText,
  showClock,
  showDate,
  showQuantity,
  showSize,
  showText,
} from '../../src/results/show.ts';

const MM: ShowOptions = { unit: 'mm', currency: 'GBP' };
const INCH: ShowOptions = { unit: 'in', currency: 'USD' };

describe('a quantity as text', () => {
  it.each<[QuantityKind, number | string | boolean, string]>([
    ['length', 1357, '1357 mm'],
    ['length', -2.5, '−2.5 mm'],
    ['area', 524_400, '0.524 m²'],
    ['volume', 14_160_600, '0.0142 m³'],
    ['angle', 22.5, '22.5°'],
    ['mass', 2.0681, '2.07 kg'],
    ['mass', 21.43, '21.4 kg'],
    ['money', 164_500, '£1,645.00'],
    ['moisture', 9, '9 %'],
    ['temperature', 16, '16 °C'],
    ['time', 200, '3 h 20'],
    ['force', 981.2, '981 N'],
    ['stress', 3.456, '3.46 N/mm²'],
    ['density', 680, '680 kg/m³'],
    ['count', 4, '4'],
    ['number', 0.00294, '0.00294'],
    ['text', 'ash', 'ash'],
    ['date', '2026-12-11', '11 December 2026'],
    ['truth', true, 'yes'],
  ])('%s %s is shown as %s', (kind, value, written) => {
    expect(showText(q(kind, value), MM)).toBe(
      written.replace(' mm', '\u202fmm').replace(/ (?=(m²|m³|kg|%|°C|N))/, '\u202f'),
    );
  });

  it('uses the inch where it is asked for', () => {
    expect(showText(mm(44.45), INCH)).toBe('1 3/4\u202fin');
    expect(showText(q('area', 304.8 ** 2), INCH)).toBe('1\u202fft²');
    expect(showText(q('money', 1999), INCH)).toBe('$19.99');
  });

  it('keeps the zero that tells precision', () => {
    expect(showQuantity(mm(45), { ...MM, decimals: 1, trim: false })).toEqual({
      figure: '45.0',
      unit: 'mm',
      close: false,
    });
  });

  it('says that a figure is not known rather than NaN', () => {
    expect(showText(mm(Number.NaN), MM)).toBe('not known');
  });

  it('never shows float noise or a hyphen for minus', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), value => {
        expect(showQuantity(mm(value), MM).figure).toMatch(/^−?\d+(\.\d)?$/);
      }),
      { seed: 11 },
    );
  });
});

describe('sentences', () => {
  it('fills places and keeps figures apart from words', () => {
    const message = say('Seat moves {move} at the {where}.', { move: mm(2.5), where: text('outer screws') });
    expect(sayText(message, MM)).toBe('Seat moves 2.5\u202fmm at the outer screws.');
    expect(fillSay(message, MM)[1]).toEqual({
      name: 'move',
      figure: { figure: '2.5', unit: 'mm', close: false },
    });
  });

  it('leaves a place without a quantity to be seen, and does not reach into prototypes', () => {
    expect(sayText(say('{missing} and {constructor}'), MM)).toBe('{missing} and {constructor}');
  });
});

describe('sizes, dates and clocks', () => {
  it('writes sizes as the trade does', () => {
    expect(showSize({ length: 1357, width: 70, thickness: 32 }, MM)).toBe('1357 × 70 × 32');
    expect(showSize({ length: 1221, width: 16, thickness: 16 }, MM, true)).toBe('1221 × 16 dia');
  });

  it('names the day', () => {
    expect(showDate('2026-12-11', 'short')).toBe('Fri 11 Dec');
    expect(showDate('2026-11-25T08:00', 'long')).toBe('Wednesday 25 November 2026');
    expect(showDate('soon')).toBe('soon');
    expect(showClock('2026-11-25T09:20')).toBe('9:20');
  });
});
