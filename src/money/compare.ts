/** What a change costs: two prices side by side. Row 6. */
import type { Price } from '../results/price.ts';

export interface LineChange {
  id: string;
  label: string;
  /** Minor units; 0 where the line was not there. */
  before: number;
  after: number;
  change: number;
}

export interface PriceChange {
  /** Lines that changed, the greatest change first. */
  lines: LineChange[];
  net: number;
  tax: number;
  total: number;
  hours: number;
}

/**
 * The second price less the first, minor units and hours. The changes of all lines add up to the change of the net.
 * @throws RangeError when the two are in different currencies
 */
export function comparePrices(before: Price, after: Price): PriceChange {
  if (before.currency !== after.currency) {
    throw new RangeError(`a price in ${before.currency} cannot be set against one in ${after.currency}`);
  }
  const ids = [...new Set([...before.lines, ...after.lines].map(l => l.id))];
  const lines = ids.map(id => {
    const [old, now] = [before.lines.find(l => l.id === id), after.lines.find(l => l.id === id)];
    const amounts = { before: old?.amount ?? 0, after: now?.amount ?? 0 };
    return {
      id,
      label: (now ?? old)!.label,
      ...amounts,
      change: amounts.after - amounts.before,
    };
  });
  return {
    lines: lines
      .filter(l => l.change !== 0)
      .sort((a, b) => Math.abs(b.change) - Math.abs(a.change) || (a.id < b.id ? -1 : 1)),
    net: after.net - before.net,
    tax: after.tax - before.tax,
    total: after.total - before.total,
    hours: after.hours.likely - before.hours.likely,
  };
}
