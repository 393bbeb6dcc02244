import { stringify } from 'csv-stringify/sync';

/** Rows as bytes for a spreadsheet. Cells that it would run as a formula are kept as text. */
export const csv = (rows: readonly (readonly (string | number)[])[]): Uint8Array =>
  new TextEncoder().encode(
    stringify(
      rows.map(row => [...row]),
      { escape_formulas: true, bom: true, record_delimiter: 'windows' },
    ),
  );
