/** General tolerances for lengths without a tolerance of their own: ISO 2768-1. */
import { type Band, band } from './sourced.ts';

export type ToleranceClass = 'f' | 'm' | 'c' | 'v';

const SHEET = 'DIN ISO 2768-1 sheet: stored scribd copy 585640440';
const SMALL_COARSE = 'ISO 2768-1: one stored copy prints less (0.15, 0.2); most copies agree with this value';

/** Upper ends of the size steps, mm; the first step begins at 0.5 mm. */
const UP_TO = [3, 6, 30, 120, 400, 1000, 2000, 4000];

/** Plus and minus, mm, for each step; a step the standard leaves open is absent. */
export const LINEAR_LIMITS: Record<ToleranceClass, readonly (number | undefined)[]> = {
  f: [0.05, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5, undefined],
  m: [0.1, 0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2.0],
  c: [0.2, 0.3, 0.5, 0.8, 1.2, 2.0, 3.0, 4.0],
  v: [undefined, 0.5, 1.0, 1.5, 2.5, 4.0, 6.0, 8.0],
};

/** Plus-minus tolerance, mm, on a length. Undefined below 0.5 mm, above 4 m, and where the class has no value. */
export function linearTolerance(toleranceClass: ToleranceClass, lengthMm: number): Band | undefined {
  if (lengthMm < 0.5) return undefined;
  const step = UP_TO.findIndex(end => lengthMm <= end);
  const value = LINEAR_LIMITS[toleranceClass][step];
  if (value === undefined) return undefined;
  return band(-value, value, 'read', toleranceClass === 'c' && step < 2 ? SMALL_COARSE : SHEET);
}
