import { type Box, box } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { onEndOfBoard, type Row } from './corner-row.ts';
import { type RoleCut, refused } from './fixing.ts';
import { across, deep, isHigh, limit, rule, SIZE_OF_AXIS } from './shape.ts';

const FJ1 = rule(
  'FJ-1',
  'Fingers are about as wide as the thinner board is thick, an odd number of them.',
  'The corner is alike at both edges, and the glue area is a multiple of the end.',
  { text: 'remembered, half to once the thickness', basis: 'memory' },
);
const FJ2 = rule(
  'FJ-2',
  'Fingers of the one board are as long as the other is thick.',
  'They close flush; what stands proud is planed off.',
);
const FJ3 = rule(
  'FJ-3',
  'Slots are 0.1 mm wider than the fingers.',
  'Twenty cheeks add up: without play the corner does not go home.',
  { text: 'remembered fit, 0.05 to 0.15 mm', basis: 'memory' },
);

const span = (r: JointReader): number => {
  const { min, max } = r.contact.inFrom;
  return Math.max(max.y - min.y, max.z - min.z);
};
const thin = (r: JointReader): number =>
  Math.min(r.size('from', 'thickness'), r.size('from', 'width'), r.depthOf('into'));
const oddNear = (v: number): number => Math.max(3, 2 * Math.round((v - 1) / 2) + 1);

export const fingerJoint: JointType = {
  type: 'finger-joint',
  title: 'Finger joint',
  says: 'Straight fingers on the ends of two boards, as wide as the slots between them, closed at a corner.',
  meets: 'end to face',
  many: false,
  needs: ['a grooving blade and a sled with a pin, or a router jig'],
  rules: [FJ1, FJ2, FJ3],
  figures: [
    {
      name: 'fingers',
      positive: true,
      label: 'fingers and slots in the width',
      kind: 'count',
      rule: FJ1,
      formula: 'the odd number nearest to the width over the thinner thickness, 3 at least',
      value: r => oddNear(span(r) / thin(r)),
    },
    {
      name: 'finger.width',
      positive: true,
      label: 'finger width',
      kind: 'length',
      rule: FJ1,
      formula: 'the width shared among them; give the cutter where it is run with one',
      value: r => span(r) / Math.max(1, Math.round(r.figure('fingers'))),
    },
    {
      name: 'length',
      positive: true,
      label: 'finger length',
      kind: 'length',
      rule: FJ2,
      formula: 'the thickness of the other board',
      value: r => r.depthOf('into'),
    },
    {
      name: 'fit',
      label: 'play in the slots',
      kind: 'length',
      rule: FJ3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'length',
  make,
};

/** Narrower fingers break off at the saw, mm. */
const LEAST = 2;

function make(c: MakeContext) {
  const none = { cuts: [], glue: [], fasteners: [], limits: [] };
  const found = onEndOfBoard(c, 'fingers', 'fingers');
  if ('refusal' in found) return { ...none, impossible: [found.refusal] };
  const { row } = found;
  const [length, width, whole] = [c.figure('length'), c.figure('finger.width'), deep(c.contact, c.into.body)];
  const wide = row.high - row.low;
  const wrong = [
    ...(Math.abs(length - whole) > 0.05
      ? [
          {
            figure: 'length',
            fault: `fingers of ${length} mm on a board ${whole} thick`,
            mend: `give ${whole} mm`,
          },
        ]
      : []),
    ...(width < LEAST || width >= wide - LEAST
      ? [
          {
            figure: 'finger.width',
            fault: `fingers ${round(width)} mm wide on a board of ${round(wide)}`,
            mend: `give ${round(Math.max(LEAST, wide / 3))} mm`,
          },
        ]
      : []),
  ];
  if (wrong.length > 0) return { ...none, ...refused(wrong) };
  const slots = stations(row, width).map((s, k) => slot(c, row, s, length, k % 2 === 1));
  const cuts = [...slots.filter(s => s.role === 'from'), ...slots.filter(s => s.role === 'into')];
  const ours = slots.filter(s => s.role === 'from').length;
  const thick = c.from.body[SIZE_OF_AXIS[row.side]];
  return {
    cuts,
    mates: Array.from({ length: ours }, (_, k): [number, number] => [k, ours + k]),
    glue: [
      { area: (slots.length - 1) * length * thick, grain: 'long' as const },
      { area: wide * thick, grain: 'end' as const },
    ],
    fasteners: [],
    limits: [
      limit(
        FJ1,
        'finger.width',
        width,
        { min: Math.min(thick, whole) / 3, max: 2 * Math.min(thick, whole) },
        'attend',
        `Give ${Math.round(Math.min(thick, whole))} mm.`,
      ),
    ],
  };
}

const round = (v: number): number => Math.round(v * 10) / 10;

/** Edges of the fingers from the low edge up; what is left at the top is the last, if it is worth cutting. */
function stations(row: Row, width: number): [number, number][] {
  const wide = row.high - row.low;
  const full = Math.floor(wide / width + 1e-6);
  const rest = wide - full * width;
  const found = Array.from({ length: full }, (_, k): [number, number] => [
    row.low + k * width,
    row.low + (k + 1) * width,
  ]);
  if (rest > LEAST) found.push([row.high - rest, row.high]);
  else found[full - 1]![1] = row.high;
  return found;
}

/** The slot at one station: odd ones are cut in the entering board, even ones in the other. */
function slot(
  c: MakeContext,
  row: Row,
  [low, high]: [number, number],
  length: number,
  ours: boolean,
): RoleCut {
  const base = isHigh(c.contact.fromFace) ? c.from.body.length : 0;
  const tip = base + (isHigh(c.contact.fromFace) ? length : -length);
  const thick = c.from.body[SIZE_OF_AXIS[row.side]];
  const here: Box =
    row.along === 'y' ? box(base, low, 0, tip, high, thick) : box(base, 0, low, tip, thick, high);
  const flush = across(c, 'from', here);
  const runThere = (['y', 'z'] as const).find(
    a => flush.max[a] - flush.min[a] > c.into.body[SIZE_OF_AXIS[a]] - 0.05,
  );
  const run: Axis = ours ? row.side : (runThere ?? 'z');
  return {
    role: ours ? 'from' : 'into',
    cut: {
      kind: 'notch',
      face: ours ? c.contact.fromFace : row.end,
      box: ours ? here : flush,
      run,
      through: false,
      corner: 'square',
      clearance: c.figure('fit'),
    },
  };
}
