/** Builds a timber row from the three tables of the Wood Handbook that a maker needs. */
import { type Band, computed, read } from './sourced.ts';
import type { TimberSpecies } from './timber-row.ts';

const TABLE_5_3A = 'FPL-GTR-190 (2010) Table 5-3a, 12 % MC rows; read through a public digitisation';
const TABLE_13_5 =
  'FPL-GTR-190 (2010) Table 13-5, valid 6-14 % MC; https://issuhub.com/view/index/5801?pageIndex=307';
const TABLE_4_3 = 'FPL-GTR-190 (2010) Table 4-3; https://issuhub.com/view/index/5801?pageIndex=85';
/** Table 13-5 where only a page that quotes it was seen. */
export const TABLE_13_5_QUOTED =
  'https://fagerjord.org/woodworking-projects/tips-tricks-and-techniques/3956/4/ (quotes USDA; secondary page)';
export const TABLE_4_3_2021 = 'FPL-GTR-282 (2021) Table 4-3; read through a public digitisation';

export interface HandbookFigures {
  key: string;
  name: string;
  latin: string;
  kind: TimberSpecies['kind'];
  also?: readonly string[];
  /** Specific gravity at 12 %, dry mass over volume at 12 %. */
  sg: number;
  /** Modulus of rupture, modulus of elasticity, compression parallel, shear parallel: MPa. */
  mor?: number;
  moe?: number;
  crushing?: number;
  shear?: number;
  /** Side hardness, N. */
  hardness?: number;
  /** Dimensional change coefficients, fraction per 1 % MC. */
  cR?: number;
  cT?: number;
  /** Shrinkage green to oven dry, %. */
  sR?: number;
  sT?: number;
  /** Other sources and remarks. */
  cFrom?: string;
  sFrom?: string;
  cNote?: string;
  morNote?: string;
  note?: string;
}

/** Density at 12 % is 1000 G (1 + 12/100) kg/m3: FPL-GTR-282 (2021) Eq 4-14. */
export function handbookTimber(figures: HandbookFigures): TimberSpecies {
  const { key, name, latin, kind, also, sg } = figures;
  const density = Math.round(1120 * sg);
  const strength = (value: number | undefined, note?: string): Band | undefined =>
    value === undefined ? undefined : read(value, value, TABLE_5_3A, note ?? figures.note);
  const change = (value: number | undefined): Band | undefined =>
    value === undefined ? undefined : read(value, value, figures.cFrom ?? TABLE_13_5, figures.cNote);
  const shrinkage = (value: number | undefined): Band | undefined =>
    value === undefined ? undefined : read(value, value, figures.sFrom ?? TABLE_4_3);
  return {
    key,
    name,
    latin,
    kind,
    ...(also ? { also } : {}),
    densityKgM3: computed(density, density, `specific gravity ${sg} of ${TABLE_5_3A}; FPL-GTR-282 Eq 4-14`),
    specificGravity12: read(sg, sg, TABLE_5_3A, figures.note),
    ...present({
      movementRadial: change(figures.cR),
      movementTangential: change(figures.cT),
      shrinkageRadialPct: shrinkage(figures.sR),
      shrinkageTangentialPct: shrinkage(figures.sT),
      stiffnessMPa: strength(figures.moe),
      bendingStrengthMPa: strength(figures.mor, figures.morNote),
      crushingMPa: strength(figures.crushing),
      shearMPa: strength(figures.shear),
      sideHardnessN: strength(figures.hardness),
    }),
  };
}

/** The figures that exist; an absent one leaves no key behind. */
function present<Name extends string>(bands: Record<Name, Band | undefined>): { [name in Name]?: Band } {
  const kept: { [name in Name]?: Band } = {};
  for (const name in bands) {
    const value = bands[name];
    if (value) kept[name] = value;
  }
  return kept;
}
