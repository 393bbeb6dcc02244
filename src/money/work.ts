/** Hours of a job and what they cost. */
import type { Operation } from '../results/operations.ts';
import type { PriceLine } from '../results/price.ts';
import { lineAmount, sum } from './amounts.ts';
import type { PriceInput } from './input.ts';
import { MON_3 } from './rules.ts';
import { hours, money } from './words.ts';

export type Estimate = 'low' | 'likely' | 'high';

/** Minutes of change-overs from one set-up to the next; they have no spread of their own. */
export const changeOverMinutes = ({ setups }: Pick<PriceInput, 'setups'>): number =>
  sum(setups.setups.map(s => s.changeOver));

/** Hands-on minutes and change-overs, without the hours the maker states. */
export const benchMinutes = (input: Pick<PriceInput, 'operations' | 'setups'>, estimate: Estimate): number =>
  sum(input.operations.map(o => o.handsOn[estimate])) + changeOverMinutes(input);

export const statedMinutes = ({ commission }: Pick<PriceInput, 'commission'>): number =>
  sum(commission.price.extraHours.map(h => h.hours * 60));

/** Minutes by kind of operation, most first. */
export function byKind(operations: readonly Operation[]): { kind: string; minutes: number }[] {
  const kinds = [...new Set(operations.map(o => o.kind))];
  return kinds
    .map(kind => ({
      kind,
      minutes: sum(operations.filter(o => o.kind === kind).map(o => o.handsOn.likely)),
    }))
    .filter(k => k.minutes > 0)
    .sort((a, b) => b.minutes - a.minutes || (a.kind < b.kind ? -1 : 1));
}

/** Work at the bench, one line. */
export function workLine(input: PriceInput, estimate: Estimate): PriceLine[] {
  const minutes = benchMinutes(input, estimate);
  const { currency, rates } = input.workshop;
  if (minutes <= 0) return [];
  return [
    {
      id: 'work',
      label: 'Work',
      amount: lineAmount(minutes, rates.hour, 60),
      how: `${hours(minutes)} x ${money(rates.hour, currency)}`,
      source: MON_3.source,
      inputs: [
        ...byKind(input.operations).map(k => ({
          label: k.kind,
          value: hours(k.minutes),
          from: 'operations',
        })),
        { label: 'change-overs', value: hours(changeOverMinutes(input)), from: 'setups' },
        { label: 'rate an hour', value: money(rates.hour, currency), from: 'rates.hour' },
      ],
    },
  ];
}

/** Hours the derivation cannot know: visits, design. */
export function statedHourLines({ commission, workshop }: PriceInput): PriceLine[] {
  return commission.price.extraHours.map(h => ({
    id: `hours-${h.id}`,
    label: h.label,
    amount: lineAmount(h.hours, workshop.rates.hour),
    how: `${hours(h.hours * 60)} x ${money(workshop.rates.hour, workshop.currency)}`,
    source: { text: 'the setting-out', basis: 'maker' },
    inputs: [
      { label: 'hours', value: hours(h.hours * 60), from: `price.hours.${h.id}` },
      { label: 'rate an hour', value: money(workshop.rates.hour, workshop.currency), from: 'rates.hour' },
    ],
  }));
}
