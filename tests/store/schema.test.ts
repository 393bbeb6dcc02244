import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadEngine, rows } from '../../src/store/engine.ts';
import { migrate } from '../../src/store/migrate.ts';
import { MIGRATIONS } from '../../src/store/migrations.ts';

/** SHA-256 of every migration that has shipped. One that differs breaks stores in use: add a new step instead. */
const SHIPPED: readonly string[] = ['fd7d0ff125036f75d8f768dff3c69dc3c54a8710e1c90d529e44d7e74abe27d2'];

const hash = (text: string): string => createHash('sha256').update(text).digest('hex');

describe('schema of the store', () => {
  it('is numbered without gaps', () => {
    expect(MIGRATIONS.map(step => step.number)).toEqual(MIGRATIONS.map((_, index) => index + 1));
  });

  it('has not changed any step that shipped; a new step adds its hash here', () => {
    expect(MIGRATIONS.map(step => hash(step.sql))).toEqual(SHIPPED);
  });

  it('only adds', () => {
    for (const { sql } of MIGRATIONS)
      expect(sql).not.toMatch(/\b(drop|rename|delete from|update)\b(?! on| cascade)/i);
  });

  it('is the one in schema.sql; when it grows on purpose, write the new text there and look at the difference', async () => {
    const connection = (await loadEngine()).open(':memory:');
    migrate(connection, ':memory:', '');
    const made = rows<{ sql: string }>(
      connection,
      'select sql from sqlite_master where sql is not null order by type desc, name',
    );
    connection.close();
    const text = `${made.map(row => `${row.sql};`).join('\n\n')}\n`;
    expect(text).toBe(readFileSync(new URL('./schema.sql', import.meta.url), 'utf8'));
  });
});
