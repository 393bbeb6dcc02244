import { type ReactNode, useEffect, useState } from 'react';
import { madeFromJob } from '../../cutting/kept-layouts.ts';
import type { LongerLook } from '../../cutting/longer-look.ts';
import { keepLayouts } from '../../job/layout-edits.ts';
import type { Derived } from '../../results/derived.ts';
import type { CuttingDocument } from '../../setting-out/cutting-schema.ts';
import { Money } from '../figure.tsx';
import type { JobSession, JobView } from '../session.ts';

interface Props {
  derived: Derived;
  session: JobSession;
  view: JobView;
}

/** Goes on looking for cheaper layouts while the page is open, until it is told to stop. */
export function BetterLayouts({ derived, session, view }: Props): ReactNode {
  const { cutting } = derived;
  const open = cutting.materials.some(plan => plan.status === 'within');
  const [found, setFound] = useState<LongerLook>();
  const [stop, setStop] = useState<AbortController>();
  const [failed, setFailed] = useState(false);
  const { document } = view;
  useEffect(() => {
    setFound(undefined);
    setFailed(false);
    if (!open || !document) return;
    const ending = new AbortController();
    setStop(ending);
    session
      .longer(document, ending.signal)
      .then(look => !ending.signal.aborted && setFound(look))
      .catch(() => !ending.signal.aborted && setFailed(true))
      .finally(() => setStop(now => (now === ending ? undefined : now)));
    return () => ending.abort();
  }, [open, document, session]);
  if (stop)
    return (
      <p className="say longer" role="status">
        Looking for cheaper layouts.{' '}
        <button type="button" className="act" onClick={() => stop.abort()}>
          Stop
        </button>
      </p>
    );
  if (failed)
    return (
      <p className="say longer" role="status">
        The longer look broke off; the layouts below stand. Open this page again to look once more.
      </p>
    );
  if (!found || !open) return null;
  const keep = (): void => {
    const wishes = document?.cutting as CuttingDocument | undefined;
    const kept = found.uses.map(use => ({ use, madeFrom: madeFromJob(use, derived, wishes) }));
    void session.commit([keepLayouts(document ?? {}, kept)]);
  };
  if (found.uses.length === 0)
    return (
      <p className="say longer" role="status">
        {found.cost <= found.bound ? (
          'No cheaper layouts can be: proved.'
        ) : (
          <>
            A longer look finds none cheaper; none can be below <Money minor={found.bound} />.
          </>
        )}
      </p>
    );
  return (
    <p className="say longer" role="status">
      A longer look finds layouts for <Money minor={found.cost} /> in place of <Money minor={found.now} />
      {found.cost <= found.bound && ', proved best'}.{' '}
      <button type="button" className="act" onClick={keep}>
        Keep these layouts
      </button>
    </p>
  );
}
