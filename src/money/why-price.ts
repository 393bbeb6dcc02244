/** Why a figure of the price is what it is, down to what was entered, measured or read. Row 6. */
import type { StockUse } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Price, PriceLine } from '../results/price.ts';
import { type Quantity, q } from '../results/quantity.ts';
import type { Rule, Source } from '../results/source.ts';
import type { Why } from '../results/why.ts';
import { sum } from './amounts.ts';
import type { PriceInput } from './input.ts';
import { chargeFor, lineId, returnedShare } from './material.ts';
import { MON_1, MON_2, MON_3, MON_4, MON_5 } from './rules.ts';
import { percent } from './words.ts';
import { benchMinutes, changeOverMinutes, statedMinutes } from './work.ts';

const leaf = (
  figure: string,
  label: string,
  value: Quantity | undefined,
  how: Why['how'],
  source?: Source,
): Why => ({ figure, label, value, how, ...(source ? { source } : {}), inputs: [] });

const computed = (
  figure: string,
  label: string,
  value: Quantity,
  formula: string,
  inputs: Why[],
  rule?: Rule,
): Why => ({ figure, label, value, how: 'computed', formula, ...(rule ? { rule } : {}), inputs });

const money = (minor: number): Quantity => q('money', minor);
const minutes = (value: number): Quantity => q('time', value);

const WORKSHOP: Source = { text: 'the workshop', basis: 'workshop' };

function operationWhy(operation: Operation): Why {
  const { handsOn } = operation;
  return {
    figure: `operations.${operation.id}`,
    label: operation.title,
    value: minutes(handsOn.likely),
    how: handsOn.source.basis === 'workshop' || handsOn.source.basis === 'measured' ? 'measured' : 'table',
    source: handsOn.source,
    inputs: [],
  };
}

/** Operations of one kind add up; those that take no hands are left out. */
function kindWhys(operations: readonly Operation[]): Why[] {
  const working = operations.filter(o => o.handsOn.likely > 0);
  const kinds = [...new Set(working.map(o => o.kind))];
  return kinds.map(kind => {
    const of = working.filter(o => o.kind === kind);
    return computed(
      `offer.lines.work.${lineId(kind)}`,
      kind,
      minutes(sum(of.map(o => o.handsOn.likely))),
      `${of.length} operations`,
      of.map(operationWhy),
    );
  });
}

function changeOverWhy(context: PriceInput): Why {
  const changing = context.setups.setups.filter(s => s.changeOver > 0);
  return computed(
    'offer.lines.work.change-overs',
    'change-overs',
    minutes(changeOverMinutes(context)),
    `${changing.length} set-ups`,
    changing.map(s => leaf(`setups.${s.id}`, s.title, minutes(s.changeOver), 'computed', WORKSHOP)),
  );
}

function hoursWhy(context: PriceInput): Why {
  return computed(
    'offer.hours',
    'Hours',
    minutes(benchMinutes(context, 'likely') + statedMinutes(context)),
    'operations + change-overs + stated hours',
    [
      ...kindWhys(context.operations),
      changeOverWhy(context),
      ...context.commission.price.extraHours.map(h =>
        leaf(`price.hours.${h.id}`, h.label, minutes(h.hours * 60), 'entered', {
          text: 'the setting-out',
          basis: 'maker',
        }),
      ),
    ],
    MON_3,
  );
}

const rateWhy = ({ workshop }: PriceInput): Why =>
  leaf('rates.hour', 'rate an hour', money(workshop.rates.hour), 'entered', WORKSHOP);

function workWhy(line: PriceLine, context: PriceInput): Why {
  return computed(
    `offer.lines.${line.id}`,
    line.label,
    money(line.amount),
    line.how,
    [...kindWhys(context.operations), changeOverWhy(context), rateWhy(context)],
    MON_3,
  );
}

function useWhy(use: StockUse): Why {
  const back = returnedShare(use);
  const from = use.from === 'buy' ? `suppliers.${use.supplier ?? ''}.items.${use.item}` : `rack.${use.item}`;
  const price = leaf(
    `${from}.${use.from === 'buy' ? 'price' : 'value'}`,
    use.from === 'buy' ? 'price' : 'value on the rack',
    money(use.price),
    'entered',
    WORKSHOP,
  );
  if (use.from === 'buy') return { ...price, label: use.label };
  return computed(
    `cutting.${use.id}`,
    use.label,
    money(chargeFor(use)),
    `value less ${percent(back)} that goes back`,
    [price, leaf(`cutting.${use.id}.left`, 'goes back to the rack', q('percent', back * 100), 'computed')],
  );
}

