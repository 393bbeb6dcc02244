/** An error in what was entered: place, fault and mend. Faults come back as values, all at once. */
export interface Fault {
  /** Path in the file, e.g. `parts.leg.length` or `joints.railToLeg.tenon.thickness`. */
  place: string;
  /** 1-based position in the text of the file, where known. */
  line?: number;
  column?: number;
  fault: string;
  expected?: string;
  mend: string;
}

export const fault = (place: string, what: string, mend: string, expected?: string): Fault => ({
  place,
  fault: what,
  mend,
  ...(expected === undefined ? {} : { expected }),
});
