/** Holding of screws, dowels and bonded bars in timber: ultimate figures of tests, not allowable loads. */

/**
 * Ultimate withdrawal of a wood screw from side grain, N.
 *
 *     p = 108.25 G^2 D L
 *
 * @param gravity specific gravity G at 12 %, oven-dry mass over volume at 12 %
 * @param shankMm D, shank diameter
 * @param threadMm L, length of thread in the wood
 * Range: lead hole about 70 % of the root diameter in softwood, 90 % in hardwood.
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 8-10.
 */
export function screwWithdrawal(gravity: number, shankMm: number, threadMm: number): number {
  return 108.25 * gravity ** 2 * shankMm * threadMm;
}

/** Constants K of lateral loads of wood screws by specific gravity. Source: FPL-GTR-190 (2010) Table 8-4. */
const LATERAL = {
  hardwood: [
    { from: 0.33, to: 0.47, k: 23.17 },
    { from: 0.48, to: 0.56, k: 31.99 },
    { from: 0.57, to: 0.74, k: 44.13 },
  ],
  softwood: [
    { from: 0.29, to: 0.42, k: 23.17 },
    { from: 0.43, to: 0.47, k: 29.79 },
    { from: 0.48, to: 0.52, k: 36.4 },
  ],
} as const;

/**
 * Lateral load of a wood screw in side grain at the proportional limit, N: p = K D^2.
 * Undefined where the table has no group for the specific gravity (taken to two places, as the table prints it).
 * Source: Wood Handbook FPL-GTR-190 (2010) Eq 8-13 and Table 8-4.
 */
export function screwLateral(
  kind: 'hardwood' | 'softwood',
  gravity: number,
  shankMm: number,
): number | undefined {
  const rounded = Math.round(gravity * 100) / 100;
  const group = LATERAL[kind].find(row => rounded >= row.from && rounded <= row.to);
  return group && group.k * shankMm ** 2;
}

/**
 * Force that pulls a glued dowel or bar out of its hole, N: F = pi D L tau.
 * @param bondMPa mean shear strength of the bond on the cylinder
 * Range: until the dowel or the timber fails. Strength grows straight with the area: Crews, MSU thesis (1959).
 */
export function pullOut(diameterMm: number, lengthMm: number, bondMPa: number): number {
  return Math.PI * diameterMm * lengthMm * bondMPa;
}
