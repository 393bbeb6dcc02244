/**
 * What the cards of jobs leave of the blanks, against the design:
 * `npm run measure -- simulator [--workshop FILE] [--spoil] [JOB...]`; without jobs all of examples/ and
 * examples/published. For each job: set-ups, those every cut of which could be repeated, those that agree, cuts
 * nothing makes. `--spoil` moves one placing figure of every simulated card by one kerf each way and counts how
 * many are found out.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { deriveJob } from '../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../src/job-file/read.ts';
import { checkCards } from '../src/proof/simulator-check.ts';
import { spoilt } from '../src/proof/simulator-spoil.ts';

const EXAMPLES = ['examples', 'examples/published'];

/** Job files of the examples, in the order of their names. */
const allJobs = (): string[] =>
  EXAMPLES.filter(existsSync).flatMap(folder =>
    readdirSync(folder)
      .filter(f => f.endsWith('.yaml') && f !== 'workshop.yaml')
      .sort()
      .map(f => join(folder, f)),
  );

export function run(args: string[]): void {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { workshop: { type: 'string' }, spoil: { type: 'boolean' } },
  });
  const { workshop } = readWorkshopFile(readFileSync(values.workshop ?? 'examples/workshop.yaml', 'utf8'));
  if (!workshop) throw new Error('simulator: no workshop file');
  const total = { setUps: 0, simulated: 0, agreeing: 0, unmade: 0, moved: 0, found: 0 };
  console.log(
    `job                        set-ups simulated agreeing unmade${values.spoil ? '  moved found' : ''}`,
  );
  for (const file of positionals.length > 0 ? positionals : allJobs()) {
    const { document } = readJobFile(readFileSync(file, 'utf8'));
    if (!document) throw new Error(`simulator: ${file} is no job file`);
    const { piece, setups: plan } = deriveJob(document, workshop, { today: '2026-01-05' }).derived;
    const report = checkCards(piece, plan.setups);
    const unsure = new Set(report.notSimulated.map(n => n.setUp));
    let [moved, found] = [0, 0];
    const missed: string[] = [];
    for (const setUp of values.spoil ? plan.setups.filter(s => !unsure.has(s.id)) : [])
      for (const sign of [1, -1] as const) {
        const cards = spoilt(plan.setups, setUp.id, sign);
        if (!cards) continue;
        moved++;
        if (checkCards(piece, cards).wrong.some(w => w.setUp === setUp.id)) found++;
        else missed.push(`${setUp.id} ${sign > 0 ? '+' : '-'}`);
      }
    total.setUps += report.setUps;
    total.simulated += report.simulated;
    total.agreeing += report.agreeing;
    total.unmade += plan.unmade.length;
    total.moved += moved;
    total.found += found;
    console.log(
      row(basename(file, '.yaml'), { ...report, unmade: plan.unmade.length, moved, found }, values.spoil),
    );
    const reasons = new Map<string, number>();
    for (const n of report.notSimulated) {
      const words = `${n.reason} (${n.setUp})`;
      reasons.set(words, (reasons.get(words) ?? 0) + 1);
    }
    for (const [reason, count] of reasons) console.log(`    not simulated: ${count} x ${reason}`);
    for (const w of report.wrong) console.log(`    wrong: ${w.instance} ${w.cut} (${w.setUp}): ${w.what}`);
    for (const m of missed) console.log(`    not found out: ${m}`);
  }
  console.log(row('all', total, values.spoil));
}

function row(
  name: string,
  of: { setUps: number; simulated: number; agreeing: number; unmade: number; moved: number; found: number },
  spoil: boolean | undefined,
): string {
  const figures = [of.setUps, of.simulated, of.agreeing, of.unmade].map((v, i) =>
    String(v).padStart([7, 10, 9, 7][i]!),
  );
  return `${name.padEnd(26)}${figures.join('')}${spoil ? `${String(of.moved).padStart(7)}${String(of.found).padStart(6)}` : ''}`;
}
