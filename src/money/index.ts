/** The price of a job, why it is so, and what a change costs. Row 6. */
export { comparePrices, type LineChange, type PriceChange } from './compare.ts';
export type { PriceInput } from './input.ts';
export { priceJob } from './price.ts';
export { MON_1, MON_2, MON_3, MON_4, MON_5 } from './rules.ts';
export { type TaxAtRate, type Taxable, type Totals, taxPerRate, totals } from './tax.ts';
export { whyPrice } from './why-price.ts';
