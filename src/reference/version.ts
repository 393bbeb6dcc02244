/** A hash of all tables: issued papers carry it, so that it can be told which figures they were made from. */
import {
  ADHESIVES,
  CLAMP_FROM_END_MM,
  CLAMP_PRESSURE_MPA,
  CLAMP_SPACING_MM,
  COLD_SHOP_FACTOR,
  GLUE_CLASSES,
} from './adhesives.ts';
import { BARS, STAINLESS_ROUND_BRIGHT } from './bars.ts';
import { CLIMATES } from './climate.ts';
import { CUTTING_SPEEDS } from './cutting-speeds.ts';
import {
  BRAD_POINT_DRILLS_MM,
  FORSTNER_BITS_MM,
  MORTISE_CHISELS_MM,
  ROUND_OVER_RADII_MM,
  STRAIGHT_CUTTERS_MM,
  TWIST_DRILLS_MM,
} from './drills.ts';
import { USUAL_SIZES } from './ergonomics.ts';
import { COMPATIBILITIES } from './finish-compatibility.ts';
import { FINISHES } from './finishes.ts';
import { FITS } from './fits.ts';
import { FURNITURE_LOADS } from './furniture-loads.ts';
import { LINEAR_LIMITS } from './iso2768.ts';
import { KDEF, KMOD } from './load-duration.ts';
import { MACHINE_RULES } from './machine-rules.ts';
import { METALS } from './metals.ts';
import { PROPORTIONS } from './proportions.ts';
import { MACHINE_SCREWS, WOOD_SCREWS } from './screws.ts';
import { SHEETS } from './sheet-materials.ts';
import {
  DOWELS,
  LENGTHS_M,
  PLANED_HARDWOOD_UK,
  PLANED_SOFTWOOD_UK,
  QUARTERS,
  SAWN_HARDWOOD_MM,
  SHEET_SIZES,
  SHEET_THICKNESSES_MM,
} from './stock.ts';
import { STRENGTH_CLASSES } from './strength-classes.ts';
import { TIMBERS } from './timber-species.ts';
import { WORK_TIMES } from './work-times.ts';

/** All tables by name. */
export const ALL_TABLES: Readonly<Record<string, unknown>> = {
  adhesives: ADHESIVES.rows,
  bars: [BARS, STAINLESS_ROUND_BRIGHT],
  clamping: [CLAMP_PRESSURE_MPA, CLAMP_SPACING_MM, CLAMP_FROM_END_MM, COLD_SHOP_FACTOR, GLUE_CLASSES],
  climates: CLIMATES.rows,
  compatibilities: COMPATIBILITIES,
  cuttingSpeeds: CUTTING_SPEEDS.rows,
  drills: [
    STRAIGHT_CUTTERS_MM,
    ROUND_OVER_RADII_MM,
    MORTISE_CHISELS_MM,
    BRAD_POINT_DRILLS_MM,
    TWIST_DRILLS_MM,
    FORSTNER_BITS_MM,
  ],
  finishes: FINISHES.rows,
  fits: FITS.rows,
  furnitureLoads: FURNITURE_LOADS.rows,
  linearLimits: LINEAR_LIMITS,
  loadDuration: [KMOD, KDEF],
  machineRules: MACHINE_RULES,
  machineScrews: MACHINE_SCREWS.rows,
  metals: METALS.rows,
  proportions: PROPORTIONS.rows,
  sheets: SHEETS.rows,
  stock: [
    SAWN_HARDWOOD_MM,
    QUARTERS,
    PLANED_HARDWOOD_UK,
    PLANED_SOFTWOOD_UK,
    LENGTHS_M,
    SHEET_SIZES,
    SHEET_THICKNESSES_MM,
    DOWELS,
  ],
  strengthClasses: STRENGTH_CLASSES.rows,
  timbers: TIMBERS.rows,
  usualSizes: USUAL_SIZES.rows,
  woodScrews: WOOD_SCREWS.rows,
  workTimes: WORK_TIMES.rows,
};

/** The same text for the same content, whatever the order in which its fields were written. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, field]) => `${JSON.stringify(name)}:${canonical(field)}`);
  return `{${fields.join(',')}}`;
}

/** FNV-1a in 64 bits, as 16 hexadecimal digits. Tells versions apart; it is no seal against forgery. */
export function contentHash(value: unknown): string {
  let hash = 0xcbf29ce484222325n;
  for (const character of canonical(value)) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(character.codePointAt(0) ?? 0)) * 0x100000001b3n);
  }
  return hash.toString(16).padStart(16, '0');
}

let known: string | undefined;

/** The hash of the tables of this program, worked out once. */
export function referenceVersion(): string {
  known ??= contentHash(ALL_TABLES);
  return known;
}
