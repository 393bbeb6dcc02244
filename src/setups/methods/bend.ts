import type { BentCut } from '../../results/cuts.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { section } from '../section.ts';
import { trueSize } from '../sizes.ts';
import { handBench } from './hand-bench.ts';

/** Thicker and wider flats spring out of a bench vice; they are heated or sent out. Common practice, mm. */
const THICKEST = 6;
const WIDEST = 50;

/** Where each bend begins on the straight bar, from end 1, mm. */
export function bendStations(cut: BentCut, length: number, height: number): number[] {
  const set = cut.radius + cut.stock;
  if (cut.form === 'L') return [length - set];
  const straights = cut.form === 'U' ? 2 * (height - set) + length - 2 * set : undefined;
  if (straights !== undefined) {
    const allowance = (cut.developed - straights) / 2;
    return [height - set, height - set + allowance + length - 2 * set];
  }
  // The two outer legs and the riser together lack one bend allowance each side of the riser.
  const riser = height - 2 * set;
  const outer = length + cut.stock - 2 * set;
  const allowance = (cut.developed - riser - outer) / 2;
  const air = cut.air[1] ?? [];
  const first = Math.min(...air.map(([, x]) => x));
  return [first, first + allowance + riser];
}

/** Flat and square bar bent cold over a former in the vice, marked on the straight bar. */
export const bendInVice: Method = {
  name: 'bent over a former in the vice',
  makes: ['bent'],
  attempt(plain) {
    const task: Task<BentCut> = { ...plain, cut: plain.cut as BentCut };
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const { cut, instance } = task;
    if (cut.stock > THICKEST || instance.size.width > WIDEST)
      return refuse(
        `${say1(cut.stock)} by ${say1(instance.size.width)} is more than a vice bends cold: have it bent, or heat it`,
      );
    const marks = bendStations(cut, trueSize(instance, 'x'), trueSize(instance, 'z'));
    const tool = `former ${say1(cut.radius)}, vice, soft mallet`;
    return made({
      what: 'Bends',
      method: 'bent cold over a former',
      machine,
      tool,
      state: { tool, tilt: 0 },
      settings: [
        lengthSetting('length', cut.developed, 'straight bar, sawn to this before it is bent', 'bend'),
        ...marks.map((at, i) =>
          lengthSetting(i === 0 ? 'from' : 'to', at, `bend ${i + 1} begins, from end 1`, 'bend'),
        ),
        otherSetting('angle', 'angle', 90, 'to a square; bent a little over, it springs back', 'bend'),
      ],
      lays: [{ label: 'flat in the vice', down: 'back', against: 'backEdge', entry: 'face', end: 'end1' }],
      removal: { shape: 'by eye', width: 0, moves: [0] },
      drawing: () =>
        section({
          view: 'hand',
          zero: 'face',
          seen: 'from the bench, the edge of the bar towards you',
          tool: { from: 0, to: cut.radius, height: cut.radius },
          work: { width: trueSize(instance, 'x'), height: cut.stock },
          reads: 'near',
          toolWord: 'former',
        }),
      trial: true,
      before: ['Holes near a bend are drilled after it', 'Edges filed, so that no crack begins there'],
      after: ['Checked with a square against the drawing; the second bend is marked from the first'],
      cautions: ['Gloves off near the drill, on for sawn edges. The bar springs: face to one side of it.'],
      passes: marks.length,
    });
  },
};
