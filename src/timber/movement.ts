/** How wide a board becomes when its moisture changes. */
import { type Band, middle, sourceOf } from '../reference/sourced.ts';
import type { TimberSpecies } from '../reference/timber-row.ts';
import type { Source } from '../results/source.ts';

/** How the growth rings lie across the width of a board. */
export type Cut = 'flat-sawn' | 'quarter-sawn' | 'mixed';

/** The coefficients of Eq 13-2 hold between these moistures, %. */
export const COEFFICIENT_RANGE = { low: 6, high: 14 } as const;

/** Moisture above which wood no longer swells, %, where the species' own figure is unknown. */
export const FIBRE_SATURATION_PCT = 30;

/**
 * Change of a dimension by the dimensional change coefficient, in the unit of `size`; positive is growth.
 *
 *     dD = D C (M_F - M_I)
 *
 * @param size the dimension across the grain at the first moisture
 * @param coefficient C_T or C_R, fraction for 1 % moisture
 * Range: both moistures within 6 to 14 %; see `withinCoefficientRange`.
 *
 * Source: Wood Handbook FPL-GTR-190 (2010) Eq 13-2.
 */
export function movement(size: number, coefficient: number, fromPct: number, toPct: number): number {
  return size * coefficient * (toPct - fromPct);
}

/** Whether Eq 13-2 speaks for both moistures. Outside, the figure is an extension of a straight line. */
export function withinCoefficientRange(fromPct: number, toPct: number): boolean {
  const inside = (m: number) => m >= COEFFICIENT_RANGE.low && m <= COEFFICIENT_RANGE.high;
  return inside(fromPct) && inside(toPct);
}

/**
 * Change of a dimension from the shrinkage of the species, in the unit of `size`; positive is growth.
 *
 *     dD = D (M_F - M_I) / (30 (100)/S - 30 + M_I)
 *
 * @param shrinkagePct S_T or S_R, green to oven dry, % of the green size
 * Range: both moistures from 0 to 30 %; moistures above 30 count as 30, since wood no longer swells there.
 *
 * Source: Wood Handbook FPL-GTR-190 (2010) Eq 13-3 (the equation itself remembered, its use read).
 */
export function movementFromShrinkage(
  size: number,
  shrinkagePct: number,
  fromPct: number,
  toPct: number,
): number {
  const from = Math.min(fromPct, FIBRE_SATURATION_PCT);
  const to = Math.min(toPct, FIBRE_SATURATION_PCT);
  return (size * (to - from)) / ((FIBRE_SATURATION_PCT * 100) / shrinkagePct - FIBRE_SATURATION_PCT + from);
}

/**
 * The coefficient of Eq 13-2 from a shrinkage, fraction for 1 % moisture.
 *
 *     C = (S/3000) / (1 - 20 S/3000)
 *
 * The line from green (30 %) to oven dry, referred to the size at 10 % moisture. It gives back 68 of the
 * 74 comparable coefficients of FPL-GTR-190 (2010) Table 13-5 from Table 4-3 within 3 %.
 * @param shrinkagePct green to oven dry, %
 */
export function coefficientFromShrinkage(shrinkagePct: number): number {
  const perPct = shrinkagePct / 3000;
  return perPct / (1 - 20 * perPct);
}

/**
 * Shrinkage from green to a moisture, % of the green size.
 *
 *     S_x = S_0 (1 - x / 30)
 *
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 4-9, fibre saturation 30 %.
 */
export function shrinkageTo(moisturePct: number, shrinkagePct: number): number {
  return shrinkagePct * (1 - Math.min(moisturePct, FIBRE_SATURATION_PCT) / FIBRE_SATURATION_PCT);
}

/** A movement coefficient with how we came to it. */
export interface Coefficient {
  readonly low: number;
  readonly high: number;
  /** Halfway, for a single figure. */
  readonly usual: number;
  readonly direction: 'tangential' | 'radial' | 'between';
  readonly source: Source;
}

/**
 * The coefficient for the width of a board: tangential for flat-sawn, radial for quarter-sawn. A mixed or
 * unknown board lies somewhere between the two, so it gets the whole band, and the tangential as its usual
 * figure, because a joint must stand the worse board.
 * Measured coefficients win; else the species' shrinkage gives one. Undefined where neither is published.
 */
export function movementCoefficient(species: TimberSpecies, cut: Cut): Coefficient | undefined {
  if (cut === 'flat-sawn') return tangential(species);
  if (cut === 'quarter-sawn') return radial(species);
  const across = tangential(species);
  const along = radial(species);
  if (!across) return undefined;
  return {
    ...across,
    low: Math.min(across.low, along?.low ?? across.low),
    direction: along ? 'between' : 'tangential',
  };
}

const tangential = (species: TimberSpecies) =>
  coefficient('tangential', species.movementTangential, species.shrinkageTangentialPct);

const radial = (species: TimberSpecies) =>
  coefficient('radial', species.movementRadial, species.shrinkageRadialPct);

function coefficient(
  direction: Coefficient['direction'],
  measured: Band | undefined,
  shrinkagePct: Band | undefined,
): Coefficient | undefined {
  if (measured) {
    const { low, high } = measured;
    return { low, high, usual: middle(measured), direction, source: sourceOf(measured) };
  }
  if (!shrinkagePct) return undefined;
  const ends = {
    low: coefficientFromShrinkage(shrinkagePct.low),
    high: coefficientFromShrinkage(shrinkagePct.high),
  };
  return {
    ...ends,
    usual: middle(ends),
    direction,
    source: {
      text: `C = (S/3000)/(1 - 20 S/3000) from the shrinkage; ${shrinkagePct.source}`,
      basis: shrinkagePct.basis === 'memory' ? 'memory' : 'computed',
    },
  };
}

/** Growth and shrinkage of a board through the year from the moisture it is made at, mm, both positive. */
export interface SeasonalMovement {
  readonly swellMm: number;
  readonly shrinkMm: number;
  /** From the driest to the dampest. */
  readonly travelMm: number;
  /** False where a moisture lies outside 6 to 14 %, the range of the coefficients. */
  readonly withinRange: boolean;
}

/**
 * What a width does between the driest and the dampest of its place, from the moisture it is made at, by Eq 13-2.
 * A board made drier than the place ever is does not shrink: its shrinkage is 0.
 */
export function seasonalMovement(
  widthMm: number,
  coefficient: number,
  madeAtPct: number,
  place: { readonly low: number; readonly high: number },
): SeasonalMovement {
  return {
    swellMm: Math.max(0, movement(widthMm, coefficient, madeAtPct, place.high)),
    shrinkMm: Math.max(0, -movement(widthMm, coefficient, madeAtPct, place.low)),
    travelMm: movement(widthMm, coefficient, place.low, place.high),
    withinRange:
      withinCoefficientRange(madeAtPct, place.high) && withinCoefficientRange(place.low, place.high),
  };
}
