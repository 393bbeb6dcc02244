/** What the trade sells: lengths, sections, sheets, dowels. The supplier's own list wins. */
import { type Band, band, memory, read, type Sourced } from './sourced.ts';

const RECALLED = 'remembered, unverified';
const HARDWOOD_US = 'engineeringtoolbox.com hardwood-lumber-dimensions d_1462';
const UK_SAWN = 'architectsjournal.co.uk size-matters 190906';
const DTONLINE = 'wiki.dtonline.org Timber';

/** A set of sizes sold together, mm. */
export interface SizeSet extends Sourced {
  readonly sizesMm: readonly number[];
}

const remembered = (sizesMm: readonly number[], note?: string): SizeSet =>
  note
    ? { sizesMm, source: RECALLED, basis: 'memory', note }
    : { sizesMm, source: RECALLED, basis: 'memory' };

/** Thickness of sawn hardwood by where it is bought. */
export const SAWN_HARDWOOD_MM = {
  uk: {
    sizesMm: [16, 19, 25, 38, 50, 63, 75, 100],
    source: UK_SAWN,
    basis: 'read',
    note: 'widths in 10 mm steps; 5-6 m the longest usual',
  },
  eu: remembered(
    [18, 22, 27, 34, 41, 45, 54, 65, 80, 100],
    '27 34 41 54 the French set; EN 1313-2 prefers 20 24 27 30 35 40 45 50',
  ),
} as const satisfies Record<string, SizeSet>;

/** American hardwood by quarters: rough, and after two sides are planed, mm. */
export interface QuarterThickness extends Sourced {
  readonly quarters: string;
  readonly roughMm: number;
  readonly planedMm: number;
}

const quarter = (quarters: string, roughMm: number, planedMm: number): QuarterThickness => ({
  quarters,
  roughMm,
  planedMm,
  source: HARDWOOD_US,
  basis: 'read',
  note: 'rough computed from the inch size',
});

export const QUARTERS: readonly QuarterThickness[] = [
  quarter('3/4', 19, 14),
  quarter('4/4', 25.4, 21),
  quarter('5/4', 31.8, 27),
  quarter('6/4', 38, 33),
  quarter('8/4', 51, 44),
  quarter('12/4', 76, 70),
  quarter('16/4', 102, 95),
];

/** Planed sizes got from sawn ones. */
export interface PlanedFrom extends Sourced {
  readonly sawnMm: number;
  readonly planedMm: { readonly low: number; readonly high: number };
}

const planed = (sawnMm: number, low: number, high = low): PlanedFrom => ({
  sawnMm,
  planedMm: { low, high },
  source: RECALLED,
  basis: 'memory',
});

export const PLANED_HARDWOOD_UK: readonly PlanedFrom[] = [
  planed(25, 20),
  planed(32, 26, 27),
  planed(38, 32),
  planed(50, 44),
  planed(63, 56),
  planed(75, 69),
];

export const PLANED_SOFTWOOD_UK: readonly PlanedFrom[] = [
  planed(25, 20.5),
  planed(50, 44),
  planed(75, 69),
  planed(100, 94),
  planed(125, 119),
  planed(150, 144),
];

/** What planing takes off a sawn board. */
export const PLANING_OFF_THICKNESS_MM = band(5, 6, 'common practice', 'trade practice');
export const PLANING_OFF_WIDTH_MM = band(8, 10, 'common practice', 'trade practice');
/** Softwood, regularised: 3 mm off sections to 150 mm, 5 above. */
export const PLANING_OFF_SOFTWOOD_MM = read(3, 5, DTONLINE, '3 to 150 mm, 5 above');

/** Lengths sold, m. */
export const LENGTHS_M = {
  softwoodUk: read(1.8, 7.2, DTONLINE, 'in steps of 0.3'),
  softwoodFinland: read(2.7, 5.4, 'puuinfo.fi standard-sizes', 'in steps of 0.3'),
  hardwoodUk: read(1.8, 6, `${UK_SAWN}; wooduchoose.com iroko`, 'dearer above 5-6'),
  hardwoodUsBest: read(2.4, 4.9, HARDWOOD_US, 'grade FAS, 152 mm and wider, 83 % clear'),
  hardwoodUsCommon: read(1.2, 4.9, HARDWOOD_US, 'No 1 common, 76 mm and wider, 67 % clear'),
} as const satisfies Record<string, Band>;

