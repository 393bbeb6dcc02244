import type { Axis, Vec3 } from '../geometry/vector.ts';
import { POLYGON_AXES } from '../results/cuts.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { axisAlong, faceOf, pointAcross, type Refusal, type RoleCut, refused } from './fixing.ts';
import {
  deep,
  FACE_AXIS,
  halfMm,
  isHigh,
  limit,
  longAxis,
  otherAxis,
  rule,
  SIZE_OF_AXIS,
  sizeAlong,
} from './shape.ts';

const SD1 = rule(
  'SD-1',
  'The way is a third as deep as the board is thick.',
  'Enough to hold; the board keeps its strength.',
);
const SD2 = rule(
  'SD-2',
  'The sides slope as the cutter does: 14 degrees from upright.',
  'Way and tongue are cut with the one cutter, so they agree.',
  { text: 'remembered cutters: 8 and 12.7 mm at 14 degrees, 9.5 mm at 9', basis: 'memory' },
);
const SD3 = rule(
  'SD-3',
  'The tongue is nowhere thinner than half its board.',
  'Thinner, it breaks along its root when the joint is driven home.',
  { text: 'remembered', basis: 'memory' },
);
const SD4 = rule(
  'SD-4',
  'Stopped, the tongue is cut back 1 mm further than the way.',
  'The edges come flush before the tongue strikes the end of its way.',
);
const SD5 = rule('SD-5', 'No way deeper than half the board.', 'The board breaks along it.');
const SD6 = rule(
  'SD-6',
  'Way and tongue have 0.1 mm play.',
  'It must slide its whole length with glue on; longer than 300 mm it is glued at the front only.',
  { text: 'remembered fit, 0 to 0.1 mm', basis: 'memory' },
);

