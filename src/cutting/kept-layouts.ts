/**
 * Layouts that the maker accepted or has cut: kept whole with the hash of what they were made from. They are
 * never replaced; what no longer agrees is said, and only the rest is planned anew.
 */
import type { CuttingPlan, Demand, MaterialPlan, ShoppingLine, StockUse } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { collectDemands } from './demands.ts';
import { ordersOf } from './orders.ts';
import { wasteShare } from './waste.ts';
import { wished } from './wishes.ts';

export type LaidLayouts = NonNullable<CuttingDocument['laid']>;

/** FNV-1a, 32 bits (Fowler, Noll, Vo 1991), over two starts: 16 figures in hexadecimal. Tells change, not malice. */
function fingerprint(text: string): string {
  return [0x811c9dc5, 0x01234567]
    .map(start => {
      let hash = start;
      for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
      return hash.toString(16).padStart(8, '0');
    })
    .join('');
}

/** Hash of the blanks that lie on a layout and the stock they lie on, as they are wanted now. */
export function madeFrom(use: StockUse, demands: readonly Demand[]): string {
  const byInstance = new Map(demands.map(demand => [demand.instance, demand]));
  const blanks = use.placed
    .map(placed => byInstance.get(placed.instance))
    .map(
      demand =>
        demand && [
          demand.instance,
          demand.mark,
          demand.material,
          demand.length,
          demand.width,
          demand.thickness,
          demand.across,
          demand.grade,
        ],
    )
    .sort();
  return fingerprint(JSON.stringify([use.item, use.length, use.width, use.thickness, use.kerf, blanks]));
}

/** The same for a derived job. */
export const madeFromJob = (
  use: StockUse,
  { piece, operations }: { piece: Piece; operations: readonly Operation[] },
  wishes: CuttingDocument | undefined,
): string => madeFrom(use, wished(collectDemands(piece, operations), piece, wishes));

/** The kept layouts as stock in use, each with what is no longer true of it. */
export function keptUses(laid: LaidLayouts, demands: readonly Demand[]): StockUse[] {
  const byInstance = new Map(demands.map(demand => [demand.instance, demand]));
  return Object.entries(laid).map(([id, { layout, made_from, done }]) => {
    const use = { ...(layout as StockUse), id };
    const stale = use.placed.flatMap(placed => changeOf(placed, byInstance.get(placed.instance), use));
    if (stale.length === 0 && made_from !== madeFrom(use, demands))
      stale.push('What it was made from has changed since; its blanks still have their sizes.');
    return { ...use, kept: { stale, ...(done === undefined ? {} : { done }) } };
  });
}

function changeOf(placed: StockUse['placed'][number], demand: Demand | undefined, use: StockUse): string[] {
  const had = `${round(placed.length)} x ${round(placed.width)}`;
  if (!demand) return [`${placed.mark}, ${had}: no longer wanted.`];
  if (demand.material !== use.material)
    return [`${placed.mark} is now ${demand.material}, this is ${use.material}.`];
  const single = use.kind === 'bar' || use.kind === 'tube';
  const turned = placed.turned && demand.kind === 'sheet';
  const [length, width] = turned ? [demand.width, demand.length] : [demand.length, demand.width];
  const across = placed.turned && demand.kind === 'timber' ? demand.thickness : width;
  const fits = placed.length >= length - 0.011 && (single || placed.width >= across - 0.011);
  if (!fits) return [`${placed.mark} is now ${round(length)} x ${round(across)}, here ${had}: too small.`];
  const larger = placed.length > length + 0.011 || (!single && placed.width > across + 6.011);
  return larger ? [`${placed.mark} is now ${round(length)} x ${round(across)}, here ${had}.`] : [];
}

const round = (mm: number): number => Math.round(mm * 10) / 10;

