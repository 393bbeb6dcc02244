/** What a change costs now, when some parts are already begun. Row 6. */
import type { Operation, OperationKind } from '../results/operations.ts';
import type { Instance } from '../results/piece.ts';
import type { Price } from '../results/price.ts';
import { lineAmount, sum, toMinor } from './amounts.ts';
import { comparePrices, type PriceChange } from './compare.ts';
import type { PriceInput } from './input.ts';
import { chargeFor } from './material.ts';
import { taxPerRate } from './tax.ts';

/** What can become of a part that is begun when the setting-out changes. */
export type Fate = 'follows' | 'can be cut down' | 'is made again' | 'is not wanted';

export interface BegunPart {
  instance: string;
  name: string;
  fate: Fate;
  /** Hands-on minutes already spent on it: its share of every operation done. */
  minutes: number;
  /** Its share of the stock it was cut from, minor units. */
  stock: number;
}

export interface Variation {
  /** Of the offer, as if nothing were begun. */
  change: PriceChange;
  /** Parts already begun that the change touches. */
  parts: BegunPart[];
  /** Minutes spent on parts that cannot follow. */
  lostMinutes: number;
  /** Those minutes at the rate, and the stock of those parts, minor units. */
  lostWork: number;
  lostStock: number;
  /** What the client pays for the change: before tax, tax, and together. */
  net: number;
  tax: number;
  total: number;
}

export interface Offered {
  input: PriceInput;
  price: Price;
}

/** Operations after which a part is cut to its joints and no longer a blank. */
const JOINTED: readonly OperationKind[] = ['cut', 'drill', 'shape', 'glue up', 'finish'];

/** A part and all that is made on it, as text: equal text, equal part. */
const made = ({ size, cuts, material, round, mirrored }: Instance): string =>
  JSON.stringify([size, cuts, material, round, mirrored]);

const blankOf = (id: string, { piece }: PriceInput) =>
  piece.groups.find(g => g.instances.includes(id))?.blank;

function fitsInto(id: string, before: PriceInput, after: PriceInput): boolean {
  const [old, now] = [blankOf(id, before), blankOf(id, after)];
  return (
    old !== undefined &&
    now !== undefined &&
    now.length <= old.length &&
    now.width <= old.width &&
    now.thickness <= old.thickness
  );
}

function fateOf(part: Instance, done: readonly Operation[], before: PriceInput, after: PriceInput): Fate {
  const now = after.piece.instances.find(i => i.id === part.id);
  if (!now) return 'is not wanted';
  if (made(now) === made(part)) return 'follows';
  const jointed = done.some(o => JOINTED.includes(o.kind));
  return !jointed && now.material === part.material && fitsInto(part.id, before, after)
    ? 'can be cut down'
    : 'is made again';
}

/** The share of a part in the stock it was laid out in, by its area. */
function stockOf(id: string, { cutting }: PriceInput): number {
  return sum(
    cutting.materials
      .flatMap(m => m.uses)
      .map(use => {
        const areas = use.placed.map(p => ({ id: p.instance, area: p.length * p.width }));
        const whole = sum(areas.map(a => a.area));
        const own = sum(areas.filter(a => a.id === id).map(a => a.area));
        return whole > 0 ? toMinor((chargeFor(use) * own) / whole) : 0;
      }),
  );
}

function begun(part: Instance, done: readonly Operation[], before: PriceInput, after: PriceInput): BegunPart {
  const own = done.filter(o => o.instances.includes(part.id));
  return {
    instance: part.id,
    name: part.name,
    fate: fateOf(part, own, before, after),
    minutes: sum(own.map(o => o.handsOn.likely / o.instances.length)),
    stock: stockOf(part.id, before),
  };
}

/**
 * The price of a change after the order, minor units: the new offer less the old one, and what is lost with parts
 * that are begun and cannot follow (rule MON-6). A change that saves more than it loses comes out negative.
 * @param done ids of the operations of `before` that are done
 */
export function priceVariation(before: Offered, after: Offered, done: ReadonlySet<string>): Variation {
  const operations = before.input.operations.filter(o => done.has(o.id));
  const touched = before.input.piece.instances.filter(i => operations.some(o => o.instances.includes(i.id)));
  const parts = touched
    .map(part => begun(part, operations, before.input, after.input))
    .filter(p => p.fate !== 'follows');
  const lost = parts.filter(p => p.fate !== 'can be cut down');
  const lostMinutes = sum(lost.map(p => p.minutes));
  const { rates } = after.input.workshop;
  const lostWork = lineAmount(lostMinutes, rates.hour, 60);
  const lostStock = sum(lost.map(p => p.stock));
  const change = comparePrices(before.price, after.price);
  const net = change.net + lostWork + lostStock;
  const tax = rates.tax.registered ? taxPerRate([{ amount: net, rate: rates.tax.rate }])[0]!.tax : 0;
  return { change, parts, lostMinutes, lostWork, lostStock, net, tax, total: net + tax };
}
