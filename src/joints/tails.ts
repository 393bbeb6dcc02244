import type { Axis, Vec3 } from '../geometry/vector.ts';
import { POLYGON_AXES } from '../results/cuts.ts';
import type { JointLimit } from '../results/piece.ts';
import type { JointFigure, JointReader, MakeContext } from '../setting-out/joint-type.ts';
import { onEndOfBoard, type Row } from './corner-row.ts';
import { faceOf, pointAcross, type Refusal, type RoleCut } from './fixing.ts';
import { isHard } from './screw-sizes.ts';
import { isHigh, limit, rule, SIZE_OF_AXIS, wholeMm } from './shape.ts';

/** Rows of dovetails, as through and lapped ones share them: figures, layout and cuts. Body frames, mm. */

export const DV1 = rule(
  'DV-1',
  'Tails slope 1 in 8 in hardwood and 1 in 6 in softwood.',
  'Softwood crushes more; steeper ones leave short grain that breaks at the corners of the tails.',
  { text: 'leevalley.com, TechInfo p=59417 (1:6 or 9 degrees, 1:8 or 7 degrees)', basis: 'read' },
);
export const DV2 = rule(
  'DV-2',
  'One tail for each two and a half thicknesses of width.',
  'Enough glue face, and the board is held flat over its width.',
  { text: 'remembered, two to three thicknesses', basis: 'memory' },
);
export const DV3 = rule(
  'DV-3',
  'A pin is a quarter of the pitch at its narrow side, whole mm and 3 at least.',
  'Narrower no chisel enters; the tails carry the pull and stay the wider.',
);
export const DV4 = rule(
  'DV-4',
  'The row ends with half pins, at their narrow side no less than half a pin.',
  'The edge is held by glue on long grain and does not curl away from the corner.',
);
export const DV5 = rule(
  'DV-5',
  'Tails and pins close without play, at most 0.1 mm.',
  'They go home once, by light taps; the glue has wood to hold.',
  { text: 'remembered fit, 0 to 0.1 mm', basis: 'memory' },
);

/** Width of the tail board across the corner, mm. */
const span = (r: JointReader): number => {
  const along = r.contact.inFrom.max.y - r.contact.inFrom.min.y;
  return Math.max(along, r.contact.inFrom.max.z - r.contact.inFrom.min.z);
};
const thin = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));

export const TAIL_FIGURES: JointFigure[] = [
  {
    name: 'tails',
    positive: true,
    label: 'number of tails',
    kind: 'count',
    rule: DV2,
    formula: "the width over two and a half of the tail board's thickness",
    value: r => Math.max(1, Math.round(span(r) / (2.5 * thin(r)))),
  },
  {
    name: 'slope',
    label: 'slope, one in',
    kind: 'number',
    rule: DV1,
    formula: '8 in hardwood and sheet, 6 in softwood',
    value: r => (isHard(r.material('from')) ? 8 : 6),
  },
  {
    name: 'pin',
    positive: true,
    label: 'pin at its narrow side',
    kind: 'length',
    rule: DV3,
    formula: 'a quarter of the pitch, whole mm, 3 at least',
    value: r => Math.max(3, wholeMm(span(r) / r.figure('tails') / 4)),
  },
  {
    name: 'half.pin',
    positive: true,
    label: 'half pin at its narrow side',
    kind: 'length',
    rule: DV4,
    formula: 'half a pin, 3 mm at least, whole mm',
    value: r => Math.max(3, wholeMm(r.figure('pin') / 2)),
  },
  {
    name: 'fit',
    label: 'play',
    kind: 'length',
    rule: DV5,
    formula: 'nothing',
    value: () => 0,
  },
];

/** A tail is never narrower than this at its root: a chisel of 3 mm. */
const LEAST_ROOT = 3;

interface Layout {
  row: Row;
  n: number;
  /** Tip and root of each tail, from the low edge of the row, mm. */
  tails: { tip: [number, number]; root: [number, number] }[];
  /** What a tail widens by on each side, mm. */
  spread: number;
  root: number;
}

function layOut(c: MakeContext, row: Row, depth: number): Layout {
  const n = Math.max(1, Math.round(c.figure('tails')));
  const [pin, half] = [c.figure('pin'), c.figure('half.pin')];
  const spread = depth / c.figure('slope');
  const wide = (row.high - row.low - 2 * half - (n - 1) * pin) / n;
  const tails = Array.from({ length: n }, (_, k) => {
    const a = row.low + half + k * (wide + pin);
    return { tip: [a, a + wide], root: [a + spread, a + wide - spread] } as Layout['tails'][number];
  });
  return { row, n, tails, spread, root: wide - 2 * spread };
}

/**
 * Cuts, glue, limits and refusals of a row of tails `depth` long, entering `into` on an end of which it lies.
 * Waste beside the tails is drawn through the thickness of the tail board, the sockets along the other board.
 */
export function tailsOf(c: MakeContext, depth: number) {
  const found = onEndOfBoard(c, 'dovetails', 'tails');
  if ('refusal' in found)
    return { cuts: [], glue: [], fasteners: [], limits: [], impossible: [found.refusal] };
  const lay = layOut(c, found.row, depth);
  const cuts = [...wastes(c, lay, depth), ...sockets(c, lay, depth)];
  const mates = lay.tails.map((_, k): [number, number] => [k, lay.n + 1 + k]);
  const thick = c.from.body[SIZE_OF_AXIS[lay.row.side]];
  return {
    cuts,
    mates,
    glue: [
      { area: 2 * lay.n * Math.hypot(depth, lay.spread) * thick, grain: 'long' as const },
      { area: (lay.row.high - lay.row.low) * thick, grain: 'end' as const },
    ],
    fasteners: [],
    limits: tailLimits(c, lay),
    impossible: refusals(c, lay, depth),
  };
}

