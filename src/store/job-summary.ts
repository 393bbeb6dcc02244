import type { Transaction } from 'kysely';
import type { Json, JsonObject } from '../job/edits.ts';
import type { Tables } from './schema.ts';
import { searchText } from './search-text.ts';

const wordsOf = (value: Json | undefined): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value).slice(0, 400) : '';

/** Keeps the row that lists and finds the job in step with its document. */
export async function saveSummary(
  trx: Transaction<Tables>,
  id: string,
  document: JsonObject,
  savedAt: string,
): Promise<void> {
  const title = wordsOf(document.title);
  const number = wordsOf(document.number);
  const summary = {
    title,
    number,
    client_id: wordsOf(document.client) || null,
    deadline: wordsOf(document.deadline) || null,
    search: searchText(title, number, wordsOf(document.brief)),
    saved_at: savedAt,
  };
  await trx
    .insertInto('jobs')
    .values({ id, ...summary })
    .onConflict(conflict => conflict.column('id').doUpdateSet(summary))
    .execute();
}
