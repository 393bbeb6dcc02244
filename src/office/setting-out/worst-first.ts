import { type Check, SEVERITIES } from '../../results/checks.ts';

const rank = (check: Check): number => SEVERITIES.indexOf(check.severity);

/** Worst first; within one severity in the order they came. */
export const worstFirst = (checks: readonly Check[]): Check[] =>
  [...checks].sort((a, b) => rank(a) - rank(b));
