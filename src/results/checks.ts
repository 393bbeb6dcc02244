import type { Say } from './message.ts';
import type { QuantityKind } from './quantity.ts';
import type { Basis, Rule } from './source.ts';

/** Worst first. `unknown` (a value is missing) and `pending` (still working) never count as pass. */
export const SEVERITIES = ['stop', 'attend', 'unknown', 'pending', 'note', 'pass'] as const;
export type Severity = (typeof SEVERITIES)[number];

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
  mend?: { parameter: string; value: number; label: string };
  say: Say;
}
