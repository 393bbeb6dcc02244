import { describe, expect, it } from 'vitest';
import { priceJob, whyPrice } from '../../src/money/index.ts';
import * as rules from '../../src/money/rules.ts';
import type { SetUp } from '../../src/results/setups.ts';
import type { Why } from '../../src/results/why.ts';
import { commission, cuttingPlan, setUpPlan, stock, workshop } from '../checks/fixtures.ts';
import { job } from './fixtures.ts';

const left = [{ x: 1500, y: 0, length: 1500, width: 200, fate: 'back to the rack' as const }];
const input = job({
  cutting: cuttingPlan([
    stock({ left }),
    stock({ id: 'b', item: 'b', from: 'buy', supplier: 'yard', price: 3000 }),
  ]),
  setups: setUpPlan({ setups: [{ id: 's1', title: 'Rip', changeOver: 8 } as SetUp] }),
  commission: commission({
    price: {
      extras: [{ id: 'carry', label: 'Delivery', amount: 6000 }],
      extraHours: [{ id: 'visit', label: 'Visit', hours: 1 }],
    },
  }),
});
const price = priceJob(input);
const why = (figure: string): Why => {
  const found = whyPrice(figure, price, input);
  if (!found) throw new Error(`nothing for ${figure}`);
  return found;
};
const flat = (w: Why): Why[] => [w, ...w.inputs.flatMap(flat)];
const value = (w: Why | undefined): number => Number(w?.value?.value);

describe('rules of money', () => {
  it('have each a number, a reason and a source of their own', () => {
    const all = Object.values(rules);
    expect(all.length).toBeGreaterThanOrEqual(5);
    expect(new Set(all.map(r => r.number)).size).toBe(all.length);
    expect(all.filter(r => !/^MON-\d+$/.test(r.number) || !r.reason || !r.source.text)).toEqual([]);
  });
});

describe('why a price is so', () => {
  it('goes from the total to every line, and to what was entered or read', () => {
    const all = flat(why('offer.total'));
    for (const line of price.lines) {
      expect(value(all.find(w => w.figure === `offer.lines.${line.id}`))).toBe(line.amount);
    }
    const ends = all.filter(w => w.inputs.length === 0);
    expect(ends.filter(w => !['entered', 'table', 'measured', 'computed'].includes(w.how))).toEqual([]);
    expect(ends.map(w => w.figure)).toEqual(
      expect.arrayContaining([
        'operations.rip',
        'operations.plane',
        'rates.hour',
        'rack.ash-1.value',
        'rates.tax.registered',
      ]),
    );
  });

  it('adds up: net is its lines, hours are their operations, change-overs and visits', () => {
    expect(why('offer.net').inputs.reduce((n, w) => n + value(w), 0)).toBe(price.net);
    expect(why('offer.hours').inputs.reduce((n, w) => n + value(w), 0)).toBeCloseTo(
      price.hours.likely * 60,
      9,
    );
    expect(value(why('offer.hours'))).toBe(108);
  });

  it('says whose word each operation is', () => {
    const rip = flat(why('offer.lines.work')).find(w => w.figure === 'operations.rip');
    expect([rip?.how, rip?.source?.text]).toEqual(['table', 'work times']);
  });

  it('shows what goes back to the rack, and takes bought stock at its price', () => {
    const stockWhy = why('offer.lines.stock-ash-european');
    expect(stockWhy.inputs.map(value)).toEqual([2000, 3000]);
    expect(stockWhy.inputs[0]?.formula).toBe('value less 50 % that goes back');
  });

  it('answers for tax, low and high, extras and stated hours', () => {
    expect(why('offer.tax').formula).toBe('not registered: none');
    const registered = job({
      workshop: workshop({ rates: { ...workshop().rates, tax: { registered: true, rate: 0.2 } } }),
    });
    expect(whyPrice('offer.tax', priceJob(registered), registered)?.formula).toBe(
      '20 % of the net, rounded half up',
    );
    expect(value(why('offer.low'))).toBe(price.low);
    expect(value(why('offer.high'))).toBe(price.high);
    expect(why('offer.lines.extra-carry').how).toBe('entered');
    expect(why('offer.lines.hours-visit').formula).toBe('1 h x \u00a344.00');
  });

  it('has no answer for a line or a figure that is not there', () => {
    expect(whyPrice('offer.lines.gold', price, input)).toBeUndefined();
    expect(whyPrice('parts.rail.length', price, input)).toBeUndefined();
  });
});
