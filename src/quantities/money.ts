/** Money is whole minor units (pence, cents) everywhere inside; text only at the edge. */

import type { Parsed } from './length.ts';

const SYMBOL: Record<string, string> = { GBP: '\u00a3', EUR: '\u20ac', USD: '$' };
const SAFE = Number.MAX_SAFE_INTEGER / 100;

/** `1,645.00` or `38` or `\u00a312.40` to minor units. */
export function parseMoney(input: string): Parsed<number> {
  const expected = 'an amount such as 38, 38.50 or 1,645.00';
  const cleaned = input
    .trim()
    .replace(/^[\u00a3\u20ac$]\s*/, '')
    .replace(/(\d),(?=\d{3}(\D|$))/g, '$1');
  if (!/^-?\d+(\.\d{1,2})?$/.test(cleaned))
    return { ok: false, fault: `"${input}" is not an amount of money`, expected };
  const value = Math.round(Number(cleaned) * 100);
  return Math.abs(value) > SAFE
    ? { ok: false, fault: `"${input}" is beyond what can be counted exactly`, expected }
    : { ok: true, value };
}

/** Rounds half away from zero to whole minor units. */
export const wholeMinor = (value: number): number =>
  Math.sign(value) * Math.round(Math.abs(value) + 1e-9) || 0;

export function formatMoney(minor: number, currency: string, withCents = true): string {
  const magnitude = Math.abs(minor);
  const whole = Math.floor(magnitude / 100)
    .toString()
    .replace(/\B(?=(\d{3})+$)/g, ',');
  const cents = withCents ? `.${String(magnitude % 100).padStart(2, '0')}` : '';
  const symbol = SYMBOL[currency] ?? `${currency} `;
  return `${minor < 0 ? '\u2212' : ''}${symbol}${
    withCents
      ? whole
      : Math.round(magnitude / 100)
          .toString()
          .replace(/\B(?=(\d{3})+$)/g, ',')
  }${cents}`;
}
