import type { Cut, PocketCut, TenonCut } from '../results/cuts.ts';
import { say1 } from './figures.ts';
import type { Task } from './method.ts';
import { type PocketView, viewPocket } from './pocket.ts';
import { isMeasured, mateAxis, mateDelta, nominal, sizeWords, trueSize } from './sizes.ts';

/** Play of a glued tenon where nobody said: 0.05 to 0.15 mm in all, remembered trade figures (SET-7). */
export const USUAL_CLEARANCE = 0.1;

export interface Wanted {
  value: number;
  how: string;
}

const isPocket = (cut: Cut | undefined): cut is PocketCut => cut !== undefined && 'box' in cut;

/** Tenon thickness to aim at: its slot less the clearance (SET-7); as drawn where it meets no slot. */
export function tenonWanted(task: Task<TenonCut>): Wanted {
  const { cut, instance, mate } = task;
  const drawn = nominal(instance, cut.cheeks) - cut[cut.cheeks].low - cut[cut.cheeks].high;
  if (!mate || !isPocket(mate.cut)) return { value: drawn, how: `as drawn ${say1(drawn)}` };
  const view = viewPocket(mate.instance, mate.cut);
  const slot = Math.abs(view.width - drawn) <= Math.abs(view.length - drawn) ? view.width : view.length;
  if (Math.abs(slot - drawn) > 1.5) return { value: drawn, how: `as drawn ${say1(drawn)}` };
  const clearance = cut.clearance ?? mate.cut.clearance ?? USUAL_CLEARANCE;
  return { value: slot - clearance, how: `slot ${say1(slot)} less ${say1(clearance)}` };
}

/** Length of a tenon: right through, it takes its mate's measured thickness (SET-11). */
export function tenonLength(task: Task<TenonCut>): Wanted {
  return throughMate(task, task.cut.length, task.cut.through, 'x');
}

/** Depth of an open mortise: as the rail that enters it measures (SET-11). */
export function openDepth(task: Task<PocketCut>, view: PocketView): Wanted {
  return throughMate(task, view.depth, true, view.depthAxis);
}

function throughMate(task: Task, drawn: number, through: boolean, axis: 'x' | 'y' | 'z'): Wanted {
  const { instance, mate } = task;
  if (!mate || !through) return { value: drawn, how: `as drawn ${say1(drawn)}` };
  const along = mateAxis(instance, axis, mate.instance);
  const usual = nominal(mate.instance, along);
  if (!isMeasured(mate.instance, along) || Math.abs(usual - drawn) > 3)
    return { value: drawn, how: `as drawn ${say1(drawn)}` };
  const delta = mateDelta(instance, axis, mate.instance);
  const over = drawn - usual;
  return {
    value: drawn + delta,
    how: `${mate.instance.name}, ${sizeWords(mate.instance, along)}${Math.abs(over) > 0.01 ? `, ${say1(over)} over` : ''}`,
  };
}

/** Width of a way that a part enters with its whole thickness: the part as it measures (SET-8). */
export function pocketWanted(task: Task<PocketCut>, view: PocketView): Wanted {
  const { instance, mate, cut } = task;
  const drawn = { value: view.width, how: `as drawn ${say1(view.width)}` };
  if (!mate || cut.kind === 'mortise' || cut.kind === 'open-mortise') return drawn;
  const along = mateAxis(instance, view.acrossAxis, mate.instance);
  const stock = nominal(mate.instance, along);
  if (Math.abs(view.width - stock) > 1) return drawn;
  const play = Math.max(0, view.width - stock);
  const clearance = play > 0.005 ? play : (cut.clearance ?? 0);
  const measured = trueSize(mate.instance, along);
  const words = `${mate.instance.name} ${sizeWords(mate.instance, along)}`;
  return {
    value: measured + clearance,
    how: clearance > 0 ? `${words} + ${say1(clearance)} play` : words,
  };
}

/** Depth of a pocket; a recess follows the measured thickness of the sheet let into it (SET-21). */
export function pocketDepth(task: Task<PocketCut>, view: PocketView): Wanted {
  const { instance, mate, cut } = task;
  const drawn = { value: view.depth, how: `as drawn ${say1(view.depth)}` };
  // Only what reaches the far face goes through, whatever was ticked: a blade set too high spoils the part.
  if (cut.through && view.depth > nominal(instance, view.depthAxis) - 0.01) {
    const whole = trueSize(instance, view.depthAxis);
    return { value: whole, how: `right through ${sizeWords(instance, view.depthAxis)}` };
  }
  if (cut.kind !== 'recess' || !mate) return drawn;
  const along = mateAxis(instance, view.depthAxis, mate.instance);
  const stock = nominal(mate.instance, along);
  if (!isMeasured(mate.instance, along) || Math.abs(view.depth - stock) > 1) return drawn;
  const glue = view.depth - stock;
  return {
    value: trueSize(mate.instance, along) + glue,
    how: `${mate.instance.name} ${sizeWords(mate.instance, along)} + ${say1(glue)} glue`,
  };
}
