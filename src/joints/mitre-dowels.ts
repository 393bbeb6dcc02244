import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused, soldAtMost } from './fixing.ts';
import { lineOf, type MitreLine, plainMitre } from './mitre-line.ts';
import { limit, rule } from './shape.ts';

const MEMORY = { text: 'remembered trade rule', basis: 'memory' } as const;
const MD1 = rule(
  'MD-1',
  'Dowels in a mitre are two fifths of the frame thick: 4, 5, 6, 8, 10 or 12 mm.',
  'Thicker ones leave the cheeks beside them weak.',
  MEMORY,
);
const MD2 = rule('MD-2', 'Two dowels in a corner.', 'One alone lets it turn.');
const MD3 = rule(
  'MD-3',
  'Each half enters twice the diameter, bored square to the mitre, 1 mm deeper than the dowel reaches.',
  'Glue and chips need room; longer ones come out at the outer edge.',
  MEMORY,
);
const MD4 = rule(
  'MD-4',
  'The outer hole leaves 3 mm of wood before the outer edge; the inner stands one and a half diameters from the inner corner.',
  'A bore that breaks out shows.',
);

const SIZES = [4, 5, 6, 8, 10, 12];
/** Wood left before the outer edge, mm. */
const LEFT = 3;
const thin = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));
const wide = (r: JointReader): number => Math.max(r.size('from', 'thickness'), r.size('from', 'width'));
/** Least distance of a hole from the outer corner, along the mitre, so that it keeps `LEFT` to the outer edge. */
const least = (depth: number, diameter: number, cos: number, sin: number): number =>
  (LEFT + depth * cos) / sin + diameter / 2;

