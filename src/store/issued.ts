import { createHash } from 'node:crypto';
import type { Kysely } from 'kysely';
import type { Tables } from './schema.ts';

/** A paper as it was sent, frozen, with what it was made by. */
export interface IssuedPaper {
  id: string;
  documentId: string;
  /** Setting-out it was made from; null for one made from the setting-out in work. */
  revision: number | null;
  /** `offer`, `invoice`, `pack`. */
  kind: string;
  title: string;
  mediaType: string;
  programVersion: string;
  /** Hash of the reference tables used. */
  tablesHash: string;
  /** ISO date until which the law wants it kept. */
  keepUntil: string | null;
}

export interface IssuedLine extends IssuedPaper {
  /** SHA-256 of the bytes, hexadecimal. */
  hash: string;
  issuedAt: string;
}

export class Issued {
  private readonly db: Kysely<Tables>;
  private readonly now: () => string;
  constructor(db: Kysely<Tables>, now: () => string) {
    this.db = db;
    this.now = now;
  }

  /** Keeps the bytes for good. There is no way to change or remove an issued paper. */
  async keep(paper: IssuedPaper, bytes: Uint8Array): Promise<IssuedLine> {
    const line = { ...paper, hash: createHash('sha256').update(bytes).digest('hex'), issuedAt: this.now() };
    await this.db
      .insertInto('issued')
      .values({
        id: line.id,
        document_id: line.documentId,
        revision: line.revision,
        kind: line.kind,
        title: line.title,
        media_type: line.mediaType,
        bytes: Buffer.from(bytes),
        hash: line.hash,
        program_version: line.programVersion,
        tables_hash: line.tablesHash,
        issued_at: line.issuedAt,
        keep_until: line.keepUntil,
      })
      .execute();
    return line;
  }

  async list(documentId: string): Promise<IssuedLine[]> {
    const found = await this.db
      .selectFrom('issued')
      .select(['id', 'document_id', 'revision', 'kind', 'title', 'media_type', 'hash'])
      .select(['program_version', 'tables_hash', 'issued_at', 'keep_until'])
      .where('document_id', '=', documentId)
      .orderBy('issued_at')
      .orderBy('id')
      .execute();
    return found.map(row => ({
      id: row.id,
      documentId: row.document_id,
      revision: row.revision,
      kind: row.kind,
      title: row.title,
      mediaType: row.media_type,
      hash: row.hash,
      programVersion: row.program_version,
      tablesHash: row.tables_hash,
      issuedAt: row.issued_at,
      keepUntil: row.keep_until,
    }));
  }

  async get(
    id: string,
  ): Promise<{ bytes: Uint8Array; mediaType: string; title: string; hash: string } | undefined> {
    const row = await this.db
      .selectFrom('issued')
      .select(['bytes', 'media_type', 'title', 'hash'])
      .where('id', '=', id)
      .executeTakeFirst();
    return (
      row && { bytes: new Uint8Array(row.bytes), mediaType: row.media_type, title: row.title, hash: row.hash }
    );
  }
}
