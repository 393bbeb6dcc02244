import { parseMoney, wholeMinor } from '../quantities/money.ts';
import { type Fault, fault } from '../results/fault.ts';

/** A number is in major units, as typed on paper: 38 is 38.00. */
export function money(place: string, amount: number | string, faults: Fault[]): number {
  if (typeof amount === 'number') return wholeMinor(amount * 100);
  const parsed = parseMoney(amount);
  if (parsed.ok) return parsed.value;
  faults.push(fault(place, parsed.fault, `write ${parsed.expected}`));
  return 0;
}
