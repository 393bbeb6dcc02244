import { directionToLocal, directionToWorld } from '../geometry/frame.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';
import { add, scale } from '../geometry/vector.ts';
import { screw } from '../reference/screws.ts';
import { LOCAL_NORMAL, OPPOSITE } from '../setting-out/faces.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  badRow,
  countFor,
  innerFace,
  onFace,
  pointAcross,
  type Refusal,
  type RoleCut,
  refused,
  runOf,
  spots,
} from './fixing.ts';
import { counterbore, known, pilotFor, soldLength, usualSize } from './screw-sizes.ts';
import { deep, limit, longAxis, otherAxis, rule, SIZE_OF_AXIS } from './shape.ts';

const PS1 = rule(
  'PS-1',
  'A pocket slants at 15 degrees and its screw leaves the end in the middle of the thickness.',
  'Flatter, the pocket gets long; steeper, the screw lifts the rail as it pulls.',
  { text: 'remembered, 6 to 15 degrees', basis: 'memory' },
);
const PS2 = rule(
  'PS-2',
  'Two thirds of the thickness, measured along the screw, stays under the head.',
  'Less pulls through; more leaves too little thread in the other part.',
);
const PS3 = rule(
  'PS-3',
  'The thread enters the other part by the thickness of the rail, leaving 3 mm.',
  'The holding power of the screw; the far face must not bruise.',
);
const PS4 = rule('PS-4', 'Two screws at least, one more for each 75 mm of width.', 'One lets the rail turn.');
const PS5 = rule(
  'PS-5',
  'A pocket stands a whole diameter of its bore from the edge of the rail.',
  'The wall beside it breaks when the head is drawn down.',
);

const thinAxis = (r: JointReader): 'width' | 'thickness' =>
  r.size('from', 'thickness') <= r.size('from', 'width') ? 'thickness' : 'width';
const thick = (r: JointReader): number => r.size('from', thinAxis(r));
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

export const pocketScrew: JointType = {
  type: 'pocket-screw',
  title: 'Pocket screw',
  says: 'The end of a rail held by screws driven at a slant from pockets in its inner face.',
  meets: 'end to face',
  many: false,
  needs: ['a stepped drill with its guide', 'pan-headed screws', 'a clamp that holds both faces flush'],
  rules: [PS1, PS2, PS3, PS4, PS5],
  figures: [
    {
      name: 'size',
      label: 'screw',
      kind: 'text',
      rule: PS2,
      formula: "about a fifth of the rail's thickness",
      value: r => usualSize(thick(r)),
    },
    { name: 'angle', label: 'slant', kind: 'angle', rule: PS1, formula: '15 degrees', value: () => 15 },
    {
      name: 'under.head',
      label: 'wood under the head',
      kind: 'length',
      rule: PS2,
      formula: 'two thirds of the thickness',
      value: r => Math.round((thick(r) * 2) / 3),
    },
    {
      name: 'length',
      positive: true,
      label: 'screw length',
      kind: 'length',
      rule: PS3,
      formula: 'the wood under the head and the thickness again, leaving 3 mm, as sold',
      value: r =>
        soldLength(
          known(r.word('size')),
          r.figure('under.head') +
            Math.min(thick(r), (r.depthOf('into') - 3) / Math.cos(radians(r.figure('angle')))),
        ),
    },
    {
      name: 'screws',
      label: 'screws',
      kind: 'count',
      rule: PS4,
      formula: 'two, and one more for each 75 mm begun after 150',
      value: r => countFor(r, 75),
    },
    {
      name: 'end',
      label: 'first screw from the edge',
      kind: 'length',
      rule: PS5,
      formula: 'a quarter of the width, 25 mm at most',
      value: r => Math.min(25, runOf(r.contact).long / 4),
    },
    {
      name: 'pocket.on',
      label: 'pockets in the',
      kind: 'text',
      rule: PS1,
      formula: 'face that looks into the piece',
      choices: ['inner', 'outer'],
      value: () => 'inner',
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const s = known(c.word('size'));
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const inner = innerFace(c, side);
  const face = c.word('pocket.on') === 'inner' ? inner : OPPOSITE[inner];
  const whole = from.body[SIZE_OF_AXIS[side]];
  const slant = radians(c.figure('angle'));
  const outOfEnd = LOCAL_NORMAL[contact.fromFace];
  const direction = add(scale(outOfEnd, Math.cos(slant)), scale(LOCAL_NORMAL[face], -Math.sin(slant)));
  const reach = whole / 2 / Math.sin(slant);
  const under = c.figure('under.head');
  const hold = c.figure('length') - under;
  const bore = counterbore(s.headMm.high);
  const clearance = s.clearanceMm.high;
  const cuts = spots(c, c.figure('screws'), c.figure('end')).flatMap((spot): RoleCut[] => {
    // The screw leaves the end in the middle of the thickness and is followed back to the pocket's face.
    const exit: Vec3 = { ...spot, [side]: whole / 2 };
    const at = onFace(add(exit, scale(direction, -reach)), face, from.body);
    const hole = { kind: 'hole' as const, face, at, direction };
    const there = pointAcross(c, 'from', exit);
    return [
      {
        role: 'from',
        cut: { ...hole, role: 'plain', diameter: bore, depth: reach - under, through: false },
      },
      {
        role: 'from',
        cut: {
          ...hole,
          role: 'clearance',
          diameter: clearance,
          depth: reach + (clearance / 2) * Math.tan(slant),
          through: true,
        },
      },
      {
        role: 'into',
        cut: {
          kind: 'hole',
          role: 'pilot',
          face: contact.intoFace,
          at: onFace(there, contact.intoFace, into.body),
          direction: directionToLocal(into.frame, directionToWorld(from.frame, direction)),
          diameter: pilotFor(s, into.material),
          depth: Math.max(1, hold),
          through: false,
        },
      },
    ];
  });
  const count = Math.max(1, Math.round(c.figure('screws')));
  const left = deep(contact, into.body) - hold * Math.cos(slant);
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `${s.key} x ${c.figure('length')} pan-head screw`,
        kind: 'screw' as const,
        quantity: count,
        length: c.figure('length'),
        diameter: s.shankMm,
      },
    ],
    limits: [
      limit(
        PS5,
        'end',
        c.figure('end'),
        { min: Math.min(bore, runOf(contact).long / 4) },
        'attend',
        `Give ${bore} mm.`,
      ),
      limit(
        PS3,
        'wood beyond the point',
        left,
        { min: 3 },
        'attend',
        `Use ${soldLength(s, under + (deep(contact, into.body) - 3) / Math.cos(slant))} mm screws.`,
      ),
      limit(
        PS2,
        'hold',
        hold,
        { min: 2 * s.shankMm },
        'attend',
        'Leave less under the head or use longer screws.',
      ),
    ],
    ...refused([...refusals(c, reach, hold, left, bore, along), ...onTheFace(c, side)]),
  };
}