/** Waste of the tail board: half pins at the edges and whole pins between. */
function wastes(c: MakeContext, lay: Layout, depth: number): RoleCut[] {
  const { side, low, high } = lay.row;
  const base = isHigh(c.contact.fromFace) ? c.from.body.length : 0;
  const tip = base + (isHigh(c.contact.fromFace) ? depth : -depth);
  const [u] = POLYGON_AXES[side];
  const point = (x: number, a: number): [number, number] => (u === 'x' ? [x, a] : [a, x]);
  const edges: { tip: [number, number]; root: [number, number] }[] = Array.from(
    { length: lay.n + 1 },
    (_, k) => {
      const [before, after] = [lay.tails[k - 1], lay.tails[k]];
      return {
        tip: [before?.tip[1] ?? low, after?.tip[0] ?? high],
        root: [before?.root[1] ?? low, after?.root[0] ?? high],
      };
    },
  );
  const size = c.from.body[SIZE_OF_AXIS[side]];
  return edges.map(e => ({
    role: 'from' as const,
    cut: {
      kind: 'dovetail' as const,
      face: faceOf(side, true),
      axis: side,
      from: 0,
      to: size,
      polygon: [point(tip, e.tip[0]), point(tip, e.tip[1]), point(base, e.root[1]), point(base, e.root[0])],
      through: true,
      clearance: c.figure('fit'),
    },
  }));
}

/** What the tails take out of the pin board, from its end inwards. */
function sockets(c: MakeContext, lay: Layout, depth: number): RoleCut[] {
  const { along, side } = lay.row;
  const base = isHigh(c.contact.fromFace) ? c.from.body.length : 0;
  const tip = base + (isHigh(c.contact.fromFace) ? depth : -depth);
  const at = (x: number, a: number): [number, number] => {
    const p = pointAcross(c, 'from', { x, [along]: a, [side]: 0 } as unknown as Vec3);
    const [u, v]: [Axis, Axis] = POLYGON_AXES.x;
    return [p[u], p[v]];
  };
  const { min, max } = c.contact.inInto;
  const length = c.into.body.length;
  const [from, to] = lay.row.end === 'end1' ? [0, max.x] : [min.x, length];
  return lay.tails.map(t => ({
    role: 'into' as const,
    cut: {
      kind: 'dovetail' as const,
      face: lay.row.end,
      axis: 'x' as const,
      from,
      to,
      polygon: [at(tip, t.tip[0]), at(tip, t.tip[1]), at(base, t.root[1]), at(base, t.root[0])],
      through: false,
      clearance: c.figure('fit'),
    },
  }));
}

function tailLimits(c: MakeContext, lay: Layout): JointLimit[] {
  const [slope, pin] = [c.figure('slope'), c.figure('pin')];
  return [
    {
      ...limit(DV1, 'slope', slope, { min: 5, max: 10 }, 'attend', 'Give 8 in hardwood, 6 in softwood.'),
      kind: 'number',
    },
    limit(DV3, 'pin', pin, { min: 3 }, 'attend', 'Give 3 mm or more.'),
    limit(
      DV4,
      'half.pin',
      c.figure('half.pin'),
      { min: Math.min(3, pin / 2) },
      'attend',
      `Give ${Math.ceil(pin / 2)} mm or more.`,
    ),
    limit(DV2, 'tail at its root', lay.root, { min: LEAST_ROOT }, 'attend', 'Make fewer tails.'),
  ];
}

const FEWEST_SLOPE = 2;

function refusals(c: MakeContext, lay: Layout, depth: number): Refusal[] {
  const slope = c.figure('slope');
  if (!(slope >= FEWEST_SLOPE))
    return [{ figure: 'slope', fault: `a slope of 1 in ${slope} leaves no tails`, mend: 'give 8' }];
  if (lay.root >= LEAST_ROOT - 1e-6) return [];
  const [pin, half] = [c.figure('pin'), c.figure('half.pin')];
  const width = lay.row.high - lay.row.low;
  const need = LEAST_ROOT + 2 * lay.spread;
  const most = Math.floor((width - 2 * half + pin) / (need + pin) + 1e-9);
  if (most >= 1)
    return [
      {
        figure: 'tails',
        fault: `${lay.n} tails on ${Math.round(width * 10) / 10} mm are ${Math.max(0, Math.floor(lay.root * 10) / 10)} mm wide at the root`,
        mend: `make ${most}`,
      },
    ];
  const room = Math.floor((width - need) / 2);
  return [
    room >= 1
      ? {
          figure: 'half.pin',
          fault: `half pins of ${half} mm leave no room for a tail on ${width} mm`,
          mend: `give ${room} mm`,
        }
      : {
          figure: 'slope',
          fault: `a tail ${depth} mm long at 1 in ${slope} widens by more than the ${width} mm of the board`,
          mend: `give ${Math.ceil((2 * depth) / Math.max(0.5, width - 2 - LEAST_ROOT)) + 1}`,
        },
  ];
}
