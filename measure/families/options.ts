/** Options and files that all cutting families share. */
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
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
  /** Seconds an instance for a general-purpose solver beside ours, where the family has one. */
  yardstick?: number;
  /** Results of an earlier run that was broken off; their instances are not run again. */
  earlier: FamilyResult[];
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
      yardstick: { type: 'string' },
      resume: { type: 'boolean' },
    },
  });
  const { json } = values;
  if (values.resume && json === undefined)
    throw new Error(`${family}: --resume needs --json, the file to go on with`);
  if (values.dir === undefined) throw new Error(`${family}: give --dir, the folder that holds instances/`);
  const limit = Number(values.seconds ?? seconds);
  if (!(limit > 0)) throw new Error(`${family}: --seconds must be a number above 0`);
  return {
    dir: values.dir,
    seconds: limit,
    variant: values.variant ?? 'fixed',
    sample: values.sample ?? false,
    earlier:
      values.resume && existsSync(json!) ? (JSON.parse(readFileSync(json!, 'utf8')) as FamilyResult[]) : [],
    ...(json === undefined ? {} : { json }),
    ...(values.plans === undefined ? {} : { plans: values.plans }),
    ...(values.yardstick === undefined ? {} : { yardstick: Number(values.yardstick) }),
    ...(values.only === undefined ? {} : { only: new RegExp(values.only) }),
  };
}

export interface Instance {
  name: string;
  /** Folder under instances/, empty at the top. */
  subset: string;
  text: () => string;
}

/** What the files of a family are called, and how its standing sample is drawn. */
interface Gathering {
  ending: string;
  /** Instances of one stratum are like each other. */
  stratum: (one: Instance) => string;
  /** The least number drawn from a stratum. */
  least: number;
}

const FOLDERS: Gathering = { ending: 'txt', stratum: one => one.subset, least: 2 };

/** Instances below DIR/instances by name: all, the named or the sample, less those done in an earlier run. */
export function findInstances(options: FamilyOptions, gathering = FOLDERS): Instance[] {
  const ending = new RegExp(`\\.${gathering.ending}(\\.gz)?$`);
  const root = join(options.dir, 'instances');
  const found: Instance[] = [];
  const walk = (folder: string, subset: string): void => {
    for (const entry of readdirSync(folder)) {
      const path = join(folder, entry);
      if (statSync(path).isDirectory()) walk(path, subset === '' ? entry : `${subset}/${entry}`);
      else if (ending.test(entry)) {
        const name = entry.replace(ending, '');
        found.push({ name, subset, text: () => readText(path) });
      }
    }
  };
  walk(root, '');
  found.sort((a, b) => (a.name < b.name ? -1 : 1));
  const { only } = options;
  const named = only
    ? found.filter(one => only.test(one.name) || only.test(`${one.subset}/${one.name}`))
    : found;
  const done = new Set(options.earlier.map(result => result.instance));
  return (options.sample ? standingSample(named, gathering) : named).filter(one => !done.has(one.name));
}

/** A tenth of each stratum, but its least number, by the hash of the name. */
function standingSample(instances: readonly Instance[], { stratum, least }: Gathering): Instance[] {
  const strata = new Map<string, Instance[]>();
  for (const one of instances) strata.set(stratum(one), [...(strata.get(stratum(one)) ?? []), one]);
  const rank = (one: Instance): number => (hash(one.name) % 10) * 2 ** 32 + hash(one.name);
  const kept = new Set(
    [...strata.values()].flatMap(inside =>
      [...inside].sort((a, b) => rank(a) - rank(b)).slice(0, Math.max(least, Math.ceil(inside.length / 10))),
    ),
  );
  return instances.filter(one => kept.has(one));
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
    // A comma between quotes belongs to its cell.
    const cells = line.split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/);
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

/** Counts against the best known, over all results: those of this run and of an earlier one. */
export function tally(
  results: readonly FamilyResult[],
  known: ReadonlyMap<string, { best: number }>,
  better: 'less' | 'more',
): string {
  let atBest = 0;
  let gap = 0;
  for (const { instance, value } of results) {
    const best = known.get(instance)?.best;
    if (best === undefined) continue;
    const over = better === 'less' ? Number(value) / best - 1 : 1 - Number(value) / best;
    if (over <= 0) atBest += 1;
    gap += over;
  }
  const proved = results.filter(result => result.status === 'proved-best').length;
  const mean = (100 * gap) / Math.max(1, results.length);
  const seconds = median(results.map(result => result.seconds));
  return `${results.length} instances, ${atBest} at best known, ${proved} proved, mean gap ${mean.toFixed(3)} %, median ${seconds.toFixed(3)} s`;
}

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
};
