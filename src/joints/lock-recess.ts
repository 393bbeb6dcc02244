import type { Axis } from '../geometry/vector.ts';
import { OPPOSITE } from '../setting-out/faces.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { bored, innerFace, type RoleCut, refused, runOf } from './fixing.ts';
import { lockRefusals } from './lock-refusals.ts';
import { LO6, lockScrews } from './lock-screws.ts';
import {
  across,
  deep,
  FACE_AXIS,
  isHigh,
  limit,
  longAxis,
  otherAxis,
  rule,
  SIZE_OF_AXIS,
  sunk,
  withSpan,
} from './shape.ts';

const LO1 = rule(
  'LO-1',
  'Sizes are those of the lock in hand, measured.',
  'Makers differ; the recess is cut to the lock.',
);
const LO2 = rule(
  'LO-2',
  'In wood to 30 mm the lock is let in from behind, in thicker it is mortised into the edge; 4 mm stay in front of it.',
  'The face must not show it.',
);
const LO3 = rule(
  'LO-3',
  'The plate on the edge is let in flush, its recess as deep as it is thick.',
  'It would strike the frame.',
);
const LO4 = rule(
  'LO-4',
  'The keyhole stands from the edge as its pin does in the lock; its slot is half as wide again as the hole.',
  'The key turns in the lock, not in the wood.',
);
const LO5 = rule(
  'LO-5',
  'The bolt has a mortise 1 mm larger each way.',
  'A door drops with the years, and the bolt must still go in.',
);

const thick = (r: JointReader): number => runOf(r.contact).short;

