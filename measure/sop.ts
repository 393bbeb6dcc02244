/**
 * Set-up sequencing on published instances:
 * `npm run measure -- sop --dir DIR --seconds S --json FILE --plans PLANS [--only REGEX] [--sample] [--resume]
 * [--yardstick S]`. DIR/instances is searched through subfolders for `.sop` and `.sop.gz`. One thread; S is wall time
 * an instance, reading and bounds in it, and the start of the process in the first. Each plan is counted again from
 * its file. `--yardstick S` gives a general-purpose solver S seconds an instance, printed beside ours.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { solveSop } from '../src/setups/ordering/solve-sop.ts';
import type { Sop } from '../src/setups/ordering/sop.ts';
import {
  bestKnown,
  type FamilyOptions,
  type FamilyResult,
  findInstances,
  readOptions,
  tally,
  writePlan,
  writeResults,
} from './families/options.ts';
import { faultOfPlan } from './families/sop-check.ts';
import { YARDSTICK_NODES, yardstick } from './families/sop-yardstick.ts';

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

/** Instances of one origin share the letters their names begin with. */
const GATHERING = {
  ending: 'sop',
  stratum: (one: { name: string }) => one.name.replace(/[^a-z].*$/i, ''),
  least: 1,
};

/** @param began when the instance's time began, ms of the process */
function solveWithin(
  sop: Sop,
  seconds: number,
  began: number,
): { order: number[]; result: Omit<FamilyResult, 'instance'> & { value: number } } {
  const found = solveSop(sop, {
    seed: 1,
    iterations: Number.MAX_SAFE_INTEGER,
    rounds: 2000,
    width: 40_000,
    states: 20_000_000,
    gone: () => (performance.now() - began) / (1000 * seconds),
  });
  return {
    order: found.order,
    result: {
      value: found.value,
      bound: found.bound,
      status: found.status === 'proved best' ? 'proved-best' : 'within',
      seconds: Math.round((performance.now() - began) / 10) / 100,
    },
  };
}

async function besideIt(sop: Sop, seconds: number | undefined): Promise<string> {
  if (seconds === undefined) return '';
  if (sop.n > YARDSTICK_NODES) return `  HiGHS not asked beyond ${YARDSTICK_NODES} nodes`;
  const other = await yardstick(sop, seconds);
  return `  HiGHS ${other.value ?? 'no order'} bound ${other.bound.toFixed(1)} ${other.seconds.toFixed(1)} s`;
}

/** Reads the plans of all results again, those of an earlier run too. */
function recount(options: FamilyOptions, results: readonly FamilyResult[]): void {
  const { plans } = options;
  if (plans === undefined) return;
  const all = findInstances(
    { dir: options.dir, seconds: 1, variant: '', sample: false, earlier: [] },
    GATHERING,
  );
  const texts = new Map(all.map(one => [one.name, one.text]));
  for (const { instance, value, bound } of results) {
    const plan = readFileSync(join(plans, `${instance}.json`), 'utf8');
    const fault = faultOfPlan(texts.get(instance)!(), plan, { value: Number(value), bound });
    if (fault) throw new Error(`${instance}: the plan does not hold: ${fault}`);
  }
}

export async function run(args: string[]): Promise<void> {
  const options = readOptions(args, 'sop', 10);
  const known = bestKnown(options.dir, 'best-known.csv');
  const results: FamilyResult[] = [...options.earlier];
  // The clock of a process begins at its start: the first instance pays for it.
  let began = 0;
  for (const { name, text } of findInstances(options, GATHERING)) {
    const published = text();
    const sop = readSop(published);
    const { order, result } = solveWithin(sop, options.seconds, began);
    const fault = faultOfPlan(published, JSON.stringify({ order }), result);
    if (fault) throw new Error(`${name}: the plan does not hold: ${fault}`);
    const best = known.get(name);
    if (best?.proven && result.value < best.best) throw new Error(`${name}: below a proven best value`);
    results.push({ instance: name, ...result });
    writePlan(options, name, { order });
    writeResults(options, results);
    const over = best ? `${(100 * (result.value / best.best - 1)).toFixed(2)} % over ${best.best}` : '';
    const beside = await besideIt(sop, options.yardstick);
    console.log(
      `${name.padEnd(12)} ${String(sop.n).padStart(4)} ${String(result.value).padStart(7)} bound ${String(result.bound).padStart(7)} ${result.status.padEnd(11)} ${result.seconds.toFixed(1).padStart(6)} s  ${over}${beside}`,
    );
    began = performance.now();
  }
  recount(options, results);
  console.log(`sop: ${tally(results, known, 'less')}`);
}
