#!/usr/bin/env node
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Command, InvalidArgumentError, Option } from 'commander';
import { choicesFor } from '../cutting/choices.ts';
import { millLists } from '../cutting/mill-lists.ts';
import type { LengthUnit } from '../quantities/length.ts';
import type { Check } from '../results/checks.ts';
import type { ShowOptions } from '../results/show.ts';
import { isDay } from '../setting-out/schema.ts';
import { CannotRun, type Loaded, load, onDisk } from './load.ts';
import {
  checkLines,
  dayLines,
  faultLine,
  partLines,
  plainText,
  priceLines,
  setUpLines,
  whyLines,
} from './print.ts';
import { choiceLines, cutLines, millLines } from './print-cutting.ts';
import { checkResults, partResults } from './results.ts';
import { addShapes } from './shapes-tier.ts';
import { today } from './today.ts';

/** Exit codes: 0 fine, 1 a check says stop, 2 an error in a file or it could not run. */
const FINE = 0;
const STOP = 1;
const ERROR = 2;

/** The checkout or the built package: where package.json and the examples are. */
const ROOT = fileURLToPath(new URL(import.meta.url.includes('/src/cli/') ? '../..' : '..', import.meta.url));
const VERSION = (JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string }).version;

interface Common {
  workshop?: string;
  json?: boolean;
  unit?: LengthUnit;
  date?: string;
}

const out = (lines: string[]): void => void process.stdout.write(`${lines.map(plainText).join('\n')}\n`);
const tell = (line: string): void => void process.stderr.write(`${plainText(line)}\n`);
const showOf = (loaded: Loaded, options: Common): ShowOptions => ({
  unit: options.unit ?? loaded.document.units ?? 'mm',
  currency: loaded.workshop.currency,
});

const verdict = (loaded: Loaded): number =>
  loaded.faults.length > 0
    ? ERROR
    : loaded.deriving.derived.checks.some((c: Check) => c.severity === 'stop')
      ? STOP
      : FINE;

/** Loads, lets `say` speak, tells the faults, and sets the exit code. Partial results are still printed. */
async function withJob(
  job: string,
  options: Common & { shapes?: boolean },
  say: (loaded: Loaded) => void | Promise<void>,
): Promise<void> {
  const loaded = load(job, {
    today: options.date ?? today(),
    ...(options.workshop === undefined ? {} : { workshop: options.workshop }),
  });
  if (!loaded.workshopFile)
    tell(
      'No workshop file: usual allowances and no stock or prices stand in. Give one with --workshop FILE.',
    );
  if (options.shapes) await addShapes(loaded, tell);
  await say(loaded);
  if (loaded.faults.length > 0)
    tell(`${loaded.faults.length} to mend; what stands above is only what could be worked out without:`);
  for (const fault of loaded.faults) tell(faultLine(fault));
  process.exitCode = verdict(loaded);
}

const json = (value: unknown): void => out([JSON.stringify(value, null, 2)]);

const program = new Command('scantling')
  .description(
    'One setting-out for a commissioned piece; parts, layouts, set-ups, days, checks and price follow.',
  )
  .version(VERSION)
  .showHelpAfterError()
  .exitOverride();

const workshopOption = new Option(
  '-w, --workshop <file>',
  'workshop file; else workshop.yaml beside the job or one folder up',
);
const dateOption = new Option(
  '--date <date>',
  'day work may begin when the job names none, such as 2026-11-30',
).argParser(text => {
  if (!isDay(text)) throw new InvalidArgumentError('Write a day as 2026-11-30.');
  return text;
});
interface CutOptions extends Common {
  mill?: boolean;
  choices?: boolean;
  csv?: string;
  svg?: string;
  labels?: string;
  single?: boolean;
}

