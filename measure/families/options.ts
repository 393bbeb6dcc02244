/** Options and files that all cutting families share. */
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { gunzipSync } from 'node:zlib';

export interface FamilyOptions {
  dir: string;
  seconds: number;
  json?: string;
  plans?: string;
  variant: string;
  only?: RegExp;
  /** Instances of the standing sample only. */
  sample: boolean;
}

export interface FamilyResult {
  instance: string;
  value: number | string;
  bound: number;
  status: 'proved-best' | 'within' | 'stopped';
  seconds: number;
}

export function readOptions(args: string[], family: string, seconds: number): FamilyOptions {
  const { values } = parseArgs({
    args,
    options: {
      dir: { type: 'string' },
      seconds: { type: 'string' },
      json: { type: 'string' },
      plans: { type: 'string' },
      variant: { type: 'string' },
      only: { type: 'string' },
      sample: { type: 'boolean' },
    },
  });
  if (values.dir === undefined) throw new Error(`${family}: give --dir, the folder that holds instances/`);
  const limit = Number(values.seconds ?? seconds);
  if (!(limit > 0)) throw new Error(`${family}: --seconds must be a number above 0`);
  return {
    dir: values.dir,
    seconds: limit,
    variant: values.variant ?? 'fixed',
    sample: values.sample ?? false,
    ...(values.json === undefined ? {} : { json: values.json }),
    ...(values.plans === undefined ? {} : { plans: values.plans }),
    ...(values.only === undefined ? {} : { only: new RegExp(values.only) }),
  };
}

export interface Instance {
  name: string;
  /** Folder under instances/, empty at the top. */
  subset: string;
  text: () => string;
}

/** All instances below DIR/instances, by name. */
export function findInstances(options: FamilyOptions): Instance[] {
  const root = join(options.dir, 'instances');
  const found: Instance[] = [];
  const walk = (folder: string, subset: string): void => {
    for (const entry of readdirSync(folder)) {
      const path = join(folder, entry);
      if (statSync(path).isDirectory()) walk(path, subset === '' ? entry : `${subset}/${entry}`);
      else if (/\.txt(\.gz)?$/.test(entry)) {
        const name = entry.replace(/\.gz$/, '').replace(/\.txt$/, '');
        found.push({ name, subset, text: () => readText(path) });
      }
    }
  };
  walk(root, '');
  found.sort((a, b) => (a.name < b.name ? -1 : 1));
  const named = options.only ? found.filter(one => options.only!.test(`${one.subset}/${one.name}`)) : found;
  return options.sample ? named.filter(one => hash(one.name) % 10 === 0) : named;
}

const readText = (path: string): string =>
  path.endsWith('.gz') ? gunzipSync(readFileSync(path)).toString('utf8') : readFileSync(path, 'utf8');

/** FNV-1a, for a sample that does not move. */
function hash(name: string): number {
  let value = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) value = Math.imul(value ^ name.charCodeAt(i), 0x01000193) >>> 0;
  return value;
}

export const numbersOf = (text: string): number[] =>
  text
    .split(/\s+/)
    .filter(word => word !== '')
    .map(Number);

/** Best-known value and proven bound by instance; empty when the table is not there. */
export function bestKnown(
  dir: string,
  table: string,
  where?: Readonly<Record<string, string>>,
): Map<string, { best: number; bound: number; proven: boolean }> {
  const known = new Map<string, { best: number; bound: number; proven: boolean }>();
  let lines: string[];
  try {
    lines = readFileSync(join(dir, table), 'utf8').trim().split(/\r?\n/);
  } catch {
    return known;
  }
  const head = lines[0]!.split(',');
  const column = (name: string): number => head.indexOf(name);
  const bound = Math.max(column('lower_bound'), column('upper_bound'));
  for (const line of lines.slice(1)) {
    const cells = line.split(',');
    if (where && Object.entries(where).some(([name, value]) => cells[column(name)] !== value)) continue;
    known.set(cells[0]!, {
      best: Number(cells[column('best_known')]),
      bound: Number(cells[bound]),
      proven: cells[column('proven')] === 'yes',
    });
  }
  return known;
}

export function writePlan(options: FamilyOptions, instance: string, plan: unknown): void {
  if (options.plans === undefined) return;
  mkdirSync(options.plans, { recursive: true });
  writeFileSync(join(options.plans, `${instance}.json`), `${JSON.stringify(plan)}\n`);
}

export function writeResults(options: FamilyOptions, results: readonly FamilyResult[]): void {
  if (options.json !== undefined) writeFileSync(options.json, `${JSON.stringify(results, null, 1)}\n`);
}

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
};
