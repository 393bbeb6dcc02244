/** Which stock there is for a demand, and how the demand may lie on it. */

import { materialDensity } from '../reference/materials.ts';
import { type Demand, GRADES, type Grade, type StockUse, type ToAvoid } from '../results/cutting.ts';
import type { Blade, RackItem, SupplierItem, Workshop } from '../workshop/workshop.ts';
import { type CutStock, type Lie, type MeasuredBoard, toMm, unitsDown, unitsUp } from './problem.ts';
import { DEFAULT_KERF, FACTORY_TRIM, PLANED_OFF, sameSection, sensibleThickness } from './rules.ts';

/** A stock line of the rack or a supplier with what the layout needs to know about it. */
export interface StockLine {
  stock: CutStock;
  /** Calipers' word where taken. */
  measuredThickness: number;
  priced: boolean;
  grade?: Grade;
  supplierName?: string;
}

/** Kerf for a material, mm: the widest of the workshop's blades that meet it (CUT-1). */
export function kerfFor(material: string, kind: StockUse['kind'], blades: readonly Blade[]): number {
  const metal = kind === 'bar' || kind === 'tube' || materialDensity(material)?.kind === 'metal';
  const meets = blades.filter(blade =>
    metal ? blade.use === 'metal' : ['rip', 'cross', 'combination'].includes(blade.use),
  );
  const kerfs = meets.map(blade => blade.kerf).filter(kerf => Number.isFinite(kerf) && kerf >= 0);
  return kerfs.length > 0 ? Math.max(...kerfs) : metal ? DEFAULT_KERF.metal : DEFAULT_KERF.wood;
}

export function stockLines(workshop: Workshop): StockLine[] {
  const rack = workshop.rack
    .filter(item => item.quantity > 0)
    .map(item => line(workshop, item, { cost: item.value, limit: Math.floor(item.quantity) }));
  const bought = workshop.suppliers.flatMap(supplier =>
    supplier.items.map(item => line(workshop, item, { cost: item.price, limit: Infinity }, supplier)),
  );
  return [...rack, ...bought];
}

function line(
  workshop: Workshop,
  item: RackItem | SupplierItem,
  terms: { cost: number; limit: number },
  supplier?: { id: string; name: string },
): StockLine {
  const single = item.kind === 'bar' || item.kind === 'tube' || item.round;
  const kerf = kerfFor(item.material, item.kind, workshop.blades);
  const factory = FACTORY_TRIM[item.kind];
  // A trim thinner than the blade is the blade's own kerf.
  const blade = toMm(unitsUp(kerf));
  const trim = {
    end: factory.end > 0 ? Math.max(factory.end, blade) : 0,
    edge: factory.edge > 0 && !single ? Math.max(factory.edge, blade) : 0,
  };
  const timber = item.kind === 'offcut' && materialDensity(item.material)?.kind === 'timber';
  const shape = item.kind === 'board' && supplier === undefined ? boardShape(item as RackItem, trim) : {};
  const wide = shape.narrow ? Math.max(shape.narrow.near, shape.narrow.far) : item.width;
  const stock: CutStock = {
    use: {
      from: supplier ? 'buy' : 'rack',
      kind: item.kind,
      material: item.material,
      label: item.label,
      length: item.length,
      width: wide,
      thickness: item.thickness,
      round: item.round,
      ...(item.wall === undefined ? {} : { wall: item.wall }),
      ...(item.section === undefined ? {} : { section: item.section }),
      trim,
      kerf: blade,
      ...(shape.narrow ? { narrow: shape.narrow } : {}),
      ...(shape.avoid ? { avoid: shape.avoid } : {}),
    },
    ...(shape.board ? { board: shape.board } : {}),
    item: item.id,
    ...(supplier ? { supplier: supplier.id } : {}),
    l: unitsDown(item.length - 2 * trim.end),
    w: unitsDown(wide - 2 * trim.edge),
    kerf: unitsUp(kerf),
    cost: terms.cost,
    limit: terms.limit,
    single,
    crossFirst: item.kind === 'board' || item.kind === 'planed length' || timber,
  };
  return {
    stock,
    measuredThickness: ('measuredThickness' in item ? item.measuredThickness : undefined) ?? item.thickness,
    ...(item.grade === undefined ? {} : { grade: item.grade }),
    priced: Number.isFinite(terms.cost) && terms.cost >= 0,
    ...(supplier ? { supplierName: supplier.name } : {}),
  };
}

interface BoardShape {
  narrow?: { near: number; far: number };
  avoid?: ToAvoid[];
  board?: MeasuredBoard;
}