/** Sizes of whole sheets, mm. */
export interface SheetSize extends Sourced {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly of: 'panels' | 'birch plywood' | 'metal' | 'brass and copper';
}

const sheet = (of: SheetSize['of'], lengthMm: number, widthMm: number, source = RECALLED): SheetSize => ({
  of,
  lengthMm,
  widthMm,
  source,
  basis: source === RECALLED ? 'memory' : 'read',
});

const PLY_TABLE = 'plyterra.com size table: 1220, 1250 / 2440, 2500, tolerance +-3 and +-4 mm';
const SWISSKRONO = 'http://www.en.mdm.swisskrono.pl/Particle-Boards/Technical-data';

export const SHEET_SIZES: readonly SheetSize[] = [
  sheet('panels', 2440, 1220),
  sheet('panels', 2500, 1250),
  sheet('panels', 2800, 2070, SWISSKRONO),
  sheet('panels', 3050, 1220),
  sheet('panels', 3050, 1525),
  sheet('birch plywood', 2440, 1220, PLY_TABLE),
  sheet('birch plywood', 2500, 1250, PLY_TABLE),
  sheet('birch plywood', 1525, 1525),
  sheet('metal', 2000, 1000),
  sheet('metal', 2500, 1250),
  sheet('metal', 3000, 1500),
  sheet('brass and copper', 1200, 600),
  sheet('brass and copper', 2000, 1000),
];

/** Thickness of sheets sold, mm, by key of the material. */
export const SHEET_THICKNESSES_MM = {
  'birch-plywood': remembered([4, 6.5, 9, 12, 15, 18, 21, 24, 27, 30]),
  mdf: remembered([2, 2.5, 3, 4, 6, 9, 12, 15, 16, 18, 19, 22, 25, 30, 38]),
  chipboard: { sizesMm: [10, 12, 15, 16, 18, 22, 25, 28, 32, 36, 38], source: SWISSKRONO, basis: 'read' },
  'mild-steel': remembered([0.7, 0.9, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4, 5, 6]),
  'stainless-304': remembered([0.7, 0.9, 1.2, 1.5, 2, 2.5, 3]),
  aluminium: remembered([0.5, 0.7, 0.9, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4, 5, 6]),
  'brass-cw508l': remembered([0.5, 0.7, 0.9, 1.2, 1.5, 2.0, 3.0]),
  copper: remembered([0.45, 0.55, 0.7, 0.9, 1.2, 1.5, 2.0, 3.0]),
  zinc: remembered([0.65, 0.7, 0.8, 1.0]),
} as const satisfies Record<string, SizeSet>;

/** Solid dowel rod and ready-cut fluted dowels. */
export const DOWEL_ROD_MM = remembered(
  [6, 8, 9, 10, 12, 15, 16, 18, 20, 22, 25, 32],
  '+-0.2-0.4 and oval with moisture: measure',
);
export const DOWELS: readonly ({ readonly diameterMm: number; readonly lengthMm: number } & Sourced)[] = (
  [
    [6, 30],
    [8, 30],
    [8, 35],
    [8, 40],
    [10, 40],
    [10, 50],
    [12, 60],
  ] as const
).map(([diameterMm, lengthMm]) => ({
  diameterMm,
  lengthMm,
  source: `fluted, +0/-0.2 dry; ${RECALLED}`,
  basis: 'memory',
}));

/** Standard wire gauge of sheet metal, mm. */
export const WIRE_GAUGE_MM: ReadonlyMap<number, number> = new Map([
  [10, 3.25],
  [12, 2.64],
  [14, 2.03],
  [16, 1.63],
  [18, 1.22],
  [20, 0.91],
  [22, 0.71],
  [24, 0.56],
]);
/** The list remembered and the read one agree within 0.01 mm. */
export const WIRE_GAUGE_SOURCE = {
  source: 'ashmoreandallen.co.uk data',
  basis: 'read',
} as const satisfies Sourced;

/** Face veneer, mm. */
export const VENEER_MM = memory(0.5, 0.6, 'EU 0.55; US 0.6-0.9; saw-cut 1.5-3');