export const lockRecess: JointType = {
  type: 'lock-recess',
  title: 'Lock let in',
  says: 'A lock let into the edge of a door, flap or drawer front, its keyhole, and the mortise for its bolt.',
  meets: 'face to face',
  within: 6,
  many: true,
  needs: ['the lock in hand', 'a router or chisels', 'drills for the keyhole'],
  rules: [LO1, LO2, LO3, LO4, LO5, LO6],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: LO2,
      formula: 'let in from behind to 30 mm of wood, else mortised',
      choices: ['let in', 'mortised'],
      value: r => (thick(r) <= 30 ? 'let in' : 'mortised'),
    },
    {
      name: 'body.length',
      positive: true,
      label: 'body, along the edge',
      kind: 'length',
      rule: LO1,
      formula: 'as yours is; 40 mm',
      value: () => 40,
    },
    {
      name: 'body.depth',
      positive: true,
      label: 'body, in from the edge',
      kind: 'length',
      rule: LO1,
      formula: 'as yours is; 30 mm',
      value: () => 30,
    },
    {
      name: 'body.thickness',
      positive: true,
      label: 'body thickness',
      kind: 'length',
      rule: LO1,
      formula: 'as yours is; 10 mm, no more than leaves 4 of the wood',
      value: r => Math.min(10, Math.max(1, thick(r) - 4)),
    },
    {
      name: 'plate.length',
      positive: true,
      label: 'plate on the edge, length',
      kind: 'length',
      rule: LO3,
      formula: 'as yours is; 20 mm more than the body',
      value: r => r.figure('body.length') + 20,
    },
    {
      name: 'plate.width',
      positive: true,
      label: 'plate on the edge, width',
      kind: 'length',
      rule: LO3,
      formula: 'as yours is; as the body is thick',
      value: r => r.figure('body.thickness'),
    },
    {
      name: 'plate.thickness',
      positive: true,
      label: 'plate thickness',
      kind: 'length',
      rule: LO3,
      formula: 'as yours is; 1.5 mm',
      value: () => 1.5,
    },
    {
      name: 'keyhole.in',
      label: 'keyhole from the edge',
      kind: 'length',
      rule: LO4,
      formula: 'as your lock; half the body',
      value: r => r.figure('body.depth') / 2,
    },
    {
      name: 'keyhole',
      positive: true,
      label: 'keyhole diameter',
      kind: 'length',
      rule: LO4,
      formula: 'as your key; 5 mm',
      value: () => 5,
    },
    {
      name: 'bolt.length',
      positive: true,
      label: 'bolt, along the edge',
      kind: 'length',
      rule: LO5,
      formula: 'as yours is; 15 mm',
      value: () => 15,
    },
    {
      name: 'bolt.width',
      positive: true,
      label: 'bolt thickness',
      kind: 'length',
      rule: LO5,
      formula: 'as yours is; 5 mm, half the body at most',
      value: r => Math.min(5, r.figure('body.thickness') / 2),
    },
    {
      name: 'bolt.reach',
      positive: true,
      label: 'bolt reaches in',
      kind: 'length',
      rule: LO5,
      formula: 'as yours does; 8 mm, a half of the other part at most',
      value: r => Math.min(8, Math.floor(r.depthOf('into') / 2)),
    },
    {
      name: 'at',
      label: 'middle of the lock from the end that is low or left',
      kind: 'length',
      rule: LO1,
      formula: 'half way',
      value: r => runOf(r.contact).long / 2,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const inner = innerFace(c, side);
  const whole = from.body[SIZE_OF_AXIS[side]];
  const centre = middleOf(c, along);
  const letIn = c.word('kind') === 'let in';
  const thickness = c.figure('body.thickness');
  // Let in from behind, the body lies against the inner face; mortised, in the middle.
  const [low, high] = letIn
    ? isHigh(inner)
      ? [whole - thickness, whole]
      : [0, thickness]
    : [(whole - thickness) / 2, (whole + thickness) / 2];
  const middle = (low + high) / 2;
  const spread = (axis: Axis, at: number, size: number) => (b: typeof contact.inFrom) =>
    withSpan(b, axis, at - size / 2, at + size / 2);
  const footprint = (length: number, a: number, b: number) =>
    withSpan(spread(along, centre, length)(contact.inFrom), side, a, b);
  const body = sunk(
    footprint(c.figure('body.length'), low, high),
    contact.fromFace,
    from.body,
    c.figure('body.depth'),
  );
  const plate = c.figure('plate.width') / 2;
  const plateSide: [number, number] = letIn
    ? isHigh(inner)
      ? [whole - 2 * plate, whole]
      : [0, 2 * plate]
    : [middle - plate, middle + plate];
  const edge = sunk(
    footprint(c.figure('plate.length'), ...plateSide),
    contact.fromFace,
    from.body,
    c.figure('plate.thickness'),
  );
  const screws = lockScrews(c, along, centre, { [side]: (plateSide[0] + plateSide[1]) / 2 });
  const keyAt = {
    ...body.min,
    [along]: centre,
    [FACE_AXIS[contact.fromFace]]: inFromEdge(c, c.figure('keyhole.in')),
  };
  const key = c.figure('keyhole');
  const reach = c.figure('bolt.reach') + 1;
  const bolt = sunk(
    across(
      c,
      'from',
      spread(side, middle, c.figure('bolt.width') + 1)(footprint(c.figure('bolt.length') + 1, low, high)),
    ),
    contact.intoFace,
    into.body,
    reach,
  );
  const cuts: RoleCut[] = [
    {
      role: 'from',
      cut: {
        kind: letIn ? 'recess' : 'mortise',
        face: letIn ? inner : contact.fromFace,
        box: body,
        run: along,
        through: false,
        corner: 'square',
      },
    },
    {
      role: 'from',
      cut: {
        kind: 'recess',
        face: contact.fromFace,
        box: edge,
        run: along,
        through: false,
        corner: 'square',
      },
    },
    {
      role: 'from',
      cut: bored(OPPOSITE[inner], from.body, keyAt, {
        role: 'slot',
        diameter: key,
        depth: letIn ? whole : whole / 2 + thickness / 2,
        slot: { travel: key / 2, along: FACE_AXIS[contact.fromFace] },
      }),
    },
    {
      role: 'into',
      cut: {
        kind: 'mortise',
        face: contact.intoFace,
        box: bolt,
        run: longAxis(bolt, contact.intoFace),
        through: false,
        corner: 'square',
      },
    },
    ...screws.pilots,
  ];
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `lock, body ${c.figure('body.length')} x ${c.figure('body.depth')} x ${thickness}`,
        kind: 'other' as const,
        quantity: 1,
        length: c.figure('body.length'),
        diameter: thickness,
      },
      ...screws.fasteners,
    ],
    limits: [
      limit(
        LO2,
        'wood in front',
        letIn ? whole - thickness : (whole - thickness) / 2,
        { min: 4 },
        'attend',
        `Use a lock no thicker than ${Math.floor(letIn ? whole - 4 : whole - 8)} mm.`,
      ),
      limit(
        LO5,
        'behind the bolt',
        deep(contact, into.body) - reach,
        { min: 3 },
        'attend',
        `Let the bolt reach ${Math.floor(deep(contact, into.body) - 4)} mm.`,
      ),
    ],
    ...refused(
      lockRefusals(c, {
        whole,
        reach,
        centre,
        along,
        deepFrom: from.body[SIZE_OF_AXIS[FACE_AXIS[contact.fromFace]]],
        boltRoom: 2 * Math.min(middle - contact.inFrom.min[side], contact.inFrom.max[side] - middle),
      }),
    ),
  };
}

/** Station of the middle of the lock along the edge, told from the low or left end in the world. */
function middleOf(c: MakeContext, along: Axis): number {
  const v = c.from.frame[along];
  const ascending = v.x + v.y + v.z > 0;
  const { min, max } = c.contact.inFrom;
  return ascending ? min[along] + c.figure('at') : max[along] - c.figure('at');
}

function inFromEdge(c: MakeContext, by: number): number {
  const face = c.contact.fromFace;
  return isHigh(face) ? c.from.body[SIZE_OF_AXIS[FACE_AXIS[face]]] - by : by;
}
