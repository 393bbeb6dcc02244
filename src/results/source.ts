/** How a value came to us. Only `read`, `workshop`, `maker` and `measured` count as known. */
export type Basis = 'read' | 'memory' | 'computed' | 'common practice' | 'workshop' | 'maker' | 'measured';

export interface Source {
  text: string;
  basis: Basis;
}

/** A numbered rule of the trade: it stands with what it governs and is quoted by tests and by "why". */
export interface Rule {
  /** Unique over the whole product, e.g. `MT-1`. */
  number: string;
  /** What it says, as one maker to another. */
  says: string;
  /** Why the trade does it so. */
  reason: string;
  source: Source;
}
