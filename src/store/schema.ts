/** The tables as Kysely sees them; `migrations.ts` makes them. JSON is kept as text, instants as ISO 8601. */
export interface Tables {
  documents: {
    id: string;
    kind: 'job' | 'workshop';
    body: string;
    version: number;
    undo_top: number | null;
    redo_top: number | null;
    created_at: string;
    saved_at: string;
  };
  jobs: {
    id: string;
    title: string;
    number: string;
    client_id: string | null;
    deadline: string | null;
    search: string;
    saved_at: string;
  };
  edits: {
    document_id: string;
    version: number;
    id: string;
    kind: 'edit' | 'undo' | 'redo';
    actor: string;
    device: string;
    at: string;
    operations: string;
    inverse: string;
    under: number | null;
  };
  revisions: {
    document_id: string;
    number: number;
    name: string;
    note: string;
    at: string;
    version: number;
    body: string;
  };
  clients: {
    id: string;
    name: string;
    details: string;
    search: string;
    created_at: string;
    saved_at: string;
    erased_at: string | null;
  };
  issued: {
    id: string;
    document_id: string;
    revision: number | null;
    kind: string;
    title: string;
    media_type: string;
    bytes: Uint8Array;
    hash: string;
    program_version: string;
    tables_hash: string;
    issued_at: string;
    keep_until: string | null;
  };
  measurements: {
    id: string;
    document_id: string;
    subject: string;
    figure: string;
    value: number;
    unit: string;
    actor: string;
    device: string;
    at: string;
  };
  ticks: {
    id: string;
    document_id: string;
    subject: string;
    done: number;
    made_from: string;
    actor: string;
    device: string;
    at: string;
  };
}
