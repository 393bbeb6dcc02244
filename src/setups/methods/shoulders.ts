import type { TenonCut } from '../../results/cuts.ts';
import type { Blade, Jig, Machine } from '../../workshop/workshop.ts';
import { CAUTIONS } from '../cautions.ts';
import { say1 } from '../figures.ts';
import type { Draft, Task } from '../method.ts';
import { sawDraft } from '../saw-draft.ts';
import { FACE_WORDS, faceAxis, opposite, trueSize } from '../sizes.ts';
import { likeSides, reachHow, type Side, type TenonPlan } from './tenon-plan.ts';

/**
 * Shoulders on the cross-cut sled: the stop meets the tip, the kerf lies inside the tenon's length, so the
 * figure is read to the far teeth (SET-2). Blade height is what the cheek cut will take.
 */
export function shoulderDrafts(
  task: Task<TenonCut>,
  plan: TenonPlan,
  machine: Machine,
  blade: Blade,
  sled: Jig,
): Draft[] {
  return likeSides([plan.high, plan.low, ...plan.edges]).map(sides =>
    shoulder(task, plan, sides, machine, blade, sled),
  );
}

function shoulder(
  task: Task<TenonCut>,
  plan: TenonPlan,
  sides: Side[],
  machine: Machine,
  blade: Blade,
  sled: Jig,
): Draft {
  const side = sides[0]!;
  const { end } = task.cut;
  const isCheek = faceAxis(side.face) === plan.axis;
  const haunch = side.reach < plan.length.value - 0.01;
  return sawDraft({
    what: haunch ? 'Haunch ends' : isCheek ? 'Tenon shoulders' : 'Tenon edge shoulders',
    method: 'shoulders on the sled',
    machine,
    blade,
    jig: sled,
    from: 'stop',
    kerfAt: side.reach - blade.kerf,
    reads: 'far',
    how: reachHow(plan, side),
    rule: 'kerf',
    height: side.amount,
    heightHow: side.how,
    heightRule: plan.centred && isCheek ? 'flipped' : 'reference',
    lays: sides.map((s, i) => ({
      label: i === 0 ? FACE_WORDS[s.face] : 'turned',
      down: s.face,
      against: end,
      entry: s.face,
      end: opposite(s.face),
    })),
    work: {
      width: Math.min(trueSize(task.instance, 'x'), side.reach * 2 + 60),
      height: trueSize(task.instance, faceAxis(side.face)),
    },
    end,
    waste: { from: 0, to: side.reach - blade.kerf },
    kerfSide: `in the tenon, ${say1(side.reach)} from the tip to the far teeth`,
    trial: false,
    cautions: [CAUTIONS.sled],
    after: ['Leave the stop until every part of the set is cut'],
  });
}