/** Writes what `cut` is asked to write; false when it is asked for nothing of the kind. */
async function wroteLayouts(l: Loaded, options: CutOptions, show: ShowOptions): Promise<boolean> {
  const { csv, svg, labels } = options;
  if (csv === undefined && svg === undefined && labels === undefined) return false;
  const { writeLabels, writeLayouts } = await import('./write-layouts.ts');
  const how = { show, date: options.date ?? today(), programVersion: VERSION };
  const written = [
    ...(csv === undefined ? [] : writeLayouts(l, csv, { csv: true, svg: false }, how)),
    ...(svg === undefined ? [] : writeLayouts(l, svg, { csv: false, svg: true }, how)),
  ];
  if (labels !== undefined) {
    const count = await writeLabels(l, labels, options.single ? 'single' : 'A4', how);
    written.push(`${labels}, ${count} labels`);
  }
  for (const path of written) tell(`wrote ${path}`);
  return true;
}

const unitOption = new Option('--unit <unit>', 'unit of lengths shown').choices(['mm', 'cm', 'm', 'in']);

function jobCommand(name: string, description: string): Command {
  return program
    .command(name)
    .description(description)
    .argument('<job>', 'job file')
    .addOption(workshopOption)
    .addOption(dateOption)
    .addOption(unitOption);
}

jobCommand('parts', 'parts list: sizes, blanks, masses')
  .option('--json', 'as JSON (docs/results.md)')
  .action((job: string, options: Common) =>
    withJob(job, options, l =>
      options.json
        ? json(partResults(l.deriving.derived))
        : out(partLines(l.deriving.derived, showOf(l, options))),
    ),
  );

jobCommand('cut', 'cutting layouts and what to buy')
  .option('--json', 'as JSON')
  .option('--mill', 'timber as two lists: rough-mill and final-mill')
  .option('--choices', 'what else could be bought: sawn or planed, thicker or thinner')
  .option('--csv <folder>', 'layouts and saw cuts as tables, written to this folder')
  .option('--svg <folder>', 'one drawing a length or sheet, 1 : 10, written to this folder')
  .option('--labels <file>', 'a label for every part, A4 sheets of 24, as a PDF written to this file')
  .option('--single', 'with --labels: each label on a page of its own, 70 x 37 mm')
  .action((job: string, options: CutOptions) =>
    withJob(job, options, async l => {
      const { derived } = l.deriving;
      const show = showOf(l, options);
      if (await wroteLayouts(l, options, show)) return;
      if (options.choices) {
        const choices = choicesFor(derived, l.workshop, l.document.cutting);
        if (options.json) json(choices);
        else out(choiceLines(choices, show));
        return;
      }
      if (options.mill) {
        if (options.json) json(millLists(derived.cutting, derived.piece, derived.operations));
        else out(millLines(derived, show));
      } else if (options.json) json(derived.cutting);
      else out(cutLines(derived, show));
    }),
  );

jobCommand('setups', 'machine set-ups in order')
  .option('--json', 'as JSON')
  .option('--cards <file>', 'the cards, one a page, as a PDF written to this file')
  .action((job: string, options: Common & { cards?: string }) =>
    withJob(job, options, async l => {
      if (options.cards !== undefined) {
        const { writeCards } = await import('./write-cards.ts');
        const count = await writeCards(l, options.cards, {
          show: showOf(l, options),
          date: options.date ?? today(),
          programVersion: VERSION,
        });
        tell(`wrote ${options.cards}, ${count} ${count === 1 ? 'card' : 'cards'}`);
      }
      if (options.json) json(l.deriving.derived.setups);
      else if (options.cards === undefined) out(setUpLines(l.deriving.derived, showOf(l, options)));
    }),
  );

jobCommand('days', 'operations laid into the working calendar')
  .option('--json', 'as JSON')
  .action((job: string, options: Common) =>
    withJob(job, options, l =>
      options.json ? json(l.deriving.derived.days) : out(dayLines(l.deriving.derived)),
    ),
  );

jobCommand('check', 'judgements, worst first')
  .option('--json', 'as JSON')
  .option('--all', 'every check, not the five worst')
  .action((job: string, options: Common & { all?: boolean }) =>
    withJob(job, { ...options, shapes: true }, l =>
      options.json
        ? json(checkResults(l.deriving.derived))
        : out(checkLines(l.deriving.derived.checks, showOf(l, options), options.all ?? false)),
    ),
  );

