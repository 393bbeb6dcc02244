import type { Kysely } from 'kysely';
import type { Tables } from './schema.ts';

interface Said {
  id: string;
  documentId: string;
  actor: string;
  device: string;
  /** ISO 8601 instant at the bench. */
  at: string;
}

/** Calipers' word: a figure of an instance, batch or joint as it was measured. */
export interface Measurement extends Said {
  subject: string;
  figure: string;
  value: number;
  unit: string;
}

/** A box ticked or cleared: a run of a set-up, an operation, a step of an order. */
export interface Tick extends Said {
  subject: string;
  done: boolean;
  /** Hash of the plan on which it was ticked. */
  madeFrom: string;
}

/** What was measured and done. Rows are only added; the last one for a subject says how things stand. */
export class Done {
  private readonly db: Kysely<Tables>;
  constructor(db: Kysely<Tables>) {
    this.db = db;
  }

  async measure({ documentId, ...one }: Measurement): Promise<void> {
    await this.db
      .insertInto('measurements')
      .values({ ...one, document_id: documentId })
      .onConflict(conflict => conflict.column('id').doNothing())
      .execute();
  }

  async measurements(documentId: string): Promise<Measurement[]> {
    const found = await this.db
      .selectFrom('measurements')
      .selectAll()
      .where('document_id', '=', documentId)
      .orderBy('at')
      .orderBy('id')
      .execute();
    return found.map(({ document_id, ...one }) => ({ ...one, documentId: document_id }));
  }

  async tick({ documentId, madeFrom, done, ...one }: Tick): Promise<void> {
    await this.db
      .insertInto('ticks')
      .values({ ...one, document_id: documentId, made_from: madeFrom, done: done ? 1 : 0 })
      .onConflict(conflict => conflict.column('id').doNothing())
      .execute();
  }

  /** Oldest first. */
  async ticks(documentId: string): Promise<Tick[]> {
    const found = await this.db
      .selectFrom('ticks')
      .selectAll()
      .where('document_id', '=', documentId)
      .orderBy('at')
      .orderBy('id')
      .execute();
    return found.map(({ document_id, made_from, done, ...one }) => ({
      ...one,
      documentId: document_id,
      madeFrom: made_from,
      done: done === 1,
    }));
  }
}
