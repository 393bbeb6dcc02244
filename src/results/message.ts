import type { Quantity } from './quantity.ts';

/**
 * A sentence as a template with typed quantities: `Seat moves {move} at the outer screws`.
 * Screens and papers fill it with the person's own units and precision.
 */
export interface Say {
  template: string;
  values: Record<string, Quantity>;
}

export const say = (template: string, values: Record<string, Quantity> = {}): Say => ({ template, values });
