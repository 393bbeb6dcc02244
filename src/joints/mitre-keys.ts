import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { lineOf, type MitreLine, plainMitre, slanted } from './mitre-line.ts';
import { limit, rule } from './shape.ts';

const MK1 = rule(
  'MK-1',
  'Keys are as thick as the saw cuts, 3 mm, and never more than a third of a frame.',
  'One pass of the blade makes the slot; thicker keys leave weak cheeks.',
  { text: 'remembered, 2 to 4 mm', basis: 'memory' },
);
const MK2 = rule(
  'MK-2',
  'A key reaches half-way from the outer to the inner corner.',
  'Deeper, it shows inside; less gives little glue.',
  { text: 'remembered, a half to two thirds', basis: 'memory' },
);
const MK3 = rule(
  'MK-3',
  'One key in a frame; along the corner of a box two, and one more for each 60 mm.',
  'The corner is held over its whole width.',
);
const MK4 = rule(
  'MK-4',
  'The outer keys stand 10 mm from the edges of a box.',
  'Of 10, 20 and 30 mm from the edge, 10 was the strongest.',
  { text: 'Maleki et al. 2012, Turk J Agric For 36, 636-643', basis: 'read' },
);

/** Is the corner one of boards, bevelled over their widths? Their widths lie square to the plane of the corner. */
const ofBoards = (r: JointReader): boolean => {
  const { inFrom } = r.contact;
  return (
    inFrom.max.y - inFrom.min.y > inFrom.max.x - inFrom.min.x + 0.05 &&
    inFrom.max.y - inFrom.min.y > inFrom.max.z - inFrom.min.z + 0.05
  );
};
const deepOf = (r: JointReader): number => r.size('from', ofBoards(r) ? 'width' : 'thickness');
const lineLength = (r: JointReader): number => {
  const { inFrom } = r.contact;
  return Math.hypot(inFrom.max.x - inFrom.min.x, r.size('from', ofBoards(r) ? 'thickness' : 'width'));
};

export const mitreKeys: JointType = {
  type: 'mitre-keys',
  title: 'Mitre with keys',
  says: 'A mitred corner of a frame or a box, slotted across its outer corner after it is glued, with keys glued into the slots.',
  meets: 'corner',
  many: true,
  needs: ['a mitre saw or mitre sled', 'a cradle that holds the glued corner at the saw'],
  rules: [MK1, MK2, MK3, MK4],
  figures: [
    {
      name: 'keys',
      positive: true,
      label: 'keys',
      kind: 'count',
      rule: MK3,
      formula: 'one in a frame; on a box two, and one more for each 60 mm',
      value: r => (ofBoards(r) ? 2 + Math.floor(deepOf(r) / 60) : 1),
    },
    {
      name: 'key.thickness',
      positive: true,
      label: 'key thickness',
      kind: 'length',
      rule: MK1,
      formula: '3 mm',
      value: () => 3,
    },
    {
      name: 'key.depth',
      positive: true,
      label: 'reach from the outer corner',
      kind: 'length',
      rule: MK2,
      formula: 'half the mitre, to 0.5 mm',
      value: r => Math.round(lineLength(r)) / 2,
    },
    {
      name: 'edge',
      positive: true,
      label: 'outer keys from the edge',
      kind: 'length',
      rule: MK4,
      formula: '10 mm, a quarter of the width at most',
      value: r => Math.min(10, deepOf(r) / 4),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const plain = plainMitre(c, 'key.depth');
  if (plain.impossible) return plain;
  const lines = [lineOf(c, 'from'), lineOf(c, 'into')] as const;
  const [thickness, depth] = [c.figure('key.thickness'), c.figure('key.depth')];
  const n = Math.max(1, Math.round(c.figure('keys')));
  const slots = lines.map(line =>
    stations(c, line, n).map(middle => ({
      role: line.role,
      cut: slanted(
        line,
        [line.at(0, 0), line.at(depth, 0), edgePoint(line, depth)],
        middle - thickness / 2,
        middle + thickness / 2,
        0,
      ),
    })),
  );
  const first = plain.cuts.length;
  const [own] = lines;
  return {
    ...plain,
    cuts: [...plain.cuts, ...slots.flat()],
    mates: [
      ...(plain.mates ?? []),
      ...Array.from({ length: n }, (_, k): [number, number] => [first + k, first + n + k]),
    ],
    glue: [
      ...plain.glue,
      // Both cheeks of each key: a triangle of height `depth` over its base.
      { area: n * depth * baseOf(own, depth), grain: 'long' as const },
    ],
    fasteners: [
      {
        item: `${thickness} x ${Math.ceil(depth)} key`,
        kind: 'other' as const,
        quantity: n,
        length: Math.ceil(depth),
        diameter: thickness,
      },
    ],
    limits: [
      limit(
        MK2,
        'key.depth',
        depth,
        { min: own.length / 3, max: (own.length * 2) / 3 },
        'attend',
        `Give ${Math.round(own.length) / 2} mm.`,
      ),
    ],
    ...refused([...badRow(c, own, n), ...lines.flatMap(l => tooDeep(l, depth))]),
  };
}

/** Where the floor of the slot, square to the mitre, comes out on the outer edge of the member. */
const edgePoint = (line: MitreLine, depth: number) => line.at(depth, (depth * line.sin) / line.cos);
/** Length of the floor of the slot across both members, mm. */
const baseOf = (line: MitreLine, depth: number): number =>
  (depth * line.sin) / line.cos + (depth * line.cos) / line.sin;

/** Middles of the keys, square to the plane of the corner. */
function stations(c: MakeContext, line: MitreLine, n: number): number[] {
  if (n === 1) return [line.thick / 2];
  const edge = c.figure('edge');
  return Array.from({ length: n }, (_, k) => edge + ((line.thick - 2 * edge) * k) / (n - 1));
}

function badRow(c: MakeContext, line: MitreLine, n: number): Refusal[] {
  const [thickness, edge] = [c.figure('key.thickness'), c.figure('edge')];
  if (n === 1)
    return thickness <= line.thick / 2
      ? []
      : [
          {
            figure: 'key.thickness',
            fault: `a key of ${thickness} mm in a frame ${line.thick} thick`,
            mend: `give ${Math.floor(line.thick / 3)} mm`,
          },
        ];
  if (edge < thickness / 2 + 1 || edge > line.thick / 2 - thickness)
    return [
      {
        figure: 'edge',
        fault: `keys ${edge} mm from the edge of ${line.thick} mm`,
        mend: `give ${Math.round(Math.max(thickness / 2 + 1, line.thick / 4) * 10) / 10} mm`,
      },
    ];
  const most = Math.floor((line.thick - 2 * edge) / (2 * thickness)) + 1;
  return n <= most
    ? []
    : [
        {
          figure: 'keys',
          fault: `${n} keys of ${thickness} mm on ${line.thick} mm stand too close`,
          mend: `give ${most}`,
        },
      ];
}

function tooDeep(line: MitreLine, depth: number): Refusal[] {
  const most = Math.floor(Math.min(line.length * 0.9, (line.whole / 2) * line.cos));
  return depth <= most
    ? []
    : [
        {
          figure: 'key.depth',
          fault: `a key that reaches ${depth} mm shows inside the corner, which is ${Math.round(line.length * 10) / 10} from outside to inside`,
          mend: `give ${Math.min(most, Math.round(line.length / 2))} mm`,
        },
      ];
}
