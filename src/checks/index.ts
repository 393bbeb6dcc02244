/** All checks of the trade over a derived job, and their order for showing. Row 6. */
import { type Check, SEVERITIES, type Severity } from '../results/checks.ts';
import type { Rule } from '../results/source.ts';
import { adhesivesCheck } from './adhesives.ts';
import { agreementCheck } from './agreement.ts';
import { bowCheck } from './bow.ts';
import type { CheckInput, CheckMaker } from './check.ts';
import { clampsCheck } from './clamps.ts';
import { cutsMeetCheck } from './cuts-meet.ts';
import { doorsCheck } from './doors.ts';
import { finishesCheck } from './finishes.ts';
import { grooveEndsCheck } from './groove-ends.ts';
import { ironStainCheck } from './iron-stain.ts';
import { jointLimitsCheck } from './joint-limits.ts';
import { kneesCheck } from './knees.ts';
import { liftingCheck } from './lifting.ts';
import { moistureCheck } from './moisture.ts';
import { movementCheck } from './movement.ts';
import { plansCheck } from './plans.ts';
import { recessCheck } from './recess.ts';
import { restrainedCheck } from './restrained.ts';
import { sagCheck } from './sag.ts';
import { screwsCheck } from './screws.ts';
import { stabilityCheck } from './stability.ts';
import { unsizedCheck } from './unsized.ts';
import { isSized, viewOf } from './view.ts';
import { wayInCheck } from './way-in.ts';
import { woodLeftCheck } from './wood-left.ts';

export type { CheckInput, CheckMaker } from './check.ts';

/** A new check is one file and one line here. */
export const CHECKS: readonly CheckMaker[] = [
  movementCheck,
  restrainedCheck,
  moistureCheck,
  jointLimitsCheck,
  cutsMeetCheck,
  grooveEndsCheck,
  wayInCheck,
  woodLeftCheck,
  screwsCheck,
  recessCheck,
  bowCheck,
  adhesivesCheck,
  clampsCheck,
  finishesCheck,
  ironStainCheck,
  sagCheck,
  stabilityCheck,
  kneesCheck,
  doorsCheck,
  liftingCheck,
  plansCheck,
  unsizedCheck,
  agreementCheck,
];

export const CHECK_RULES: readonly Rule[] = CHECKS.flatMap(c => c.rules);

/** Every judgement on a derived job, worst first. Pure: the same job gives the same list. */
export function runChecks(input: CheckInput): Check[] {
  const view = viewOf(input);
  const { piece } = input;
  const judged = { ...input, piece: { ...piece, instances: piece.instances.filter(isSized) } };
  return worstFirst(CHECKS.flatMap(maker => maker.judge(judged, view)));
}

const RANK = new Map<Severity, number>(SEVERITIES.map((severity, rank) => [severity, rank]));

/** How far a figure is past its limit, as a share of the limit, whichever way the limit lies. A count is no measure of harm. */
function excess({ figure, limit, unit }: Check): number {
  if (figure === null || limit === null || unit === 'count') return 0;
  return Math.abs(figure - limit) / Math.max(Math.abs(limit), 1);
}

/** Worst first: by severity, then by how far past the limit, then by name, so that the order never wavers. */
export function worstFirst(checks: readonly Check[]): Check[] {
  const byName = (a: Check, b: Check): number =>
    a.check < b.check
      ? -1
      : a.check > b.check
        ? 1
        : a.subject < b.subject
          ? -1
          : a.subject > b.subject
            ? 1
            : 0;
  const rank = (c: Check): number => RANK.get(c.severity)!;
  return [...checks].sort((a, b) => rank(a) - rank(b) || excess(b) - excess(a) || byName(a, b));
}

/** What is shown before anything is asked for: at most `most`, worst first, and nothing that has passed. */
export function firstShown(checks: readonly Check[], most = 5): Check[] {
  return worstFirst(checks.filter(c => c.severity !== 'pass')).slice(0, most);
}

/** How many of each severity; `unknown` and `pending` stand by themselves and never among the passed. */
export function tally(checks: readonly Check[]): Record<Severity, number> {
  const counts = Object.fromEntries(SEVERITIES.map(s => [s, 0])) as Record<Severity, number>;
  for (const { severity } of checks) counts[severity]++;
  return counts;
}
