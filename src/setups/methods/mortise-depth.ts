import type { PocketCut } from '../../results/cuts.ts';
import { say1 } from '../figures.ts';
import type { Task } from '../method.ts';
import type { PocketView } from '../pocket.ts';
import { sizeWords, trueSize } from '../sizes.ts';

/** How far past the middle each side of a through mortise is worked, mm (common practice). */
const PAST_MIDDLE = 2;

/** Depth from one side; a mortise right through is worked from both, past the middle (SET-19). */
export function mortiseDepth(
  task: Task<PocketCut>,
  view: PocketView,
): { value: number; how: string; both: boolean } {
  const stock = trueSize(task.instance, view.depthAxis);
  const through = view.depth >= task.instance.size[sizeKey(view)] - 0.01;
  if (!through) return { value: view.depth, how: `as drawn ${say1(view.depth)}`, both: false };
  return {
    value: stock / 2 + PAST_MIDDLE,
    how: `half of ${sizeWords(task.instance, view.depthAxis)} + ${PAST_MIDDLE}.0, from both sides`,
    both: true,
  };
}

const sizeKey = (view: PocketView): 'length' | 'width' | 'thickness' =>
  view.depthAxis === 'x' ? 'length' : view.depthAxis === 'y' ? 'width' : 'thickness';
