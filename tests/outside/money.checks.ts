import { lineAmount, toMinor } from '../../src/money/amounts.ts';
import { type Taxable, totals } from '../../src/money/tax.ts';
import { type OutsideCheck, outside } from './check.ts';

/** Published amounts are in major units; ours are whole minor ones. */
const minor = (major: number): number => toMinor(major * 100);
const lines = (rate: number, ...amounts: number[]): Taxable[] =>
  amounts.map(a => ({ amount: minor(a), rate: rate / 100 }));

const figures = (of: Taxable[], paid = 0): Record<string, number> => {
  const { net, tax, total, due, rates } = totals(of, paid);
  return {
    net,
    tax,
    gross: total,
    due,
    ...Object.fromEntries(rates.map(r => [`tax at ${Math.round(r.rate * 100)} %`, r.tax])),
  };
};

const EN16931 =
  'EN 16931 validation examples, github ConnectingEurope/eInvoicing-EN16931 (EUPL), commit b6c9e06a, ubl/examples/';

const invoice = (
  id: string,
  file: string,
  published: Record<string, number>,
  ours: () => Record<string, number>,
): OutsideCheck => ({
  id,
  topic: 'invoice',
  published,
  ours,
  unit: 'minor unit',
  tolerance: 0,
  source: `${EN16931}${file}`,
  basis: 'printed answer',
});

export const checks: OutsideCheck[] = [
  outside({
    id: 'vat-add-20',
    topic: 'tax',
    inputs: { net: 100, rate: 20 },
    published: { tax: 2000, gross: 12000 },
    unit: 'penny',
    tolerance: 0,
    source: 'http://www.hmrc.gov.uk/vat/forms-rates/rates/calculating.htm',
    basis: 'printed answer',
    ours: ({ net, rate }) => {
      const { tax, total } = totals(lines(rate, net));
      return { tax, gross: total };
    },
  }),
  outside({
    id: 'vat-round-half-up',
    topic: 'tax',
    inputs: { pence: [0.49, 0.5, 1.5, 2.49] },
    published: [0, 1, 2, 2],
    unit: 'penny',
    tolerance: 0,
    source: 'rule: https://gov.uk/hmrc-internal-manuals/vat-trader-records/vatrec12030',
    basis: 'read rule, arithmetic',
    ours: ({ pence }) => pence.map(toMinor),
  }),
  outside({
    id: 'vat-line-vs-total',
    topic: 'tax',
    inputs: { each: 1.13, count: 3, rate: 20 },
    published: { 'on each line': 69, 'on the sum': 68 },
    unit: 'penny',
    tolerance: 0,
    source: 'both methods in https://gov.uk/hmrc-internal-manuals/vat-trader-records/vatrec12010',
    basis: 'read rule, arithmetic',
    ours: ({ each, count, rate }) => ({
      'on each line': count * totals(lines(rate, each)).tax,
      'on the sum': totals(lines(rate, ...Array<number>(count).fill(each))).tax,
    }),
  }),
  invoice(
    'en16931-two-rates',
    'ubl-tc434-example1.xml',
    { net: 22960, 'tax at 6 %': 1099, 'tax at 21 %': 974, tax: 2073, gross: 25033, due: 25033 },
    () =>
      figures([
        ...lines(6, 19.9, 9.85, 8.29, 14.46, 35, 35, 10.65, 1.55, 14.37, 8.29, 16.58, 9.95, 3.3, 3.9),
        ...lines(6, 102.12, -109.98),
        ...lines(21, 10.8, 7.6, 9.34, 18.63),
      ]),
  ),
  invoice(
    'en16931-half-cent-and-deposit',
    'ubl-tc434-example2.xml',
    {
      net: 143650,
      'tax at 25 %': 36513,
      'tax at 15 %': 15,
      'tax at 0 %': 0,
      tax: 36528,
      gross: 180178,
      due: 80178,
    },
    () => figures([...lines(25, 1460.5), ...lines(15, 1), ...lines(0, -25)], minor(1000)),
  ),
  invoice(
    'en16931-charge',
    'ubl-tc434-example3.xml',
    { net: 170000, 'tax at 25 %': 22500, 'tax at 10 %': 8000, tax: 30500, gross: 200500, due: 200500 },
    () => figures([...lines(25, 800), ...lines(10, 800), ...lines(25, 100)]),
  ),
  invoice(
    'en16931-half-prepaid',
    'ubl-tc434-example5.xml',
    { net: 400000, 'tax at 25 %': 37500, 'tax at 12 %': 30000, tax: 67500, gross: 467500, due: 233750 },
    () => figures([...lines(25, 1000, 500), ...lines(12, 2500)], minor(2337.5)),
  ),
  invoice(
    'en16931-base-quantity',
    'ubl-tc434-example8.xml',
    {
      'line 1': 14080,
      'line 2': 1616,
      'line 3': 16764,
      'line 4': 8874,
      'line 5': 3675,
      'line 6': 5650,
      'line 7': 8334,
      'line 8': 19031,
      'line 9': 6421,
      'line 10': 6446,
      net: 90891,
      tax: 19087,
      gross: 109978,
    },
    () => {
      const amounts = [
        [16000, 0.0088, 1],
        [16000, 0.00101, 1],
        [132, 15.24, 12],
        [58, 1.53, 1],
        [1, 441, 12],
        [1, 678, 12],
        [1, 83.34, 1],
        [1, 190.31, 1],
        [1, 64.21, 1],
        [1, 64.46, 1],
      ].map(([quantity, price, per]) => lineAmount(quantity!, price! * 100, per));
      const { net, tax, total } = totals(amounts.map(amount => ({ amount, rate: 0.21 })));
      return {
        ...Object.fromEntries(amounts.map((a, i) => [`line ${i + 1}`, a])),
        net,
        tax,
        gross: total,
      };
    },
  ),
  invoice('en16931-simple', 'ubl-tc434-example9.xml', { net: 14700, tax: 3087, gross: 17787 }, () => {
    const { net, tax, total } = totals([{ amount: lineAmount(3, 4900), rate: 0.21 }]);
    return { net, tax, gross: total };
  }),
  invoice('en16931-sub-cent-price', 'sample-discount-price.xml', { net: 1212, tax: 303, gross: 1515 }, () => {
    const { net, tax, total } = totals([{ amount: lineAmount(100, 12.12), rate: 0.25 }]);
    return { net, tax, gross: total };
  }),
  invoice('en16931-outside-vat', 'ubl-tc434-example7.xml', { net: 320000, tax: 0, gross: 320000 }, () => {
    const { net, tax, total } = totals(lines(0, 2500, 700));
    return { net, tax, gross: total };
  }),
];