function refusals(
  c: MakeContext,
  reach: number,
  hold: number,
  left: number,
  bore: number,
  along: Axis,
): Refusal[] {
  const s = known(c.word('size'));
  const found: Refusal[] = [];
  if (screw(c.word('size')) === undefined)
    found.push({
      figure: 'size',
      fault: `no screw of size ${c.word('size')} is in the table`,
      mend: 'give 3.5, 4.0 or 5.0',
    });
  const angle = c.figure('angle');
  if (angle < 5 || angle > 30)
    found.push({ figure: 'angle', fault: `a pocket cannot slant at ${angle} degrees`, mend: 'give 15 deg' });
  else if (c.figure('under.head') <= 0 || c.figure('under.head') >= reach)
    found.push({
      figure: 'under.head',
      fault: `${c.figure('under.head')} mm under the head, the slanting way is ${Math.round(reach)} mm in all`,
      mend: `give ${Math.round(reach / 2)} mm`,
    });
  else if (left <= 0)
    found.push({
      figure: 'length',
      fault: `a ${c.figure('length')} mm screw comes through ${c.into.instance}`,
      mend: `use ${soldLength(s, c.figure('length') + left - 3)} mm`,
    });
  else if (hold <= 0)
    found.push({
      figure: 'length',
      fault: `a ${c.figure('length')} mm screw does not reach ${c.into.instance}`,
      mend: `use ${soldLength(s, 2.5 * c.figure('under.head'))} mm`,
    });
  return [...found, ...(along === 'x' ? [] : badRow(c, 'end', bore / 2 + 1, 'pocket'))];
}

/** The screws leave the end in the middle of the thickness: that must stand on the other part. */
function onTheFace(c: MakeContext, side: Axis): Refusal[] {
  const { inFrom } = c.contact;
  const middle = c.from.body[SIZE_OF_AXIS[side]] / 2;
  return middle > inFrom.min[side] && middle < inFrom.max[side]
    ? []
    : [
        {
          figure: 'angle',
          fault: `the screws miss ${c.into.instance}: the middle of ${c.from.instance} stands beside it`,
          mend: 'let the rail stand wholly on the member',
        },
      ];
}
