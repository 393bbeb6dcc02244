import type { Size } from '../results/cuts.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { restOf, spellOf, type Wait } from './times.ts';
import type { PartView, View } from './view.ts';

/** Of what is bought, a fifth goes to waste with square-edged hardwood: common practice 15 to 20 %. */
const BOUGHT_FOR_ONE = 1 / (1 - 0.2);
const DAY = 1440;

/** Ids of the preparing operations of a part in their order. */
export interface Prepared {
  /** The first that cuts the part to a finished size: what a measurement has to come before. */
  sizing: string[];
  /** Everything, from breaking down to length. */
  all: string[];
}

/** Ordering, seasoning, breaking down and preparing to size. Returns what each part went through. */
export function addStock(view: View, work: OrderOfWork): Map<string, Prepared> {
  const prepared = new Map<string, Prepared>();
  const stock = view.parts.filter(part => part.kind !== 'bought-in');
  for (const material of [...new Set(stock.map(part => part.material))]) {
    const parts = stock.filter(part => part.material === material);
    const ready = addMaterial(view, work, material, parts);
    for (const part of parts) prepared.set(part.id, prepare(view, work, part, ready));
  }
  for (const part of view.parts.filter(p => p.kind === 'bought-in')) orderHardware(view, work, part);
  return prepared;
}

/** Order, season, break down, rest. Returns the last of them and the one that hands the stock over. */
function addMaterial(view: View, work: OrderOfWork, material: string, parts: PartView[]): string[] {
  const { workshop } = view;
  const instances = parts.flatMap(part => part.copies.map(copy => copy.id));
  const ordered = order(workshop, work, material, parts, instances);
  const first = parts[0]!;
  const timber = first.kind === 'timber';
  const planed = timber && parts.every(part => !isRough(part));
  let stock = ordered;
  if (ordered && timber && !planed) {
    stock = work.add({
      id: `season:${material}`,
      kind: 'rest',
      title: `Season the ${material} in stick`,
      instances,
      handsOn: spellOf(workshop, []),
      wait: { what: 'rest', ...restOf(workshop, 'season-timber') },
    });
    work.link(ordered, stock, 68);
  }
  if (first.metal) return stock ? [stock] : [];
  const broken = breakDown(workshop, work, material, parts, instances, timber);
  if (stock) work.link(stock, broken[0]!, stock === ordered ? 68 : 2);
  if (planed || !timber) return [broken[1]!];
  const rest = work.add({
    id: `rest:${material}`,
    kind: 'rest',
    title: `Let the rough ${material} rest`,
    instances,
    handsOn: spellOf(workshop, []),
    wait: { what: 'rest', ...restOf(workshop, 'rest-rough') },
  });
  work.link(broken[1]!, rest, 3);
  return [rest];
}

/** Thicker as a blank than as a part: it comes to thickness in this shop. */
export const isRough = (part: PartView): boolean =>
  part.kind === 'timber' && part.blank.thickness > part.first.size.thickness + 0.01;

/** Timber across the grain first, sheets along first. Returns both in the order they are done. */
function breakDown(
  workshop: Workshop,
  work: OrderOfWork,
  material: string,
  parts: readonly PartView[],
  instances: string[],
  timber: boolean,
): [string, string] {
  const key = timber ? 'break-down-board' : 'cut-sheet-part';
  const half = spellOf(workshop, [{ key, times: instances.length / 2 }]);
  const what = parts.length === 1 ? parts[0]!.name : material;
  const cross = {
    id: `crosscut:${material}`,
    kind: 'break down' as const,
    title: timber ? `Crosscut ${what} to rough length` : `Crosscut ${what} strips to blanks`,
    instances,
    handsOn: half,
    batch: `crosscut|${material}`,
  };
  const rip = {
    id: `rip:${material}`,
    kind: 'break down' as const,
    title: timber ? `Rip ${what} to rough width` : `Rip ${what} to strips`,
    instances,
    handsOn: half,
    batch: `rip|${material}`,
  };
  const ids = (timber ? [cross, rip] : [rip, cross]).map(draft => work.add(draft));
  work.link(ids[0]!, ids[1]!, timber ? 4 : 25);
  return [ids[0]!, ids[1]!];
}

const volume = (size: Size): number => size.length * size.width * size.thickness;

/**
 * An order when the rack does not hold enough of the material for the blanks and a fifth of waste. By volume
 * only: the layout decides afterwards which lengths it takes.
 */
