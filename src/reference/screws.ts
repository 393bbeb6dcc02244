/** Screws: holes, heads and lengths, by gauge and by metric size. */
import { type Keyed, table } from './keys.ts';
import { type Band, band, memory, read } from './sourced.ts';

export interface WoodScrew extends Keyed {
  readonly name: string;
  readonly shankMm: number;
  /** Hole in the part under the head. */
  readonly clearanceMm: Band;
  /** Hole for the thread; absent where a bradawl does. */
  readonly pilotSoftwoodMm?: Band;
  readonly pilotHardwoodMm: Band;
  /** Diameter of a countersunk head. */
  readonly headMm: Band;
  /** Lengths sold. */
  readonly lengthsMm: readonly number[];
}

const HOLES =
  'shank: FPL-GTR-282 Table 8-9, read through a public digitisation; holes: https://diydata.com/information/screwholes/screwholes.php';
const METRIC = 'metric wood screw practice, remembered';

/**
 * Shank diameter of a wood screw gauge, mm: 0.060 + 0.013 g inches.
 * Source: https://www.finescrews.com/news/industry-news/screw-size-charts-gauge-diameters-hole-sizes-nails-vs-screws.html
 */
export function gaugeDiameterMm(gauge: number): number {
  return (0.06 + 0.013 * gauge) * 25.4;
}

/** The countersunk head of a wood screw is about twice the shank (remembered; 3.5 mm: 7.0, 5: 10.0). */
const headOf = (shankMm: number): Band => memory(2 * shankMm - 0.5, 2 * shankMm, 'about twice the shank');

function gauge(
  number: number,
  shankMm: number,
  clearance: number,
  soft: number | undefined,
  hard: number,
): WoodScrew {
  return {
    key: `no-${number}`,
    also: [`gauge-${number}`],
    name: `No ${number}`,
    shankMm,
    clearanceMm: read(clearance, clearance, HOLES),
    ...(soft === undefined ? {} : { pilotSoftwoodMm: read(soft, soft, HOLES) }),
    pilotHardwoodMm: read(hard, hard, HOLES),
    headMm: headOf(shankMm),
    lengthsMm: [],
  };
}

function metric(
  size: string,
  clearance: number,
  soft: [number, number],
  hard: [number, number],
  head: [number, number],
  lengthsMm: readonly number[],
): WoodScrew {
  return {
    key: size,
    name: `${size} mm`,
    shankMm: Number(size),
    clearanceMm: band(clearance, clearance, 'memory', METRIC),
    pilotSoftwoodMm: band(...soft, 'memory', METRIC),
    pilotHardwoodMm: band(...hard, 'memory', METRIC),
    headMm: band(...head, 'memory', METRIC, 'countersunk; +0/-0.5'),
    lengthsMm,
  };
}

// Lengths between the remembered ends of each size, in the steps usually sold.
const LENGTHS = [
  10, 12, 15, 16, 17, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 140, 160, 180, 200,
];
const lengths = (from: number, to: number): number[] =>
  LENGTHS.filter(length => length >= from && length <= to);

export const WOOD_SCREWS = table<WoodScrew>([
  gauge(4, 2.84, 2.8, undefined, 1.6),
  gauge(5, 3.18, 3.2, undefined, 2.0),
  gauge(6, 3.51, 3.6, 1.6, 2.0),
  gauge(7, 3.84, 4.0, 1.6, 2.4),
  gauge(8, 4.17, 4.5, 2.0, 2.4),
  gauge(9, 4.5, 5.0, 2.0, 2.8),
  gauge(10, 4.83, 5.0, 2.4, 2.8),
  gauge(11, 5.16, 5.5, 2.4, 3.2),
  gauge(12, 5.49, 5.5, 2.8, 3.2),
  gauge(14, 6.15, 6.5, 2.8, 3.6),
  gauge(16, 6.81, 7.0, 3.6, 4.0),
  gauge(18, 7.47, 7.5, 3.6, 5.0),
  metric('3.0', 3.2, [1.5, 2.0], [2.0, 2.0], [6.0, 6.0], lengths(10, 40)),
  metric('3.5', 4.0, [2.0, 2.0], [2.5, 2.5], [7.0, 7.0], lengths(12, 50)),
  metric('4.0', 4.5, [2.5, 2.5], [3.0, 3.0], [8.0, 8.0], lengths(15, 70)),
  metric('4.5', 5.0, [3.0, 3.0], [3.0, 3.5], [8.8, 9.0], lengths(20, 80)),
  metric('5.0', 5.5, [3.0, 3.0], [3.5, 3.5], [9.7, 10.0], lengths(25, 120)),
  metric('6.0', 6.5, [4.0, 4.0], [4.5, 4.5], [11.6, 12.0], lengths(40, 200)),
]);

