import type { Kysely, Selectable } from 'kysely';
import { sql } from 'kysely';
import type { Tables } from './schema.ts';
import { searchText } from './search-text.ts';

/** What is known of a client. Jobs name the id only, so that all of it can be erased. */
export interface ClientDetails {
  name: string;
  address: string;
  email: string;
  phone: string;
  notes: string;
}

export interface Client extends ClientDetails {
  id: string;
  savedAt: string;
  /** When the details were erased; then all of them are empty. */
  erasedAt: string | null;
}

const NOTHING: ClientDetails = { name: '', address: '', email: '', phone: '', notes: '' };

const clientOf = (row: Selectable<Tables['clients']>): Client => ({
  ...NOTHING,
  ...(JSON.parse(row.details) as Partial<ClientDetails>),
  id: row.id,
  savedAt: row.saved_at,
  erasedAt: row.erased_at,
});

export class Clients {
  private readonly db: Kysely<Tables>;
  private readonly now: () => string;
  constructor(db: Kysely<Tables>, now: () => string) {
    this.db = db;
    this.now = now;
  }

  async list(): Promise<Client[]> {
    const found = await this.db.selectFrom('clients').selectAll().orderBy('name').orderBy('id').execute();
    return found.map(clientOf);
  }

  async get(id: string): Promise<Client | undefined> {
    const row = await this.db.selectFrom('clients').selectAll().where('id', '=', id).executeTakeFirst();
    return row && clientOf(row);
  }

  /** Adds the client, or replaces what is known of them. */
  async save(id: string, details: ClientDetails): Promise<Client> {
    const at = this.now();
    const row = { ...rowOf(details), saved_at: at, erased_at: null };
    await this.db
      .insertInto('clients')
      .values({ id, created_at: at, ...row })
      .onConflict(conflict => conflict.column('id').doUpdateSet(row))
      .execute();
    return { id, ...details, savedAt: at, erasedAt: null };
  }

  /**
   * Erases all that is known of the client and leaves an empty record, so that jobs still say there was one.
   * Papers already issued stay as sent: their keeping is governed by law, not by this. False when unknown.
   */
  async erase(id: string): Promise<boolean> {
    const at = this.now();
    const done = await this.db
      .updateTable('clients')
      .set({ ...rowOf(NOTHING), saved_at: at, erased_at: at })
      .where('id', '=', id)
      .executeTakeFirst();
    // The write-ahead log still holds the old page until it is folded into the file.
    await sql`pragma wal_checkpoint(truncate)`.execute(this.db);
    return done.numUpdatedRows > 0n;
  }
}

const rowOf = (details: ClientDetails) => ({
  name: details.name,
  details: JSON.stringify(details),
  search: searchText(details.name),
});
