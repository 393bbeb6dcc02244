import type { Say } from './message.ts';
import type { QuantityKind } from './quantity.ts';
import type { Basis, Rule } from './source.ts';

/** Worst first. `unknown` (a value is missing) and `pending` (still working) never count as pass. */
export const SEVERITIES = ['stop', 'attend', 'unknown', 'pending', 'note', 'pass'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** One figure that clears a check, ready to be made an edit. */
export interface Mend {
  /** Path of the figure: a parameter's id, or `joints.ID.FIGURE`. */
  parameter: string;
  /** In the unit of the figure's kind (mm, degrees). */
  value: number;
  /** Words for the button. */
  label: string;
  /** Where it is written in the job, and what is written there, unit and all. */
  edit?: { path: string[]; value: string | number };
}

/** A judgement with a figure, a limit, a source and a remedy. */
export interface Check {
  /** Name of the check, e.g. `movement`. */
  check: string;
  /** What it judges: instance, joint, operation or figure path. */
  subject: string;
  severity: Severity;
  /** The numbered rule that judged it: its own words, reason and source, for `why`. */
  rule?: Rule;
  title: string;
  figure: number | null;
  limit: number | null;
  unit: QuantityKind;
  source: string;
  basis: Basis;
  remedy: string;
  /** An edit that would clear it, where one parameter does. */
  mend?: Mend;
  say: Say;
}