function stockWhy(line: PriceLine, context: PriceInput): Why {
  const uses = context.cutting.materials
    .flatMap(m => m.uses)
    .filter(u => u.placed.length > 0 && lineId('stock', u.material) === line.id);
  return computed(
    `offer.lines.${line.id}`,
    line.label,
    money(line.amount),
    line.how,
    uses.map(useWhy),
    MON_1,
  );
}

const SUMS: Record<string, Rule> = {
  consumables: MON_2,
  glue: MON_2,
  finish: MON_2,
  contingency: MON_4,
  margin: MON_4,
};

/** Lines that are made of a few figures say them as the line holds them. */
function plainLine(line: PriceLine): Why {
  const rule = SUMS[line.id];
  return {
    figure: `offer.lines.${line.id}`,
    label: line.label,
    value: money(line.amount),
    how: line.id.startsWith('extra-') ? 'entered' : 'computed',
    formula: line.how,
    ...(rule ? { rule } : {}),
    source: line.source,
    inputs: line.inputs.map(i => leaf(i.from, i.label, q('text', i.value), 'entered')),
  };
}

function lineWhy(line: PriceLine, context: PriceInput): Why {
  if (line.id === 'work') return workWhy(line, context);
  return line.id.startsWith('stock-') ? stockWhy(line, context) : plainLine(line);
}

const netWhy = (price: Price, context: PriceInput): Why =>
  computed(
    'offer.net',
    'Before tax',
    money(price.net),
    price.lines.map(l => l.label).join(' + '),
    price.lines.map(l => lineWhy(l, context)),
  );

function taxWhy(price: Price, context: PriceInput): Why {
  const { registered, rate } = context.workshop.rates.tax;
  const inputs = [
    leaf('rates.tax.registered', 'registered for tax', q('truth', registered), 'entered', WORKSHOP),
    ...(registered
      ? [
          leaf('rates.tax.rate', 'rate', q('percent', rate * 100), 'entered', WORKSHOP),
          leaf('offer.net', 'Before tax', money(price.net), 'computed'),
        ]
      : []),
  ];
  const formula = registered ? `${percent(rate)} of the net, rounded half up` : 'not registered: none';
  return computed('offer.tax', 'Tax', money(price.tax), formula, inputs, MON_5);
}

function totalWhy(price: Price, context: PriceInput): Why {
  return computed('offer.total', 'Offer', money(price.total), 'before tax + tax', [
    netWhy(price, context),
    taxWhy(price, context),
  ]);
}

function spreadWhy(price: Price, end: 'low' | 'high', context: PriceInput): Why {
  return computed(
    `offer.${end}`,
    end === 'low' ? 'Offer at the least hours' : 'Offer at the greatest hours',
    money(price[end]),
    'the same lines with these hours',
    [
      leaf(
        `offer.hours.${end}`,
        'hours',
        minutes(benchMinutes(context, end) + statedMinutes(context)),
        'computed',
      ),
      rateWhy(context),
    ],
  );
}

const LINE = 'offer.lines.';

/**
 * The explanation of a figure of the offer: `offer.total`, `offer.net`, `offer.tax`, `offer.low`, `offer.high`,
 * `offer.hours`, or `offer.lines.ID`. Undefined for any other path, and for a line the offer does not have.
 * @param context what the price was made from
 */
export function whyPrice(figure: string, price: Price, context: PriceInput): Why | undefined {
  if (figure.startsWith(LINE)) {
    const line = price.lines.find(l => l.id === figure.slice(LINE.length));
    return line && lineWhy(line, context);
  }
  switch (figure) {
    case 'offer.total':
      return totalWhy(price, context);
    case 'offer.net':
      return netWhy(price, context);
    case 'offer.tax':
      return taxWhy(price, context);
    case 'offer.low':
      return spreadWhy(price, 'low', context);
    case 'offer.high':
      return spreadWhy(price, 'high', context);
    case 'offer.hours':
      return hoursWhy(context);
    default:
      return undefined;
  }
}
