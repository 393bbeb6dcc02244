import { parseMoney, wholeMinor } from '../quantities/money.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Outwork } from '../results/piece.ts';
import type { OutworkDocument } from './schema.ts';

/** Work given out as the job writes it; a price that cannot be read is a fault, and stands open. */
export function readOutwork(place: string, document: OutworkDocument, faults: Fault[]): Outwork {
  const { by, days, price, note } = document;
  return { by, days, price: priceOf(place, price, faults), ...(note === undefined ? {} : { note }) };
}

/** A number is in major units, as typed on paper: 80 is 80.00. */
function priceOf(place: string, price: number | string | undefined, faults: Fault[]): number | null {
  if (price === undefined) return null;
  if (typeof price === 'number') return wholeMinor(price * 100);
  const parsed = parseMoney(price);
  if (parsed.ok) return parsed.value;
  faults.push(fault(`${place}.price`, parsed.fault, `write ${parsed.expected}`));
  return null;
}
