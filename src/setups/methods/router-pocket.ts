import type { PocketCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import type { Machine } from '../../workshop/workshop.ts';
import { CAUTIONS } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { pocketDepth, pocketWanted } from '../fit.ts';
import { type Attempt, type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves, viewPocket } from '../pocket.ts';
import { routerDraft } from '../router-draft.ts';
import { beyond, machineOf, noStraightCutter, straightCutter } from '../shop.ts';
import { cutName, cutNames, cutTitle, FACE_WORDS, opposite, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';

const MOST_WAYS = 40;

/** Ways in the router table: the work runs along the fence, stops where it must not run out. */
export const routerTablePocket: Method = {
  name: 'router table',
  makes: ['groove', 'rebate', 'housing', 'recess'],
  attempt(task) {
    const machine = machineOf(task.workshop, 'router table');
    if (!machine) return refuse('the workshop has no router table');
    const view = viewPocket(task.instance, task.cut as PocketCut);
    if (view.depthAxis === 'x') return refuse('the way is in an end');
    if (view.runAxis !== 'x' && trueSize(task.instance, 'x') > 500)
      return refuse(`${say1(trueSize(task.instance, 'x'))} long, unsteady crosswise on the router table`);
    return routed({ ...task, cut: task.cut as PocketCut }, machine, true);
  },
};

/** Ways by hand: the router goes along a batten or its own fence, the work stays. */
export const handRouterPocket: Method = {
  name: 'hand router with a batten',
  makes: ['housing', 'groove', 'rebate', 'recess', 'halving', 'notch', 'mortise'],
  attempt(task) {
    const machine = machineOf(task.workshop, 'hand router');
    if (!machine) return refuse('the workshop has no hand router');
    const cut = task.cut as PocketCut;
    if (viewPocket(task.instance, cut).depthAxis === 'x') return refuse('the way is in an end');
    return routed({ ...task, cut }, machine, false);
  },
};

function routed(task: Task<PocketCut>, machine: Machine, inTable: boolean): Attempt {
  const { cut, instance, workshop } = task;
  if (isMetal(instance)) return refuse('router cutters are not for this metal');
  const view = viewPocket(instance, cut);
  const wanted = pocketWanted(task, view);
  const depth = pocketDepth(task, view);
  // A slot cutter leaves a run-out, so the groove must run right through the edge.
  const inEdge = cut.kind === 'groove' && view.depthAxis === 'y' && view.runsOut;
  const narrowest = Math.min(wanted.value, view.length);
  const cutter = straightCutter(workshop, narrowest, depth.value, inTable && inEdge);
  if (!cutter) return refuse(noStraightCutter(workshop, narrowest, depth.value));
  const open = view.openNear && !view.openFar;
  const d = cutter.diameter;
  const moves = slotMoves(wanted.value, d).map(m => (open ? -m : m));
  if (moves.length > MOST_WAYS) return refuse(`${moves.length} ways of a ${say1(d)} cutter`);
  const near = open ? wanted.value - d : view.near;
  const limit = beyond(machine, {
    depth: depth.value,
    ...(inTable ? { fence: near + Math.max(0, moves.at(-1) ?? 0), piece: trueSize(instance, 'x') } : {}),
  });
  if (limit) return refuse(limit);
  const name = cutName(cut);
  const squared = cut.corner === 'square' && !view.runsOut;
  const overSheet = !wanted.how.startsWith('as drawn');
  const draft = routerDraft({
    what: cutNames(cut, true),
    method: inTable ? 'along the router table fence' : 'router along a batten',
    machine,
    cutter,
    part: instance,
    inTable,
    fenceName: inTable ? 'fence' : 'from',
    near,
    reads: open ? 'far' : 'near',
    how: open
      ? wanted.how
      : `near wall ${say1(view.near)} from the ${FACE_WORDS[view.reference]}${inTable ? '' : '; the batten lies the router’s own edge distance further'}`,
    rule: open ? 'kerf' : 'reference',
    depth: depth.value,
    depthHow: depth.how,
    depthRule: cut.kind === 'recess' ? 'recess' : 'reference',
    moves,
    ...(view.runsOut ? {} : { along: { from: view.start, to: view.finish } }),
    lays: [
      {
        label: FACE_WORDS[view.entry],
        down: inTable ? view.entry : opposite(view.entry),
        against: view.reference,
        entry: view.entry,
        end: view.runFrom,
      },
    ],
    work: {
      width: Math.min(trueSize(instance, view.acrossAxis), view.far * 1.5 + 60),
      height: trueSize(instance, view.depthAxis),
    },
    wanted: { label: `${cutTitle(cut)} wanted`, value: mm(wanted.value), how: wanted.how },
    correction: {
      share: 'whole',
      tooBig: 'Too wide: bring the last way closer by the whole difference.',
      tooSmall: 'Too narrow: take the last way out by the whole difference.',
      ...(open ? { setting: inTable ? 'fence' : 'from' } : {}),
    },
    trial: overSheet || cut.kind === 'recess' || cut.kind === 'mortise',
    before: overSheet ? [`The part that enters is at hand: ${wanted.how}`] : [],
    after: squared ? ['Square the ends with a chisel'] : [],
    cautions: [
      inTable ? CAUTIONS.router : CAUTIONS.handRouter,
      ...(d < 6 ? [CAUTIONS.narrowCutter] : []),
      ...(depth.value >= trueSize(instance, view.depthAxis) - 0.01 ? [CAUTIONS.backing] : []),
    ],
    kerfSide: open ? `in the ${name}, towards the edge` : `inside the ${name}`,
  });
  return 'reason' in draft ? refuse(draft.reason) : made(draft);
}
