import { setAsideWords } from '../operations/set-aside.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { SetUp, SetUpPlan } from '../results/setups.ts';
import type { Effort } from '../results/solver.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { accuracyWords, questions } from './asks.ts';
import { type Batch, gather, type Step } from './batches.ts';
import { clampingSteps } from './bench/clamping.ts';
import { sandingSteps } from './bench/sanding.ts';
import { changeMinutesOf, changeOver } from './changeover.ts';
import { holdWords, minutesOf, runOf, spreadWords, stageWords, testPieceOf, titleOf } from './describe.ts';
import type { Draft, MachineState } from './method.ts';
import { chooseMethod } from './methods/index.ts';
import { nestingWords } from './nested-mitres.ts';
import { rememberedOrder } from './ordering/remembered-order.ts';
import { partByPartMinutes } from './part-by-part.ts';
import { cutName } from './sizes.ts';
import { sizingSteps } from './sizing/sizing-steps.ts';
import { tasksOf } from './tasks.ts';

/**
 * Every machine setting the piece needs, in the order of fewest change-over minutes that precedence allows.
 * Pure and deterministic. Value and bound are change-over minutes; a machine keeps its state while another is used.
 * `standing` is what stands on machines now, by machine id: the order starts from it, others are set from nothing.
 * Cuts that nothing in the workshop can make are listed with the reasons, never dropped.
 */
export function planSetUps(
  piece: Piece,
  operations: readonly Operation[],
  workshop: Workshop,
  effort: Effort,
  standing: ReadonlyMap<string, MachineState> = new Map(),
): SetUpPlan {
  const steps: Step[] = [];
  const unmade: SetUpPlan['unmade'] = [];
  const refusals = new Map<string, { method: string; reason: string }[]>();
  const missed: { title: string; refused: readonly { method: string; reason: string }[] }[] = [];
  for (const { task, operations: asking } of tasksOf(piece, operations, workshop)) {
    const choice = chooseMethod(task);
    if (!choice.ok) {
      missed.push({ title: `${cutName(task.cut)} of ${task.instance.name}`, refused: choice.refused });
      unmade.push({
        instance: task.instance.id,
        cut: task.cut.id,
        reason: reasonsOf(choice.refused),
        mend: mendFor(choice.refused),
      });
      continue;
    }
    choice.drafts.forEach((draft, index) => {
      steps.push({ task, draft, operations: asking, index });
    });
    // Only reasons that speak of the cut are worth telling: a machine the maker does not have is no news.
    const telling = choice.refused.filter(r => !NOT_OWNED.test(r.reason));
    if (telling.length > 0) refusals.set(`${task.instance.id} / ${task.cut.id}`, telling);
  }
  const sizing = sizingSteps(piece, operations, workshop);
  steps.push(...sizing.steps);
  steps.push(...clampingSteps(piece, operations, workshop), ...sandingSteps(piece, operations, workshop));
  for (const { step, reasons } of sizing.refused) {
    const telling = reasons.filter(r => !NOT_OWNED.test(r.reason));
    if (telling.length > 0) refusals.set(`${step.task.instance.id} / ${step.task.cut.id}`, telling);
  }
  for (const { refused, ...what } of sizing.unmade) {
    missed.push({ title: what.cut, refused });
    unmade.push({ ...what, reason: reasonsOf(refused), mend: mendFor(refused) });
  }
  const batches = gather(steps, operations);
  const drafts = batches.map(b => b.steps[0]!.draft);
  const result = rememberedOrder(
    {
      count: batches.length,
      machine: drafts.map(d => d.machine.id),
      change: changes(drafts, standing),
      before: batches.map(b => b.before),
    },
    {
      seed: effort.seed,
      iterations: effort.iterations * 8,
      rounds: Math.min(60, 10 + Math.floor(effort.iterations / 4)),
      width: Math.max(50, effort.iterations * 4),
      states: effort.iterations * 16,
    },
  );
  const setups = finish(batches, result.order, operations, refusals, standing, batch =>
    nestingWords(batch, piece.instances, workshop),
  );
  const asks = questions(
    workshop,
    setups.flatMap(s => {
      const machine = workshop.machines.find(m => m.id === s.machineId);
      return machine ? [{ machine, title: s.title }] : [];
    }),
    missed,
  );
  return {
    setups,
    status: batches.length === 0 ? 'none' : result.status,
    value: result.value,
    bound: result.bound,
    partByPart: partByPartMinutes(batches, groupNumber(piece), standing),
    unmade,
    ...(asks.length > 0 ? { asks } : {}),
  };
}

const NOT_OWNED = /^the workshop has no|^no hand tools/;

const reasonsOf = (refused: readonly { method: string; reason: string }[]): string =>
  refused.map(r => `${r.method}: ${r.reason}`).join('; ') || 'no method is known for it';

