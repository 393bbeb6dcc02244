/**
 * Growth of a length with heat, in the unit of `length`: dL = L alpha dT.
 * Range: room temperatures. Source: definition of the linear expansion coefficient.
 * @param perK fraction for 1 K
 */
export function thermalGrowth(length: number, perK: number, warmerK: number): number {
  return length * perK * warmerK;
}
