import type { Operation } from '../results/operations.ts';
import type { Run, SetUp } from '../results/setups.ts';
import type { Batch, Step } from './batches.ts';
import { say1 } from './figures.ts';
import { isMeasured, trueSize } from './sizes.ts';

/** `lower cross rail`, `leg and rail`, `leg, rail and 2 more`. */
export function partsWords(names: readonly string[]): string {
  const unique = [...new Set(names.map(n => n.charAt(0).toLowerCase() + n.slice(1)))];
  if (unique.length === 1) return unique[0]!;
  if (unique.length === 2) return `${unique[0]} and ${unique[1]}`;
  return `${unique[0]}, ${unique[1]} and ${unique.length - 2} more`;
}

export const titleOf = (batch: Batch): string =>
  batch.steps[0]!.draft.title ??
  `${batch.steps[0]!.draft.what}, ${partsWords(batch.steps.map(s => s.task.instance.name))}`;

export function runOf({ task, draft }: Step): Run {
  const first = draft.lays[0]!;
  const labels =
    draft.removal.moves.length > 1
      ? draft.lays.flatMap(l =>
          draft.removal.moves.map((_, i) => (i === 0 ? l.label : `${l.label}, pass ${i + 1}`)),
        )
      : draft.lays.map(l => l.label);
  return {
    instance: task.instance.id,
    mark: task.mark,
    cut: task.cut.id,
    ...(draft.end ? { end: draft.end } : {}),
    down: first.down,
    against: first.against,
    passes: labels,
    lays: draft.lays,
    ...(draft.stations ? { stations: draft.stations } : {}),
    ...(draft.along ? { along: draft.along } : {}),
    ...(draft.joined ? { joined: draft.joined } : {}),
  };
}

/** The test piece that the operations put on the cutting list, or one of the same section. */
export function testPieceOf(batch: Batch, operations: ReadonlyMap<string, Operation>): SetUp['testPiece'] {
  const trial = batch.steps.find(s => s.draft.trial && s.task.cut.stage.when === 'part');
  if (!trial) return undefined;
  for (const step of batch.steps)
    for (const operation of step.operations)
      for (const after of operation.after) {
        const test = operations.get(after.operation)?.testPiece;
        if (test)
          return {
            mark: step.task.mark,
            length: test.length,
            width: test.width,
            thickness: test.thickness,
            material: test.material,
            serves: servesOf(trial, test.length),
          };
      }
  const { instance, mark } = trial.task;
  return {
    mark,
    length: Math.min(300, trueSize(instance, 'x')),
    width: trueSize(instance, 'y'),
    thickness: trueSize(instance, 'z'),
    material: instance.material,
    serves: servesOf(trial, Math.min(300, trueSize(instance, 'x'))),
  };
}

/** What must stay in the hand of a trial piece, and what sawing one trial off costs, mm (common practice). */
const HELD = 150;
const SAWN_OFF = 5;

/** How many trials one piece gives: a cut at an end is sawn off and made again, one along it has its two sides. */
function servesOf({ draft, task }: Batch['steps'][number], length: number): number {
  const depth = draft.settings.find(s => s.name === 'blade height' || s.name === 'depth')?.value.value;
  const atEnd = draft.end !== undefined && draft.lays.every(l => l.entry === 'end1' || l.entry === 'end2');
  if (!atEnd || typeof depth !== 'number' || task.instance.size.length <= 0) return 2;
  return Math.max(1, Math.floor((length - HELD) / (depth + SAWN_OFF)));
}

/** Minutes of running: each operation's own hands-on time, shared over its steps by their passes. */
export function minutesOf(batch: Batch, passesOf: ReadonlyMap<string, number>): number {
  let total = 0;
  for (const step of batch.steps) {
    const { passes } = step.draft;
    if (step.operations.length === 0) total += passes * UNPLANNED_PASS;
    for (const operation of step.operations)
      total += (operation.handsOn.likely * passes) / Math.max(1, passesOf.get(operation.id) ?? passes);
  }
  return Math.round(total * 10) / 10;
}

/** Minutes a pass where no operation speaks of the cut (common practice). */
const UNPLANNED_PASS = 1.5;

/** Parts that wait for a measurement must not be run from the list; each measurement once, with its parts. */
export function holdWords(batch: Batch): string[] {
  const waiting = new Map<string, string[]>();
  for (const { task } of batch.steps) {
    const when = task.instance.measureFirst?.when;
    if (when !== undefined) waiting.set(when, [...(waiting.get(when) ?? []), task.instance.name]);
  }
  return [...waiting].map(([when, names]) => {
    const many = new Set(names).size > 1;
    const words = partsWords(names);
    return `${words.charAt(0).toUpperCase()}${words.slice(1)} ${many ? 'are' : 'is'} measured first: ${when}`;
  });
}

/** Cuts made on a glued assembly say so: the work is larger than the part, and heavier. */
export function stageWords(batch: Batch): string[] {
  const assemblies = batch.steps.flatMap(({ task: { cut } }) =>
    cut.stage.when === 'after' ? [cut.stage.assembly] : [],
  );
  return [...new Set(assemblies)].map(a => `Made on the glued assembly (${a}): glue cured, squeeze-out off`);
}

/** Parts of one setting that came out of different thickness are said so: turning puts it into the fit. */
export function spreadWords(batch: Batch): string[] {
  const measured = batch.steps
    .filter(s => isMeasured(s.task.instance, 'z'))
    .map(s => trueSize(s.task.instance, 'z'));
  if (measured.length < 2) return [];
  const spread = Math.max(...measured) - Math.min(...measured);
  return spread > 0.04 && batch.steps[0]!.draft.lays.length > 1
    ? [`Thickness spreads over ${say1(spread)}: turned cuts carry it into the fit, pair the parts`]
    : [];
}
