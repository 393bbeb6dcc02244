import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { JOB_PAGES, type JobPage, jobAddress, PAGE_NAMES } from '../route.ts';
import type { JobView } from '../session.ts';
import { ShowMenu } from './show-menu.tsx';

/** The running head: whose sheet this is, and the pages of the job. */
export function JobHead({
  id,
  page,
  title,
  view,
}: {
  id: string;
  page: JobPage;
  title: string;
  view: JobView;
}): ReactNode {
  const nav = useRef<HTMLElement>(null);
  // On a narrow screen the pages scroll sideways: the one you are on comes into sight.
  // biome-ignore lint/correctness/useExhaustiveDependencies: it does so for every page
  useLayoutEffect(() => {
    const on = nav.current?.querySelector<HTMLElement>('[aria-current]');
    if (on && nav.current) nav.current.scrollLeft = on.offsetLeft - nav.current.clientWidth / 3;
  }, [page]);
  const number = view.document?.number;
  const commission = typeof number === 'string' || typeof number === 'number' ? `Commission ${number}, ` : '';
  return (
    <header className="head">
      <a className="mark" href="#/">
        Scantling
      </a>
      <div className="job">
        <h1 className="serif">{title}</h1>
        <span className="quiet">
          {commission}
          {commission ? 'setting-out' : 'Setting-out'} {view.state?.settingOut}
        </span>
      </div>
      <nav ref={nav} aria-label="Pages of this job">
        {JOB_PAGES.map(p => (
          <a key={p} href={jobAddress(id, p)} aria-current={p === page ? 'page' : undefined}>
            {PAGE_NAMES[p]}
          </a>
        ))}
      </nav>
      <ShowMenu />
    </header>
  );
}
