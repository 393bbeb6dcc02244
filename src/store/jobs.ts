import type { Kysely } from 'kysely';
import { sql } from 'kysely';
import type { Tables } from './schema.ts';
import { searchPatterns } from './search-text.ts';

export interface JobSummary {
  id: string;
  title: string;
  number: string;
  client: { id: string; name: string } | null;
  deadline: string | null;
  settingOut: number;
  savedAt: string;
}

export interface JobList {
  jobs: JobSummary[];
  /** How many match in all. */
  total: number;
}

export interface JobQuery {
  search?: string;
  limit?: number;
  offset?: number;
}

/** Jobs whose title, number, brief or client's name holds every word of the search; last saved first. */
export async function listJobs(db: Kysely<Tables>, query: JobQuery = {}): Promise<JobList> {
  let found = db.selectFrom('jobs').leftJoin('clients', 'clients.id', 'jobs.client_id');
  for (const pattern of searchPatterns(query.search ?? ''))
    found = found.where(
      sql<boolean>`(jobs.search like ${pattern} escape '\\' or clients.search like ${pattern} escape '\\')`,
    );
  const total = await found.select(({ fn }) => fn.countAll<number>().as('total')).executeTakeFirstOrThrow();
  const page = await found
    .select(['jobs.id', 'title', 'number', 'client_id', 'deadline', 'clients.name', 'jobs.saved_at'])
    .select(({ selectFrom }) =>
      selectFrom('revisions')
        .whereRef('revisions.document_id', '=', 'jobs.id')
        .select(({ fn }) => fn.max('revisions.number').as('frozen'))
        .as('frozen'),
    )
    .orderBy('jobs.saved_at', 'desc')
    .orderBy('jobs.id')
    .limit(query.limit ?? 100)
    .offset(query.offset ?? 0)
    .execute();
  return {
    total: total.total,
    jobs: page.map(row => ({
      id: row.id,
      title: row.title,
      number: row.number,
      client: row.client_id === null ? null : { id: row.client_id, name: row.name ?? '' },
      deadline: row.deadline,
      settingOut: (row.frozen ?? 0) + 1,
      savedAt: row.saved_at,
    })),
  };
}
