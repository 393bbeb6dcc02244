import type { Operation } from '../../results/operations.ts';
import type { Instance, Piece } from '../../results/piece.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import type { Machine, Workshop } from '../../workshop/workshop.ts';
import type { Step } from '../batches.ts';
import { otherSetting } from '../figures.ts';
import { handBench } from '../methods/hand-bench.ts';
import { section } from '../section.ts';
import { machineOf } from '../shop.ts';
import { benchStep } from './bench-step.ts';

/** Grits that are sold, and the coarsest that a planed face needs (common practice). */
const SOLD = [80, 100, 120, 150, 180, 220, 240, 320, 400];
const FIRST = 80;
/** A part this wide lies flat under a belt sander, mm (common practice). */
const FLAT = 80;

/** Grits up to the last, each at most half as fine again as the one before (SET-33). */
export function gritLadder(grits: readonly number[]): number[] {
  const last = grits.at(-1) ?? 180;
  const ladder = [...grits].sort((a, b) => a - b);
  const full: number[] = [ladder[0] ?? Math.min(FIRST, last)];
  for (const next of ladder.slice(1)) {
    while (next > full.at(-1)! * 1.5 + 0.5) {
      const step = SOLD.filter(g => g > full.at(-1)! && g <= full.at(-1)! * 1.5 + 0.5 && g < next).at(-1);
      if (step === undefined) break;
      full.push(step);
    }
    full.push(next);
  }
  return full;
}

/** Sanding through the grits, by belt where the work is flat and wide, else by hand with a block. */
export function sandingSteps(piece: Piece, operations: readonly Operation[], workshop: Workshop): Step[] {
  const instances = new Map(piece.instances.map(i => [i.id, i]));
  return operations.flatMap(operation => {
    const { grits } = operation;
    if (!grits || grits.length === 0) return [];
    const parts = operation.instances.flatMap(id => instances.get(id) ?? []);
    const first = parts[0];
    const flat = parts.length > 0 && parts.every(p => p.size.width >= FLAT);
    const machine = (flat ? machineOf(workshop, 'belt sander') : undefined) ?? handBench(workshop);
    return first && machine ? [stepOf(operation, gritLadder(grits), first, machine)] : [];
  });
}

function stepOf(operation: Operation, grits: readonly number[], first: Instance, machine: Machine): Step {
  const belt = machine.kind === 'belt sander';
  const tool = belt ? 'belts' : 'cork block and paper';
  return benchStep(operation, first, 'as listed', {
    title: operation.title,
    what: `Sanding ${operation.id}`,
    method: belt ? 'belt, then by hand with the grain' : 'by hand through the grits',
    machine,
    tool,
    state: { tool: `grit ${grits[0]}`, tilt: 0 },
    settings: grits.map((grit, i) =>
      otherSetting(
        `grit ${i + 1}`,
        'count',
        grit,
        i === 0
          ? 'takes out the marks of the plane or knives'
          : `${Math.round((grit / grits[i - 1]! - 1) * 100)} % finer than ${grits[i - 1]}`,
        'grits',
      ),
    ),
    lays: [{ label: 'all faces', down: 'back', against: 'faceEdge', entry: 'face' }],
    removal: { shape: 'nothing', width: 0, moves: [0] },
    drawing: () =>
      section({
        view: 'hand',
        zero: 'face',
        seen: 'along the grain',
        tool: { from: 5, to: 75, height: 25, above: true },
        work: { width: Math.min(160, first.size.width), height: Math.min(60, first.size.thickness) + 25 },
        reads: 'near',
        toolWord: 'block',
        grain: 'end-on',
      }),
    trial: false,
    before: ['Joints flushed; glue looked for with a damp cloth and a low lamp'],
    after: [
      'Each grit over everything before the next; dust off between, pencil marks gone',
      'No swirl under a low lamp',
    ],
    cautions: [
      ...MACHINE_FILES[machine.kind].cautions,
      'Extraction and mask: the finest dust does the harm.',
    ],
    passes: grits.length,
  });
}
