import { useSyncExternalStore } from 'react';

export const JOB_PAGES = ['setting-out', 'cutting', 'set-ups', 'days', 'checks', 'price', 'papers'] as const;
export type JobPage = (typeof JOB_PAGES)[number];

export const PAGE_NAMES: Record<JobPage, string> = {
  'setting-out': 'Setting-out',
  cutting: 'Cutting',
  'set-ups': 'Set-ups',
  days: 'Days',
  checks: 'Checks',
  price: 'Price',
  papers: 'Papers',
};

export type Route = { screen: 'jobs' } | { screen: 'job'; id: string; page: JobPage; card?: number };

const isPage = (text: string | undefined): text is JobPage => JOB_PAGES.some(p => p === text);

/** A part of an address that cannot be decoded stands for itself: it will name nothing. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** Reads an address such as `#/jobs/bench/set-ups/7`. Anything unknown is the list of jobs. */
export function readRoute(hash: string): Route {
  const [first, id, page, card] = hash.replace(/^#\/?/, '').split('/').map(decoded);
  if (first !== 'jobs' || !id) return { screen: 'jobs' };
  const known = isPage(page) ? page : 'setting-out';
  const number = known === 'set-ups' && card && /^\d+$/.test(card) ? Number(card) : undefined;
  return { screen: 'job', id, page: known, ...(number === undefined ? {} : { card: number }) };
}

export const jobAddress = (id: string, page: JobPage = 'setting-out', card?: number): string =>
  `#/jobs/${encodeURIComponent(id)}/${page}${card === undefined ? '' : `/${card}`}`;

const subscribe = (listener: () => void): (() => void) => {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
};

export const useRoute = (): Route => readRoute(useSyncExternalStore(subscribe, () => location.hash));
