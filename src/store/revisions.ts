import type { Kysely, Selectable } from 'kysely';
import type { JsonObject } from '../job/edits.ts';
import type { Revision } from '../job/revisions.ts';
import { settingOutNumber } from '../job/revisions.ts';
import type { Tables } from './schema.ts';

export type RevisionLine = Omit<Revision, 'document'>;

const lineOf = (row: Omit<Selectable<Tables['revisions']>, 'body' | 'document_id'>): RevisionLine => ({
  number: row.number,
  name: row.name,
  note: row.note,
  at: row.at,
  version: row.version,
});

export class Revisions {
  private readonly db: Kysely<Tables>;
  private readonly now: () => string;
  constructor(db: Kysely<Tables>, now: () => string) {
    this.db = db;
    this.now = now;
  }

  /** Without their documents, newest first. */
  async list(documentId: string): Promise<RevisionLine[]> {
    const found = await this.db
      .selectFrom('revisions')
      .select(['number', 'name', 'note', 'at', 'version'])
      .where('document_id', '=', documentId)
      .orderBy('number', 'desc')
      .execute();
    return found.map(lineOf);
  }

  async get(documentId: string, number: number): Promise<Revision | undefined> {
    const row = await this.db
      .selectFrom('revisions')
      .selectAll()
      .where('document_id', '=', documentId)
      .where('number', '=', number)
      .executeTakeFirst();
    return row && { ...lineOf(row), document: JSON.parse(row.body) as JsonObject };
  }

  /** Freezes the document as it stands under the next number. Undefined when there is no such document. */
  async freeze(documentId: string, name: string, note: string): Promise<RevisionLine | undefined> {
    return this.db.transaction().execute(async trx => {
      const document = await trx
        .selectFrom('documents')
        .select(['body', 'version'])
        .where('id', '=', documentId)
        .executeTakeFirst();
      if (!document) return undefined;
      const frozen = await trx
        .selectFrom('revisions')
        .select('number')
        .where('document_id', '=', documentId)
        .execute();
      const line = { number: settingOutNumber(frozen), name, note, at: this.now() };
      const row = { ...line, document_id: documentId, ...document };
      await trx.insertInto('revisions').values(row).execute();
      return lineOf(row);
    });
  }
}
