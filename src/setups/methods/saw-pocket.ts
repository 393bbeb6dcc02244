import type { PocketCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import type { Blade } from '../../workshop/workshop.ts';
import { CAUTIONS } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { pocketDepth, pocketWanted } from '../fit.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves, viewPocket } from '../pocket.ts';
import { sawDraft } from '../saw-draft.ts';
import { beyond, jigOf, machineOf, withinMark } from '../shop.ts';
import { cutName, cutNames, cutTitle, FACE_WORDS, faceAxis, opposite, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';

/** Widest way across a sled and longest work on it, mm; most passes worth nibbling (common practice). */
const SLED = { way: 620, work: 1600 };
const MOST_PASSES = 18;

/**
 * A way right across or right along, on the saw: from the fence along the grain, from a stop on the sled across it.
 * First and last pass set the walls (SET-9). Stopped ways are refused: a blade leaves a curved end.
 */
export const sawPocket: Method = {
  name: 'table saw',
  makes: ['groove', 'housing', 'halving', 'notch', 'rebate'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    const pocket: Task<PocketCut> = { ...task, cut };
    if (isMetal(task.instance)) return refuse('the saw is set up for timber');
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const view = viewPocket(task.instance, cut);
    const onSled = view.acrossAxis === 'x';
    if (view.depthAxis === 'x') return refuse(`the ${cutName(cut)} is in an end`);
    if (!view.runsOut)
      return refuse(`the ${cutName(cut)} stops short of the end; a blade would leave a curved ramp`);
    const wanted = pocketWanted(pocket, view);
    const depth = pocketDepth(pocket, view);
    const sled = onSled ? jigOf(task.workshop, machine, 'cross-cut sled') : undefined;
    if (onSled && !sled) return refuse('the table saw has no cross-cut sled');
    const length = trueSize(task.instance, 'x');
    if (onSled && view.length > SLED.way)
      return refuse(`${say1(view.length)} across, more than the ${SLED.way} a sled carries`);
    if (onSled && length > SLED.work)
      return refuse(`${say1(length)} long, more than the ${SLED.work} that is steady on a sled`);
    const open = view.openNear;
    const blade = bestBlade(
      task.workshop.blades.filter(b => b.machine === machine.id && withinMark(machine, b)),
      wanted.value,
      onSled,
    );
    if (!blade) return refuse(tooWide(task, machine.id, wanted.value, cutName(cut)));
    const moves = slotMoves(wanted.value, blade.kerf).map(m => (open ? -m : m));
    if (moves.length > MOST_PASSES)
      return refuse(`${moves.length} passes of a ${say1(blade.kerf)} kerf for ${say1(wanted.value)}`);
    const kerfAt = open ? wanted.value - blade.kerf : view.near;
    const limit = beyond(machine, {
      depth: depth.value,
      piece: length,
      ...(onSled ? {} : { fence: kerfAt + Math.max(0, moves.at(-1) ?? 0) }),
    });
    if (limit) return refuse(limit);
    const name = cutName(cut);
    const fitted = wanted.how.startsWith('as drawn') === false;
    return made(
      sawDraft({
        what: cutNames(cut, true),
        method: onSled
          ? 'across on the sled'
          : open
            ? 'along the fence, sacrificial face on it'
            : 'along the fence',
        machine,
        blade,
        ...(sled ? { jig: sled } : {}),
        from: onSled ? 'stop' : 'fence',
        kerfAt,
        reads: open ? 'far' : 'near',
        how: open ? wanted.how : `near wall ${say1(view.near)} from the ${FACE_WORDS[view.reference]}`,
        rule: open ? 'kerf' : 'reference',
        height: depth.value,
        heightHow: depth.how,
        heightRule: 'reference',
        lays: [
          {
            label: FACE_WORDS[view.entry],
            down: view.entry,
            against: view.reference,
            entry: view.entry,
            end: view.runFrom,
          },
        ],
        moves,
        work: {
          width: onSled ? Math.min(length, view.far * 1.5 + 60) : trueSize(task.instance, view.acrossAxis),
          height: trueSize(task.instance, view.depthAxis),
        },
        ...(view.reference === 'end1' || view.reference === 'end2' ? { end: view.reference } : {}),
        kerfSide: open ? `in the ${name}, towards the ${onSled ? 'stop' : 'fence'}` : `inside the ${name}`,
        wanted: {
          label: `${cutTitle(cut)} wanted`,
          value: mm(wanted.value),
          how: wanted.how,
        },
        correction: {
          share: 'whole',
          tooBig: 'Too wide: bring the last pass closer by the whole difference.',
          tooSmall: 'Too narrow: take the last pass away by the whole difference.',
          ...(open ? { setting: onSled ? 'stop' : 'fence' } : {}),
        },
        trial: fitted || cut.kind !== 'rebate',
        before: [
          ...(open && !onSled ? ['A sacrificial face is on the fence; the blade was raised into it'] : []),
          ...(fitted ? [`The part that enters is at hand: ${wanted.how}`] : []),
        ],
        cautions: [
          onSled ? CAUTIONS.sled : CAUTIONS.noKnife,
          ...(onSled ? [] : [CAUTIONS.kickback]),
          CAUTIONS.dust,
        ],
        ...(faceAxis(view.reference) === 'z' && view.reference === 'face'
          ? { mark: 'face side' as const }
          : {}),
        ...(view.reference === 'faceEdge' ? { mark: 'face edge' as const } : {}),
        after:
          opposite(view.entry) === 'back' && onSled
            ? ['Leave the stop until every part of the set is cut']
            : [],
      }),
    );
  },
};

/** The blade that needs fewest passes and is no wider than the way; across the grain not the rip blade. */
function bestBlade(blades: readonly Blade[], width: number, across: boolean): Blade | undefined {
  const rank = (b: Blade): number => slotMoves(width, b.kerf).length;
  const liking = (b: Blade): number =>
    b.use === 'groove' ? 2 : b.use === (across ? 'cross' : 'rip') ? 1 : 0;
  return blades
    .filter(b => b.use !== 'metal' && b.kerf <= width + 0.02)
    .sort((a, b) => rank(a) - rank(b) || liking(b) - liking(a) || b.kerf - a.kerf)[0];
}

function tooWide(task: Task, machineId: string, width: number, name: string): string {
  const kerfs = task.workshop.blades
    .filter(b => b.machine === machineId && b.use !== 'metal')
    .map(b => b.kerf);
  return kerfs.length === 0
    ? 'the table saw has no blade for timber'
    : `the narrowest kerf, ${say1(Math.min(...kerfs))}, is wider than the ${say1(width)} ${name}`;
}
