import type { Kysely, Selectable, Transaction } from 'kysely';
import type { Edit, EditOperation, JsonObject } from '../job/edits.ts';
import { applyEdit } from '../job/edits.ts';
import type { EntryKind, History, Linked } from '../job/edits-history.ts';
import { afterEdit, afterRedo, afterUndo } from '../job/edits-history.ts';
import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import { saveSummary } from './job-summary.ts';
import type { Tables } from './schema.ts';

/** A document as it stands. Its version goes up by one with every edit, undo and redo. */
export interface DocumentState {
  id: string;
  kind: 'job' | 'workshop';
  document: JsonObject;
  version: number;
  canUndo: boolean;
  canRedo: boolean;
  /** Number of the setting-out being worked on: one after the last frozen revision. */
  settingOut: number;
  createdAt: string;
  savedAt: string;
}

/** Who acts, on which device, when (ISO 8601), and on which version of the document they were looking. */
export interface Act {
  id: string;
  actor: string;
  device: string;
  at: string;
  base: number;
}

export type EditAct = Act & Pick<Edit, 'operations'>;

export type Saved =
  | { ok: true; state: DocumentState }
  | { ok: false; why: 'missing' }
  | { ok: false; why: 'nothing' }
  | { ok: false; why: 'stale'; state: DocumentState }
  | { ok: false; why: 'faults'; faults: Fault[] };

export interface LogEntry extends Edit {
  version: number;
  kind: EntryKind;
  inverse: EditOperation[];
}

type Row = Selectable<Tables['documents']>;
type Db = Kysely<Tables> | Transaction<Tables>;

/** Far above any real setting-out (some tens of kilobytes); keeps one runaway document from filling the store. */
const LARGEST_BODY = 8 * 1024 * 1024;

export class Documents {
  private readonly db: Kysely<Tables>;
  private readonly now: () => string;
  constructor(db: Kysely<Tables>, now: () => string) {
    this.db = db;
    this.now = now;
  }

  /** Puts a new document into the store. False when the id is taken. */
  async create(id: string, kind: Row['kind'], document: JsonObject): Promise<boolean> {
    const at = this.now();
    return this.db.transaction().execute(async trx => {
      const added = await trx
        .insertInto('documents')
        .values({ id, kind, body: JSON.stringify(document), version: 0, created_at: at, saved_at: at })
        .onConflict(conflict => conflict.doNothing())
        .executeTakeFirst();
      if (added.numInsertedOrUpdatedRows === 0n) return false;
      if (kind === 'job') await saveSummary(trx, id, document, at);
      return true;
    });
  }

  async get(id: string): Promise<DocumentState | undefined> {
    const row = await find(this.db, id);
    return row && stateOf(this.db, row);
  }

  /** Durable when it answers. An edit whose id is already in the log is not applied twice. */
  edit(documentId: string, act: EditAct): Promise<Saved> {
    return this.change(documentId, act, 'edit', async () => ({
      operations: act.operations,
      link: afterEdit,
    }));
  }

  undo(documentId: string, act: Act): Promise<Saved> {
    return this.change(documentId, act, 'undo', (trx, row) =>
      takeBack(trx, documentId, row.undo_top, afterUndo),
    );
  }

  redo(documentId: string, act: Act): Promise<Saved> {
    return this.change(documentId, act, 'redo', (trx, row) =>
      takeBack(trx, documentId, row.redo_top, afterRedo),
    );
  }

  /** The log from just after version `since`, oldest first. */
  async log(documentId: string, since = 0): Promise<LogEntry[]> {
    const found = await this.db
      .selectFrom('edits')
      .selectAll()
      .where('document_id', '=', documentId)
      .where('version', '>', since)
      .orderBy('version')
      .execute();
    return found.map(({ operations, inverse, document_id: _id, under: _under, ...entry }) => ({
      ...entry,
      operations: JSON.parse(operations) as EditOperation[],
      inverse: JSON.parse(inverse) as EditOperation[],
    }));
  }