function order(
  workshop: Workshop,
  work: OrderOfWork,
  material: string,
  parts: readonly PartView[],
  instances: string[],
): string | undefined {
  const wanted = parts.reduce((sum, part) => sum + volume(part.blank) * part.copies.length, 0);
  const least = Math.min(...parts.map(part => part.first.size.thickness));
  const held = workshop.rack
    .filter(item => item.material === material && item.thickness >= least - 0.5)
    .reduce((sum, item) => sum + volume(item) * item.quantity, 0);
  if (held >= wanted * BOUGHT_FOR_ONE) return undefined;
  const lead = leadTime(workshop, material);
  return work.add({
    id: `order:${material}`,
    kind: 'order',
    title: `Order ${material}`,
    instances,
    handsOn: spellOf(workshop, [{ key: 'order-stock', times: 1 }]),
    ...(lead ? { wait: { what: 'delivery', ...lead } } : {}),
    ...(lead ? {} : { cautions: [unknownLead(material)] }),
  });
}

const unknownLead = (what: string): string =>
  `No supplier in the workshop file sells ${what}: its lead time is not planned`;

function leadTime(workshop: Workshop, material: string): Wait | undefined {
  const sellers = workshop.suppliers
    .filter(supplier => supplier.items.some(item => item.material === material))
    .sort((a, b) => a.leadDays - b.leadDays || (a.id < b.id ? -1 : 1));
  const first = sellers[0];
  return (
    first && { minutes: first.leadDays * DAY, text: `${first.name}: ${first.leadDays} d`, basis: 'workshop' }
  );
}

function orderHardware(view: View, work: OrderOfWork, part: PartView): void {
  const lead = leadTime(view.workshop, part.material);
  const instances = part.copies.map(copy => copy.id);
  work.add({
    id: `order:${part.id}`,
    kind: 'order',
    title: `Order ${part.name}`,
    instances,
    handsOn: spellOf(view.workshop, [{ key: 'order-stock', times: 1 }]),
    ...(lead ? { wait: { what: 'delivery', ...lead } } : { cautions: [unknownLead(part.name)] }),
  });
}

/** Face, edge, thickness, width, length, as far as the blank leaves something to take off. */
function prepare(view: View, work: OrderOfWork, part: PartView, stock: string[]): Prepared {
  const { workshop } = view;
  const copies = part.copies.length;
  const metres = (part.blank.length / 1000) * copies;
  const instances = part.copies.map(copy => copy.id);
  const steps: { step: string; key: string; times: number; title: string; setting: string }[] = [];
  const say = (step: string, key: string, times: number, title: string, setting: string): void => {
    steps.push({ step, key, times, title, setting });
  };
  const { size } = part.first;
  if (part.kind === 'bar' || part.kind === 'tube') {
    say('length', 'saw-bar', copies, `Saw ${part.name} to length`, `bar|${mm(size.length)}`);
  } else if (part.metal) {
    say('size', 'saw-metal-sheet', copies, `Cut ${part.name} to size`, `metal|${mm(size.width)}`);
  } else {
    if (isRough(part)) {
      say('face', 'plane-face-edge', metres / 2, `Plane a face on ${part.name}`, 'face');
      say('edge', 'plane-face-edge', metres / 2, `Plane an edge square on ${part.name}`, 'edge');
      say('thickness', 'thickness', metres, `Thickness ${part.name}`, `thickness|${mm(size.thickness)}`);
    }
    const held = part.measureFirst !== undefined;
    if (held || part.blank.width > size.width + 0.01)
      say('width', 'rip', metres, `Bring ${part.name} to width`, `width|${mm(size.width)}`);
    if (held || part.blank.length > size.length + 0.01)
      say('length', 'crosscut', 2 * copies, `Bring ${part.name} to length`, `length|${mm(size.length)}`);
  }
  const ids = steps.map(({ step, key, times, title, setting }) =>
    work.add({
      id: `${step}:${part.id}`,
      kind: 'prepare',
      title,
      instances,
      handsOn: spellOf(workshop, [{ key, times }]),
      batch: `prepare|${part.kind}|${setting}`,
    }),
  );
  if (ids.length > 0) work.link(stock, ids[0]!, isRough(part) && stock[0]?.startsWith('rest:') ? 3 : 68);
  ids.slice(1).forEach((id, k) => {
    work.link(ids[k]!, id, 5);
  });
  const sizing = ids.filter(id => /^(width|length|size):/.test(id));
  return { sizing, all: ids.length > 0 ? ids : stock };
}

/** Whole tenths, so that float noise makes no new setting. */
export const mm = (value: number): string => String(Math.round(value * 10) / 10);
