import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparePrices, type PriceInput, priceJob } from '../../src/money/index.ts';
import { returnedShare } from '../../src/money/material.ts';
import type { Price } from '../../src/results/price.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { commission, cuttingPlan, operation, setUpPlan, stock, workshop } from '../checks/fixtures.ts';
import { job } from './fixtures.ts';

const line = (price: Price, id: string): number | undefined => price.lines.find(l => l.id === id)?.amount;
const rates = (given: Partial<PriceInput['workshop']['rates']>) =>
  workshop({ rates: { ...workshop().rates, ...given } });

describe('MON-1: stock', () => {
  it('charges rack stock at its value less what goes back, bought stock whole', () => {
    const left = [{ x: 1500, y: 0, length: 1500, width: 200, fate: 'back to the rack' as const }];
    expect(line(priceJob(job()), 'stock-ash-european')).toBe(4000);
    expect(line(priceJob(job({ cutting: cuttingPlan([stock({ left })]) })), 'stock-ash-european')).toBe(2000);
    const bought = cuttingPlan([stock({ left, from: 'buy', supplier: 'yard' })]);
    expect(line(priceJob(job({ cutting: bought })), 'stock-ash-european')).toBe(4000);
    expect(returnedShare(stock({ left }))).toBe(0.5);
  });

  it('charges waste, and leaves out what nothing is cut from', () => {
    const waste = [{ x: 1500, y: 0, length: 1500, width: 200, fate: 'waste' as const }];
    const cutting = cuttingPlan([stock({ left: waste }), stock({ id: 'idle', placed: [] })]);
    expect(line(priceJob(job({ cutting })), 'stock-ash-european')).toBe(4000);
  });

  it('charges carriage once for each supplier, and bought-in parts by their number', () => {
    const shop = workshop({
      suppliers: [
        { id: 'yard', name: 'The yard', delivery: 2500, leadDays: 3, items: [] },
        { id: 'metal', name: 'Metal', delivery: 900, leadDays: 3, items: [] },
      ],
    });
    const buy = ['ash', 'oak'].map(id => ({
      id,
      item: id,
      supplier: 'yard',
      quantity: 1,
      unitPrice: 1,
      price: 1,
    }));
    const price = priceJob(
      job({
        workshop: shop,
        cutting: { ...cuttingPlan([stock()]), buy },
        boughtIn: [
          { part: 'hinge', name: 'Hinge', quantity: 4, price: 650 },
          { part: 'knob', name: 'Knob', quantity: 2, price: null },
        ],
      }),
    );
    expect(line(price, 'delivery-of-stock')).toBe(2500);
    expect(line(price, 'bought-in')).toBe(2600);
  });
});

describe('MON-2: glue, finish, small things', () => {
  it('counts out glue by joint area and finish by surface, coats and spread, where they have a price', () => {
    const shop = workshop({
      adhesives: { pva: { name: 'PVA', pricePerKg: 1000 } },
      finishes: { oil: { name: 'Oil', spread: 10, pricePerLitre: 5000 } },
    });
    const coat = { kind: 'coat' as const, name: 'coat', product: 'oil' };
    const oiled = commission({
      finishes: [{ id: 'oil', name: 'oil', steps: [coat, coat], instances: ['seat'], when: 'after glue-up' }],
    });
    const price = priceJob(job({ workshop: shop, commission: oiled }));
    // 0.5 m2 x 160 g/m2 = 80 g at 10.00 a kg.
    expect(line(price, 'glue')).toBe(80);
    // 2 (0.5 + 0.02 + 0.01) = 1.06 m2 x 2 coats / 10 x 1.1 = 0.2332 L at 50.00.
    expect(line(price, 'finish')).toBe(1166);
    expect(priceJob(job()).lines.filter(l => l.id === 'glue' || l.id === 'finish')).toEqual([]);
  });

  it('takes the rest as a share of the stock', () => {
    expect(line(priceJob(job()), 'consumables')).toBe(200);
    expect(line(priceJob(job({ workshop: rates({ consumables: 0 }) })), 'consumables')).toBeUndefined();
  });
});

describe('MON-3 and MON-4: work, contingency, margin', () => {
  it('charges hands-on minutes and change-overs, and the hours the maker states', () => {
    const setups = setUpPlan({ setups: [{ changeOver: 20 } as SetUp] });
    const stated = commission({
      price: { extras: [], extraHours: [{ id: 'visit', label: 'Visit', hours: 1.5 }] },
    });
    const price = priceJob(job({ setups, commission: stated }));
    expect(line(price, 'work')).toBe(4400);
    expect(line(price, 'hours-visit')).toBe(6600);
    expect(Object.values(price.hours).map(h => Math.round(h * 60))).toEqual([130, 150, 190]);
  });

  it('adds contingency on cost, margin on both, and extras as they are stated', () => {
    const stated = commission({
      price: { extras: [{ id: 'carry', label: 'Delivery', amount: 6000 }], extraHours: [] },
    });
    const price = priceJob(job({ commission: stated }));
    // 4000 stock, 200 small things, 40 min of 44.00: 2933.
    expect(line(price, 'work')).toBe(2933);
    expect(line(price, 'contingency')).toBe(571);
    expect(line(price, 'margin')).toBe(770);
    expect(line(price, 'extra-carry')).toBe(6000);
    expect(price.net).toBe(4000 + 200 + 2933 + 571 + 770 + 6000);
  });

  it("lets the job's own shares win over the workshop's", () => {
    const own = commission({ price: { extras: [], extraHours: [], margin: 0, contingency: 0.5 } });
    const price = priceJob(job({ commission: own }));
    expect(line(price, 'contingency')).toBe(Math.round(7133 / 2));
    expect(line(price, 'margin')).toBeUndefined();
  });
});