/** Change-over minutes between drafts of one machine, worked out once. */
function changes(
  drafts: readonly Draft[],
  standing: ReadonlyMap<string, MachineState>,
): (from: number, to: number) => number {
  const n = drafts.length;
  const minutes = new Float64Array((n + 1) * n).fill(-1);
  return (from, to) => {
    const at = (from + 1) * n + to;
    if (minutes[at]! < 0)
      minutes[at] = changeMinutesOf(
        drafts[to]!.machine,
        from < 0 ? standing.get(drafts[to]!.machine.id) : drafts[from]!.state,
        drafts[to]!.state,
      );
    return minutes[at]!;
  };
}

function mendFor(refused: readonly { method: string; reason: string }[]): string {
  const missing = refused.find(r =>
    /^the workshop has no|^no hand tools|^no .* (drill|cutter)/.test(r.reason),
  );
  return missing
    ? `Add to the workshop file what is at hand (${missing.reason}), or change the cut to a size the tools make.`
    : 'Change the cut to a size the tools make, or note in the job that it is made elsewhere.';
}

function groupNumber(piece: Piece): (instance: string) => number {
  const numbers = new Map<string, number>();
  piece.groups.forEach((group, i) => {
    for (const id of group.instances) numbers.set(id, i);
  });
  return instance => numbers.get(instance) ?? piece.groups.length;
}

function finish(
  batches: readonly Batch[],
  order: readonly number[],
  operations: readonly Operation[],
  refusals: ReadonlyMap<string, { method: string; reason: string }[]>,
  standing: ReadonlyMap<string, MachineState>,
  nesting: (batch: Batch) => string[],
): SetUp[] {
  const byId = new Map(operations.map(o => [o.id, o]));
  const passesOf = new Map<string, number>();
  for (const batch of batches)
    for (const step of batch.steps)
      for (const operation of step.operations)
        passesOf.set(operation.id, (passesOf.get(operation.id) ?? 0) + step.draft.passes);
  const number = new Map(order.map((b, i) => [b, i + 1]));
  const cutsOf = batches.map(batch => batch.steps.map(cutKey));
  const last = new Map(standing);
  const ids = new Set<string>();
  return order.map(b => {
    const batch = batches[b]!;
    const { draft } = batch.steps[0]!;
    const change = changeOver(draft.machine, last.get(draft.machine.id), draft.state);
    last.set(draft.machine.id, draft.state);
    const refused = unique(batch.steps.flatMap(s => refusals.get(cutKey(s)) ?? []));
    const testPiece = testPieceOf(batch, byId);
    const accuracy = accuracyWords(draft.machine.kind);
    return {
      id: idOf(batch, ids),
      number: number.get(b)!,
      title: titleOf(batch),
      machine: draft.machine.name,
      machineId: draft.machine.id,
      tool: draft.tool,
      method: draft.method,
      settings: draft.settings,
      ...(draft.kerfSide ? { kerfSide: draft.kerfSide } : {}),
      ...(draft.wanted ? { wanted: draft.wanted } : {}),
      runs: batch.steps.map(runOf),
      operations: [...new Set(batch.steps.flatMap(s => s.operations.map(o => o.id)))],
      ...(testPiece ? { testPiece } : {}),
      ...(draft.correction ? { correction: draft.correction } : {}),
      before: [
        ...earlier(b, batches, number, cutsOf),
        ...unique(batch.steps.flatMap(s => s.draft.before)),
        ...nesting(batch),
        ...stageWords(batch),
        ...holdWords(batch),
        ...spreadWords(batch),
      ],
      after: unique(batch.steps.flatMap(s => s.draft.after)),
      cautions: unique([
        ...setAsideWords(batch.steps.flatMap(s => s.operations)),
        ...batch.steps.flatMap(s => s.draft.cautions),
      ]),
      ...(accuracy === undefined ? {} : { accuracy }),
      changeOver: change.minutes,
      changeHow: change.how,
      state: draft.state,
      minutes: minutesOf(batch, passesOf),
      drawing: draft.drawing(),
      removal: draft.removal,
      ...(refused.length > 0 ? { refused } : {}),
    };
  });
}

const cutKey = ({ task }: Step): string => `${task.instance.id} / ${task.cut.id}`;

const unique = <T>(list: readonly T[]): T[] => {
  const seen = new Set<string>();
  return list.filter(item => {
    const key = JSON.stringify(item);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};

/** `Tenon shoulders are cut (set-up 6)`: earlier set-ups on the same cuts. */
function earlier(
  b: number,
  batches: readonly Batch[],
  number: ReadonlyMap<number, number>,
  cutsOf: readonly (readonly string[])[],
): string[] {
  const mine = new Set(cutsOf[b]);
  return batches[b]!.before.filter(p => cutsOf[p]!.some(cut => mine.has(cut))).map(
    p => `${batches[p]!.steps[0]!.draft.what} are done (set-up ${number.get(p)})`,
  );
}

/** From method, part and joint or feature: the same as long as that cut is made that way, whatever changes elsewhere. */
function idOf(batch: Batch, taken: Set<string>): string {
  const { task, draft } = batch.steps[0]!;
  const base = [draft.what, task.instance.part, task.cut.by]
    .join('-')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  taken.add(id);
  return id;
}
