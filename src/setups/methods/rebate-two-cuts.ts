import type { PocketCut } from '../../results/cuts.ts';
import { CAUTIONS, wasteFalls } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { pocketDepth, pocketWanted } from '../fit.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { viewPocket } from '../pocket.ts';
import { sawDraft } from '../saw-draft.ts';
import { beyond, bladeOf, machineOf, noBlade } from '../shop.ts';
import { FACE_WORDS, faceAxis, opposite, sizeWords, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';

/**
 * A rebate along the grain in two cuts. First the kerf at its inner wall, flat; then on edge with the opposite
 * face to the fence, so that the strip falls on the far side of the blade (SET-10).
 */
export const rebateTwoCuts: Method = {
  name: 'table saw, two cuts',
  makes: ['rebate'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    const pocket: Task<PocketCut> = { ...task, cut };
    if (isMetal(task.instance)) return refuse('the saw is set up for timber');
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const blade = bladeOf(task.workshop, machine, ['rip', 'combination', 'cross']);
    if (!blade) return refuse(noBlade(task.workshop, machine));
    const view = viewPocket(task.instance, cut);
    if (view.runAxis !== 'x' || view.depthAxis === 'x') return refuse('the rebate runs across the grain');
    if (!view.openNear) return refuse('the rebate is not at an edge');
    if (!view.runsOut) return refuse('the rebate stops short of the end; a blade would leave a curved ramp');
    const width = pocketWanted(pocket, view);
    const depth = pocketDepth(pocket, view);
    const kerf = blade.kerf;
    if (width.value < kerf - 0.01 || depth.value < kerf - 0.01)
      return refuse(`the rebate is narrower than the kerf of ${say1(kerf)}`);
    const thick = trueSize(task.instance, view.depthAxis);
    const wide = trueSize(task.instance, view.acrossAxis);
    const limit =
      beyond(machine, { depth: Math.max(width.value, depth.value), piece: trueSize(task.instance, 'x') }) ??
      beyond(machine, { fence: thick - depth.value });
    if (limit) return refuse(limit);
    const shared = { method: 'two cuts, strip falls free', machine, blade, from: 'fence' as const };
    const side = view.reference;
    return made(
      sawDraft({
        ...shared,
        what: 'Rebates, first cut',
        kerfAt: width.value - kerf,
        reads: 'far',
        how: width.how,
        rule: 'kerf',
        height: depth.value,
        heightHow: depth.how,
        heightRule: 'rebateTwoCuts',
        lays: [{ label: 'flat', down: view.entry, against: side, entry: view.entry, end: view.runFrom }],
        work: { width: wide, height: thick },
        kerfSide: 'in the rebate, towards the fence',
        cautions: [CAUTIONS.noKnife, CAUTIONS.kickback],
      }),
      sawDraft({
        ...shared,
        what: 'Rebates, second cut',
        kerfAt: thick - depth.value,
        reads: 'near',
        how: `${sizeWords(task.instance, view.depthAxis)} less ${say1(depth.value)}`,
        rule: 'rebateTwoCuts',
        height: width.value,
        heightHow: width.how,
        heightRule: 'rebateTwoCuts',
        lays: [
          { label: 'on edge', down: side, against: opposite(view.entry), entry: side, end: view.runFrom },
        ],
        work: { width: thick, height: Math.min(wide, 160) },
        waste: { from: thick - depth.value + kerf, to: thick },
        keep: { from: 0, to: thick - depth.value, label: 'kept' },
        kerfSide: 'in the rebate, away from the fence',
        before: ['The first cut is made: the strip falls as the saw meets it'],
        cautions: [
          CAUTIONS.kickback,
          wasteFalls(depth.value - kerf),
          `${FACE_WORDS[side]} down: a tall face on the fence steadies it.`,
        ],
        ...(faceAxis(opposite(view.entry)) === 'z' && opposite(view.entry) === 'face'
          ? { mark: 'face side' as const }
          : {}),
      }),
    );
  },
};
