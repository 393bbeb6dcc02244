import type { Check } from '../results/checks.ts';

/** A judgement the maker has made: kept with its reason and with the finding it was made on. */
export type Overruled = Record<string, { reason: string; was?: string | undefined }>;

export const checkKey = (c: Check): string => `${c.check}:${c.subject}`;

/** What the maker set aside no longer stops the job, but stays in sight as a note with his reason. */
export function overruled(checks: Check[], by: Overruled): Check[] {
  return checks.map(check => {
    const judged = by[checkKey(check)];
    if (!judged || check.severity === 'pass' || check.severity === 'note') return check;
    const stale = judged.was !== undefined && judged.was !== `${check.figure}`;
    return stale
      ? {
          ...check,
          remedy: `${check.remedy} It was set aside when the figure was ${judged.was}; judge it again.`,
        }
      : { ...check, severity: 'note' as const, remedy: `Set aside: ${judged.reason}` };
  });
}
