/** How figures are written into a line's own words. */
import { roundTo } from '../quantities/length.ts';
import { formatMoney } from '../quantities/money.ts';
import { formatHours } from '../quantities/time.ts';

export const money = (minor: number, currency: string): string => formatMoney(minor, currency);
export const percent = (share: number): string => `${roundTo(share * 100, 1)} %`;
export const hours = (minutes: number): string => formatHours(minutes);