jobCommand('price', 'offer with every line')
  .option('--json', 'as JSON')
  .action((job: string, options: Common) =>
    withJob(job, options, l =>
      options.json ? json(l.deriving.derived.price) : out(priceLines(l.deriving.derived, showOf(l, options))),
    ),
  );

jobCommand('why', 'where a figure comes from, down to what was entered')
  .argument('<figure>', 'path such as parts.rail.length, joints.cross.tenon.length or offer.total')
  .option('--json', 'as JSON')
  .action((job: string, figure: string, options: Common) =>
    withJob(job, options, l => {
      const why = l.deriving.why(figure);
      if (!why)
        throw new CannotRun([
          {
            place: figure,
            fault: 'there is no figure of this name',
            mend: 'name it as in the job file, such as parts.leg.length; the paths are listed in docs/results.md',
          },
        ]);
      if (options.json) json(why);
      else out(whyLines(why, showOf(l, options)));
    }),
  );

jobCommand('derive', 'everything, written to a folder: results, layouts, tables, job pack')
  .requiredOption('-o, --out <folder>', 'folder to write to; made when missing')
  .action((job: string, options: Common & { out: string }) =>
    withJob(job, { ...options, shapes: true }, async l => {
      const { writeAll } = await import('./write-all.ts');
      onDisk(options.out, () => mkdirSync(options.out, { recursive: true }));
      const written = await writeAll(l, options.out, {
        show: showOf(l, options),
        date: options.date ?? today(),
        programVersion: VERSION,
      });
      out(written.map(file => `wrote ${join(options.out, file)}`));
    }),
  );

jobCommand('step', 'exact solids of the whole piece as STEP (ISO 10303-21), mm')
  .requiredOption('-o, --out <file>', 'file to write, such as bench.step')
  .action((job: string, options: Common & { out: string }) =>
    withJob(job, options, async l => {
      const [{ loadExactKernel }, { stepFile }, { SolidCache, placedSolids }] = await Promise.all([
        import('../host/exact-kernel-node.ts'),
        import('../papers/step.ts'),
        import('../solids/shapes.ts'),
      ]);
      const { title, piece } = l.deriving.derived;
      const kernel = await loadExactKernel();
      const solids = placedSolids(piece.instances, new SolidCache(kernel));
      const info = { title, date: options.date ?? today(), programVersion: VERSION };
      const bytes = stepFile(kernel.step(title, solids), info);
      onDisk(options.out, () => writeFileSync(options.out, bytes));
      out([
        `wrote ${options.out}: ${solids.length} unlike parts at ${solids.reduce((n, s) => n + s.at.length, 0)} places`,
      ]);
    }),
  );

program
  .command('new')
  .description('a job file to begin from')
  .argument('<file>', 'file to write, such as hall-table.yaml')
  .action(async (file: string) => {
    if (existsSync(file))
      throw new CannotRun([
        {
          place: file,
          fault: 'there is such a file already',
          mend: 'choose another name; nothing was written',
        },
      ]);
    const { newJobText } = await import('./new-job.ts');
    onDisk(file, () =>
      writeFileSync(file, newJobText(basename(file).replace(/\.ya?ml$/, '')), { flag: 'wx' }),
    );
    out([`wrote ${file}`, `try: scantling parts ${file}`]);
  });

program
  .command('start')
  .description('serve the drawing office on this machine')
  .option('--data <folder>', "data folder; else the platform's own")
  .option('--port <number>', 'port on 127.0.0.1')
  .action(async (options: { data?: string; port?: string }) => {
    const { serve } = await import('./serve.ts');
    await serve({ ...options, root: ROOT, programVersion: VERSION });
  });

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CannotRun) {
    for (const fault of error.faults) tell(faultLine(fault));
    process.exitCode = ERROR;
  } else if (error instanceof Error && 'exitCode' in error && 'code' in error) {
    process.exitCode = (error as { exitCode: number }).exitCode === 0 ? FINE : ERROR;
  } else {
    // 1 is kept for a check that says stop: what goes wrong inside is an error, too.
    tell(error instanceof Error ? (error.stack ?? error.message) : String(error));
    process.exitCode = ERROR;
  }
}
