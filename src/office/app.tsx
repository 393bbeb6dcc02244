import { type ReactNode, useEffect } from 'react';
import { JobScreen } from './job-screen.tsx';
import { JobsScreen } from './pages/jobs.tsx';
import { useRoute } from './route.ts';

/** Past the head of the page, for those who go by keyboard. */
function toSheet(): void {
  const sheet = document.querySelector<HTMLElement>('main');
  sheet?.setAttribute('tabindex', '-1');
  sheet?.focus();
}

/** The whole office: the list of jobs, or one job. */
export function App(): ReactNode {
  const route = useRoute();
  const place = route.screen === 'job' ? `${route.id} ${route.page}` : 'jobs';
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new page begins at its head
  useEffect(() => {
    scrollTo(0, 0);
  }, [place]);
  return (
    <>
      <button type="button" className="skip btn" onClick={toSheet}>
        To the sheet
      </button>
      {route.screen === 'job' ? (
        <JobScreen key={route.id} id={route.id} page={route.page} card={route.card} />
      ) : (
        <JobsScreen />
      )}
    </>
  );
}
