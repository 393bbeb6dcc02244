/** Bending of shelves, rails and bars in the usual cases, with the shear of timber where G is known. */
import type { Section } from './sections.ts';

/**
 * Constants kb (bending) and ks (shear) of the deflection equation.
 * Source: Wood Handbook FPL-GTR-282 (2021) Table 9-1.
 */
const CASES = {
  'uniform, simply supported': { kb: 5 / 384, ks: 1 / 8 },
  'uniform, both ends fixed': { kb: 1 / 384, ks: 1 / 8 },
  'point at middle, simply supported': { kb: 1 / 48, ks: 1 / 4 },
  'point at middle, both ends fixed': { kb: 1 / 192, ks: 1 / 4 },
  'quarter points, simply supported': { kb: 11 / 768, ks: 1 / 8 },
  'uniform, cantilever': { kb: 1 / 8, ks: 1 / 2 },
  'point at end, cantilever': { kb: 1 / 3, ks: 1 },
} as const;

export type LoadCase = keyof typeof CASES;

export interface Loaded {
  /** Whole load, N. */
  readonly loadN: number;
  readonly spanMm: number;
  readonly section: Section;
  /** Bending modulus, MPa. A tabulated one holds the shear of the test already. */
  readonly stiffnessMPa: number;
  /** Shear modulus, MPa; about E/16 where unknown (handbook). Left out, shear is not counted. */
  readonly shearModulusMPa?: number;
}

/**
 * Greatest deflection at once, mm, in its two shares.
 *
 *     delta = kb W L^3/(E I) + ks W L/(G A')
 *
 * Range: straight uniform bars, small deflections. Source: Wood Handbook FPL-GTR-282 (2021) Eq 9-2.
 */
export function deflection(
  loadCase: LoadCase,
  bar: Loaded,
): { bendingMm: number; shearMm: number; totalMm: number } {
  const { kb, ks } = CASES[loadCase];
  const { loadN, spanMm, section, stiffnessMPa, shearModulusMPa } = bar;
  const bendingMm = (kb * loadN * spanMm ** 3) / (stiffnessMPa * section.secondMomentMm4);
  const shearMm =
    shearModulusMPa && section.shearAreaMm2
      ? (ks * loadN * spanMm) / (shearModulusMPa * section.shearAreaMm2)
      : 0;
  return { bendingMm, shearMm, totalMm: bendingMm + shearMm };
}

/**
 * Deflection after years under a standing load, mm.
 *
 *     u_fin = u_inst (1 + kdef)
 *
 * Range: the whole load stands; service class as of the kdef row. Source: EN 1995-1-1 (2004) 2.2.3.
 */
export function deflectionAfterCreep(atOnceMm: number, kdef: number): number {
  return atOnceMm * (1 + kdef);
}
