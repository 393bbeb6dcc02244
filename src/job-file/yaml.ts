import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Pair,
  parseDocument,
  type YAMLMap,
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
    // The library compares every key with every other; `forbidden` finds the same in one pass.
    uniqueKeys: false,
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
  BAD_INDENT: 'line the entries up with their neighbours',
  TAB_AS_INDENT: 'indent with spaces',
  MULTIPLE_DOCS: 'keep one job in a file',
};

const SAID: Record<string, string> = {
  MISSING_CHAR: 'a closing bracket, brace or quote is missing',
  BAD_INDENT: 'the indent does not fit, or a bracket or brace above is not closed',
  TAB_AS_INDENT: 'a tab is used to indent',
  MULTIPLE_DOCS: 'a second document begins here',
  BAD_ALIAS: 'this alias stands for nothing',
  UNEXPECTED_TOKEN: 'this is not expected here',
};

const said = (code: string, message: string): string =>
  SAID[code] ??
  (/call stack/i.test(message) ? 'the entries are nested too deep' : undefined) ??
  message
    .split('\n')[0]!
    .replace(/ at line \d+, column \d+:?$/, '')
    .toLowerCase();

/** Depth, size and names that could reach into the program are refused before any data is made. */
function forbidden(document: Document, at: (offset: number) => { line: number; column: number }): Fault[] {
  const faults: Fault[] = [];
  const twice: Fault[] = [];
  let nodes = 0;
  const told = (list: Fault[], node: unknown, said: string, mend: string): void => {
    list.push({ place: 'file', ...at((node as YamlNode | null)?.range?.[0] ?? 0), fault: said, mend });
  };
  const entries = (map: YAMLMap, depth: number): void => {
    const names = new Set<string>();
    for (const { key, value } of map.items) {
      if (isScalar(key)) {
        const name = String(key.value);
        if (names.has(name))
          told(twice, key, 'the same id stands here twice', 'give one of the two another id');
        names.add(name);
        if (FORBIDDEN.has(name)) told(faults, key, `${name} cannot be an id`, 'choose another word');
      } else told(faults, key, 'an id is made from an alias or a list', 'write the id out as a word');
      walk(value, depth + 1);
    }
  };
  const walk = (node: unknown, depth: number): void => {
    if (faults.length > 0) return;
    if (++nodes > MOST_NODES)
      told(faults, node, 'the file holds too many entries', `keep it under ${MOST_NODES}`);
    else if (depth > DEEPEST)
      told(faults, node, 'the entries are nested too deep', `keep it within ${DEEPEST} levels`);
    else if (isMap(node)) entries(node, depth);
    else if (isSeq(node)) for (const item of node.items) walk(item, depth + 1);
  };
  walk(document.contents, 0);
  return [...faults, ...twice];
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

const KNOWN_PAIRS = new WeakMap<YAMLMap, ReadonlyMap<string, Pair>>();

/** Entries by key, made once: a file may hold thousands of entries and as many faults. */
function pairsOf(node: YAMLMap): ReadonlyMap<string, Pair> {
  const kept = KNOWN_PAIRS.get(node);
  if (kept) return kept;
  const made = new Map(node.items.flatMap(p => (isScalar(p.key) ? [[String(p.key.value), p] as const] : [])));
  KNOWN_PAIRS.set(node, made);
  return made;
}

/** The child whose key is the first step, or the most steps joined by full stops. */
function stepInto(node: unknown, path: string[]): [{ value: unknown; offset: number }, number] {
  const none: [{ value: unknown; offset: number }, number] = [{ value: undefined, offset: 0 }, 0];
  if (isSeq(node)) {
    const item = node.items[Number(path[0])] as YamlNode | undefined;
    return item?.range ? [{ value: item, offset: item.range[0] }, 1] : none;
  }
  if (!isMap(node)) return none;
  const pairs = pairsOf(node);
  for (let n = path.length; n > 0; n--) {
    const pair = pairs.get(path.slice(0, n).join('.'));
    if (!pair) continue;
    const offset = (pair.value as YamlNode | null)?.range?.[0] ?? (pair.key as YamlNode).range?.[0] ?? 0;
    return [{ value: pair.value, offset }, n];
  }
  return none;
}
