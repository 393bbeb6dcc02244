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
  // One slip of the pen upsets what follows it: the first fault of a line is the one to mend.
  const seen = new Set<number>();
  const first = document.errors.filter(e => {
    const { line } = at(e.pos[0]);
    return seen.has(line) ? false : seen.add(line);
  });
  const faults: Fault[] = first.map(e => ({
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

const SAID: Record<string, string> = {
  DUPLICATE_KEY: 'the same id stands here twice',
  MISSING_CHAR: 'a closing bracket, brace or quote is missing',
  BAD_INDENT: 'the indent does not fit, or a bracket or brace above is not closed',
  TAB_AS_INDENT: 'a tab is used to indent',
  MULTIPLE_DOCS: 'a second document begins here',
  BAD_ALIAS: 'this alias stands for nothing',
  UNEXPECTED_TOKEN: 'this is not expected here',
};

const said = (code: string, message: string): string =>
  SAID[code] ??
  message
    .split('\n')[0]!
    .replace(/ at line \d+, column \d+:?$/, '')
    .toLowerCase();

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

/** Follows the path as far as the file goes; an id that holds full stops (`tenon.length` under set) takes several steps at once. */
function positionOf(
  document: Document,
  path: readonly (string | number)[],
  at: (offset: number) => { line: number; column: number },
) {
  let node: unknown = document.contents;
  let best = 0;
  for (let i = 0; i < path.length; ) {
    const [next, steps] = stepInto(node, path.slice(i).map(String));
    if (steps === 0) break;
    node = next.value;
    best = next.offset;
    i += steps;
  }
  return at(best);
}

/** The child whose key is the first step, or the most steps joined by full stops. */
function stepInto(node: unknown, path: string[]): [{ value: unknown; offset: number }, number] {
  const none: [{ value: unknown; offset: number }, number] = [{ value: undefined, offset: 0 }, 0];
  if (isSeq(node)) {
    const item = node.items[Number(path[0])] as YamlNode | undefined;
    return item?.range ? [{ value: item, offset: item.range[0] }, 1] : none;
  }
  if (!isMap(node)) return none;
  for (let n = path.length; n > 0; n--) {
    const key = path.slice(0, n).join('.');
    const pair = node.items.find(p => isScalar(p.key) && String(p.key.value) === key);
    if (!pair) continue;
    const offset = (pair.value as YamlNode | null)?.range?.[0] ?? (pair.key as YamlNode).range?.[0] ?? 0;
    return [{ value: pair.value, offset }, n];
  }
  return none;
}
