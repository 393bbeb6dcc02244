/** Can all pieces be cut from one plate: `npm run measure -- guillotine-feasibility-2d --dir DIR --seconds 10 --variant rotation`. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fitAll } from '../src/cutting/plates/fit-all.ts';
import {
  type FamilyResult,
  findInstances,
  median,
  readOptions,
  writePlan,
  writeResults,
} from './families/options.ts';
import { countedPieces, planOf, readOnePlate, toCutProblem } from './families/plates.ts';

/** Rectangles kept in one run. */
const MOST_RECTANGLES = 8_000_000;

function knownAnswers(dir: string, turn: boolean): Map<string, string> {
  const [head, ...lines] = readFileSync(join(dir, 'best-known.csv'), 'utf8').trim().split(/\r?\n/);
  const at = head!.split(',').indexOf(turn ? 'guillotine_rotation' : 'guillotine_oriented');
  return new Map(lines.map(line => [line.split(',')[0]!, line.split(',')[at]!]));
}

export function run(args: string[]): void {
  const options = readOptions(args, 'guillotine-feasibility-2d', 10);
  const turn = options.variant === 'rotation';
  const known = knownAnswers(options.dir, turn);
  const results: FamilyResult[] = [...options.earlier];
  for (const instance of findInstances(options)) {
    const problem = readOnePlate(instance.text());
    const began = performance.now();
    const ends = began + 1000 * options.seconds;
    const cut = toCutProblem(problem, turn);
    const { answer, layout } = fitAll(cut, {
      seed: 1,
      most: MOST_RECTANGLES,
      stop: () => performance.now() > ends,
    });
    const seconds = (performance.now() - began) / 1000;
    const plan = planOf(layout ? [layout] : [], problem);
    const made = countedPieces(plan, problem, turn, 'free');
    if (layout && (typeof made === 'string' || made.some((n, i) => n !== problem.types[i]!.demand)))
      throw new Error(`${instance.name}: the plan does not hold: ${made}`);
    const status = answer === 'unknown' ? 'stopped' : 'proved-best';
    results.push({
      instance: instance.name,
      value: answer,
      bound: answer === 'infeasible' ? 2 : 1,
      status,
      seconds,
    });
    writePlan(options, instance.name, plan);
    writeResults(options, results);
    const expected = known.get(instance.name);
    if (answer !== expected)
      console.log(`${instance.name}: ${answer}, known ${expected}, ${seconds.toFixed(1)} s`);
  }
  const answers = results.filter(result => result.value !== 'unknown');
  const decided = answers.length;
  const right = results.filter(({ instance, value }) => value === known.get(instance)).length;
  const wrong = answers.filter(
    ({ instance, value }) => value !== known.get(instance) && known.get(instance) !== 'unknown',
  ).length;
  console.log(
    `guillotine-feasibility-2d ${options.variant}: ${results.length} instances, ${decided} decided, ${right} as known, ${wrong} wrong, median ${median(results.map(result => result.seconds)).toFixed(2)} s`,
  );
}
