import { scale } from '../geometry/vector.ts';
import { LOCAL_NORMAL } from '../setting-out/faces.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { across, deep, FACE_AXIS, isHigh, limit, rule, sizeAlong } from './shape.ts';

const BH1 = rule(
  'BH-1',
  'A bar enters one and a quarter of its diameter, leaving 6 mm of wood behind.',
  'Enough to bear; the far face must not bruise.',
);
const BH2 = rule(
  'BH-2',
  'The hole is 1 mm deeper than the bar reaches.',
  'The bar must not hold the frame open.',
);
const BH3 = rule(
  'BH-3',
  'A hole for a bar that shows is the measured bar, up to 0.1 mm over.',
  'More shows as a dark ring.',
  { text: 'remembered fit', basis: 'memory' },
);

export const barInHole: JointType = {
  type: 'bar-in-hole',
  title: 'Bar in a drilled hole',
  says: 'The end of a round bar held in a blind or through hole.',
  meets: 'end to face',
  many: false,
  needs: ['a drill press or a drill and guide', 'a drill of the measured bar'],
  rules: [BH1, BH2, BH3],
  figures: [
    {
      name: 'hole.depth',
      positive: true,
      label: 'hole depth',
      kind: 'length',
      rule: BH1,
      formula: 'one and a quarter diameters, leaving 6 mm',
      value: r =>
        Math.max(1, Math.min(Math.round(r.size('from', 'width') * 1.25), Math.floor(r.depthOf('into') - 6))),
    },
    { name: 'gap', label: 'room at the end', kind: 'length', rule: BH2, formula: '1 mm', value: () => 1 },
    {
      name: 'enters',
      label: 'bar enters',
      kind: 'length',
      rule: BH2,
      formula: 'hole depth less the room at its end',
      value: r => r.figure('hole.depth') - r.figure('gap'),
    },
    {
      name: 'fit',
      label: 'hole over the bar',
      kind: 'length',
      rule: BH3,
      formula: '0.05 mm',
      value: () => 0.05,
    },
  ],
  adds: () => 'enters',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const depth = c.figure('hole.depth');
  const whole = deep(contact, into.body);
  const axis = FACE_AXIS[contact.fromFace];
  const centre = {
    x: 0,
    y: from.body.width / 2,
    z: from.body.thickness / 2,
    [axis]: isHigh(contact.fromFace) ? sizeAlong(from.body, contact.fromFace) : 0,
  };
  const at = across(c, 'from', { min: centre, max: centre }).min;
  return {
    cuts: [
      {
        role: 'into' as const,
        cut: {
          kind: 'hole' as const,
          role: 'bar' as const,
          face: contact.intoFace,
          at,
          direction: scale(LOCAL_NORMAL[contact.intoFace], -1),
          diameter: from.body.width,
          depth: Math.min(depth, whole),
          through: depth >= whole,
          clearance: c.figure('fit'),
        },
      },
    ],
    glue: [{ area: Math.PI * from.body.width * Math.max(0, c.figure('enters')), grain: 'metal' as const }],
    fasteners: [],
    limits: [
      limit(
        BH1,
        'hole.depth',
        depth,
        { min: from.body.width },
        'note',
        `Bore ${Math.round(from.body.width * 1.25)} mm.`,
      ),
    ],
    ...(from.round
      ? refused([...offTheFace(c), ...bottoms(c, depth)])
      : {
          impossible: [
            {
              figure: 'hole.depth',
              fault: 'only a round bar fits a drilled hole',
              mend: 'give the bar a diameter',
            },
          ],
        }),
  };
}

/** The whole of the bar must stand on the face it enters. */
function offTheFace(c: MakeContext): Refusal[] {
  const { contact, from } = c;
  const room = Math.min(
    ...(['x', 'y', 'z'] as const)
      .filter(a => a !== FACE_AXIS[contact.intoFace])
      .map(a => contact.inInto.max[a] - contact.inInto.min[a]),
  );
  return room >= from.body.width - 0.05
    ? []
    : [
        {
          figure: 'hole.depth',
          fault: `a bar of ${from.body.width} mm runs off the face of ${c.into.instance}, which holds ${Math.round(room * 10) / 10} of it`,
          mend: 'move the bar onto the face, or use a thinner one',
        },
      ];
}

/** A bar that is longer than its hole is deep holds the frame open. */
function bottoms(c: MakeContext, depth: number): Refusal[] {
  const enters = c.figure('enters');
  return enters > depth + 1e-6
    ? [
        {
          figure: 'enters',
          fault: `the bar enters ${enters} mm, the hole is only ${depth} deep`,
          mend: `enter ${depth - Math.min(1, depth / 2)} mm, or bore deeper`,
        },
      ]
    : [];
}
