import { readFileSync } from 'node:fs';
import { readJobFile } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import type { Fault } from '../../src/results/fault.ts';
import type { PartGroup } from '../../src/results/piece.ts';
import type { JobDocument } from '../../src/setting-out/schema.ts';
import { setOut } from '../../src/setting-out/set-out.ts';

/** A row of a printed stock list, in our own words; sizes in inches as printed. */
export interface PublishedRow {
  part: string;
  /** Part ids of the job file that make up the row. */
  ids: string[];
  quantity: number;
  length: number;
  width: number;
  thickness: number;
  /** Printed in the list, or lettered on the drawing only: those are counted apart. */
  basis: 'printed' | 'drawing';
}

/** One overall size changed by 10 mm, and exactly the rows that move, mm. */
export interface Relation {
  parameter: string;
  moves: Record<string, { length?: number; width?: number; thickness?: number }>;
}

export interface PublishedPiece {
  id: string;
  title: string;
  book: string;
  year: number;
  page: string;
  check: 'exact' | 'partial';
  rows: PublishedRow[];
  relations: Relation[];
  /** Rows of the list that no stated number determines, or printed numbers that disagree: told, not reproduced. */
  left: string[];
  /** Printed numbers that disagree, by the id of the `agree` entry whose check must say so. */
  conflicts?: string[];
}

export const INCH = 25.4;
/** Rows agree within 0.4 mm. */
export const WITHIN = 0.4;

export const STEP = 10;

const none = { length: 0, width: 0, thickness: 0 };

export function readPiece(id: string): { document: JobDocument; faults: Fault[] } {
  const { document, faults } = readJobFile(
    readFileSync(new URL(`../../examples/published/${id}.yaml`, import.meta.url), 'utf8'),
  );
  if (!document) throw new Error(`${id}: ${faults.map(f => f.fault).join('; ')}`);
  return { document, faults };
}

export function groupsOf(document: JobDocument): { groups: PartGroup[]; faults: Fault[] } {
  const { piece, faults } = setOut(document, JOINT_CATALOGUE, {
    allowances: { timber: none, sheet: none, bar: none, tube: none },
    density: () => 700,
  });
  return { groups: piece.groups, faults };
}

export interface Derived {
  quantity: number;
  /** Of each group of the row, mm. */
  blanks: { length: number; width: number; thickness: number }[];
}

/** What the setting-out gives for a row: handed groups and variants of its parts taken together. */
export function derivedRow(row: PublishedRow, groups: readonly PartGroup[]): Derived {
  const own = groups.filter(g => row.ids.includes(g.part));
  return { quantity: own.reduce((sum, g) => sum + g.instances.length, 0), blanks: own.map(g => g.blank) };
}

export function agrees(row: PublishedRow, derived: Derived): boolean {
  return (
    derived.quantity === row.quantity &&
    derived.blanks.length > 0 &&
    derived.blanks.every(b =>
      (['length', 'width', 'thickness'] as const).every(k => Math.abs(b[k] - row[k] * INCH) <= WITHIN),
    )
  );
}

/** The document with one overall size moved by 10 mm. */
export function moved(document: JobDocument, parameter: string): JobDocument {
  const old = document.parameters?.[parameter];
  if (old === undefined) throw new Error(`there is no parameter ${parameter}`);
  const text = typeof old === 'object' ? old.value : old;
  const value = `(${typeof text === 'number' ? `${text} ${document.units ?? 'mm'}` : withUnit(text, document.units ?? 'mm')}) + ${STEP} mm`;
  return {
    ...document,
    parameters: { ...document.parameters, [parameter]: typeof old === 'object' ? { ...old, value } : value },
  };
}

/** A bare number or fraction inside an expression needs the file's unit. */
const withUnit = (text: string, unit: string): string =>
  /^[\d\s./-]+$/.test(text) ? `${text} ${unit}` : text;

/** A length is typed when it is a bare figure, or a parameter that serves nothing else; otherwise it is derived. */
export function isTyped(document: JobDocument, part: string): boolean {
  const text = document.parts?.[part]?.length;
  if (text === undefined) return false;
  const plain = (t: string | number): boolean =>
    typeof t === 'number' || /^[\d\s./-]+\s*(mm|cm|m|in|")?$/.test(t);
  if (plain(text)) return true;
  const parameter = document.parameters?.[String(text)];
  if (parameter === undefined) return false;
  const value = typeof parameter === 'object' ? parameter.value : parameter;
  // Words about the piece are no use of a figure.
  const figures = JSON.stringify(document, (key, v: unknown) =>
    ['notes', 'note', 'brief', 'label', 'name', 'title'].includes(key) ? undefined : v,
  );
  const uses = figures.match(new RegExp(`\\b${text}\\b`, 'g'))?.length ?? 0;
  // Once as the parameter's own id, once as this length.
  return plain(value) && uses <= 2;
}
