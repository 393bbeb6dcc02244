/**
 * Set-ups of jobs: `npm run measure -- sop-jobs --workshop FILE JOB... [--iterations 120]`. For each job the
 * change-over minutes found, their bound, the part-by-part order, the time, and how many cards prove themselves.
 */
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseArgs } from 'node:util';
import { readJobFile, readWorkshopFile } from '../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../src/joints/index.ts';
import { planOperations } from '../src/operations/plan-operations.ts';
import { checkCards } from '../src/proof/simulator-check.ts';
import { setOut } from '../src/setting-out/set-out.ts';
import { planSetUps } from '../src/setups/plan-set-ups.ts';
import { median } from './families/options.ts';

export function run(args: string[]): void {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { workshop: { type: 'string' }, iterations: { type: 'string' } },
  });
  if (values.workshop === undefined || positionals.length === 0)
    throw new Error('sop-jobs: give --workshop FILE and the job files');
  const { workshop } = readWorkshopFile(readFileSync(values.workshop, 'utf8'));
  if (!workshop) throw new Error(`sop-jobs: ${values.workshop} is no workshop file`);
  const effort = { seed: 1, iterations: Number(values.iterations ?? 120) };
  console.log(
    'job                    parts cuts set-ups  found bound part-by-part  ms   cards simulated agreeing unmade',
  );
  for (const file of positionals) {
    const { document } = readJobFile(readFileSync(file, 'utf8'));
    if (!document) throw new Error(`sop-jobs: ${file} is no job file`);
    const { piece, commission } = setOut(document, JOINT_CATALOGUE, {
      allowances: workshop.allowances,
      density: () => undefined,
    });
    const { operations } = planOperations(piece, commission, workshop);
    const times: number[] = [];
    let plan = planSetUps(piece, operations, workshop, effort);
    for (let i = 0; i < 15; i++) {
      const began = performance.now();
      plan = planSetUps(piece, operations, workshop, effort);
      times.push(performance.now() - began);
    }
    const cards = checkCards(piece, plan.setups);
    const cuts = piece.instances.reduce((sum, i) => sum + i.cuts.length, 0);
    console.log(
      [
        basename(file, '.yaml').padEnd(22),
        String(piece.instances.length).padStart(5),
        String(cuts).padStart(4),
        String(plan.setups.length).padStart(7),
        String(plan.value).padStart(6),
        String(plan.bound).padStart(5),
        String(plan.partByPart).padStart(12),
        median(times).toFixed(1).padStart(5),
        String(cards.setUps).padStart(5),
        String(cards.simulated).padStart(9),
        String(cards.agreeing).padStart(8),
        String(plan.unmade.length).padStart(6),
      ].join(' '),
    );
    const reasons = new Map<string, number>();
    for (const n of cards.notSimulated) reasons.set(n.reason, (reasons.get(n.reason) ?? 0) + 1);
    for (const [reason, count] of reasons) console.log(`  not simulated: ${count} x ${reason}`);
    for (const w of cards.wrong) console.log(`  wrong: ${w.instance} ${w.cut} (${w.setUp}): ${w.what}`);
    for (const u of plan.unmade) console.log(`  unmade: ${u.instance} ${u.cut}: ${u.reason}`);
  }
}
