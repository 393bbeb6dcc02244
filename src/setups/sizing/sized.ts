import type { Size } from '../../results/cuts.ts';
import type { Sizing } from '../../results/operations.ts';
import type { Instance } from '../../results/piece.ts';
import type { Workshop } from '../../workshop/workshop.ts';
import type { Attempt } from '../method.ts';

/** One part that an operation brings to a size. */
export interface Sized {
  instance: Instance;
  mark: string;
  /** What the layout gave it. */
  blank: Size;
  to: Sizing;
  workshop: Workshop;
}

/** A way of bringing parts to a size; it refuses with a reason what it cannot do. */
export interface SizingMethod {
  name: string;
  brings: readonly Sizing[];
  attempt(sized: Sized): Attempt;
}

/** Size to come to: the blank's while it is rough, else the finished part's. */
export const target = ({ to, blank, instance }: Sized, side: keyof Size): number =>
  to === 'rough length' || to === 'rough width' ? blank[side] : instance.size[side];

/** Does an end-cut make both ends? Then it sets the length too, and a square trim would be waste. */
export const endsMadeByMitre = (instance: Instance): boolean =>
  (['end1', 'end2'] as const).every(end =>
    instance.cuts.some(c => c.kind === 'end-cut' && c.end === end && c.stage.when === 'part'),
  );
