import type { TenonCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { section } from '../section.ts';
import { FACE_WORDS, FACES, trueSize } from '../sizes.ts';
import { handBench } from './hand-bench.ts';
import { planTenon } from './tenon-plan.ts';

/** Saw and shoulder plane to gauge lines struck from the face side. */
export const tenonHand: Method = {
  name: 'tenon saw by hand',
  makes: ['tenon'],
  attempt(task) {
    const cut = task.cut as TenonCut;
    const tenon: Task<TenonCut> = { ...task, cut };
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const plan = planTenon(tenon);
    const inset = plan.high?.amount ?? 0;
    const reference = FACES[plan.axis].high;
    const near = inset;
    const far = inset + plan.thickness.value;
    return made({
      what: 'Tenons by hand',
      method: 'tenon saw, shoulder plane',
      machine,
      tool: 'mortise gauge, tenon saw, shoulder plane',
      state: { tool: 'mortise gauge', fence: near, height: far, tilt: 0 },
      settings: [
        lengthSetting(
          'gauge',
          near,
          `from the ${FACE_WORDS[reference]}: ${plan.high?.how ?? 'bare-faced'}`,
          'reference',
          'near edge',
        ),
        lengthSetting(
          'gauge 2',
          far,
          `${say1(near)} + tenon ${say1(plan.thickness.value)}`,
          'reference',
          'far edge',
        ),
        lengthSetting('from', plan.length.value, `shoulder from the tip: ${plan.length.how}`, 'kerf'),
      ],
      lays: [{ label: 'face', down: cut.end, against: reference, entry: cut.end }],
      removal: { shape: 'by eye', width: 0.8, moves: [0] },
      drawing: () =>
        section({
          view: 'hand',
          zero: 'face',
          seen: 'on the end, face side on the right',
          tool: { from: far, to: far + 0.8, height: plan.length.value },
          work: { width: trueSize(task.instance, plan.axis), height: plan.length.value * 1.55 },
          reads: 'near',
          toolWord: 'saw',
          keep: { from: near, to: far, label: 'tenon' },
          grain: 'up',
        }),
      end: cut.end,
      kerfSide: 'outside the gauge lines',
      wanted: { label: 'Tenon wanted', value: mm(plan.thickness.value), how: plan.thickness.how },
      trial: false,
      before: ['Mortises are chopped; fit each tenon to its own'],
      after: [],
      cautions: [CAUTIONS.hand],
      passes: 4,
    });
  },
};
