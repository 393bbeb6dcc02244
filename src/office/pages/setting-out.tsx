import { lazy, type ReactNode, Suspense, useState } from 'react';
import type { Derived } from '../../results/derived.ts';
import type { PartGroup } from '../../results/piece.ts';
import { jobAddress } from '../route.ts';
import type { JobSession, JobView } from '../session.ts';
import { ChecksList } from '../setting-out/checks-list.tsx';
import { Faults } from '../setting-out/faults.tsx';
import { Parameters } from '../setting-out/parameters.tsx';
import { PartsTable } from '../setting-out/parts-table.tsx';
import { worstFirst } from '../setting-out/worst-first.ts';
import { WhyNote } from '../why.tsx';

/** The view comes in a piece of its own; it is asked for while the job is still on its way. */
export const loadView = () => import('../setting-out/view.tsx');
const View = lazy(loadView);

/** Shown first, worst first; the rest on request. */
const FIRST_CHECKS = 5;

export function SettingOutPage({
  session,
  view,
  derived,
}: {
  session: JobSession;
  view: JobView;
  derived: Derived;
}): ReactNode {
  const [picked, setPicked] = useState<{ mark: string; instance: string }>();
  const { groups } = derived.piece;
  const group = groups.find(g => g.mark === picked?.mark);
  const instance =
    group && (picked && group.instances.includes(picked.instance) ? picked.instance : group.instances[0]);
  const pickInstance = (id: string | undefined): void => {
    const of = groups.find(g => id !== undefined && g.instances.includes(id));
    setPicked(of && id !== undefined ? { mark: of.mark, instance: id } : undefined);
  };
  const pickGroup = (g: PartGroup): void =>
    setPicked(
      picked?.mark === g.mark || g.instances[0] === undefined
        ? undefined
        : { mark: g.mark, instance: g.instances[0] },
    );
  const checks = worstFirst(derived.checks).filter(c => c.severity !== 'pass');
  return (
    <main className="setting-out">
      <section className="view" aria-label="The piece">
        <Suspense fallback={<p className="say wait">Drawing it.</p>}>
          <View
            derived={derived}
            surfaces={view.surfaces}
            picked={instance}
            group={group}
            onPick={pickInstance}
          />
        </Suspense>
      </section>
      <Parameters session={session} view={view} derived={derived} />
      <aside aria-label="Checks and parts">
        <Faults faults={derived.faults} />
        <section className="checks" aria-labelledby="checks">
          <h2 id="checks">
            Checks <CheckCount derived={derived} shown={Math.min(FIRST_CHECKS, checks.length)} />
          </h2>
          {checks.length === 0 && (
            <p className="say none">
              {derived.faults.length > 0
                ? 'Not all can be judged until the faults are mended.'
                : 'Nothing to attend to.'}
            </p>
          )}
          <ChecksList
            checks={checks.slice(0, FIRST_CHECKS)}
            session={session}
            document={view.state!.document}
          />
          {derived.checks.length > FIRST_CHECKS && (
            <p className="more">
              <a className="act" href={jobAddress(view.state!.id, 'checks')}>
                All checks
              </a>
            </p>
          )}
        </section>
        <PartsTable derived={derived} picked={group} onPick={pickGroup} />
        <WhyNote />
      </aside>
    </main>
  );
}

function CheckCount({ derived, shown }: { derived: Derived; shown: number }): ReactNode {
  const all = derived.checks.length;
  return <span className="quiet">{shown === 0 ? `${all} made` : `${shown} of ${all}, worst first`}</span>;
}
