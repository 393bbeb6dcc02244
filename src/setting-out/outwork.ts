import type { Fault } from '../results/fault.ts';
import type { Outwork } from '../results/piece.ts';
import { money } from './money.ts';
import type { OutworkDocument } from './schema.ts';

/** Work given out as the job writes it; a price that cannot be read is a fault. */
export function readOutwork(place: string, document: OutworkDocument, faults: Fault[]): Outwork {
  const { by, days, price, note } = document;
  return {
    by,
    days,
    price: price === undefined ? null : money(`${place}.price`, price, faults),
    ...(note === undefined ? {} : { note }),
  };
}
