import { directionToLocal, directionToWorld, toLocal, toWorld } from '../geometry/frame.ts';
import { add, scale, type Vec3, vec } from '../geometry/vector.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type RoleCut, refused } from './fixing.ts';
import { FACE_AXIS, isHigh, limit, rule, sizeAlong } from './shape.ts';

const SR1 = rule(
  'SR-1',
  'The end of a rail between splayed legs is sawn to the slope of the leg, both ways at once where the leg splays both ways; its length is told to the long points.',
  'The shoulder closes all round only on the plane of the leg.',
  { text: 'geometry of two planes', basis: 'computed' },
);
const SR2 = rule(
  'SR-2',
  'Dowels run along the rail, two fifths as thick as it; the leg is bored at the slope, from a block sawn to the same angle.',
  'Then rail and leg go together in a straight line.',
);
const SR3 = rule(
  'SR-3',
  'Dowels stand two diameters from the edges of the rail and enter each part by two and a half diameters.',
  'Common proportions of a dowelled rail.',
);
const SR4 = rule(
  'SR-4',
  'Between rail and dowel hole 5 mm of the leg stay behind.',
  'Less shows, or bursts as the dowel goes home.',
);

const DOWELS = [6, 8, 10, 12, 16];
const thin = (r: JointReader): number => Math.min(r.size('from', 'width'), r.size('from', 'thickness'));
const slopeOf = (r: JointReader) => r.contact.slope ?? { reach: 0, mitre: 0, bevel: 0 };

export const splayedRail: JointType = {
  type: 'splayed-rail',
  title: 'Rail to a splayed leg, dowelled',
  says: 'A rail sawn to the slope of a leg that stands out of upright, one way or both, and held by dowels along it.',
  meets: 'end to slope',
  within: 80,
  many: false,
  needs: ['a mitre saw or sled that tilts', 'a drill and a block sawn to the slope', 'dowels'],
  rules: [SR1, SR2, SR3, SR4],
  figures: [
    {
      name: 'reach',
      label: 'end to the long point',
      kind: 'length',
      rule: SR1,
      formula: 'from the end as placed to the plane of the leg, along the arris that runs furthest',
      value: r => slopeOf(r).reach,
    },
    {
      name: 'dowel.diameter',
      label: 'dowel diameter',
      kind: 'length',
      rule: SR2,
      formula: "two fifths of the rail's thickness, a size sold",
      value: r => {
        const wanted = thin(r) * 0.4;
        return DOWELS.reduce((best, d) => (Math.abs(d - wanted) < Math.abs(best - wanted) ? d : best));
      },
    },
    {
      name: 'dowel.count',
      label: 'dowels',
      kind: 'count',
      rule: SR3,
      formula: 'two; three in a rail over 100 mm',
      value: r => (Math.max(r.size('from', 'width'), r.size('from', 'thickness')) > 100 ? 3 : 2),
    },
    {
      name: 'enters.from',
      label: 'enters the rail',
      kind: 'length',
      rule: SR3,
      formula: 'two and a half diameters',
      value: r => Math.round(r.figure('dowel.diameter') * 2.5),
    },
    {
      name: 'enters.into',
      label: 'enters the leg',
      kind: 'length',
      rule: SR4,
      formula: 'two and a half diameters, leaving 5 mm of the leg',
      value: r =>
        Math.max(
          1,
          Math.min(Math.round(r.figure('dowel.diameter') * 2.5), Math.floor(r.depthOf('into') - 6)),
        ),
    },
    {
      name: 'edge',
      label: 'from the edge',
      kind: 'length',
      rule: SR3,
      formula: 'two diameters, a quarter of the rail at most',
      value: r =>
        Math.min(
          2 * r.figure('dowel.diameter'),
          Math.max(r.size('from', 'width'), r.size('from', 'thickness')) / 4,
        ),
    },
  ],
  adds: () => 'reach',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const slope = contact.slope ?? { reach: 0, mitre: 0, bevel: 0 };
  const end = contact.fromFace === 'end1' ? ('end1' as const) : ('end2' as const);
  const diameter = c.figure('dowel.diameter');
  const into_ = c.figure('enters.into');
  const lines = dowelLines(c);
  const cuts: RoleCut[] = [];
  const mates: [number, number][] = [];
  if (slope.mitre !== 0 || slope.bevel !== 0)
    cuts.push({ role: 'from', cut: { kind: 'end-cut', end, mitre: slope.mitre, bevel: slope.bevel } });
  for (const { start, air, hit, way } of lines) {
    mates.push([cuts.length, cuts.length + 1]);
    cuts.push(
      {
        role: 'from',
        cut: {
          kind: 'hole',
          role: 'dowel',
          face: end,
          at: start,
          direction: vec(end === 'end2' ? -1 : 1, 0, 0),
          diameter,
          depth: air + c.figure('enters.from') + 1,
          through: false,
        },
      },
      {
        role: 'into',
        cut: {
          kind: 'hole',
          role: 'dowel',
          face: contact.intoFace,
          at: hit,
          direction: way,
          diameter,
          depth: into_ + 1,
          through: false,
        },
      },
    );
  }
  const length = c.figure('enters.from') + into_;
  const n = lines.length;
  const thinnest = Math.min(from.body.width, from.body.thickness);
  const whole = sizeAlong(into.body, contact.intoFace);
  const other = Math.abs(slope.reach - c.figure('reach')) > 0.05;
  return {
    cuts,
    mates,
    glue: [
      { area: n * Math.PI * diameter * length, grain: 'long' as const },
      { area: from.body.width * from.body.thickness, grain: 'end' as const },
    ],
    fasteners: [
      { item: `${diameter} x ${length} dowel`, kind: 'dowel' as const, quantity: n, length, diameter },
    ],
    limits: [
      limit(
        SR2,
        'dowel.diameter',
        diameter,
        { min: thinnest / 3.5, max: thinnest / 2 },
        'attend',
        `Use dowels of about ${Math.round(thinnest * 0.4)} mm.`,
      ),
    ],
    ...refused([
      ...(other
        ? [
            {
              figure: 'reach',
              fault: `${from.instance} reaches ${into.instance} by ${slope.reach} mm and another leg by ${c.figure('reach')}`,
              mend: 'place the rail half way between its legs, or give each end a joint of its own',
            },
          ]
        : []),
      ...(into_ + 1 > whole - 4
        ? [
            {
              figure: 'enters.into',
              fault: `the hole is ${into_ + 1} mm deep, the leg only ${whole}`,
              mend: `enter ${Math.max(1, Math.floor(whole - 6))} mm`,
            },
          ]
        : []),
    ]),
  };
}

