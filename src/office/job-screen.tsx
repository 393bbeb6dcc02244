import { type ReactNode, useCallback, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { BenchCard } from './pages/bench-card.tsx';
import { ChecksPage } from './pages/checks.tsx';
import { CuttingPage } from './pages/cutting.tsx';
import { DaysPage } from './pages/days.tsx';
import { PapersPage } from './pages/papers.tsx';
import { PricePage } from './pages/price.tsx';
import { SetUpsPage } from './pages/set-ups.tsx';
import { loadView, SettingOutPage } from './pages/setting-out.tsx';
import { CurrencyProvider } from './person.ts';
import { usePorts } from './ports.ts';
import type { JobPage } from './route.ts';
import { jobAddress, PAGE_NAMES } from './route.ts';
import { JobSession, type JobView } from './session.ts';
import { JobHead } from './shell/job-head.tsx';
import { Stumble } from './shell/stumble.tsx';
import { TitleBlock } from './shell/title-block.tsx';
import { useUndoKeys } from './shell/undo-keys.ts';
import { useMedia } from './use-media.ts';
import { WhyProvider } from './why.tsx';

/** A screen held in the hand: the card of a set-up takes all of it. */
const PHONE = 'screen and (max-width: 54em)';

/** Opens the job and keeps its session as long as the screen shows it. */
function useSession(id: string): [JobSession | undefined, JobView | undefined] {
  const ports = usePorts();
  const [session, setSession] = useState<JobSession>();
  useEffect(() => {
    const opened = new JobSession(id, {
      api: ports.api,
      deriver: ports.deriver(),
      shaper: ports.shaper(),
      today: ports.today,
    });
    setSession(opened);
    void opened.open();
    const warn = (event: BeforeUnloadEvent): void => {
      if (opened.unsaved) event.preventDefault();
    };
    addEventListener('beforeunload', warn);
    return () => {
      removeEventListener('beforeunload', warn);
      opened.close();
    };
  }, [id, ports]);
  const subscribe = useCallback(
    (listener: () => void) => session?.subscribe(listener) ?? (() => undefined),
    [session],
  );
  const view = useSyncExternalStore(subscribe, () => session?.snapshot());
  return [session, view];
}

export function JobScreen({
  id,
  page,
  card,
}: {
  id: string;
  page: JobPage;
  card: number | undefined;
}): ReactNode {
  const [session, view] = useSession(id);
  const title = typeof view?.document?.title === 'string' ? view.document.title : '';
  useEffect(() => {
    document.title = title ? `${title}: ${PAGE_NAMES[page].toLowerCase()}` : 'Scantling';
  }, [title, page]);
  useUndoKeys(session, view);
  useEffect(() => {
    if (page === 'setting-out') void loadView();
  }, [page]);
  const phone = useMedia(PHONE);
  const bench = page === 'set-ups' && card !== undefined && phone;
  const body = useMemo(
    () => session && view?.derived && pageBody(page, session, view, card, bench),
    [page, session, view, card, bench],
  );
  if (!session || !view?.state)
    return (
      <main className="waiting" aria-live="polite">
        <p className="say">{view?.trouble ?? 'Opening the job.'}</p>
        <p>
          <a className="act" href="#/">
            All jobs
          </a>
        </p>
      </main>
    );
  const faults = view.derived?.faults.length ?? 0;
  const partial = faults > 0 && !bench && page !== 'setting-out';
  return (
    <CurrencyProvider value={view.derived?.price.currency ?? 'GBP'}>
      <WhyProvider why={session.why} results={view.derived?.piece}>
        <div className={bench ? 'screen bench' : `screen on-${page}${partial ? ' faulty' : ''}`}>
          {!bench && <JobHead id={id} page={page} title={title} view={view} />}
          {partial && <Partial id={id} faults={faults} />}
          <Stumble key={page}>
            {body ?? (
              <main className="waiting" aria-live="polite">
                <p className="say">{view.trouble ?? 'Working it out.'}</p>
              </main>
            )}
          </Stumble>
          {!bench && <TitleBlock session={session} view={view} />}
        </div>
      </WhyProvider>
    </CurrencyProvider>
  );
}

/** While faults stand, every page says that it shows only what could be worked out. */
function Partial({ id, faults }: { id: string; faults: number }): ReactNode {
  return (
    <p className="partial say" role="status">
      {faults === 1 ? 'A fault stands' : `${faults} faults stand`} in the setting-out. This is only what could
      be worked out without {faults === 1 ? 'it' : 'them'}. <a href={jobAddress(id)}>Show what is to mend</a>
    </p>
  );
}

function pageBody(
  page: JobPage,
  session: JobSession,
  view: JobView,
  card: number | undefined,
  bench: boolean,
): ReactNode {
  const derived = view.derived!;
  const id = view.state!.id;
  switch (page) {
    case 'setting-out':
      return <SettingOutPage session={session} view={view} derived={derived} />;
    case 'cutting':
      return <CuttingPage derived={derived} session={session} view={view} />;
    case 'set-ups':
      return bench && card !== undefined ? (
        <BenchCard id={id} derived={derived} number={card} session={session} />
      ) : (
        <SetUpsPage id={id} derived={derived} card={card} session={session} />
      );
    case 'days':
      return <DaysPage derived={derived} />;
    case 'checks':
      return <ChecksPage session={session} view={view} derived={derived} />;
    case 'price':
      return <PricePage derived={derived} />;
    case 'papers':
      return <PapersPage id={id} derived={derived} />;
  }
}
