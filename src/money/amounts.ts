/** Whole minor units out of quantities and rates. Row 6. */

/**
 * Rounds to whole minor units, half away from zero (half up for what is asked, half down for what is given back).
 * A product of decimals that should end in a half may fall a hair short of it in binary (1.005 x 100), so what
 * lies within 1e-6 of a half counts as one.
 * Source: HMRC VATREC12030, half a penny or more is rounded up.
 */
export function toMinor(value: number): number {
  return Math.sign(value) * Math.floor(Math.abs(value) + 0.5 + 1e-6) || 0;
}

/**
 * Amount of a line, minor units: quantity x price / base quantity, rounded once.
 * @param price minor units, fractions allowed (12.12 minor for a price of 0.1212)
 * @param per how many the price is for
 */
export const lineAmount = (quantity: number, price: number, per = 1): number =>
  toMinor((quantity * price) / per);

export const sum = (amounts: readonly number[]): number => amounts.reduce((all, a) => all + a, 0);
