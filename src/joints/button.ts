import { boxToWorld } from '../geometry/box.ts';
import { toLocal } from '../geometry/frame.ts';
import type { LocalFace } from '../results/cuts.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { FACE_AXIS, isHigh, limit, longAxis, otherAxis, rule, SIZE_OF_AXIS, withSpan } from './shape.ts';

const BU1 = rule(
  'BU-1',
  'Buttons stand at most 300 mm apart and two at least.',
  'The top must lie flat between them.',
  { text: 'woodcraft.com, tabletop fasteners; spacing common practice', basis: 'common practice' },
);
const BU2 = rule(
  'BU-2',
  'The slot is 10 mm deep and its upper edge 10 mm below the rail, 1 mm lower than the tongue.',
  'Screwed down, the button draws the top onto the rail.',
);
const BU3 = rule(
  'BU-3',
  'A slot across the movement is longer than the button by the travel; along it the button only slides in depth.',
  'Solid tops move across their grain with the seasons.',
  { text: 'woodcraft.com, tabletop fasteners', basis: 'read' },
);
const BU4 = rule(
  'BU-4',
  'A button slot leaves half the rail.',
  'The rail carries the top and the leg joint.',
);

const run = (r: JointReader): number => {
  const axis = longAxis(r.contact.inFrom, r.contact.fromFace);
  return r.contact.inFrom.max[axis] - r.contact.inFrom.min[axis];
};

export const button: JointType = {
  type: 'button',
  title: 'Buttons under a solid top',
  says: 'Turned-in blocks whose tongues sit in slots of the rail and are screwed to the top, so that it may move.',
  meets: 'face to face',
  many: true,
  needs: ['a slot cutter or mortiser', 'buttons with a tongue, and a screw each'],
  rules: [BU1, BU2, BU3, BU4],
  figures: [
    {
      name: 'buttons',
      label: 'buttons',
      kind: 'count',
      rule: BU1,
      formula: 'one for each 300 mm begun, two at least',
      value: r => Math.max(2, Math.ceil(run(r) / 300)),
    },
    {
      name: 'width',
      positive: true,
      label: 'button width',
      kind: 'length',
      rule: BU3,
      formula: '30 mm',
      value: () => 30,
    },
    {
      name: 'tongue',
      positive: true,
      label: 'tongue thickness',
      kind: 'length',
      rule: BU2,
      formula: '8 mm',
      value: () => 8,
    },
    {
      name: 'slot.depth',
      positive: true,
      label: 'slot depth',
      kind: 'length',
      rule: BU2,
      formula: '10 mm, at most half the rail',
      value: r => Math.min(10, Math.min(r.size('from', 'thickness'), r.size('from', 'width')) / 2),
    },
    {
      name: 'slot.down',
      label: 'slot below the edge',
      kind: 'length',
      rule: BU2,
      formula: '10 mm',
      value: () => 10,
    },
    {
      name: 'travel',
      label: 'travel either way',
      kind: 'length',
      rule: BU3,
      formula: '4 mm',
      value: () => 4,
    },
    {
      name: 'end',
      label: 'first button from the end',
      kind: 'length',
      rule: BU1,
      formula: 'a sixth of the run, 60 mm at most',
      value: r => Math.min(60, run(r) / 6),
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
  const depth = c.figure('slot.depth');
  const n = Math.max(1, Math.round(c.figure('buttons')));
  // A rail across the top's grain lets the button slide along its slot; one along the grain only in depth.
  const crossing = Math.abs(dotOf(from.frame[along], into.frame.y)) > 0.7;
  const travel = c.figure('travel');
  const width = c.figure('width') + (crossing ? 2 * travel : 1);
  const edgeAxis = FACE_AXIS[contact.fromFace];
  const top = isHigh(contact.fromFace) ? from.body[SIZE_OF_AXIS[edgeAxis]] : 0;
  const down = (d: number): number => (isHigh(contact.fromFace) ? top - d : top + d);
  const [low, high] = [
    contact.inFrom.min[along] + c.figure('end'),
    contact.inFrom.max[along] - c.figure('end'),
  ];
  const cuts = Array.from({ length: n }, (_, i): { role: 'from'; cut: CutDraft } => {
    const centre = n === 1 ? (low + high) / 2 : low + ((high - low) * i) / (n - 1);
    let b = withSpan(contact.inFrom, along, centre - width / 2, centre + width / 2);
    b = withSpan(b, side, isHigh(inner) ? whole - depth : 0, isHigh(inner) ? whole : depth);
    b = withSpan(
      b,
      edgeAxis,
      down(c.figure('slot.down')),
      down(c.figure('slot.down') + c.figure('tongue') + 1),
    );
    return {
      role: 'from',
      cut: { kind: 'mortise', face: inner, box: b, run: along, through: false, corner: 'round' },
    };
  });
  const panel = c.panel('into');
  const edge = Math.max(
    Math.abs(contact.inInto.min.y - (panel.min.y + panel.max.y) / 2),
    Math.abs(contact.inInto.max.y - (panel.min.y + panel.max.y) / 2),
  );
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `button ${c.figure('width')} wide, with a 4.0 x 30 screw`,
        kind: 'other' as const,
        quantity: n,
        length: 40,
        diameter: 4,
      },
    ],
    limits: [
      limit(BU4, 'slot.depth', depth, { max: whole / 2 }, 'attend', `Cut ${Math.floor(whole / 2)} mm deep.`),
    ],
    room: { instance: into.instance, width: edge, swell: travel, shrink: travel, what: 'button' as const },
    ...refused(
      refusals(c, { depth, whole, width, low: contact.inFrom.min[along], high: contact.inFrom.max[along] }),
    ),
  };
}

