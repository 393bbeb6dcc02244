import type { PocketCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import { CAUTIONS, twice } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { openDepth } from '../fit.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves, viewPocket } from '../pocket.ts';
import { sawDraft } from '../saw-draft.ts';
import { beyond, jigOf, machineOf } from '../shop.ts';
import { FACES, faceAxis, sizeWords, trueSize } from '../sizes.ts';
import { TALLEST_ON_END } from './tenon-upright-jig.ts';

/**
 * An open mortise on end in the upright jig. In the middle of the stock it is cut by turning, the kerf inside
 * the slot: fence = jig + (stock + slot) / 2 - kerf (SET-3, SET-4). Off the middle it is cut from the face side.
 */
export const openMortiseJig: Method = {
  name: 'table saw, upright jig',
  makes: ['open-mortise'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    if (faceAxis(cut.face) !== 'x') return refuse('the slot is not in an end');
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const jig = jigOf(task.workshop, machine, 'upright tenon jig');
    if (!jig) return refuse('the table saw has no upright jig');
    const view = viewPocket(task.instance, cut);
    if (!view.runsOut) return refuse('the slot does not run out at both sides');
    const blades = task.workshop.blades.filter(
      b => b.machine === machine.id && b.use !== 'metal' && b.kerf <= view.width + 0.02,
    );
    const blade = blades.sort(
      (a, b) => Number(b.use === 'rip') - Number(a.use === 'rip') || b.kerf - a.kerf,
    )[0];
    if (!blade) return refuse(`every blade is wider than the ${say1(view.width)} slot`);
    const depth = openDepth({ ...task, cut } as Task<PocketCut>, view);
    const axis = view.acrossAxis === 'y' ? 'y' : 'z';
    const stock = trueSize(task.instance, axis);
    const length = trueSize(task.instance, 'x');
    if (length > TALLEST_ON_END)
      return refuse(`the part is ${say1(length)} long, too tall to stand on end at the saw`);
    const slot = view.width;
    const centred =
      Math.abs(view.near + view.far - task.instance.size[axis === 'y' ? 'width' : 'thickness']) < 0.1;
    const kerf = blade.kerf;
    const kerfAt = centred ? (stock + slot) / 2 - kerf : view.near;
    const limit = beyond(machine, { depth: depth.value, piece: length, fence: jig.offset + kerfAt });
    if (limit) return refuse(limit);
    const stand = FACES[axis === 'z' ? 'y' : 'z'].high;
    const { low, high } = FACES[axis];
    const one = Math.abs(slot - kerf) < 0.03;
    const face = { label: 'face', down: cut.face, against: high, entry: cut.face, end: stand };
    const moves = centred ? slotMoves(slot / 2, kerf).map(m => -m) : slotMoves(slot, kerf);
    return made(
      sawDraft({
        what: 'Open mortises',
        method: centred ? 'slot in the upright jig, turned' : 'slot in the upright jig, from one face',
        machine,
        blade,
        jig,
        jigAtFence: true,
        from: 'fence',
        kerfAt,
        reads: centred ? 'far' : 'near',
        how: centred
          ? `half of ${sizeWords(task.instance, axis)} + ${say1(slot)}`
          : `near wall ${say1(view.near)} from the face side`,
        rule: centred ? 'flipped' : 'oneFace',
        height: depth.value,
        heightHow: depth.how,
        heightRule: 'through',
        lays: centred && !one ? [face, { ...face, label: 'turned', against: low }] : [face],
        moves: centred && one ? [0] : moves,
        work: { width: stock, height: depth.value * 1.55 },
        end: cut.face === 'end1' ? 'end1' : 'end2',
        keep: centred
          ? { from: (stock + slot) / 2, to: stock, label: 'cheek' }
          : { from: view.near + slot, to: stock, label: 'cheek' },
        kerfSide: 'inside the slot',
        wanted: { label: 'Slot wanted', value: mm(slot), how: `as drawn ${say1(slot)}` },
        correction: centred
          ? {
              share: 'half',
              tooBig: 'Too wide: bring the fence closer by half the difference.',
              tooSmall: 'Too narrow: take the fence away by half the difference.',
            }
          : {
              share: 'whole',
              tooBig: 'Too wide: bring the last pass closer by the whole difference.',
              tooSmall: 'Too narrow: take the last pass away by the whole difference.',
            },
        trial: true,
        before: [
          `Parts and test piece came through the thicknesser in one pass, ${sizeWords(task.instance, axis)}`,
        ],
        after: [
          'Clear the bottom square with a chisel',
          'Cut the slots first; the tenons are fitted to them',
        ],
        cautions: [CAUTIONS.upright, ...(centred ? [twice('slot')] : [])],
        mark: axis === 'z' ? 'face side' : 'face edge',
      }),
    );
  },
};
