/** What a check is: numbered rules, and a judgement over everything that follows from a job. Row 6. */
import type { Check, Severity } from '../results/checks.ts';
import type { Commission } from '../results/commission.ts';
import type { CuttingPlan } from '../results/cutting.ts';
import type { DayPlan } from '../results/days.ts';
import type { Say } from '../results/message.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { QuantityKind } from '../results/quantity.ts';
import type { SetUpPlan } from '../results/setups.ts';
import type { Basis, Rule, Source } from '../results/source.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { View } from './view.ts';

/** Everything a check may look at. */
export interface CheckInput {
  piece: Piece;
  commission: Commission;
  operations: Operation[];
  cutting: CuttingPlan;
  setups: SetUpPlan;
  days: DayPlan;
  workshop: Workshop;
}

/** One check: its name, the rules it judges by, and the judging. A new check is one file and one line in `index.ts`. */
export interface CheckMaker {
  name: string;
  rules: readonly Rule[];
  judge(input: CheckInput, view: View): Check[];
}

export interface Finding {
  check: string;
  subject: string;
  severity: Severity;
  rule: Rule;
  title: string;
  figure: number | null;
  limit: number | null;
  unit: QuantityKind;
  remedy: string;
  say: Say;
  mend?: Check['mend'] | undefined;
  /** Sources of the figure besides the rule's own. The weakest basis of all is the finding's. */
  sources?: readonly Source[];
}

/** From the surest to the least sure. */
const TRUST: readonly Basis[] = [
  'measured',
  'maker',
  'workshop',
  'read',
  'computed',
  'common practice',
  'memory',
];

const weakest = (of: readonly Basis[]): Basis =>
  of.reduce((worst, basis) => (TRUST.indexOf(basis) > TRUST.indexOf(worst) ? basis : worst));

/** The rule by its number, with its source where that says more than its basis does. */
const quoted = ({ number, source }: Rule): string =>
  source.text === source.basis ? number : `${number}: ${source.text}`;

/** A finding as the result that screens, papers and the command line carry. */
export function finding(found: Finding): Check {
  const { rule, sources = [], mend, ...rest } = found;
  const all = [rule.source, ...sources];
  return {
    ...rest,
    rule,
    source: [...new Set([quoted(rule), ...sources.map(s => s.text)])].join('; '),
    basis: weakest(all.map(s => s.basis)),
    ...(mend ? { mend } : {}),
  };
}

/** A rule of common practice, remembered or read, in one line. */
export function rule(number: string, says: string, reason: string, text: string, basis: Basis): Rule {
  return { number, says, reason, source: { text, basis } };
}