  private change(documentId: string, act: Act, kind: EntryKind, plan: Plan): Promise<Saved> {
    return this.db.transaction().execute(async trx => {
      const row = await find(trx, documentId);
      if (!row) return { ok: false, why: 'missing' } as const;
      if (await isInLog(trx, documentId, act.id))
        return { ok: true, state: await stateOf(trx, row) } as const;
      if (act.base !== row.version)
        return { ok: false, why: 'stale', state: await stateOf(trx, row) } as const;
      const planned = await plan(trx, row);
      if (!planned) return { ok: false, why: 'nothing' } as const;
      return write(trx, row, act, kind, planned, this.now());
    });
  }
}

interface Planned {
  operations: readonly EditOperation[];
  link: (history: History, entry: number) => Linked;
}
type Plan = (trx: Transaction<Tables>, row: Row) => Promise<Planned | undefined>;

async function write(
  trx: Transaction<Tables>,
  row: Row,
  act: Act,
  kind: EntryKind,
  { operations, link }: Planned,
  savedAt: string,
): Promise<Saved> {
  const applied = applyEdit(JSON.parse(row.body) as JsonObject, { operations });
  if (!applied.ok) return { ok: false, why: 'faults', faults: applied.faults };
  const body = JSON.stringify(applied.document);
  if (body.length > LARGEST_BODY) return { ok: false, why: 'faults', faults: [tooLarge(body.length)] };
  const version = row.version + 1;
  const { history, under } = link({ undo: row.undo_top, redo: row.redo_top }, version);
  const { id, actor, device, at } = act;
  const said = { operations: JSON.stringify(operations), inverse: JSON.stringify(applied.inverse) };
  await trx
    .insertInto('edits')
    .values({ document_id: row.id, version, id, kind, actor, device, at, ...said, under })
    .execute();
  const saved = { body, version, undo_top: history.undo, redo_top: history.redo, saved_at: savedAt };
  await trx.updateTable('documents').set(saved).where('id', '=', row.id).execute();
  if (row.kind === 'job') await saveSummary(trx, row.id, applied.document, savedAt);
  return { ok: true, state: await stateOf(trx, { ...row, ...saved }, applied.document) };
}

const tooLarge = (length: number): Fault =>
  fault(
    'edit',
    `the document would grow to ${Math.round(length / 1024)} kB`,
    `keep it under ${LARGEST_BODY / 1024} kB; pictures and files belong beside the job`,
  );

const find = (db: Db, id: string): Promise<Row | undefined> =>
  db.selectFrom('documents').selectAll().where('id', '=', id).executeTakeFirst();

async function isInLog(db: Db, documentId: string, editId: string): Promise<boolean> {
  const found = await db
    .selectFrom('edits')
    .select('version')
    .where('document_id', '=', documentId)
    .where('id', '=', editId)
    .executeTakeFirst();
  return found !== undefined;
}

async function takeBack(
  trx: Transaction<Tables>,
  documentId: string,
  top: number | null,
  link: (history: History, entry: number, underTop: number | null) => Linked,
): Promise<Planned | undefined> {
  if (top === null) return undefined;
  const entry = await trx
    .selectFrom('edits')
    .select(['inverse', 'under'])
    .where('document_id', '=', documentId)
    .where('version', '=', top)
    .executeTakeFirstOrThrow();
  const operations = JSON.parse(entry.inverse) as EditOperation[];
  return { operations, link: (history, number) => link(history, number, entry.under) };
}

async function stateOf(db: Db, row: Row, document?: JsonObject): Promise<DocumentState> {
  const { frozen } = await db
    .selectFrom('revisions')
    .select(({ fn }) => fn.max('number').as('frozen'))
    .where('document_id', '=', row.id)
    .executeTakeFirstOrThrow();
  return {
    id: row.id,
    kind: row.kind,
    document: document ?? (JSON.parse(row.body) as JsonObject),
    version: row.version,
    canUndo: row.undo_top !== null,
    canRedo: row.redo_top !== null,
    settingOut: (frozen ?? 0) + 1,
    createdAt: row.created_at,
    savedAt: row.saved_at,
  };
}