/** What is left to plan: blanks that no kept layout holds, and a rack without the stock they take. */
export function without(
  kept: readonly StockUse[],
  demands: readonly Demand[],
  workshop: Workshop,
): { rest: Demand[]; shop: Workshop } {
  const held = new Set(kept.flatMap(use => use.placed.map(placed => placed.instance)));
  // What is cut is off the rack already; what is only accepted still stands there.
  const taken = (item: string): number =>
    kept.filter(use => use.from === 'rack' && use.item === item && !use.kept?.done).length;
  const rack = workshop.rack
    .map(item => ({ ...item, quantity: item.quantity - taken(item.id) }))
    .filter(item => item.quantity > 0);
  return { rest: demands.filter(demand => !held.has(demand.instance)), shop: { ...workshop, rack } };
}

/** The plan of the rest with the kept layouts put back into their materials. */
export function joined(plan: CuttingPlan, kept: readonly StockUse[], workshop: Workshop): CuttingPlan {
  const taken = new Set(kept.map(use => use.id));
  const materials = plan.materials.map(material => ({
    ...material,
    uses: material.uses.map(use => ({ ...use, id: freeId(use.id, taken) })),
  }));
  for (const use of kept) {
    const at = materials.findIndex(one => one.material === use.material && kindOf(use, one));
    if (at < 0) materials.push(emptyPlan(use));
    const material = materials[at < 0 ? materials.length - 1 : at]!;
    material.uses = [
      ...material.uses.filter(one => one.kept),
      use,
      ...material.uses.filter(one => !one.kept),
    ];
    material.cost += use.price;
    material.value += use.price;
    material.bound += use.price;
    material.waste = wasteShare(material.uses);
  }
  for (const material of materials) {
    const n = material.uses.filter(use => use.kept).length;
    if (n > 0)
      material.words =
        `${n === 1 ? 'One layout is' : `${n} layouts are`} kept as accepted. ${material.words}`.trim();
  }
  const buy = shopping(plan.buy, kept, workshop);
  return {
    materials,
    buy,
    orders: ordersOf({ buy }, workshop),
    cost: materials.reduce((sum, material) => sum + material.cost, 0),
  };
}

const kindOf = (use: StockUse, plan: MaterialPlan): boolean =>
  plan.uses.some(one => one.thickness === use.thickness) ||
  (plan.kind === 'sheet' ? use.kind === 'sheet' : plan.kind === use.kind) ||
  (plan.kind === 'timber' && (use.kind === 'board' || use.kind === 'planed length'));

/** An id that a kept layout carries is not given a second time. */
function freeId(id: string, taken: Set<string>): string {
  let free = id;
  for (let n = 2; taken.has(free); n++) free = `${id.replace(/:\d+$/, '')}:${n}`;
  taken.add(free);
  return free;
}

function emptyPlan(use: StockUse): MaterialPlan {
  const kind =
    use.kind === 'board' || use.kind === 'planed length'
      ? 'timber'
      : use.kind === 'offcut'
        ? 'sheet'
        : use.kind;
  return {
    material: use.material,
    section: `${round(use.thickness)}`,
    kind,
    uses: [],
    unplaced: [],
    status: 'proved best',
    value: 0,
    bound: 0,
    cost: 0,
    waste: 0,
    words: '',
    notes: [],
  };
}

/** Accepted stock is still to be bought until it is cut. */
function shopping(
  buy: readonly ShoppingLine[],
  kept: readonly StockUse[],
  workshop: Workshop,
): ShoppingLine[] {
  const lines = buy.map(line => ({ ...line }));
  for (const use of kept.filter(one => one.from === 'buy' && !one.kept?.done)) {
    const supplier = workshop.suppliers.find(one => one.id === use.supplier)?.name ?? use.supplier ?? '';
    const line = lines.find(
      one => one.id === use.item && one.supplier === supplier && one.unitPrice === use.price,
    );
    if (line) {
      line.quantity += 1;
      line.price += use.price;
    } else
      lines.push({
        id: use.item,
        item: use.label,
        supplier,
        quantity: 1,
        unitPrice: use.price,
        price: use.price,
      });
  }
  return lines;
}
