/** Clamping of a glue-up: force and number. */

/** Force over the whole joint, N: length x thickness x pressure. Each clamp carries its share. */
export function clampForce(lengthMm: number, thicknessMm: number, pressureMPa: number): number {
  return lengthMm * thicknessMm * pressureMPa;
}

/** Clamps along an edge when the outer ones stand `endMm` from the ends and none is further than `spacingMm` from the next. */
export function clampCount(lengthMm: number, endMm: number, spacingMm: number): number {
  const between = Math.max(0, lengthMm - 2 * endMm);
  return Math.ceil(between / spacingMm) + 1;
}
