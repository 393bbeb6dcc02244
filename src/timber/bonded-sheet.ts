/** Bow of sheets bonded to one another when one grows more than the other. */

/** One layer, from the face down. */
export interface Layer {
  readonly thicknessMm: number;
  readonly stiffnessMPa: number;
  /** What it would grow if it were free, as a fraction: moisture or heat. */
  readonly freeGrowth: number;
}

/**
 * Curvature of a strip of bonded layers, 1/mm; positive when the first layer is on the hollow side, that is when
 * the last one grew more.
 *
 * Each layer is held to the plane the whole takes: strain e0 + k z with no force and no moment from outside,
 *
 *     sum E t (e0 + k zc - f) = 0,   sum E [ t zc (e0 + k zc - f) + k t^3/12 ] = 0
 *
 * (z from the middle plane of the stack, zc of each layer). With two layers it is Timoshenko's bimetal.
 * Range: elastic, glue lines stiff in shear, the sheet free to bow one way; a wide sheet bows somewhat less.
 * Source: Timoshenko, "Analysis of bi-metal thermostats", J. Opt. Soc. Am. 11 (1925), extended to n layers.
 */
export function bondedCurvature(layers: readonly Layer[]): number {
  const whole = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  let top = whole / 2;
  let a = 0;
  let b = 0;
  let d = 0;
  let force = 0;
  let moment = 0;
  for (const { thicknessMm: t, stiffnessMPa: e, freeGrowth } of layers) {
    const z = top - t / 2;
    top -= t;
    a += e * t;
    b += e * t * z;
    d += e * (t * z * z + t ** 3 / 12);
    force += e * t * freeGrowth;
    moment += e * t * z * freeGrowth;
  }
  const k = (a * moment - b * force) / (a * d - b * b);
  // z points to the first layer: a positive k lengthens it, which bows the sheet away from it.
  return -k;
}

/** Rise of the middle over a straight edge laid along `lengthMm`, mm, for a curvature: k L^2/8. */
export function bow(curvaturePerMm: number, lengthMm: number): number {
  return (curvaturePerMm * lengthMm ** 2) / 8;
}
