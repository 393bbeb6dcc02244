/** Lengths of screws that hold and do not come through, countersinks, pockets and slots. */

/** What a screw passes and enters, mm. */
export interface Stack {
  /** Part under the head, along the screw. */
  readonly throughMm: number;
  /** Part that takes the thread, along the screw. */
  readonly intoMm: number;
  /** Head below the surface, or depth of a counterbore. */
  readonly sunkMm: number;
  /** Wood that must stay beyond the point. */
  readonly coverMm: number;
}

/** The longest screw that leaves the cover, mm. */
export function longestScrew(stack: Stack): number {
  return stack.throughMm - stack.sunkMm + stack.intoMm - stack.coverMm;
}

export interface ChosenScrew {
  readonly lengthMm: number;
  /** Length in the second part. */
  readonly holdMm: number;
  /** Wood left beyond the point. */
  readonly leftMm: number;
}

/**
 * The longest of the lengths sold that leaves the cover. Undefined when even the shortest would come through or
 * none reaches the second part.
 */
export function chooseScrew(stack: Stack, lengthsMm: readonly number[]): ChosenScrew | undefined {
  const longest = longestScrew(stack);
  const lengthMm = Math.max(...lengthsMm.filter(length => length <= longest));
  const holdMm = lengthMm - (stack.throughMm - stack.sunkMm);
  if (!(holdMm > 0)) return undefined;
  return { lengthMm, holdMm, leftMm: stack.intoMm - holdMm };
}

/** Depth of the cone that takes a countersunk head flush, mm: (head - hole)/2 over tan of half the angle. */
export function countersinkDepth(headMm: number, holeMm: number, angleDeg = 90): number {
  return (headMm - holeMm) / 2 / Math.tan((angleDeg * Math.PI) / 360);
}

/** Length of a slot for a screw that lets the timber travel, mm: shank + travel + a little clearance. */
export function slotLength(shankMm: number, travelMm: number, clearanceMm = 1): number {
  return shankMm + travelMm + clearanceMm;
}

/**
 * Depth of a counterbore through a deep rail so that a given screw enters the top by `holdMm`, mm.
 * Not above 0: the screw is long enough without.
 */
export function counterboreDepth(railMm: number, screwMm: number, holdMm: number): number {
  return Math.max(0, railMm - (screwMm - holdMm));
}

/**
 * Slanting pocket: how far from the joint its axis meets the face so that the screw leaves the end at half the
 * thickness, mm: (t/2)/tan a.
 */
export function pocketDistance(thicknessMm: number, angleDeg: number): number {
  return thicknessMm / 2 / Math.tan((angleDeg * Math.PI) / 180);
}
