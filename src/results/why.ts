import type { Quantity } from './quantity.ts';
import type { Rule, Source } from './source.ts';

/** The answer to "why is this figure what it is", down to what was entered, measured or read. */
export interface Why {
  /** Path of the figure, e.g. `parts.rail.length`. */
  figure: string;
  label: string;
  value: Quantity | undefined;
  how: 'entered' | 'expression' | 'rule' | 'table' | 'measured' | 'computed' | 'missing';
  /** The formula in words or symbols, e.g. `shoulder + 2 x tenon`. */
  formula?: string;
  rule?: Rule;
  source?: Source;
  inputs: Why[];
}
