/**
 * Design strength and slender legs by EN 1995-1-1 (2004), as an aid: it names the rules of structural timber and
 * certifies no furniture.
 */
import type { Section } from './sections.ts';

/**
 * Depth factor for bending of solid timber under 150 mm deep: kh = min((150/h)^0.2, 1.3), else 1.
 * Range: characteristic density up to 700 kg/m3. Source: EN 1995-1-1 (2004) 3.2.
 */
export function depthFactor(depthMm: number): number {
  return depthMm >= 150 ? 1 : Math.min((150 / depthMm) ** 0.2, 1.3);
}

/** Design strength, MPa: f_d = kh kmod f_k/gammaM, gammaM 1.3 for solid timber. Source: EN 1995-1-1 (2004) 2.4.1. */
export function designStrength(
  characteristicMPa: number,
  kmod: number,
  depthMm: number,
  gammaM = 1.3,
): number {
  return (depthFactor(depthMm) * kmod * characteristicMPa) / gammaM;
}

/** How a leg or post is held at its ends. */
export type Ends = 'pinned' | 'fixed and free' | 'fixed and pinned' | 'fixed';

/** Effective length over length of an ideal strut. */
const EFFECTIVE: Record<Ends, number> = {
  pinned: 1,
  'fixed and free': 2,
  // Root of tan x = x, as mechanics textbooks give it.
  'fixed and pinned': Math.PI / 4.493409457909064,
  fixed: 0.5,
};

/** Slenderness of a strut: effective length over the radius of gyration sqrt(I/A). */
export function slenderness(lengthMm: number, section: Section, ends: Ends = 'pinned'): number {
  return (EFFECTIVE[ends] * lengthMm) / Math.sqrt(section.secondMomentMm4 / section.areaMm2);
}

/** Load at which an ideal strut buckles, N: P = pi^2 E I/Le^2. Source: Euler 1744. */
export function bucklingLoad(
  lengthMm: number,
  stiffnessMPa: number,
  section: Section,
  ends: Ends = 'pinned',
): number {
  return (Math.PI ** 2 * stiffnessMPa * section.secondMomentMm4) / (EFFECTIVE[ends] * lengthMm) ** 2;
}

/** Relative slenderness: lambda/pi sqrt(fc0k/E005). Source: EN 1995-1-1 (2004) Eq 6.21. */
export function relativeSlenderness(lambda: number, crushingMPa: number, stiffness5MPa: number): number {
  return (lambda / Math.PI) * Math.sqrt(crushingMPa / stiffness5MPa);
}

/**
 * What slenderness leaves of the crushing strength.
 *
 *     k = (1 + beta (lrel - 0.3) + lrel^2)/2,  kc = 1/(k + sqrt(k^2 - lrel^2))
 *
 * @param beta straightness: 0.2 for solid timber
 * Range: lrel above 0.3; below it nothing is lost. Source: EN 1995-1-1 (2004) Eq 6.25 to 6.29.
 */
export function bucklingFactor(relative: number, beta = 0.2): number {
  if (relative <= 0.3) return 1;
  const k = 0.5 * (1 + beta * (relative - 0.3) + relative ** 2);
  return 1 / (k + Math.sqrt(k * k - relative ** 2));
}
