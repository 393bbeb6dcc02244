/** Stress in a bar, and the strength of timber at a moisture, at an angle, on a taper. */
import type { Section } from './sections.ts';

/** Bending stress at the edge, MPa: f = M/S. Source: Wood Handbook FPL-GTR-282 (2021) Eq 9-13. */
export function bendingStress(momentNmm: number, section: Section): number {
  return momentNmm / section.modulusMm3;
}

/**
 * Greatest shear stress, MPa: f = k V/A, k = 3/2 for a rectangle, 4/3 for a circle; 2 for a thin tube.
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 9-14; the tube by thin-wall theory.
 */
export function shearStress(shearN: number, section: Section): number {
  return ((section.shearFactor ?? 2) * shearN) / section.areaMm2;
}

/** The uniform load, N/mm, that brings a simply supported bar to a bending stress: w = 8 f S/L^2. */
export function uniformLoadAtStress(stressMPa: number, section: Section, spanMm: number): number {
  return (8 * stressMPa * section.modulusMm3) / spanMm ** 2;
}

/**
 * Strength or stiffness at a moisture, in the unit given.
 *
 *     P = P12 (P12/Pg)^((12 - M)/(Mp - 12))
 *
 * @param at12 the property at 12 %
 * @param green the property green
 * @param meetsAtPct Mp, where drying begins to tell; 25 % unless the species has its own
 * Range: not for work to maximum load, impact, nor tension across the grain; above Mp the green value holds.
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 5-3.
 */
export function strengthAtMoisture(
  at12: number,
  green: number,
  moisturePct: number,
  meetsAtPct = 25,
): number {
  if (moisturePct >= meetsAtPct) return green;
  return at12 * (at12 / green) ** ((12 - moisturePct) / (meetsAtPct - 12));
}

/**
 * Strength at an angle to the grain, MPa.
 *
 *     N = P Q/(P sin^2 t + Q cos^2 t)
 *
 * @param alongMPa P, strength along the grain
 * @param acrossMPa Q, strength across it
 * Source: Hankinson's formula, Wood Handbook FPL-GTR-282 (2021) Eq 8-16.
 */
export function strengthAtAngle(alongMPa: number, acrossMPa: number, angleDeg: number): number {
  const t = (angleDeg * Math.PI) / 180;
  return (alongMPa * acrossMPa) / (alongMPa * Math.sin(t) ** 2 + acrossMPa * Math.cos(t) ** 2);
}

/**
 * Stresses at the sloping edge of a tapered bar, MPa, for a moment there.
 *
 *     fx = 3 M/(2 b h0^2), fxy = fx tan t, fy = fx tan^2 t
 *
 * @param depthMm h0, the depth at the small end; the greatest stress is where the depth is twice that
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 9-16.
 */
export function taperedEdgeStress(
  momentNmm: number,
  widthMm: number,
  depthMm: number,
  slope: number,
): { alongMPa: number; shearMPa: number; acrossMPa: number } {
  const alongMPa = (3 * momentNmm) / (2 * widthMm * depthMm ** 2);
  return { alongMPa, shearMPa: alongMPa * slope, acrossMPa: alongMPa * slope * slope };
}
