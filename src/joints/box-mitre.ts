import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { lineOf, type MitreLine, plainMitre, slanted } from './mitre-line.ts';
import { MI2 } from './mitred-frame.ts';
import { limit, rule, wholeMm } from './shape.ts';

const BM1 = rule(
  'BM-1',
  'The spline of a box mitre is a fifth of the board thick, whole mm, 3 at least.',
  'The board is thin at its bevel: a wide groove breaks it.',
  { text: 'remembered, 3 to 4 mm in boards of 16 to 20', basis: 'memory' },
);
const BM2 = rule(
  'BM-2',
  'It stands a third of the mitre from the inside and enters a quarter of the board.',
  'Towards the inside there is wood behind the groove; near the outside it comes through.',
);
const BM3 = rule(
  'BM-3',
  'The groove has 0.1 mm play.',
  'The spline swells with the glue and must still go in.',
  {
    text: 'remembered fit, 0.05 to 0.15 mm',
    basis: 'memory',
  },
);

export const boxMitre: JointType = {
  type: 'box-mitre',
  title: 'Box mitre',
  says: 'Two boards of a box bevelled along their ends and closed at a corner, with a spline along it or without.',
  meets: 'corner',
  many: true,
  needs: ['a table saw with tilting blade'],
  rules: [BM1, BM2, BM3],
  figures: [
    {
      name: 'spline',
      label: 'spline',
      kind: 'text',
      rule: MI2,
      formula: 'with, unless said',
      choices: ['with', 'without'],
      value: () => 'with',
    },
    {
      name: 'spline.thickness',
      positive: true,
      label: 'spline thickness',
      kind: 'length',
      rule: BM1,
      formula: 'a fifth of the board, whole mm, 3 at least',
      value: r => Math.max(3, wholeMm(r.size('from', 'thickness') / 5)),
    },
    {
      name: 'enters',
      positive: true,
      label: 'enters each board',
      kind: 'length',
      rule: BM2,
      formula: 'a quarter of the thinner board',
      value: r => Math.min(r.size('from', 'thickness'), r.size('into', 'thickness')) / 4,
    },
    {
      name: 'from.inside',
      positive: true,
      label: 'middle of the spline from the inner corner',
      kind: 'length',
      rule: BM2,
      formula: 'a third of the mitre',
      value: r => Math.hypot(r.size('from', 'thickness'), r.size('into', 'thickness')) / 3,
    },
    {
      name: 'fit',
      label: 'play in the groove',
      kind: 'length',
      rule: BM3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const word = c.word('spline');
  const plain = plainMitre(c, 'spline');
  if (plain.impossible) return plain;
  const lines = [lineOf(c, 'from'), lineOf(c, 'into')] as const;
  if (lines.some(l => l.plane === 'y'))
    return {
      ...plain,
      impossible: [
        {
          figure: 'spline',
          fault: `${c.from.instance} and ${c.into.instance} lie with their widths in the plane of the corner`,
          mend: 'use mitred-frame or mitre-spline',
        },
      ],
    };
  if (word === 'without') return { ...plain, limits: [...plain.limits, bare()] };
  const [thickness, enters] = [c.figure('spline.thickness'), c.figure('enters')];
  const [own, other] = lines;
  const n = plain.cuts.length;
  return {
    ...plain,
    cuts: [...plain.cuts, groove(c, own), groove(c, other)],
    mates: [...(plain.mates ?? []), [n, n + 1] as [number, number]],
    glue: [...plain.glue, { area: 4 * enters * own.thick, grain: 'long' as const }],
    fasteners: [
      {
        item: `${thickness} x ${2 * enters} x ${Math.round(own.thick)} spline`,
        kind: 'other' as const,
        quantity: 1,
        length: 2 * enters,
        diameter: thickness,
      },
    ],
    limits: [
      limit(
        BM1,
        'spline.thickness',
        thickness,
        { max: own.length / 4 },
        'attend',
        `Give ${Math.max(1, Math.floor(own.length / 5))} mm.`,
      ),
    ],
    ...refused(refusals(c, lines)),
  };
}

/** A bare mitre is end grain on end grain: said, not forbidden. */
const bare = () => ({
  rule: MI2,
  figure: 'spline',
  value: 0,
  min: 1,
  kind: 'number' as const,
  severity: 'note' as const,
  remedy: 'Add a spline or keys.',
});

/** Square to the mitre, along the whole corner. */
function groove(c: MakeContext, line: MitreLine) {
  const [thickness, enters] = [c.figure('spline.thickness'), c.figure('enters')];
  const middle = line.length - c.figure('from.inside');
  const [a, b] = [middle - thickness / 2, middle + thickness / 2];
  return {
    role: line.role,
    cut: slanted(
      line,
      [line.at(a, 0), line.at(b, 0), line.at(b, enters), line.at(a, enters)],
      0,
      line.thick,
      c.figure('fit'),
    ),
  };
}

/** Wood left between the groove and a face of the board, mm. */
const LEFT = 1.5;

function refusals(c: MakeContext, lines: readonly MitreLine[]): Refusal[] {
  const [thickness, enters, inside] = [
    c.figure('spline.thickness'),
    c.figure('enters'),
    c.figure('from.inside'),
  ];
  const [own] = lines as [MitreLine];
  const third = own.length / 3;
  if (thickness > own.length / 3)
    return [
      {
        figure: 'spline.thickness',
        fault: `a spline of ${thickness} mm in a mitre of ${Math.round(own.length * 10) / 10}`,
        mend: `give ${Math.max(1, Math.floor(own.length / 6))} mm`,
      },
    ];
  const [least, most] = [thickness / 2 + LEFT, own.length - thickness / 2 - LEFT];
  if (inside < least || inside > most)
    return [
      {
        figure: 'from.inside',
        fault: `a spline of ${thickness} mm with its middle ${Math.round(inside * 10) / 10} from the inner corner breaks out`,
        mend: `give ${Math.round(Math.max(least, third) * 10) / 10} mm`,
      },
    ];
  // Square to the mitre the groove nears the outer face: what is left of the board behind it.
  const deepest = Math.min(...lines.map(l => ((l.length - inside - thickness / 2) * l.sin - LEFT) / l.cos));
  if (enters <= deepest) return [];
  return deepest >= 1
    ? [
        {
          figure: 'enters',
          fault: `a spline that enters ${Math.round(enters * 10) / 10} mm comes out at the outside`,
          mend: `give ${Math.floor(deepest * 10) / 10} mm`,
        },
      ]
    : [
        {
          figure: 'from.inside',
          fault: `a spline ${Math.round(inside * 10) / 10} mm from the inner corner has no wood behind it`,
          mend: `give ${Math.round(Math.max(least, third) * 10) / 10} mm`,
        },
      ];
}
