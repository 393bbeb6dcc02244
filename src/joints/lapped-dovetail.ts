import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { refused } from './fixing.ts';
import { deep, halfMm, limit, rule } from './shape.ts';
import { DV1, DV2, DV3, DV4, DV5, TAIL_FIGURES, tailsOf } from './tails.ts';

const LD1 = rule(
  'LD-1',
  'The lap in front of the tails is a quarter of the pin board, 3 mm at least.',
  'The front shows no joint, and the lap does not break when the sockets are chopped.',
  { text: 'remembered, 3 to 6 mm on drawer fronts of 16 to 22', basis: 'memory' },
);

export const lappedDovetail: JointType = {
  type: 'lapped-dovetail',
  title: 'Lapped dovetail',
  says: 'Tails that stop short of the face of the pin board: from the front, as on a drawer, no joint is seen.',
  meets: 'end to face',
  many: false,
  needs: ['a dovetail saw and chisels, or a router jig', 'a marking gauge and a bevel'],
  rules: [DV1, DV2, DV3, DV4, DV5, LD1],
  figures: [
    {
      name: 'lap',
      positive: true,
      label: 'lap in front of the tails',
      kind: 'length',
      rule: LD1,
      formula: "a quarter of the pin board's thickness, to 0.5 mm, 3 at least",
      value: r => Math.max(3, halfMm(r.depthOf('into') / 4)),
    },
    {
      name: 'length',
      label: 'tail length',
      kind: 'length',
      rule: LD1,
      formula: 'the thickness of the pin board less the lap',
      value: r => r.depthOf('into') - r.figure('lap'),
    },
    ...TAIL_FIGURES,
  ],
  adds: () => 'length',
  make,
};

function make(c: MakeContext) {
  const [length, whole] = [c.figure('length'), deep(c.contact, c.into.body)];
  const lap = whole - length;
  if (lap < LEAST_LAP || length <= 0)
    return {
      cuts: [],
      glue: [],
      fasteners: [],
      limits: [],
      impossible: [
        c.figure('lap') >= whole
          ? {
              figure: 'lap',
              fault: `a lap of ${c.figure('lap')} mm leaves no tail in a board of ${whole}`,
              mend: `give ${halfMm(whole / 4)} mm`,
            }
          : {
              figure: 'length',
              fault: `tails of ${length} mm leave a lap of ${Math.max(0, Math.round(lap * 100) / 100)} on a board of ${whole}`,
              mend: `give ${halfMm((whole * 3) / 4)} mm, or use through dovetails`,
            },
      ],
    };
  const { impossible, limits, ...made } = tailsOf(c, length);
  return {
    ...made,
    limits: [
      ...limits,
      limit(
        LD1,
        'lap',
        lap,
        { min: Math.min(3, whole / 4), max: whole / 2 },
        'attend',
        `Give ${Math.max(3, halfMm(whole / 4))} mm.`,
      ),
    ],
    ...refused(impossible),
  };
}

/** Thinner than this the lap breaks out under the chisel, mm. */
const LEAST_LAP = 1;
