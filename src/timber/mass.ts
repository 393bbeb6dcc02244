/** Mass, kg, of a volume in mm3 at a density in kg/m3. */
export function massKg(volumeMm3: number, densityKgM3: number): number {
  return (volumeMm3 * densityKgM3) / 1e9;
}

/** Standard gravity, m/s2: a mass of 1 kg presses with 9.81 N. */
export const GRAVITY = 9.81;

/** Weight, N, of a mass. */
export function weightN(mass: number): number {
  return mass * GRAVITY;
}
