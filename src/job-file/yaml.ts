import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  type Node as YamlNode,
} from 'yaml';
import { type Fault, fault } from '../results/fault.ts';

/** A file as plain data with the place of every value; closed against the tricks of YAML (design, section 8). */
export interface Text {
  value: unknown;
  faults: Fault[];
  /** Line and column (from 1) of the value at a path, or of the nearest one above it. */
  position(path: readonly (string | number)[]): { line: number; column: number } | undefined;
}

const LARGEST = 2_000_000;
const DEEPEST = 24;
const MOST_NODES = 60_000;
const MOST_ALIASES = 100;
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

export function readText(text: string): Text {
  const nowhere: Text = { value: undefined, faults: [], position: () => undefined };
  if (text.length > LARGEST)
    return {
      ...nowhere,
      faults: [
        fault(
          'file',
          `the file has ${text.length} characters`,
          `keep it under ${LARGEST}: move notes or photos elsewhere`,
        ),
      ],
    };
  const counter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: counter,
    uniqueKeys: true,
    maxAliasCount: MOST_ALIASES,
    version: '1.2',
    schema: 'core',
  } as Parameters<typeof parseDocument>[1]);
  const at = (offset: number): { line: number; column: number } => {
    const { line, col } = counter.linePos(offset);
    return { line, column: col };
  };
  const faults: Fault[] = document.errors.map(e => ({
    place: 'file',
    ...at(e.pos[0]),
    fault: said(e.code, e.message),
    mend: MENDS[e.code] ?? 'look at this line and the one above: a colon, a quote or the indent is off',
  }));
  faults.push(...forbidden(document, at));
  if (faults.length > 0) return { ...nowhere, faults };
  let value: unknown;
  try {
    value = document.toJS({ maxAliasCount: MOST_ALIASES });
  } catch {
    return {
      ...nowhere,
      faults: [
        fault('file', 'the aliases in it unfold without end', 'write the values out instead of * and &'),
      ],
    };
  }
  return { value, faults: [], position: path => positionOf(document, path, at) };
}

const MENDS: Record<string, string> = {
  DUPLICATE_KEY: 'give one of the two another id',
  BAD_INDENT: 'line the entries up with their neighbours',
  TAB_AS_INDENT: 'indent with spaces',
  MULTIPLE_DOCS: 'keep one job in a file',
};

function said(code: string, message: string): string {
  if (code === 'DUPLICATE_KEY') return 'the same id stands here twice';
  return message.split('\n')[0]!.replace(/ at line \d+, column \d+:?$/, '');
}

/** Depth, size and names that could reach into the program are refused before any data is made. */
function forbidden(document: Document, at: (offset: number) => { line: number; column: number }): Fault[] {
  const faults: Fault[] = [];
  let nodes = 0;
  const walk = (node: unknown, depth: number): void => {
    if (faults.length > 0) return;
    const start = (node as YamlNode | null)?.range?.[0] ?? 0;
    if (++nodes > MOST_NODES)
      faults.push({
        place: 'file',
        ...at(start),
        fault: 'the file holds too many entries',
        mend: `keep it under ${MOST_NODES}`,
      });
    else if (depth > DEEPEST)
      faults.push({
        place: 'file',
        ...at(start),
        fault: 'the entries are nested too deep',
        mend: `keep it within ${DEEPEST} levels`,
      });
    else if (isMap(node))
      for (const pair of node.items) {
        const name = isScalar(pair.key) ? String(pair.key.value) : '';
        if (FORBIDDEN.has(name))
          faults.push({
            place: 'file',
            ...at((pair.key as YamlNode).range?.[0] ?? 0),
            fault: `${name} cannot be an id`,
            mend: 'choose another word',
          });
        walk(pair.value, depth + 1);
      }
    else if (isSeq(node)) for (const item of node.items) walk(item, depth + 1);
  };
  walk(document.contents, 0);
  return faults;
}

function positionOf(
  document: Document,
  path: readonly (string | number)[],
  at: (offset: number) => { line: number; column: number },
) {
  for (let n = path.length; n > 0; n--) {
    const node = document.getIn(path.slice(0, n), true);
    const range = (node as YamlNode | undefined)?.range;
    if (range) return at(range[0]);
  }
  return { line: 1, column: 1 };
}
