/** Tax on an offer or an invoice: once for each rate, on the sum of its lines. Row 6. */
import type { Rule } from '../results/source.ts';
import { sum, toMinor } from './amounts.ts';

export const MON_5: Rule = {
  number: 'MON-5',
  says: 'Tax is worked out once for each rate on the sum of its lines, and rounded half up. A maker who is not registered adds none.',
  reason: 'Rounded on every line it comes out otherwise than on the sum, and the sum is what is paid.',
  source: {
    text: 'HMRC VATREC12010 and VATREC12030; EN 16931 sums tax by rate; whether to register is for local rules',
    basis: 'read',
  },
};

export interface Taxable {
  /** Minor units. */
  amount: number;
  /** Share, 0.2 for 20 %. */
  rate: number;
}

export interface TaxAtRate {
  rate: number;
  /** Sum of the lines at this rate, minor units. */
  taxable: number;
  tax: number;
}

/** Sums by rate, in the order in which the rates first appear, with the tax on each sum. */
export function taxPerRate(lines: readonly Taxable[]): TaxAtRate[] {
  const rates = [...new Set(lines.map(l => l.rate))];
  return rates.map(rate => {
    const taxable = sum(lines.filter(l => l.rate === rate).map(l => l.amount));
    return { rate, taxable, tax: toMinor(taxable * rate) };
  });
}

export interface Totals {
  net: number;
  tax: number;
  total: number;
  /** Total less what has been paid. */
  due: number;
  rates: TaxAtRate[];
}

/** Net, tax, total and what is still due of a set of lines, minor units. */
export function totals(lines: readonly Taxable[], paid = 0): Totals {
  const rates = taxPerRate(lines);
  const net = sum(lines.map(l => l.amount));
  const tax = sum(rates.map(r => r.tax));
  return { net, tax, total: net + tax, due: net + tax - paid, rates };
}
