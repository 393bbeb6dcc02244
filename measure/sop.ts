/**
 * Set-up sequencing on published instances:
 * `npm run measure -- sop --dir DIR --seconds S --json FILE --plans PLANS [--only REGEX] [--resume]`.
 * DIR/instances is searched through subfolders for `.sop` and `.sop.gz`. One thread; S is wall time an instance.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { gunzipSync } from 'node:zlib';
import { checkOrder } from '../src/setups/ordering/check-order.ts';
import { solveSop } from '../src/setups/ordering/solve-sop.ts';
import type { Sop } from '../src/setups/ordering/sop.ts';
import { bestKnown } from './families/options.ts';

interface Result {
  instance: string;
  value: number;
  bound: number;
  status: 'proved-best' | 'within' | 'stopped';
  seconds: number;
}

/**
 * Reads a TSPLIB `.sop` text: the full matrix after EDGE_WEIGHT_SECTION, its first number the dimension; -1 at
 * [i][j] says that j comes before i.
 * @throws Error that names what is missing or too short
 */
export function readSop(text: string): Sop {
  const at = text.indexOf('EDGE_WEIGHT_SECTION');
  if (at < 0) throw new Error('no EDGE_WEIGHT_SECTION');
  const words = text
    .slice(at + 'EDGE_WEIGHT_SECTION'.length)
    .trim()
    .split(/\s+/);
  const n = Number(words[0]);
  if (!Number.isInteger(n) || n < 1) throw new Error(`"${words[0]}" is no dimension`);
  const numbers = words.slice(1, 1 + n * n).map(Number);
  if (numbers.length < n * n || numbers.some(Number.isNaN))
    throw new Error(`the matrix has not ${n} x ${n} numbers`);
  const before = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => j).filter(j => j > 0 && numbers[i * n + j] === -1),
  );
  return { n, cost: Float64Array.from(numbers), before };
}

const readText = (path: string): string =>
  path.endsWith('.gz') ? gunzipSync(readFileSync(path)).toString('utf8') : readFileSync(path, 'utf8');

function findFiles(folder: string): { name: string; path: string }[] {
  return readdirSync(folder)
    .sort()
    .flatMap(entry => {
      const path = join(folder, entry);
      if (statSync(path).isDirectory()) return findFiles(path);
      return /\.sop(\.gz)?$/.test(entry)
        ? [{ name: entry.replace(/\.gz$/, '').replace(/\.sop$/, ''), path }]
        : [];
    });
}

export function run(args: string[]): void {
  const { values: options } = parseArgs({
    args,
    options: {
      dir: { type: 'string' },
      seconds: { type: 'string' },
      json: { type: 'string' },
      plans: { type: 'string' },
      only: { type: 'string' },
      resume: { type: 'boolean' },
    },
  });
  if (options.dir === undefined) throw new Error('sop: give --dir, the folder that holds instances/');
  const limit = Number(options.seconds ?? 10);
  if (!(limit > 0)) throw new Error('sop: --seconds must be a number above 0');
  const only = new RegExp(options.only ?? '');
  const known = bestKnown(options.dir, 'best-known.csv');
  const results: Result[] =
    options.resume && options.json && existsSync(options.json)
      ? (JSON.parse(readFileSync(options.json, 'utf8')) as Result[])
      : [];
  const done = new Set(results.map(r => r.instance));
  for (const { name, path } of findFiles(join(options.dir, 'instances'))) {
    if (!only.test(name) || done.has(name)) continue;
    const sop = readSop(readText(path));
    const began = performance.now();
    const found = solveSop(sop, {
      seed: 1,
      iterations: Number.MAX_SAFE_INTEGER,
      rounds: 2000,
      width: 40_000,
      states: 20_000_000,
      gone: () => (performance.now() - began) / (1000 * limit),
    });
    const seconds = (performance.now() - began) / 1000;
    const checked = checkOrder(sop, found.order, found.value);
    if (checked.wrong.length > 0) throw new Error(`${name}: the plan does not hold: ${checked.wrong[0]}`);
    const best = known.get(name);
    if (best?.proven && found.value < best.best) throw new Error(`${name}: below a proven best value`);
    const status = found.status === 'proved best' ? 'proved-best' : 'within';
    results.push({
      instance: name,
      value: found.value,
      bound: found.bound,
      status,
      seconds: Math.round(seconds * 100) / 100,
    });
    if (options.plans !== undefined) {
      mkdirSync(options.plans, { recursive: true });
      writeFileSync(join(options.plans, `${name}.json`), `${JSON.stringify({ order: found.order })}\n`);
    }
    if (options.json !== undefined) writeFileSync(options.json, `${JSON.stringify(results, null, 1)}\n`);
    const over = best ? `${(100 * (found.value / best.best - 1)).toFixed(2)} % over ${best.best}` : '';
    console.log(
      `${name.padEnd(12)} ${String(sop.n).padStart(4)} ${String(found.value).padStart(7)} bound ${String(found.bound).padStart(7)} ${status.padEnd(11)} ${seconds.toFixed(1).padStart(6)} s  ${over}`,
    );
  }
  const at = results.filter(r => r.value === known.get(r.instance)?.best).length;
  const proved = results.filter(r => r.status === 'proved-best').length;
  console.log(`sop: ${results.length} instances, ${at} at best known, ${proved} proved here`);
}
