import type { TenonCut } from '../../results/cuts.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import type { Draft, Task } from '../method.ts';
import { AT_SLED, section } from '../section.ts';
import { machineOf } from '../shop.ts';
import { FACE_WORDS, FACES, trueSize } from '../sizes.ts';
import type { TenonPlan } from './tenon-plan.ts';

/** Tips sawn to 45 degrees where two mortises meet: at the mitre saw, or with saw and block by hand. */
export function mitredTip(task: Task<TenonCut>, plan: TenonPlan): Draft[] {
  const tip = task.cut.mitredTip;
  if (!tip) return [];
  const saw = machineOf(task.workshop, 'mitre saw');
  const machine = saw ?? machineOf(task.workshop, 'hand tools') ?? machineOf(task.workshop, 'bench');
  if (!machine) return [];
  const blade = task.workshop.blades.find(b => b.machine === machine.id);
  const face = FACES[plan.axis][tip.side];
  const t = plan.thickness.value;
  const kerf = blade?.kerf ?? 0.5;
  const long = FACE_WORDS[face];
  const shoulder = plan[tip.side]?.amount ?? 0;
  return [
    {
      what: 'Tenon tips, mitred',
      method: saw ? 'tips at the mitre saw' : 'tips by hand on a mitre block',
      machine,
      tool: blade ? `${blade.name}, kerf ${say1(kerf)}` : 'back saw and 45 degree block',
      state: { tool: blade?.id ?? 'back saw', tilt: 0, mitre: 45 },
      settings: [
        otherSetting(
          'mitre',
          'angle',
          45,
          `45.0 from square, 45.0 on a scale that counts from the fence; the tip stays long on the ${long}`,
          'mitre',
        ),
        lengthSetting('gauge', shoulder, `the long cheek from the ${long}`, 'reference', 'near edge'),
        lengthSetting(
          'from',
          t,
          `the saw leaves the short side ${say1(t)} from the tip: tenon ${say1(t)} at 45`,
          'reference',
        ),
      ],
      lays: [
        {
          label: 'tip',
          down: FACES[plan.otherAxis].low,
          against: face,
          entry: FACES[plan.otherAxis].high,
          end: task.cut.end,
        },
      ],
      stations: [0],
      along: { from: 0, to: trueSize(task.instance, plan.otherAxis) },
      removal: {
        shape: 'outline',
        width: kerf,
        moves: [0],
        outline: [
          [0, 0],
          [t, 0],
          [t, t],
        ],
      },
      drawing: () =>
        section({
          view: saw ? 'cross-cut' : 'hand',
          zero: 'face',
          seen: AT_SLED,
          tool: { from: 0, to: kerf, height: t },
          work: { width: Math.min(120, trueSize(task.instance, 'x')), height: plan.stock },
          reads: 'near',
          grain: 'across',
        }),
      end: task.cut.end,
      kerfSide: 'beyond the tip',
      trial: false,
      before: [],
      after: ['The tips do not touch in the dry fit: 1 mm air between them'],
      cautions: [saw ? CAUTIONS.mitreSaw : CAUTIONS.hand],
      passes: 1,
    },
  ];
}