/** A wood screw by size: `4.0`, `4`, `4 mm`, `no-8`, `No 8`. */
export function screw(size: string): WoodScrew | undefined {
  const plain = size
    .trim()
    .toLowerCase()
    .replace(/\s*mm$/, '');
  return WOOD_SCREWS.find(/^\d+(\.\d+)?$/.test(plain) ? Number(plain).toFixed(1) : plain);
}

/** Lead hole for the thread over the root diameter. Source: FPL-GTR-282 (2021) chapter 8. */
export const LEAD_HOLE_OF_ROOT = {
  softwood: read(0.7, 0.7, 'FPL-GTR-282 ch. 8, read through a public digitisation'),
  hardwood: read(0.9, 0.9, 'FPL-GTR-282 ch. 8, read through a public digitisation'),
} as const;

/** A screw is about three times as long as the board it holds down is thick. */
export const LENGTH_OVER_TOP_BOARD = read(3, 3, 'Use Screws Like a Pro (2007)');
/** Least distance from an edge and from an end, in shank diameters, holes drilled. */
export const EDGE_DISTANCE_IN_DIAMETERS = memory(1.5, 2, 'pilot drilled');
export const END_DISTANCE_IN_DIAMETERS = memory(5, 7);

export interface MachineScrew extends Keyed {
  readonly name: string;
  readonly diameterMm: number;
  /** Medium clearance hole. */
  readonly clearanceMm?: Band;
  readonly tappingDrillMm?: Band;
  /** Countersunk head, real least and greatest. */
  readonly countersunkHeadMm?: Band;
  readonly panHeadMm?: Band;
  readonly panHeightMm?: Band;
  /** Screw-in insert in timber: outside diameter, hole in hardwood and softwood. */
  readonly insertOuterMm?: Band;
  readonly insertHoleHardwoodMm?: Band;
  readonly insertHoleSoftwoodMm?: Band;
}

const COUNTERSUNK = 'adfastcomponents.com DIN 967 page, second table (DIN 965/966, countersunk)';
const PAN = 'fasenco.com din-7985';
const CLEARANCE = 'ISO 273 medium, remembered';
const TAPPING = 'ISO 261 coarse, remembered';
const INSERT = 'maker tables differ by 0.5: drill a test in the same timber';
const at = (value: number | undefined, source: string): Band | undefined =>
  value === undefined ? undefined : band(value, value, 'memory', source);

function machine(
  size: string,
  [clearance, tapping]: [number?, number?],
  head?: [number, number],
  pan?: [number, number],
  insert?: { outer: number; hard: [number, number]; soft: number },
): MachineScrew {
  const clearanceMm = at(clearance, CLEARANCE);
  const tappingDrillMm = at(tapping, TAPPING);
  return {
    key: size.toLowerCase(),
    name: size,
    diameterMm: Number(size.slice(1)),
    ...(clearanceMm ? { clearanceMm } : {}),
    ...(tappingDrillMm ? { tappingDrillMm } : {}),
    ...(head ? { countersunkHeadMm: read(head[0], head[1], COUNTERSUNK) } : {}),
    ...(pan ? { panHeadMm: read(pan[0], pan[0], PAN), panHeightMm: read(pan[1], pan[1], PAN) } : {}),
    ...(insert
      ? {
          insertOuterMm: memory(insert.outer, insert.outer, INSERT),
          insertHoleHardwoodMm: memory(insert.hard[0], insert.hard[1], INSERT),
          insertHoleSoftwoodMm: memory(insert.soft, insert.soft, INSERT),
        }
      : {}),
  };
}

export const MACHINE_SCREWS = table<MachineScrew>([
  machine('M3', [3.4, 2.5], [5.3, 5.6], [6.0, 2.52]),
  machine('M3.5', [], [6.14, 6.5]),
  machine('M4', [4.5, 3.3], [7.14, 7.5], [8.0, 3.25], { outer: 8, hard: [7.0, 7.0], soft: 6.5 }),
  machine('M5', [5.5, 4.2], [8.84, 9.2], [10.0, 3.95], { outer: 10, hard: [8.5, 9.0], soft: 8.0 }),
  machine('M6', [6.6, 5.0], [10.57, 11.0], [12.0, 4.75], { outer: 12, hard: [10.5, 10.5], soft: 10.0 }),
  machine('M8', [9.0, 6.8], [14.07, 14.5], [16.0, 6.15], { outer: 16, hard: [14.0, 14.0], soft: 13.5 }),
  machine('M10', [11.0, 8.5], undefined, undefined, { outer: 18.5, hard: [16.0, 16.0], soft: 15.5 }),
  machine('M12', [13.5]),
]);

/** A machine screw by size: `M5`. */
export const machineScrew = (size: string): MachineScrew | undefined => MACHINE_SCREWS.find(size);
