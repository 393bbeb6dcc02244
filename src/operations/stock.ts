import { materialDensity } from '../reference/materials.ts';
import type { Size } from '../results/cuts.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { restOf, spellOf, type Wait } from './times.ts';
import type { PartView, View } from './view.ts';

/** Of what is bought, a fifth goes to waste with square-edged hardwood: common practice 15 to 20 %. */
const BOUGHT_FOR_ONE = 1 / (1 - 0.2);
const DAY = 1440;

/** What a part goes through before it is marked out. */
export interface Prepared {
  /** Operations that bring it to a finished size: what a measurement has to come before. */
  sizing: string[];
  /** The last of its preparing, after which it may be marked out. */
  last: string[];
}

/** Ordering, seasoning, breaking down and preparing to size. Returns what each part went through. */
export function addStock(view: View, work: OrderOfWork): Map<string, Prepared> {
  const prepared = new Map<string, Prepared>();
  const stock = view.parts.filter(part => part.kind !== 'bought-in');
  for (const material of [...new Set(stock.map(part => part.material))]) {
    const parts = stock.filter(part => part.material === material);
    const ready = addMaterial(view, work, material, parts);
    const made = parts[0]!.metal
      ? parts.map(part => sawMetal(view.workshop, work, part, ready))
      : prepare(view.workshop, work, material, parts, ready);
    made.forEach((own, k) => {
      prepared.set(parts[k]!.id, own);
    });
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
      title: `Season the ${nameOf(material)} in stick`,
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
    title: `Let the rough ${nameOf(material)} rest`,
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
  const what = parts.length === 1 ? parts[0]!.name : nameOf(material);
  const cross = {
    id: `crosscut:${material}`,
    kind: 'break down' as const,
    title: timber ? `Crosscut ${what} to rough length` : `Crosscut ${what} strips to blanks`,
    instances,
    handsOn: half,
    sizing: 'rough length' as const,
    batch: `crosscut|${material}`,
  };
  const rip = {
    id: `rip:${material}`,
    kind: 'break down' as const,
    title: timber ? `Rip ${what} to rough width` : `Rip ${what} to strips`,
    instances,
    handsOn: half,
    sizing: 'rough width' as const,
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
    title: `Order ${nameOf(material)}`,
    instances,
    handsOn: spellOf(workshop, [{ key: 'order-stock', times: 1 }]),
    ...(lead ? { wait: { what: 'delivery', ...lead } } : {}),
    ...(lead ? {} : { cautions: [unknownLead(nameOf(material))] }),
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
    id: `buy:${part.id}`,
    kind: 'order',
    title: `Order ${part.name}`,
    instances,
    handsOn: spellOf(view.workshop, [{ key: 'order-stock', times: 1 }]),
    ...(lead ? { wait: { what: 'delivery', ...lead } } : { cautions: [unknownLead(part.name)] }),
  });
}

interface Preparing {
  step: 'face' | 'edge' | 'thickness' | 'width' | 'length';
  key: string;
  title: string;
  /** Units of the time row for one copy. */
  units: (part: PartView) => number;
  /** Is there anything to take off? */
  needed: (part: PartView) => boolean;
  /** Goes on without waiting for a measurement. */
  early: boolean;
}

const blankM = (part: PartView): number => part.blank.length / 1000;
const spare = (side: 'width' | 'length') => (part: PartView) =>
  part.measureFirst !== undefined || part.blank[side] > part.first.size[side] + 0.01;

/** In the order of rule 5. A row that counts facing and edging together is halved. */
const PREPARING: readonly Preparing[] = [
  {
    step: 'face',
    key: 'plane-face-edge',
    title: 'Plane a face flat',
    units: part => blankM(part) / 2,
    needed: isRough,
    early: true,
  },
  {
    step: 'edge',
    key: 'plane-face-edge',
    title: 'Plane an edge square',
    units: part => blankM(part) / 2,
    needed: isRough,
    early: true,
  },
  { step: 'thickness', key: 'thickness', title: 'Thickness', units: blankM, needed: isRough, early: true },
  { step: 'width', key: 'rip', title: 'Bring to width', units: blankM, needed: spare('width'), early: false },
  {
    step: 'length',
    key: 'crosscut',
    title: 'Bring to length',
    units: () => 2,
    needed: spare('length'),
    early: false,
  },
];

/**
 * All parts of one timber or sheet go through each step together, as far as their blanks leave something to
 * take off; parts that wait for a measurement are brought to width and length on their own.
 */
function prepare(
  workshop: Workshop,
  work: OrderOfWork,
  material: string,
  parts: readonly PartView[],
  stock: string[],
): Prepared[] {
  const last = new Map(parts.map(part => [part, stock]));
  const sizing = new Map<PartView, string[]>(parts.map(part => [part, []]));
  for (const step of PREPARING) {
    const all = parts.filter(step.needed);
    const together = step.early ? all : all.filter(part => !part.measureFirst);
    const lots = [
      { id: `${step.step}:${material}`, name: nameOf(material), lot: together },
      ...all
        .filter(part => !together.includes(part))
        .map(part => ({ id: `${step.step}-of:${part.id}`, name: part.name, lot: [part] })),
    ];
    for (const { id, name, lot } of lots.filter(l => l.lot.length > 0)) {
      work.add({
        id,
        kind: 'prepare',
        title: `${step.title}: ${name}`,
        instances: lot.flatMap(part => part.copies.map(copy => copy.id)),
        handsOn: spellOf(workshop, [
          { key: step.key, times: lot.reduce((sum, part) => sum + step.units(part) * part.copies.length, 0) },
        ]),
        sizing: step.step,
        batch: `prepare|${step.step}`,
      });
      for (const part of lot) {
        for (const before of last.get(part)!)
          work.link(before, id, before !== stock[0] ? 5 : before.startsWith('rest:') ? 3 : 68);
        last.set(part, [id]);
        if (!step.early) sizing.get(part)!.push(id);
      }
    }
  }
  return parts.map(part => ({ sizing: sizing.get(part)!, last: last.get(part)! }));
}

/** Bars and tubes by the cut, metal sheet by the piece. */
function sawMetal(workshop: Workshop, work: OrderOfWork, part: PartView, stock: string[]): Prepared {
  const bar = part.kind === 'bar' || part.kind === 'tube';
  const id = work.add({
    id: `saw:${part.id}`,
    kind: 'prepare',
    title: bar ? `Saw ${part.name} to length` : `Cut ${part.name} to size`,
    instances: part.copies.map(copy => copy.id),
    handsOn: spellOf(workshop, [{ key: bar ? 'saw-bar' : 'saw-metal-sheet', times: part.copies.length }]),
    sizing: bar ? 'length' : 'sheet metal',
    batch: bar ? 'prepare|bar' : 'prepare|metal sheet',
  });
  work.link(stock, id, 68);
  return { sizing: [id], last: [id] };
}

/** `European ash` for `ash-european`; the maker's own key as it is. */
export const nameOf = (material: string): string => materialDensity(material)?.name ?? material;

/** Whole tenths, so that float noise makes no new setting. */
export const mm = (value: number): string => String(Math.round(value * 10) / 10);