export const slidingDovetail: JointType = {
  type: 'sliding-dovetail',
  title: 'Sliding dovetail',
  says: 'A dovetailed tongue on the end or edge of one part slides into a way across another, from the back or from above; stopped short of the front or foot if asked.',
  meets: 'edge to face',
  many: true,
  needs: ['a router with a dovetail cutter, or a saw, a slanting fence and a router plane'],
  rules: [SD1, SD2, SD3, SD4, SD5, SD6],
  figures: [
    {
      name: 'depth',
      positive: true,
      label: 'depth of the way',
      kind: 'length',
      rule: SD1,
      formula: "a third of the board's thickness, to 0.5 mm",
      value: r => Math.max(1, halfMm(r.depthOf('into') / 3)),
    },
    {
      name: 'angle',
      label: 'slope of the sides, degrees from upright',
      kind: 'angle',
      rule: SD2,
      formula: '14 degrees',
      value: () => 14,
    },
    {
      name: 'stop',
      label: 'stopped from the front by',
      kind: 'length',
      rule: SD4,
      formula: 'nothing: it shows on both edges',
      value: () => 0,
    },
    {
      name: 'stop.room',
      label: 'tongue cut back by',
      kind: 'length',
      rule: SD4,
      formula: '1 mm where it is stopped',
      value: r => (r.figure('stop') > 0 ? 1 : 0),
    },
    {
      name: 'fit',
      label: 'play',
      kind: 'length',
      rule: SD6,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'depth',
  make,
};

interface Tongue {
  along: Axis;
  side: Axis;
  /** Across the tongue, along it from back to front, and from root to tip, in the entering part, mm. */
  low: number;
  high: number;
  back: number;
  front: number;
  root: number;
  tip: number;
  /** What it narrows by on each side at the root. */
  spread: number;
}

function tongueOf(c: MakeContext): Tongue {
  const { contact, from } = c;
  const axis = FACE_AXIS[contact.fromFace];
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const { min, max } = contact.inFrom;
  // The front of the piece is at low y of the world; what stands upright goes in from above, and its foot counts
  // as its front. A part that lies otherwise is stopped at its high end.
  const way = from.frame[along];
  const highIsFront = way.y < 0.7 && way.z < 0.7;
  const depth = c.figure('depth');
  const root = isHigh(contact.fromFace) ? from.body[SIZE_OF_AXIS[axis]] : 0;
  return {
    along,
    side,
    low: min[side],
    high: max[side],
    back: highIsFront ? min[along] : max[along],
    front: highIsFront ? max[along] : min[along],
    root,
    tip: root + (isHigh(contact.fromFace) ? depth : -depth),
    spread: depth * Math.tan((c.figure('angle') * Math.PI) / 180),
  };
}

function make(c: MakeContext) {
  const { contact, into } = c;
  const t = tongueOf(c);
  const whole = deep(contact, into.body);
  const [depth, stop] = [c.figure('depth'), c.figure('stop')];
  const thick = t.high - t.low;
  const run = Math.abs(t.front - t.back) - stop;
  const none = { cuts: [], glue: [], fasteners: [], limits: [] };
  const wrong = refusals(c, t, whole);
  if (wrong.length > 0) return { ...none, ...refused(wrong) };
  const cuts = [...cheeks(c, t), wayOf(c, t)];
  return {
    cuts,
    mates: [[0, cuts.length - 1]] as [number, number][],
    glue: [
      {
        area: 2 * run * Math.hypot(depth, t.spread),
        grain: FACE_AXIS[contact.fromFace] === 'x' ? ('end' as const) : ('long' as const),
      },
    ],
    fasteners: [],
    limits: [
      limit(SD5, 'depth', depth, { max: whole / 2 }, 'attend', `Give ${halfMm(whole / 3)} mm.`),
      limit(
        SD3,
        'tongue at its root',
        thick - 2 * t.spread,
        { min: thick / 2 },
        'attend',
        `Give a depth of ${halfMm(thick / 4 / Math.tan((c.figure('angle') * Math.PI) / 180))} mm or less.`,
      ),
    ],
  };
}

/** Waste beside the tongue on both cheeks, and its end cut back where the way stops. */
function cheeks(c: MakeContext, t: Tongue): RoleCut[] {
  const { from, contact } = c;
  const stop = c.figure('stop');
  const cutBack = stop > 0 ? stop + c.figure('stop.room') : 0;
  const forward = Math.sign(t.front - t.back);
  const end = t.front - forward * cutBack;
  const axis = FACE_AXIS[contact.fromFace];
  const [u] = POLYGON_AXES[t.along];
  const flat = (d: number, s: number): [number, number] => (u === axis ? [d, s] : [s, d]);
  const cheek = (edge: number, inwards: number, high: boolean): RoleCut => ({
    role: 'from',
    cut: {
      kind: 'dovetail',
      face: faceOf(t.side, high),
      axis: t.along,
      from: Math.min(t.back, end),
      to: Math.max(t.back, end),
      polygon: [flat(t.root, edge), flat(t.root, edge + inwards * t.spread), flat(t.tip, edge)],
      through: cutBack === 0,
      clearance: c.figure('fit'),
    },
  });
  const both = [cheek(t.low, 1, false), cheek(t.high, -1, true)];
  if (cutBack === 0) return both;
  const span = (a: Axis): [number, number] =>
    a === t.along ? [end, t.front] : a === t.side ? [0, from.body[SIZE_OF_AXIS[a]]] : [t.root, t.tip];
  const [x, y, z] = [span('x'), span('y'), span('z')];
  const low = (p: [number, number]): number => Math.min(...p);
  const high = (p: [number, number]): number => Math.max(...p);
  return [
    ...both,
    {
      role: 'from',
      cut: {
        kind: 'notch',
        face: faceOf(t.along, forward > 0),
        box: {
          min: { x: low(x), y: low(y), z: low(z) },
          max: { x: high(x), y: high(y), z: high(z) },
        },
        run: t.side,
        through: false,
        corner: 'square',
      },
    },
  ];
}

/** The way: as wide at its bottom as the tongue at its tip, open on the back edge of the board. */
function wayOf(c: MakeContext, t: Tongue): RoleCut {
  const { contact, into, from } = c;
  const forward = Math.sign(t.front - t.back);
  const point = (d: number, s: number, a: number): Vec3 =>
    pointAcross(c, 'from', {
      [FACE_AXIS[contact.fromFace]]: d,
      [t.side]: s,
      [t.along]: a,
    } as unknown as Vec3);
  const run = axisAlong(into.frame, from.frame[t.along])!;
  const [u, v] = POLYGON_AXES[run.axis];
  const corner = (d: number, s: number): [number, number] => {
    const p = point(d, s, t.back);
    return [p[u], p[v]];
  };
  const end = point(t.root, t.low, t.front - forward * c.figure('stop'))[run.axis];
  const start = run.sign * forward > 0 ? 0 : into.body[SIZE_OF_AXIS[run.axis]];
  const whole = into.body[SIZE_OF_AXIS[run.axis]];
  return {
    role: 'into',
    cut: {
      kind: 'dovetail',
      face: contact.intoFace,
      axis: run.axis,
      from: Math.min(start, end),
      to: Math.max(start, end),
      polygon: [
        corner(t.root, t.low + t.spread),
        corner(t.root, t.high - t.spread),
        corner(t.tip, t.high),
        corner(t.tip, t.low),
      ],
      through: Math.abs(end - start) > whole - 0.05,
      clearance: c.figure('fit'),
    },
  };
}

/** The root of a tongue is refused under a third of its board. */
const LEAST_ROOT = 1 / 3;

function refusals(c: MakeContext, t: Tongue, whole: number): Refusal[] {
  const [depth, angle, stop] = [c.figure('depth'), c.figure('angle'), c.figure('stop')];
  const thick = t.high - t.low;
  const found: Refusal[] = [];
  if (depth >= whole)
    found.push({
      figure: 'depth',
      fault: `the way is ${depth} mm deep, the board only ${whole}`,
      mend: `give ${halfMm(whole / 3)} mm`,
    });
  const steepest = (Math.atan((thick * (1 - LEAST_ROOT)) / 2 / depth) * 180) / Math.PI;
  if (angle < 2 || angle > steepest + 1e-9)
    found.push({
      figure: 'angle',
      fault: `at ${angle} degrees and ${depth} mm deep a tongue of ${thick} mm is ${Math.max(0, Math.round((thick - 2 * t.spread) * 10) / 10)} at its root`,
      mend: `give ${Math.min(14, Math.floor(steepest))} deg`,
    });
  const run = Math.abs(t.front - t.back);
  if (stop < 0 || stop + c.figure('stop.room') >= run - 1)
    found.push({
      figure: stop < 0 || stop >= run / 2 ? 'stop' : 'stop.room',
      fault: `stopped ${stop} mm from the front, a tongue of ${Math.round(run)} mm is gone`,
      mend: `give ${stop < 0 ? 0 : stop >= run / 2 ? Math.floor(run / 4) : 1} mm`,
    });
  if (c.figure('stop.room') < 0)
    found.push({ figure: 'stop.room', fault: 'the tongue is longer than its way', mend: 'give 1 mm' });
  for (const a of [t.along, t.side] as const) {
    const own = sizeAlong(c.from.body, faceOf(a, true));
    const shared = c.contact.inFrom.max[a] - c.contact.inFrom.min[a];
    if (shared < own - 0.05)
      found.push({
        figure: 'depth',
        fault: `${Math.round((own - shared) * 10) / 10} mm of ${c.from.instance} stand over ${c.into.instance}`,
        mend: `make it ${Math.round(shared * 10) / 10} mm there, or use a housing`,
      });
  }
  return found;
}
