/** The price of a job, line by line: the lines add up to the net exactly. Row 6. */
import type { Price, PriceLine } from '../results/price.ts';
import type { Source } from '../results/source.ts';
import { lineAmount, sum } from './amounts.ts';
import type { PriceInput } from './input.ts';
import {
  boughtInLine,
  consumablesLine,
  deliveryLine,
  finishLine,
  glueLine,
  outworkLines,
  stockLines,
} from './material.ts';
import { MON_4 } from './rules.ts';
import { taxPerRate } from './tax.ts';
import { money, percent } from './words.ts';
import { benchMinutes, type Estimate, statedHourLines, statedMinutes, workLine } from './work.ts';

export type { PriceInput } from './input.ts';

/** A share of a sum as a line of its own. */
function shareLine(
  id: string,
  label: string,
  base: number,
  share: number,
  input: PriceInput,
  from: string,
  source: Source,
): PriceLine[] {
  const amount = lineAmount(base, share);
  if (amount === 0) return [];
  const { currency } = input.workshop;
  return [
    {
      id,
      label,
      amount,
      how: `${percent(share)} of ${money(base, currency)}`,
      source,
      inputs: [
        { label: 'of', value: money(base, currency), from: 'offer.lines' },
        { label: 'share', value: percent(share), from },
      ],
    },
  ];
}

/** All lines of the offer before tax. */
function linesOf(input: PriceInput, estimate: Estimate): PriceLine[] {
  const { commission, workshop } = input;
  const stock = stockLines(input);
  const cost = [
    ...stock,
    ...deliveryLine(input),
    ...boughtInLine(input),
    ...outworkLines(input),
    ...glueLine(input),
    ...finishLine(input),
    ...consumablesLine(stock, input),
    ...workLine(input, estimate),
    ...statedHourLines(input),
  ];
  const base = sum(cost.map(l => l.amount));
  const ownContingency = commission.price.contingency;
  const contingency = shareLine(
    'contingency',
    'Contingency',
    base,
    ownContingency ?? workshop.rates.contingency,
    input,
    ownContingency === undefined ? 'rates.contingency' : 'price.contingency',
    MON_4.source,
  );
  const ownMargin = commission.price.margin;
  const margin = shareLine(
    'margin',
    'Margin on cost',
    base + sum(contingency.map(l => l.amount)),
    ownMargin ?? workshop.rates.margin,
    input,
    ownMargin === undefined ? 'rates.margin' : 'price.margin',
    MON_4.source,
  );
  const extras = commission.price.extras.map(
    (e): PriceLine => ({
      id: `extra-${e.id}`,
      label: e.label,
      amount: e.amount,
      how: 'as stated',
      source: { text: 'the setting-out', basis: 'maker' },
      inputs: [{ label: e.label, value: money(e.amount, workshop.currency), from: `price.extras.${e.id}` }],
    }),
  );
  return [...cost, ...contingency, ...margin, ...extras];
}

/** Tax on a net sum: none where the workshop is not registered for it. */
function taxOn(net: number, { workshop }: PriceInput): number {
  const { registered, rate } = workshop.rates.tax;
  return registered ? taxPerRate([{ amount: net, rate }])[0]!.tax : 0;
}

const totalAt = (input: PriceInput, estimate: Estimate): number => {
  const net = sum(linesOf(input, estimate).map(l => l.amount));
  return net + taxOn(net, input);
};

/**
 * The price of a job in whole minor units. `net` is the sum of the lines, exactly; `low` and `high` are what the
 * client would pay at the least and the greatest of the hours; `hours` are hours.
 */
export function priceJob(input: PriceInput): Price {
  const lines = linesOf(input, 'likely');
  const net = sum(lines.map(l => l.amount));
  const tax = taxOn(net, input);
  const hoursAt = (estimate: Estimate): number => (benchMinutes(input, estimate) + statedMinutes(input)) / 60;
  return {
    currency: input.workshop.currency,
    lines,
    net,
    tax,
    total: net + tax,
    low: totalAt(input, 'low'),
    high: totalAt(input, 'high'),
    hours: { low: hoursAt('low'), likely: hoursAt('likely'), high: hoursAt('high') },
  };
}
