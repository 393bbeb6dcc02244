import type { Axis, Vec3 } from '../geometry/vector.ts';
import { POLYGON_AXES } from '../results/cuts.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { axisAlong, faceOf, pointAcross, type Refusal, type RoleCut, refused } from './fixing.ts';
import { halfMm, isHigh, limit, rule, SIZE_OF_AXIS } from './shape.ts';

const SF1 = rule(
  'SF-1',
  'A scarf slopes 1 in 8; 1 in 12 where the length is bent or bears a load.',
  'The flatter the slope, the more of the glue face is long grain: 1 in 8 keeps about 80 % of the tension, 1 in 12 about 90.',
  { text: 'wikimili.com/en/Scarf_joint (1:8 to 1:10); shares of the tension remembered', basis: 'memory' },
);
const SF2 = rule(
  'SF-2',
  'The tips are cut off square, an eighth of the depth.',
  'A feathered tip breaks and lifts; two nibs also stop the lengths from sliding along the slope when clamped.',
);
const SF3 = rule(
  'SF-3',
  'The slopes are planed as a pair and close without play.',
  'It lives on its glue alone.',
);

const depth = (r: JointReader): number =>
  r.size('from', r.word('across') === 'width' ? 'width' : 'thickness');

export const scarf: JointType = {
  type: 'scarf',
  title: 'Scarf joint',
  says: 'Two lengths joined end to end on a long slope, their tips nibbed square.',
  meets: 'end to end',
  many: false,
  needs: ['a hand saw and plane, or a sloping jig for the router or saw'],
  rules: [SF1, SF2, SF3],
  figures: [
    {
      name: 'across',
      label: 'slopes across the',
      kind: 'text',
      rule: SF1,
      formula: 'thickness unless said',
      choices: ['thickness', 'width'],
      value: () => 'thickness',
    },
    {
      name: 'slope',
      label: 'slope, one in',
      kind: 'number',
      rule: SF1,
      formula: '8',
      value: () => 8,
    },
    {
      name: 'length',
      positive: true,
      label: 'length of the scarf',
      kind: 'length',
      rule: SF1,
      formula: 'the slope times the size across it, whole mm',
      value: r => Math.round(r.figure('slope') * depth(r)),
    },
    {
      name: 'nib',
      label: 'nib',
      kind: 'length',
      rule: SF2,
      formula: 'an eighth of the size across, to 0.5 mm',
      value: r => halfMm(depth(r) / 8),
    },
    {
      name: 'fit',
      label: 'play',
      kind: 'length',
      rule: SF3,
      formula: 'nothing',
      value: () => 0,
    },
  ],
  adds: () => 'length',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const across: Axis = c.word('across') === 'width' ? 'y' : 'z';
  const drawn: Axis = across === 'z' ? 'y' : 'z';
  const [length, nib] = [c.figure('length'), c.figure('nib')];
  const deep = from.body[SIZE_OF_AXIS[across]];
  const wide = from.body[SIZE_OF_AXIS[drawn]];
  const wrong = refusals(c, deep);
  if (wrong.length > 0) return { cuts: [], glue: [], fasteners: [], limits: [], ...refused(wrong) };
  const base = isHigh(contact.fromFace) ? from.body.length : 0;
  const tip = base + (isHigh(contact.fromFace) ? length : -length);
  const point = (x: number, a: number, d = 0): Vec3 => ({ x, [across]: a, [drawn]: d }) as unknown as Vec3;
  const slope: [number, number][] = [
    [tip, nib],
    [base, deep - nib],
  ];
  const [u, v] = POLYGON_AXES[drawn];
  const own: RoleCut = {
    role: 'from',
    cut: {
      kind: 'slant',
      face: faceOf(drawn, true),
      axis: drawn,
      from: 0,
      to: wide,
      polygon: [[base, deep], [tip, deep], ...slope].map(([x, a]) => {
        const p = point(x!, a!);
        return [p[u], p[v]];
      }),
      through: true,
      clearance: c.figure('fit'),
    },
  };
  const there = axisAlong(into.frame, from.frame[drawn])!;
  const [m, n] = POLYGON_AXES[there.axis];
  const other: RoleCut = {
    role: 'into',
    cut: {
      kind: 'slant',
      face: faceOf(there.axis, true),
      axis: there.axis,
      from: 0,
      to: wide,
      polygon: [[base, 0], [tip, 0], ...slope].map(([x, a]) => {
        const p = pointAcross(c, 'from', point(x!, a!));
        return [p[m], p[n]];
      }),
      through: true,
      clearance: c.figure('fit'),
    },
  };
  return {
    cuts: [own, other],
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: Math.hypot(length, deep - 2 * nib) * wide, grain: 'long' as const }],
    fasteners: [],
    limits: [
      {
        ...limit(
          SF1,
          'slope of the scarf, one in',
          length / deep,
          { min: 8 - 1 / deep },
          'attend',
          `Make it ${Math.round(8 * deep)} mm long.`,
        ),
        kind: 'number' as const,
      },
      limit(SF2, 'nib', nib, { max: deep / 4 }, 'attend', `Give ${halfMm(deep / 8)} mm.`),
    ],
  };
}

function refusals(c: MakeContext, deep: number): Refusal[] {
  const { contact, from, into } = c;
  for (const a of ['y', 'z'] as const) {
    const shared = contact.inFrom.max[a] - contact.inFrom.min[a];
    const other = axisAlong(into.frame, from.frame[a])!.axis;
    const [own, theirs] = [from.body[SIZE_OF_AXIS[a]], into.body[SIZE_OF_AXIS[other]]];
    if (Math.abs(own - shared) > 0.05 || Math.abs(theirs - shared) > 0.05)
      return [
        {
          figure: 'across',
          fault: `the ends of ${from.instance} and ${into.instance} are ${own} and ${theirs} mm there, of which ${Math.round(shared * 10) / 10} meet`,
          mend: 'make the two of one section, and flush',
        },
      ];
  }
  const [length, nib] = [c.figure('length'), c.figure('nib')];
  if (!(c.figure('slope') > 0))
    return [{ figure: 'slope', fault: `a slope of 1 in ${c.figure('slope')} is none`, mend: 'give 8' }];
  if (nib < 0 || nib >= deep / 2)
    return [
      {
        figure: 'nib',
        fault: `nibs of ${nib} mm leave no slope across ${deep}`,
        mend: `give ${halfMm(deep / 8)} mm`,
      },
    ];
  // The other end of the length may be scarfed too.
  const most = Math.floor(into.body.length / 2);
  return length <= most
    ? []
    : [
        {
          figure: 'length',
          fault: `a scarf ${length} mm long takes more than half of ${into.instance}, which is ${into.body.length}`,
          mend: `give ${most} mm`,
        },
      ];
}
