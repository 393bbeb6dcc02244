import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { refused } from './fixing.ts';
import { deep, rule } from './shape.ts';
import { DV1, DV2, DV3, DV4, DV5, TAIL_FIGURES, tailsOf } from './tails.ts';

const DV6 = rule(
  'DV-6',
  'Through tails are as long as the pin board is thick.',
  'They close flush; what stands proud is planed, what is short shows as a step.',
);

export const throughDovetail: JointType = {
  type: 'through-dovetail',
  title: 'Through dovetail',
  says: 'Two boards at a corner: tails on the end of the one go right through pins on the end of the other.',
  meets: 'end to face',
  many: false,
  needs: ['a dovetail saw and chisels, or a router jig', 'a marking gauge and a bevel'],
  rules: [DV1, DV2, DV3, DV4, DV5, DV6],
  figures: [
    {
      name: 'length',
      positive: true,
      label: 'tail length',
      kind: 'length',
      rule: DV6,
      formula: 'the thickness of the pin board',
      value: r => r.depthOf('into'),
    },
    ...TAIL_FIGURES,
  ],
  adds: () => 'length',
  make,
};

function make(c: MakeContext) {
  const [length, whole] = [c.figure('length'), deep(c.contact, c.into.body)];
  if (Math.abs(length - whole) > 0.05)
    return {
      cuts: [],
      glue: [],
      fasteners: [],
      limits: [],
      impossible: [
        {
          figure: 'length',
          fault: `through tails of ${length} mm on a pin board ${whole} thick`,
          mend: `give ${whole} mm, or use lapped dovetails`,
        },
      ],
    };
  const { impossible, ...made } = tailsOf(c, length);
  return { ...made, ...refused(impossible) };
}
