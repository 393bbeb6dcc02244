import { type ReactNode, useState } from 'react';
import { STATE_WORD } from '../../drawings/marks.ts';
import { SEVERITIES, type Severity } from '../../results/checks.ts';
import type { Derived } from '../../results/derived.ts';
import type { JobSession, JobView } from '../session.ts';
import { ChecksList } from '../setting-out/checks-list.tsx';
import { Faults } from '../setting-out/faults.tsx';
import { worstFirst } from '../setting-out/worst-first.ts';
import { WhyNote } from '../why.tsx';

/** Every judgement with its figure, limit, source and mend. */
export function ChecksPage({
  session,
  view,
  derived,
}: {
  session: JobSession;
  view: JobView;
  derived: Derived;
}): ReactNode {
  const [only, setOnly] = useState<Severity>();
  const counts = SEVERITIES.map(
    s => [s, derived.checks.filter(c => c.severity === s).length] as const,
  ).filter(([, n]) => n > 0);
  const shown = worstFirst(derived.checks).filter(c => only === undefined || c.severity === only);
  return (
    <main className="checks-page">
      <Faults faults={derived.faults} />
      <fieldset className="viewbar" aria-label="Show">
        <button
          type="button"
          className="seat"
          aria-pressed={only === undefined}
          onClick={() => setOnly(undefined)}
        >
          All {derived.checks.length}
        </button>
        {counts.map(([severity, n]) => (
          <button
            key={severity}
            type="button"
            className="seat"
            aria-pressed={only === severity}
            onClick={() => setOnly(severity)}
          >
            {STATE_WORD[severity]} {n}
          </button>
        ))}
      </fieldset>
      <ChecksList checks={shown} session={session} document={view.state!.document} full />
      <WhyNote hint={false} />
      {derived.checks.length === 0 && <p className="say none">No checks yet.</p>}
      <p className="say modest">
        An aid, not a certificate. Loads and limits are the published ones named beside each; local codes and
        qualified people decide.
      </p>
    </main>
  );
}
