/** One plate, most value: `npm run measure -- guillotine-knapsack-2d --dir DIR --seconds 10 --variant two-staged-L`. */
import { bestPlate } from '../src/cutting/plates/best-plate.ts';
import type { Stages } from '../src/cutting/plates/guillotine-table.ts';
import {
  bestKnown,
  type FamilyResult,
  findInstances,
  numbersOf,
  readOptions,
  tally,
  writePlan,
  writeResults,
} from './families/options.ts';
import { countedPieces, type PlateProblem, planOf, toCutProblem } from './families/plates.ts';

interface Variant {
  table: string;
  where?: Record<string, string>;
  turn: boolean;
  stages: Stages;
  endless: boolean;
}

const UNLIMITED = 'best-known.unconstrained.csv';
const STAGED = 'best-known.two-staged.csv';
const VARIANTS: Record<string, Variant> = {
  fixed: { table: 'best-known.csv', turn: false, stages: 'free', endless: false },
  'two-staged-L': {
    table: STAGED,
    where: { first_stage_strips: 'span-L' },
    turn: false,
    stages: 'strips along',
    endless: false,
  },
  'two-staged-W': {
    table: STAGED,
    where: { first_stage_strips: 'span-W' },
    turn: false,
    stages: 'strips across',
    endless: false,
  },
  unconstrained: { table: UNLIMITED, where: { rotation: 'no' }, turn: false, stages: 'free', endless: true },
  'unconstrained-rotation': {
    table: UNLIMITED,
    where: { rotation: 'yes' },
    turn: true,
    stages: 'free',
    endless: true,
  },
};

/** With as many copies as could lie on the plate where the limit is to be ignored. */
function read(text: string, endless: boolean): { problem: PlateProblem; worth: number[] } {
  const [l, w, n, ...rest] = numbersOf(text);
  const types = Array.from({ length: n! }, (_, i) => {
    const [a, b, value, limit] = rest.slice(4 * i, 4 * i + 4) as [number, number, number, number];
    const most = Math.max(1, Math.floor((l! * w!) / (a * b)));
    return { l: a, w: b, value, demand: endless ? most : Math.min(limit, most) };
  });
  return { problem: { sizes: [{ l: l!, w: w!, cost: 1 }], types }, worth: types.map(type => type.value) };
}

export function run(args: string[]): void {
  const options = readOptions(args, 'guillotine-knapsack-2d', 10);
  const variant = VARIANTS[options.variant];
  if (!variant) throw new Error(`--variant is one of ${Object.keys(VARIANTS).join(', ')}`);
  const known = bestKnown(options.dir, variant.table, variant.where);
  const results: FamilyResult[] = [...options.earlier];
  for (const instance of findInstances(options)) {
    const best = known.get(instance.name);
    if (known.size > 0 && !best) continue;
    const { problem, worth } = read(instance.text(), variant.endless);
    const began = performance.now();
    const ends = began + 1000 * options.seconds;
    const found = bestPlate(toCutProblem(problem, variant.turn), Float64Array.from(worth), {
      seed: 1,
      rounds: Infinity,
      stages: variant.stages,
      endless: variant.endless,
      stop: () => performance.now() > ends,
    });
    const seconds = (performance.now() - began) / 1000;
    const plan = planOf(found.layout ? [found.layout] : [], problem);
    const made = countedPieces(plan, problem, variant.turn, variant.stages);
    if (typeof made === 'string') throw new Error(`${instance.name}: the plan does not hold: ${made}`);
    const value = made.reduce((sum, n, i) => sum + n * worth[i]!, 0);
    if (value !== found.value || made.some((n, i) => n > problem.types[i]!.demand))
      throw new Error(`${instance.name}: the plan is not worth what it says`);
    if (best?.proven && (value > best.best || found.bound < best.best))
      throw new Error(`${instance.name}: ${value} to ${found.bound} against a proven ${best.best}`);
    const status = found.value >= found.bound ? 'proved-best' : 'within';
    results.push({ instance: instance.name, value, bound: found.bound, status, seconds });
    writePlan(options, instance.name, plan);
    writeResults(options, results);
    if (!best || value < best.best)
      console.log(
        `${instance.name}: ${value}, bound ${found.bound}, known ${best?.best ?? '-'}, ${seconds.toFixed(1)} s`,
      );
  }
  console.log(`guillotine-knapsack-2d ${options.variant}: ${tally(results, known, 'more')}`);
}
