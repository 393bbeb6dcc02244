import type { EndName } from '../results/cuts.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  across,
  deep,
  FACE_AXIS,
  limit,
  otherAxis,
  rule,
  SIZE_OF_AXIS,
  sunk,
  wholeMm,
  withSpan,
} from './shape.ts';

const TB1 = rule(
  'TB-1',
  'The fork stands astride a third to a half of the rail.',
  'The rail keeps a sound core, the fork two sound cheeks.',
);
const TB2 = rule(
  'TB-2',
  'The fork goes over the whole rail.',
  'It bears on the rail below and cannot slip off.',
);
const TB3 = rule('TB-3', 'The slot has 0.1 mm play on the core.', 'It slides home with glue on.', {
  text: 'remembered fit',
  basis: 'memory',
});

/** The rail's size along the way in, and its other cross size, where the cheeks are recessed. */
const core = (r: JointReader): number => {
  const entry = FACE_AXIS[r.contact.intoFace];
  return entry === 'z' ? r.size('into', 'width') : r.size('into', 'thickness');
};

export const tBridle: JointType = {
  type: 't-bridle',
  title: 'T bridle',
  says: 'The forked end of a post astride a rail that is recessed on both sides.',
  meets: 'end to face',
  many: false,
  needs: ['an upright jig on the table saw', 'a cross-cut sled'],
  rules: [TB1, TB2, TB3],
  figures: [
    {
      name: 'core',
      positive: true,
      label: 'core of the rail',
      kind: 'length',
      rule: TB1,
      formula: 'two fifths of the rail, whole mm',
      value: r => wholeMm(core(r) * 0.4),
    },
    {
      name: 'fork',
      positive: true,
      label: 'fork length',
      kind: 'length',
      rule: TB2,
      formula: 'the depth of the rail',
      value: r => r.depthOf('into'),
    },
    {
      name: 'fit',
      label: 'play on the core',
      kind: 'length',
      rule: TB3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'fork',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const length = c.figure('fork');
  const entry = contact.intoFace;
  const thickAxis = FACE_AXIS[entry] === 'z' ? 'y' : 'z';
  const thick = into.body[SIZE_OF_AXIS[thickAxis]];
  const kept = c.figure('core');
  const each = (thick - kept) / 2;
  const depth = deep(contact, into.body);
  // The rail is recessed on both sides over the width of the post and the length of the fork.
  const footprint = sunk(contact.inInto, entry, into.body, Math.min(length, depth));
  const recess = (side: 'low' | 'high') =>
    withSpan(footprint, thickAxis, side === 'low' ? 0 : thick - each, side === 'low' ? each : thick);
  const faces = thickAxis === 'z' ? (['back', 'face'] as const) : (['backEdge', 'faceEdge'] as const);
  // The slot of the fork is as wide as the core, through the post, open on its end.
  const coreBox = across(c, 'into', withSpan(footprint, thickAxis, each, thick - each));
  const end = contact.fromFace as EndName;
  const x = end === 'end2' ? [from.body.length, from.body.length + length] : [-length, 0];
  const runAxis = otherAxis(contact.fromFace, crossOf(c, thickAxis));
  let slot = withSpan(coreBox, 'x', x[0]!, x[1]!);
  slot = withSpan(slot, runAxis, 0, from.body[SIZE_OF_AXIS[runAxis]]);
  const cuts: { role: 'from' | 'into'; cut: CutDraft }[] = [
    {
      role: 'from',
      cut: {
        kind: 'open-mortise',
        face: end,
        box: slot,
        run: runAxis,
        through: true,
        corner: 'square',
        clearance: c.figure('fit'),
      },
    },
    {
      role: 'into',
      cut: {
        kind: 'notch',
        face: faces[0],
        box: recess('low'),
        run: FACE_AXIS[entry],
        through: false,
        corner: 'square',
        clearance: c.figure('fit'),
      },
    },
    {
      role: 'into',
      cut: {
        kind: 'notch',
        face: faces[1],
        box: recess('high'),
        run: FACE_AXIS[entry],
        through: false,
        corner: 'square',
        clearance: c.figure('fit'),
      },
    },
  ];
  return {
    cuts,
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: 2 * length * (contact.inInto.max.x - contact.inInto.min.x), grain: 'cross' as const }],
    fasteners: [],
    limits: [
      limit(
        TB1,
        'core',
        kept,
        { min: thick / 4, max: thick * 0.6 },
        'attend',
        `Leave a core of ${wholeMm(thick * 0.4)} mm.`,
      ),
    ],
    ...(kept >= thick
      ? {
          impossible: [
            {
              figure: 'core',
              fault: `a core of ${kept} mm leaves nothing to recess in ${thick}`,
              mend: `give ${wholeMm(thick * 0.4)} mm`,
            },
          ],
        }
      : {}),
    ...(length > depth + 1e-6
      ? {
          impossible: [
            {
              figure: 'fork',
              fault: `the fork is ${length} mm long, the rail only ${depth} deep`,
              mend: `give ${depth} mm`,
            },
          ],
        }
      : {}),
  };
}

/** The post's axis that lies along the rail's thickness. */
function crossOf(c: MakeContext, thickAxis: 'y' | 'z'): 'y' | 'z' {
  const d = c.into.frame[thickAxis];
  const f = c.from.frame.y;
  return Math.abs(f.x * d.x + f.y * d.y + f.z * d.z) > 0.7 ? 'y' : 'z';
}