function refusals(
  c: MakeContext,
  m: { depth: number; whole: number; width: number; low: number; high: number },
): Refusal[] {
  const found: Refusal[] = [];
  if (m.depth >= m.whole)
    found.push({
      figure: 'slot.depth',
      fault: `the slot is ${m.depth} mm deep, the rail only ${m.whole}`,
      mend: `give ${Math.floor(m.whole / 2)} mm`,
    });
  const end = c.figure('end');
  if (end < m.width / 2 || end > (m.high - m.low) / 2)
    found.push({
      figure: 'end',
      fault: `a slot ${m.width} mm long, its middle ${end} mm from the end, runs out of the rail`,
      mend: `give ${Math.ceil(m.width / 2 + 10)} mm, or make the button narrower`,
    });
  const edge = c.from.body[SIZE_OF_AXIS[FACE_AXIS[c.contact.fromFace]]];
  const down = c.figure('slot.down') + c.figure('tongue') + 1;
  if (down >= edge)
    found.push({
      figure: c.figure('slot.down') > c.figure('tongue') ? 'slot.down' : 'tongue',
      fault: `the slot ends ${down} mm below the edge, the rail is only ${edge} deep`,
      mend: `give ${Math.max(1, Math.min(10, Math.floor(edge / 4)))} mm`,
    });
  return found;
}

const dotOf = (a: { x: number; y: number; z: number }, b: { x: number; y: number; z: number }): number =>
  a.x * b.x + a.y * b.y + a.z * b.z;

/** The face of the rail that looks towards the middle of the top. */
function innerFace(c: MakeContext, side: 'x' | 'y' | 'z'): LocalFace {
  const world = boxToWorld(c.into.frame, c.panel('into'));
  const middle = {
    x: (world.min.x + world.max.x) / 2,
    y: (world.min.y + world.max.y) / 2,
    z: (world.min.z + world.max.z) / 2,
  };
  const towards = toLocal(c.from.frame, middle)[side] > c.from.body[SIZE_OF_AXIS[side]] / 2;
  if (side === 'x') return towards ? 'end2' : 'end1';
  if (side === 'y') return towards ? 'faceEdge' : 'backEdge';
  return towards ? 'face' : 'back';
}
