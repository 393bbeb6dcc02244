import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { screwed } from './screwed.ts';
import { FACE_AXIS, limit, longAxis, rule } from './shape.ts';

const SW1 = rule(
  'SW-1',
  'The slot gives 1 mm either way for each 100 mm of solid top from its middle to the screw, 2 mm at least.',
  'A top moves about a hundredth of its width over the seasons indoors; the check of movement says by the species.',
  { text: 'remembered, 0.5 to 1.5 %', basis: 'memory' },
);
const SW2 = rule(
  'SW-2',
  'A deep rail is counterbored until 25 mm of it stay under the head, one and a half times the top where that is thin.',
  'A screw through the whole rail would bend in its slot and not slide.',
);
const SW3 = rule(
  'SW-3',
  'The screw has a round or pan head and a washer, and is not drawn tight.',
  'A countersunk head wedges itself in the slot.',
);

/** A screw that holds a solid top down and lets it move. */
export const slottedScrew: JointType = {
  ...screwed,
  type: 'slotted-screw',
  title: 'Slotted screw for a solid top',
  says: 'Screws in slots that lie across the grain of a solid top: they hold it down and let it move.',
  needs: ['a slot drilled or routed', 'round-headed screws and washers', ...screwed.needs],
  rules: [SW1, SW2, SW3],
  figures: screwed.figures.map(f =>
    f.name === 'slot'
      ? {
          ...f,
          rule: SW1,
          formula: 'a fiftieth of the half width of the top, 4 mm at least, whole mm',
          value: (r: JointReader) => Math.max(4, Math.round(farthest(r) / 50)),
        }
      : f.name === 'sunk'
        ? {
            ...f,
            rule: SW2,
            formula: 'all of the rail but 25 mm, or one and a half times the top where that is less',
            value: (r: JointReader) =>
              Math.max(0, Math.ceil(r.depthOf('from') - Math.min(25, 1.5 * r.depthOf('into')))),
          }
        : f,
  ),
  make,
};

/** Half the width of the part that moves: how far a screw may stand from its middle, mm. */
const farthest = (r: JointReader): number => r.size('into', 'width') / 2;

function make(c: MakeContext) {
  const made = screwed.make(c);
  const travel = c.figure('slot');
  const cuts = made.cuts.map(({ role, cut }) => {
    if (cut.kind !== 'hole' || role !== 'from') return { role, cut };
    const { countersink: _none, ...plain } = cut;
    // The counterbore lets the head slide as far as the slot lets the shank.
    const slot = made.cuts.find(o => o.cut.kind === 'hole' && o.cut.slot)?.cut;
    return cut.role === 'plain' && slot?.kind === 'hole' && slot.slot
      ? { role, cut: { ...plain, slot: slot.slot } }
      : { role, cut: plain };
  });
  return {
    ...made,
    cuts,
    limits: [
      ...made.limits,
      limit(SW1, 'slot', travel, { min: 2 }, 'attend', 'Give 4 mm at least, or screw it fast.'),
    ],
    ...refused([...(made.impossible ?? []), ...refusals(c, travel)]),
  };
}

function refusals(c: MakeContext, travel: number): Refusal[] {
  if (FACE_AXIS[c.contact.intoFace] !== 'z')
    return [
      {
        figure: 'slot',
        fault: `${c.into.instance} is met on its edge, not on its face`,
        mend: 'use screwed; slots are for the face of a solid top',
      },
    ];
  const along = longAxis(c.contact.inFrom, c.contact.fromFace);
  const room = c.contact.inFrom.max[along] - c.contact.inFrom.min[along];
  return travel > room / 4
    ? [
        {
          figure: 'slot',
          fault: `a slot with ${travel} mm of travel in ${Math.round(room)} mm`,
          mend: `give ${Math.floor(room / 8)} mm`,
        },
      ]
    : [];
}
