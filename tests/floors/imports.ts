import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

/** The house, from the ground up. A folder imports only from rows below its own, and from itself. */
export const ROWS: readonly (readonly string[])[] = [
  ['quantities', 'geometry'],
  ['results'],
  ['figures', 'reference', 'workshop'],
  ['setting-out', 'timber'],
  ['joints'],
  ['operations', 'builders'],
  ['money', 'checks', 'days', 'setups', 'cutting', 'solids'],
  ['job'],
  ['drawings', 'job-file', 'proof'],
  ['store', 'papers', 'api', 'host'],
  ['server', 'office'],
  ['cli'],
];

/** First row that may know of the clock, chance, files and the network. */
export const FIRST_OUTER_ROW = 9;

export const rowOf = (folder: string): number => ROWS.findIndex(row => row.includes(folder));

export interface SourceFile {
  /** From src/, with forward slashes: `store/store.ts`. */
  path: string;
  folder: string;
  /** Comments taken out. */
  code: string;
  /** Files of src/ it imports, as `path`. */
  imports: string[];
  /** Packages it imports. */
  packages: string[];
}

const IMPORT =
  /\bfrom\s+['"]([^'"]+)['"]|\bimport\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)|\bnew URL\(\s*['"](\.[^'"]+)['"],\s*import\.meta\.url/g;

/** Strings are matched first, so that `//` inside one is no comment. */
const STRING_OR_COMMENT =
  /("(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g;

export const withoutComments = (text: string): string =>
  text.replaceAll(STRING_OR_COMMENT, (_whole, string?: string) => string ?? '');

export function readSource(path: string, text: string): SourceFile {
  const code = withoutComments(text);
  const named = [...code.matchAll(IMPORT)].map(match => match.slice(1).find(name => name !== undefined)!);
  const local = named.filter(name => name.startsWith('.'));
  return {
    path,
    folder: path.split('/')[0]!,
    code,
    imports: local.map(name => relative(SRC, join(SRC, dirname(path), name)).replaceAll('\\', '/')),
    packages: named.filter(name => !name.startsWith('.')),
  };
}

export const allSources = (): SourceFile[] =>
  readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .map(name => name.replaceAll('\\', '/'))
    .filter(name => /\.tsx?$/.test(name))
    .sort()
    .map(name => readSource(name, readFileSync(join(SRC, name), 'utf8')));

/** Imports that go sideways or up, each as a sentence. */
export const wrongWays = (files: readonly SourceFile[]): string[] =>
  files.flatMap(file =>
    file.imports
      .filter(name => !goesDown(file.folder, name))
      .map(
        name =>
          `${file.path} (row ${rowOf(file.folder)}) imports ${name} (row ${rowOf(name.split('/')[0]!)})`,
      ),
  );

function goesDown(folder: string, imported: string): boolean {
  const other = imported.split('/')[0]!;
  return other === folder || (rowOf(other) >= 0 && rowOf(other) < rowOf(folder));
}
