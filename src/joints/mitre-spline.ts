import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { lineOf, type MitreLine, plainMitre, slanted } from './mitre-line.ts';
import { limit, rule, wholeMm } from './shape.ts';

const MS1 = rule(
  'MS-1',
  'The spline is a quarter of the frame thick, whole mm, 3 at least.',
  'Thicker, the cheeks beside it break; thinner, no plywood is sold.',
  { text: 'remembered, a quarter to a third', basis: 'memory' },
);
const MS2 = rule(
  'MS-2',
  'It enters each member by twice its thickness, its grain across the mitre.',
  'With the grain along the mitre it splits where it is wanted.',
);
const MS3 = rule(
  'MS-3',
  'The groove has 0.1 mm play.',
  'A spline swells with the glue and must still go in.',
  {
    text: 'remembered fit, 0.05 to 0.15 mm',
    basis: 'memory',
  },
);

/** Size of the frame square to its plane: the smaller of the section where a frame lies flat, mm. */
const thin = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));

export const mitreSpline: JointType = {
  type: 'mitre-spline',
  title: 'Mitre with spline',
  says: 'A mitred corner of a frame with a spline let into both slanting ends, in the plane of the frame.',
  meets: 'corner',
  many: true,
  needs: [
    'a mitre saw or mitre sled',
    'a grooving blade or router table, and a jig that holds the mitre flat',
  ],
  rules: [MS1, MS2, MS3],
  figures: [
    {
      name: 'spline.thickness',
      positive: true,
      label: 'spline thickness',
      kind: 'length',
      rule: MS1,
      formula: 'a quarter of the thinner side of the section, whole mm, 3 at least',
      value: r => Math.max(3, wholeMm(thin(r) / 4)),
    },
    {
      name: 'enters',
      positive: true,
      label: 'enters each member',
      kind: 'length',
      rule: MS2,
      formula: "twice the spline's thickness",
      value: r => 2 * r.figure('spline.thickness'),
    },
    {
      name: 'fit',
      label: 'play in the groove',
      kind: 'length',
      rule: MS3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const plain = plainMitre(c, 'enters');
  if (plain.impossible) return plain;
  const [thickness, enters] = [c.figure('spline.thickness'), c.figure('enters')];
  const lines = [lineOf(c, 'from'), lineOf(c, 'into')] as const;
  const [own, other] = lines;
  const groove = (line: MitreLine) => {
    // Moved along the member, not square to the mitre: so it ends flush with both edges.
    const shift = enters / line.sin;
    const [outer, inner] = [line.at(0, 0), line.at(line.length, 0)];
    const sign = Math.sign(line.inwards.x);
    const low = (line.thick - thickness) / 2;
    return {
      role: line.role,
      cut: slanted(
        line,
        [outer, inner, { ...inner, x: inner.x + sign * shift }, { ...outer, x: outer.x + sign * shift }],
        low,
        low + thickness,
        c.figure('fit'),
      ),
    };
  };
  const n = plain.cuts.length;
  return {
    ...plain,
    cuts: [...plain.cuts, groove(own), groove(other)],
    mates: [...(plain.mates ?? []), [n, n + 1] as [number, number]],
    glue: [...plain.glue, { area: 4 * enters * own.length, grain: 'long' as const }],
    fasteners: [
      {
        item: `${thickness} x ${2 * enters} x ${Math.ceil(own.length)} spline`,
        kind: 'other' as const,
        quantity: 1,
        length: 2 * enters,
        diameter: thickness,
      },
    ],
    limits: [
      limit(
        MS1,
        'spline.thickness',
        thickness,
        { min: Math.min(3, own.thick / 4), max: own.thick / 3 },
        'attend',
        `Give ${Math.max(1, wholeMm(own.thick / 4))} mm.`,
      ),
    ],
    ...refused([...tooThick(thickness, own), ...lines.flatMap(l => tooDeep(enters, l))]),
  };
}

function tooThick(thickness: number, line: MitreLine): Refusal[] {
  return thickness < line.thick / 2
    ? []
    : [
        {
          figure: 'spline.thickness',
          fault: `a spline of ${thickness} mm in a frame ${line.thick} thick`,
          mend: `give ${Math.max(1, wholeMm(line.thick / 4))} mm`,
        },
      ];
}

/** Both ends of a member may be mitred: a groove takes no more than half of what the mitre leaves. */
function tooDeep(enters: number, line: MitreLine): Refusal[] {
  const most = ((line.whole - line.length * line.cos) / 2) * line.sin;
  return enters <= most
    ? []
    : [
        {
          figure: 'enters',
          fault: `a spline that enters ${enters} mm where the mitre leaves ${Math.floor(most)}`,
          mend: `give ${Math.max(1, Math.floor(most))} mm`,
        },
      ];
}
