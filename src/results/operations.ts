import type { Rule, Source } from './source.ts';

/** A length of time with its spread, minutes, and whose word it is. */
export interface Spell {
  low: number;
  likely: number;
  high: number;
  source: Source;
}

export type OperationKind =
  | 'order'
  | 'rest'
  | 'break down'
  | 'prepare'
  | 'mark out'
  | 'test piece'
  | 'cut'
  | 'drill'
  | 'shape'
  | 'sand'
  | 'dry fit'
  | 'measure'
  | 'glue up'
  | 'clean up'
  | 'fit'
  | 'finish'
  | 'assemble'
  | 'pack';

/** What must be done first, and by which rule of the order of work. */
export interface After {
  operation: string;
  rule: Rule;
  /** A soft rule may be broken at a risk; a hard one may not. */
  hard: boolean;
}

/** A link that the maker has set aside, with his reason; the rule's own reason is the risk he takes. */
export interface SetAside extends After {
  because: string;
}

/** What an operation brings its parts to: rough sizes are the blank's, the others the finished part's. */
export type Sizing =
  | 'rough length'
  | 'rough width'
  | 'face'
  | 'edge'
  | 'thickness'
  | 'width'
  | 'length'
  | 'sheet metal';

/** One thing done to parts or to a sub-assembly. Ids are stable over edits elsewhere. */
export interface Operation {
  id: string;
  kind: OperationKind;
  title: string;
  /** Instances worked on. */
  instances: string[];
  assembly?: string;
  /** Cuts this operation makes. */
  cuts: { instance: string; cut: string }[];
  /** Set where it brings its instances to a size. */
  sizing?: Sizing;
  /** Set where it sands: the grits, coarse to fine. */
  grits?: number[];
  handsOn: Spell;
  /** After the hands leave it: clamp, drying, curing, rest. Nothing that needs the part may start sooner. */
  wait?: {
    minutes: number;
    what: 'clamp' | 'dry' | 'cure' | 'rest' | 'delivery' | 'outwork';
    source: Source;
  };
  /** The next step must begin within this many minutes of the end of the wait (recoat window, open time). */
  window?: { minutes: number; next: string; source: Source };
  after: After[];
  /** What would have come first, had the maker not set the rule aside. */
  setAside?: SetAside[];
  /** Operations with one batch key share a set-up (order rule 8). */
  batch?: string;
  /** What the hands hold: for the day plan's one-at-a-time resources. */
  resources: string[];
  /** Same section as the show parts, for the trial cut; put on the cutting list. */
  testPiece?: { of: string; length: number; width: number; thickness: number; material: string };
  cautions: string[];
}
