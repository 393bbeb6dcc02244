/** The price of a job, why it is so, and what a change costs. Row 6. */
export { comparePrices } from './compare.ts';
export type { PriceInput } from './input.ts';
export { priceJob } from './price.ts';
export { priceVariation } from './variation.ts';
export { whyPrice } from './why-price.ts';