export const mitreDowels: JointType = {
  type: 'mitre-dowels',
  title: 'Mitre with dowels',
  says: 'A mitred corner of a frame held by dowels bored square into both slanting ends.',
  meets: 'corner',
  many: true,
  needs: ['a mitre saw or mitre sled', 'a dowel jig that sits on the mitre', 'fluted dowels'],
  rules: [MD1, MD2, MD3, MD4],
  figures: [
    {
      name: 'dowel.diameter',
      positive: true,
      label: 'dowel diameter',
      kind: 'length',
      rule: MD1,
      formula: 'two fifths of the thinner side of the section, the size below',
      value: r => soldAtMost(SIZES, thin(r) * 0.4),
    },
    {
      name: 'dowel.count',
      positive: true,
      label: 'dowels',
      kind: 'count',
      rule: MD2,
      formula: 'two',
      value: () => 2,
    },
    {
      name: 'enters',
      positive: true,
      label: 'enters each member',
      kind: 'length',
      rule: MD3,
      formula: 'two diameters',
      value: r => 2 * r.figure('dowel.diameter'),
    },
    {
      name: 'from.outside',
      positive: true,
      label: 'outer hole from the outer corner, along the mitre',
      kind: 'length',
      rule: MD4,
      formula: 'so that 3 mm are left before the outer edge, at 45 degrees, whole mm above',
      value: r =>
        Math.ceil(least(r.figure('enters') + 1, r.figure('dowel.diameter'), Math.SQRT1_2, Math.SQRT1_2)),
    },
    {
      name: 'from.inside',
      positive: true,
      label: 'inner hole from the inner corner, along the mitre',
      kind: 'length',
      rule: MD4,
      formula: 'one and a half diameters',
      value: r => Math.min(1.5 * r.figure('dowel.diameter'), wide(r) / 4),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const plain = plainMitre(c, 'enters');
  if (plain.impossible) return plain;
  const lines = [lineOf(c, 'from'), lineOf(c, 'into')] as const;
  const [own] = lines;
  const [diameter, enters] = [c.figure('dowel.diameter'), c.figure('enters')];
  const n = Math.max(1, Math.round(c.figure('dowel.count')));
  const [first, last] = [c.figure('from.outside'), own.length - c.figure('from.inside')];
  const stations = Array.from({ length: n }, (_, k) =>
    n === 1 ? (first + last) / 2 : first + ((last - first) * k) / (n - 1),
  );
  const hole = (line: MitreLine, along: number): CutDraft => ({
    kind: 'hole',
    role: 'dowel',
    face: line.end,
    at: line.at(along, 0, line.thick / 2),
    direction: line.inwards,
    diameter,
    depth: enters + 1,
    through: false,
  });
  const base = plain.cuts.length;
  return {
    ...plain,
    cuts: [...plain.cuts, ...stations.flatMap(s => lines.map(l => ({ role: l.role, cut: hole(l, s) })))],
    mates: [
      ...(plain.mates ?? []),
      ...stations.map((_, k): [number, number] => [base + 2 * k, base + 2 * k + 1]),
    ],
    glue: [...plain.glue, { area: n * Math.PI * diameter * 2 * enters, grain: 'long' as const }],
    fasteners: [
      {
        item: `${diameter} x ${2 * enters} dowel`,
        kind: 'dowel' as const,
        quantity: n,
        length: 2 * enters,
        diameter,
      },
    ],
    limits: [
      limit(
        MD1,
        'dowel.diameter',
        diameter,
        { min: own.thick / 4, max: own.thick / 2 },
        'attend',
        `Use ${soldAtMost(SIZES, own.thick * 0.4)} mm dowels.`,
      ),
    ],
    ...refused(refusals(c, lines, n, last)),
  };
}

function refusals(c: MakeContext, lines: readonly MitreLine[], n: number, last: number): Refusal[] {
  const [own] = lines as [MitreLine];
  const [diameter, enters, first] = [
    c.figure('dowel.diameter'),
    c.figure('enters'),
    c.figure('from.outside'),
  ];
  if (diameter > own.thick - 2)
    return [
      {
        figure: 'dowel.diameter',
        fault: `a dowel of ${diameter} mm in a frame ${own.thick} thick`,
        mend: `use ${soldAtMost(SIZES, own.thick * 0.4)} mm`,
      },
    ];
  const need = Math.max(...lines.map(l => least(enters + 1, diameter, l.cos, l.sin)));
  const room = own.length - need - c.figure('from.inside') - (n - 1) * (diameter + 2);
  if (c.figure('from.inside') < diameter / 2 + 1)
    return [
      {
        figure: 'from.inside',
        fault: `a hole of ${diameter} mm stands ${c.figure('from.inside')} from the inner corner`,
        mend: `give ${Math.ceil(diameter / 2 + 1)} mm`,
      },
    ];
  if (room < 0) return [noRoom(c, lines, n, diameter, enters)];
  if (first < need - 1e-6)
    return [
      {
        figure: 'from.outside',
        fault: `${first} mm from the outer corner a hole ${enters + 1} deep comes out at the edge`,
        mend: `give ${Math.min(Math.ceil(need), Math.floor(need + room))} mm`,
      },
    ];
  return last - first < (n - 1) * (diameter + 2) - 1e-6
    ? [
        {
          figure: 'from.outside',
          fault: `${n} dowels of ${diameter} mm do not stand between ${first} and ${Math.round(last * 10) / 10} mm`,
          mend: `give ${Math.ceil(need)} mm`,
        },
      ]
    : [];
}

/** The bores do not find room on the mitre: shallower ones do, or fewer, or thinner. */
function noRoom(
  c: MakeContext,
  lines: readonly MitreLine[],
  n: number,
  diameter: number,
  enters: number,
): Refusal {
  const fault = `${n} dowels of ${diameter} mm that enter ${enters} do not stand in a mitre of ${Math.round(lines[0]!.length)} mm`;
  const left = lines.map(
    l =>
      ((l.length - c.figure('from.inside') - (n - 1) * (diameter + 2) - diameter / 2) * l.sin - LEFT) /
        l.cos -
      1,
  );
  const most = Math.floor(Math.min(...left)) - 1;
  if (most >= diameter) return { figure: 'enters', fault, mend: `give ${most} mm` };
  return n > 1
    ? { figure: 'dowel.count', fault, mend: 'give 1' }
    : { figure: 'dowel.diameter', fault, mend: `use ${SIZES[0]} mm` };
}
