/**
 * Mitres of rings. Angles in degrees; M measured from the square cut in the plane of the face, B the tilt of the
 * blade from upright, p the slope of the sides from flat (0 a flat frame, 90 an upright box), N the number of sides.
 */
const RAD = Math.PI / 180;

/** Mitre of a flat ring: 180 / N. */
export const polygonMitre = (sides: number): number => 180 / sides;

/**
 * Compound mitre: tan M = tan(180/N) cos p, sin B = sin(180/N) sin p, N at least 3, p 0 to 90.
 * Saw manual chart printed with these values for N 3 to 10 (source beside the outside checks).
 */
export function compoundMitre(sides: number, slope: number): { mitre: number; bevel: number } {
  const half = polygonMitre(sides) * RAD;
  return {
    mitre: Math.atan(Math.tan(half) * Math.cos(slope * RAD)) / RAD,
    bevel: Math.asin(Math.sin(half) * Math.sin(slope * RAD)) / RAD,
  };
}

/** The same angle on a scale that counts from the fence or the blade. */
export const otherScale = (mitre: number): number => 90 - mitre;

/**
 * The ring that two like ends close, from cos(180/N) = cos M cos B; undefined when they close none of 3 to 24
 * sides within 0.05 degrees.
 */
export function ringOf(mitre: number, bevel: number): { sides: number; slope: number } | undefined {
  const half = Math.acos(Math.cos(mitre * RAD) * Math.cos(bevel * RAD)) / RAD;
  if (half < 7 || half > 61) return undefined;
  const sides = Math.round(180 / half);
  const slope = Math.asin(Math.min(1, Math.sin(bevel * RAD) / Math.sin(polygonMitre(sides) * RAD))) / RAD;
  const meant = compoundMitre(sides, slope);
  return Math.abs(meant.mitre - mitre) < 0.05 && Math.abs(meant.bevel - bevel) < 0.05
    ? { sides, slope }
    : undefined;
}

/** How far a ring gapes at its last joint when every cut is off by `error`: 2 N e. */
export const ringError = (sides: number, error: number): number => 2 * sides * error;