interface DowelLine {
  /** On the rail's end as it is sawn off square, in its own frame. */
  start: Vec3;
  /** From there to the slope, mm: gone when the end is sawn. */
  air: number;
  /** Where the dowel enters the leg, and the way it runs in, in the leg's frame. */
  hit: Vec3;
  way: Vec3;
}

/** Dowels stand in a row along the wider way of the rail, in the middle of the other. */
function dowelLines(c: MakeContext): DowelLine[] {
  const { contact, from, into } = c;
  const out = contact.fromFace === 'end2' ? 1 : -1;
  const reach = c.figure('reach');
  const n = Math.max(1, Math.round(c.figure('dowel.count')));
  const [wide, narrow] =
    from.body.width >= from.body.thickness ? (['y', 'z'] as const) : (['z', 'y'] as const);
  const size = { y: from.body.width, z: from.body.thickness };
  const edge = c.figure('edge');
  const endAt = contact.fromFace === 'end2' ? from.body.length + reach : -reach;
  const way = directionToLocal(into.frame, scale(directionToWorld(from.frame, vec(1, 0, 0)), out));
  const axis = FACE_AXIS[contact.intoFace];
  const level = isHigh(contact.intoFace) ? sizeAlong(into.body, contact.intoFace) : 0;
  return Array.from({ length: n }, (_, i): DowelLine => {
    const along = n === 1 ? size[wide] / 2 : edge + ((size[wide] - 2 * edge) * i) / (n - 1);
    const start = { ...vec(endAt, 0, 0), [wide]: along, [narrow]: size[narrow] / 2 };
    const there = toLocal(into.frame, toWorld(from.frame, start));
    // Back from the end to the plane of the leg: the long point is on it, all others lie before it.
    const back = (level - there[axis]) / way[axis];
    return { start, air: -back, hit: add(there, scale(way, back)), way };
  });
}
