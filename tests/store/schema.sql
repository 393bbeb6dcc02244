CREATE TABLE clients (
  id text primary key,
  name text not null,
  details text not null,
  search text not null,
  created_at text not null,
  saved_at text not null,
  erased_at text
) strict;

CREATE TABLE documents (
  id text primary key,
  kind text not null check (kind in ('job', 'workshop')),
  body text not null,
  version integer not null default 0,
  undo_top integer,
  redo_top integer,
  created_at text not null,
  saved_at text not null
) strict;

CREATE TABLE edits (
  document_id text not null references documents (id) on delete cascade,
  version integer not null,
  id text not null,
  kind text not null check (kind in ('edit', 'undo', 'redo')),
  actor text not null,
  device text not null,
  at text not null,
  operations text not null,
  inverse text not null,
  under integer,
  primary key (document_id, version)
) strict, without rowid;

CREATE TABLE issued (
  id text primary key,
  document_id text not null,
  revision integer,
  kind text not null,
  title text not null,
  media_type text not null,
  bytes blob not null,
  hash text not null,
  program_version text not null,
  tables_hash text not null,
  issued_at text not null,
  keep_until text
) strict;

CREATE TABLE jobs (
  id text primary key references documents (id) on delete cascade,
  title text not null,
  number text not null,
  client_id text,
  deadline text,
  search text not null,
  saved_at text not null
) strict;

CREATE TABLE measurements (
  id text primary key,
  document_id text not null references documents (id) on delete cascade,
  subject text not null,
  figure text not null,
  value real not null,
  unit text not null,
  actor text not null,
  device text not null,
  at text not null
) strict;

CREATE TABLE revisions (
  document_id text not null references documents (id) on delete cascade,
  number integer not null,
  name text not null,
  note text not null,
  at text not null,
  version integer not null,
  body text not null,
  primary key (document_id, number)
) strict;

CREATE TABLE ticks (
  id text primary key,
  document_id text not null references documents (id) on delete cascade,
  subject text not null,
  done integer not null,
  made_from text not null,
  actor text not null,
  device text not null,
  at text not null
) strict;

CREATE UNIQUE INDEX edits_by_id on edits (document_id, id);

CREATE INDEX issued_by_document on issued (document_id, issued_at);

CREATE INDEX jobs_by_client on jobs (client_id);

CREATE INDEX jobs_by_saving on jobs (saved_at desc, id);

CREATE INDEX measurements_by_document on measurements (document_id, at);

CREATE INDEX ticks_by_document on ticks (document_id, at);