/** Shape of a board measured at both ends or with places to avoid, in its usable area; nothing for a plain one. */
function boardShape(item: RackItem, trim: { end: number; edge: number }): BoardShape {
  const far = item.widthFar ?? item.width;
  const avoid = item.avoid ?? [];
  if (avoid.length === 0 && far === item.width) return {};
  const at = (x: number): number =>
    unitsDown(item.width + ((far - item.width) * x) / item.length - 2 * trim.edge);
  const rect = (a: ToAvoid): MeasuredBoard['avoid'][number] => {
    const x = unitsDown(a.from - trim.end);
    const y = unitsDown((a.low ?? 0) - trim.edge);
    const top = a.high ?? Math.max(item.width, far);
    return { x, y, l: unitsUp(a.to - trim.end) - x, w: unitsUp(top - trim.edge) - y };
  };
  return {
    ...(far === item.width ? {} : { narrow: { near: item.width, far } }),
    ...(avoid.length > 0 ? { avoid } : {}),
    board: { near: at(trim.end), far: at(item.length - trim.end), avoid: avoid.map(rect) },
  };
}

/** Why a stock line does not serve, from the furthest off to the nearest miss. */
export type Miss = 'material' | 'kind' | 'grade' | 'section' | 'length';

const KINDS: Record<Demand['kind'], readonly StockUse['kind'][]> = {
  timber: ['planed length', 'board', 'offcut'],
  sheet: ['sheet', 'offcut'],
  bar: ['bar', 'offcut'],
  tube: ['tube', 'offcut'],
  'bought-in': [],
};

/** The ways a demand may lie on a stock line, or why there is none. */
export function liesOn(demand: Demand, on: StockLine): Lie[] | Miss {
  const use = on.stock.use;
  if (use.material !== demand.material) return 'material';
  if (!KINDS[demand.kind].includes(use.kind)) return 'kind';
  if (demand.grade && on.grade && GRADES.indexOf(on.grade) > GRADES.indexOf(demand.grade)) return 'grade';
  const lies = demand.kind === 'timber' ? timberLies(demand, on) : sectionLies(demand, on);
  if (lies.length === 0) return 'section';
  const fitting = lies.filter(lie => lie.l <= on.stock.l && lie.w <= on.stock.w);
  return fitting.length === 0 ? 'length' : fitting;
}

/** Timber may be planed: section within the stock's, either way round (CUT-3, CUT-6). */
function timberLies(demand: Demand, on: StockLine): Lie[] {
  const { width, round } = on.stock.use;
  const l = unitsUp(demand.length);
  if (round) {
    const turns = demand.round && demand.width <= on.measuredThickness + 1e-6;
    return turns ? [{ l, w: on.stock.w, turned: false }] : [];
  }
  const ways = [{ across: demand.width, through: demand.thickness, turned: false }];
  if (Math.abs(demand.width - demand.thickness) > 1e-6)
    ways.push({ across: demand.thickness, through: demand.width, turned: true });
  return ways
    .filter(way => way.through <= on.measuredThickness + 1e-6 && way.across <= width + 1e-6)
    .map(way => {
      const spare = on.stock.w - unitsUp(way.across);
      const whole = !on.stock.board && spare >= 0 && spare <= unitsUp(PLANED_OFF);
      return { l, w: whole ? on.stock.w : unitsUp(way.across), turned: way.turned };
    });
}

/** Sheets, bars and tubes are used in the section they come in (CUT-5). */
function sectionLies(demand: Demand, on: StockLine): Lie[] {
  const use = on.stock.use;
  const same = (figure: number, nominal: number): boolean => sameSection(figure, nominal);
  const thick = same(demand.thickness, use.thickness) || same(demand.thickness, on.measuredThickness);
  if (demand.kind === 'sheet') {
    if (!thick || use.round) return [];
    const along: Lie = { l: unitsUp(demand.length), w: unitsUp(demand.width), turned: false };
    const turned: Lie = { l: along.w, w: along.l, turned: true };
    if (demand.across) return [turned];
    return demand.turn && along.l !== along.w ? [along, turned] : [along];
  }
  if (demand.round !== use.round || demand.section !== use.section) return [];
  const flat = same(demand.width, use.width) && thick;
  // A channel has its web on one side only; an angle may be had either way round.
  const onEdge =
    demand.section !== 'channel' && same(demand.width, use.thickness) && same(demand.thickness, use.width);
  const walled = demand.kind === 'tube' || demand.section !== undefined;
  const wall = !walled || demand.wall === undefined || same(demand.wall, use.wall ?? 0);
  return (flat || onEdge) && wall
    ? [{ l: unitsUp(demand.length), w: on.stock.w, turned: !flat && onEdge }]
    : [];
}

/** Of these lies, those in which the stock is sensibly thick (CUT-4): all, for what is not planed. */
export function sensibleLies(demand: Demand, on: StockLine, lies: readonly Lie[]): Lie[] {
  if (demand.kind !== 'timber' || on.stock.use.round) return [...lies];
  const most = (lie: Lie): number => sensibleThickness(lie.turned ? demand.width : demand.thickness);
  return lies.filter(lie => on.measuredThickness <= most(lie) + 1e-6);
}