describe('MON-5: tax', () => {
  it('adds none when not registered, and the rate on the net when registered', () => {
    expect(priceJob(job()).tax).toBe(0);
    const price = priceJob(job({ workshop: rates({ tax: { registered: true, rate: 0.2 } }) }));
    expect(price.tax).toBe(Math.round(price.net * 0.2));
    expect(price.total).toBe(price.net + price.tax);
  });
});

const anyJob = fc
  .record({
    likely: fc.array(fc.double({ min: 0, max: 600, noNaN: true }), { maxLength: 12 }),
    change: fc.array(fc.integer({ min: 0, max: 30 }), { maxLength: 6 }),
    prices: fc.array(fc.integer({ min: 0, max: 50_000 }), { maxLength: 6 }),
    hour: fc.integer({ min: 0, max: 12_000 }),
    contingency: fc.double({ min: 0, max: 1, noNaN: true }),
    margin: fc.double({ min: 0, max: 1, noNaN: true }),
    consumables: fc.double({ min: 0, max: 0.5, noNaN: true }),
    registered: fc.boolean(),
    extra: fc.integer({ min: -5000, max: 20_000 }),
  })
  .map(g =>
    job({
      operations: g.likely.map((likely, i) =>
        operation(`o${i}`, {
          handsOn: { low: likely * 0.6, likely, high: likely * 1.9, source: { text: '', basis: 'memory' } },
        }),
      ),
      setups: setUpPlan({ setups: g.change.map(changeOver => ({ changeOver }) as SetUp) }),
      cutting: cuttingPlan(g.prices.map((price, i) => stock({ id: `s${i}`, price }))),
      commission: commission({
        price: { extras: [{ id: 'x', label: 'x', amount: g.extra }], extraHours: [] },
      }),
      workshop: rates({
        hour: g.hour,
        contingency: g.contingency,
        margin: g.margin,
        consumables: g.consumables,
        tax: { registered: g.registered, rate: 0.2 },
      }),
    }),
  );

describe('whatever the job', () => {
  it('every amount is whole, the lines add up to the net, and net and tax to the total', () => {
    fc.assert(
      fc.property(anyJob, input => {
        const price = priceJob(input);
        const amounts = [
          ...price.lines.map(l => l.amount),
          price.net,
          price.tax,
          price.total,
          price.low,
          price.high,
        ];
        expect(amounts.filter(a => !Number.isInteger(a))).toEqual([]);
        expect(price.lines.reduce((n, l) => n + l.amount, 0)).toBe(price.net);
        expect(price.net + price.tax).toBe(price.total);
        expect(new Set(price.lines.map(l => l.id)).size).toBe(price.lines.length);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it('low is not above likely, nor likely above high', () => {
    fc.assert(
      fc.property(anyJob, input => {
        const { low, total, high } = priceJob(input);
        expect(low).toBeLessThanOrEqual(total);
        expect(total).toBeLessThanOrEqual(high);
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  it('more hours never cost less', () => {
    fc.assert(
      fc.property(anyJob, fc.double({ min: 0, max: 500, noNaN: true }), (input, more) => {
        const longer = {
          ...input,
          operations: [
            ...input.operations,
            operation('more', {
              handsOn: { low: more, likely: more, high: more, source: { text: '', basis: 'memory' } },
            }),
          ],
        };
        expect(priceJob(longer).total).toBeGreaterThanOrEqual(priceJob(input).total);
      }),
      { seed: 23, numRuns: 200 },
    );
  });

  it('the changes of the lines add up to the change of the net', () => {
    fc.assert(
      fc.property(anyJob, anyJob, (a, b) => {
        const [before, after] = [priceJob(a), priceJob(b)];
        const change = comparePrices(before, after);
        expect(change.lines.reduce((n, l) => n + l.change, 0)).toBe(change.net);
        expect(before.total + change.total).toBe(after.total);
        expect(comparePrices(before, before)).toMatchObject({
          lines: [],
          net: 0,
          tax: 0,
          total: 0,
          hours: 0,
        });
      }),
      { seed: 24, numRuns: 100 },
    );
  });
});

describe('what a change costs', () => {
  it('names the lines that changed, the greatest first', () => {
    const before = priceJob(job());
    const after = priceJob(
      job({ operations: [operation('rip')], cutting: cuttingPlan([stock({ price: 9000 })]) }),
    );
    const change = comparePrices(before, after);
    expect(change.lines[0]).toEqual({
      id: 'stock-ash-european',
      label: 'Ash, European',
      before: 4000,
      after: 9000,
      change: 5000,
    });
    expect(change.hours).toBeCloseTo(-1 / 3, 9);
  });

  it('does not set pounds against euros', () => {
    const euro = priceJob(job({ workshop: workshop({ currency: 'EUR' }) }));
    expect(() => comparePrices(priceJob(job()), euro)).toThrow(
      'a price in GBP cannot be set against one in EUR',
    );
  });
});
