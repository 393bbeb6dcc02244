import type { MachineKind } from '../workshop.ts';

/** What may be asked about a machine: the fields of the workshop file by their names in `Machine`. */
export type Limit = 'maxDepth' | 'fence' | 'maxTilt' | 'shortest' | 'widest' | 'longest';

/**
 * What a set-up of one kind of machine is made of, how far it reaches, what each change of it takes, how true it
 * is, and what harms. Figures are remembered workshop figures until the maker gives his own.
 */
export interface MachineFile {
  kind: MachineKind;
  /** Everything a set-up of it holds, in the words of the card. */
  holds: readonly string[];
  /** The questions it raises, with the range usual in a one-person shop, mm or degrees. */
  limits: Partial<Record<Limit, { asks: string; usual: readonly [low: number, high: number] }>>;
  /** Minutes to change each thing: remembered. */
  change: { tool: number; fence: number; height: number; tilt: number; jig: number };
  /** How true a setting repeats: mm, or degrees; remembered, see the tolerances table. */
  accuracy: { mm?: number; degrees?: number };
  cautions: readonly string[];
}
