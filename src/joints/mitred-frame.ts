import type { Box } from '../geometry/box.ts';
import { dot } from '../geometry/vector.ts';
import type { EndName } from '../results/cuts.ts';
import type { CutDraft, JointType, MakeContext, Member, Role } from '../setting-out/joint-type.ts';
import { across, rule, SIZE_OF_AXIS } from './shape.ts';

const MI1 = rule(
  'MI-1',
  'Each end is sawn so that the joint runs from inner to outer corner: 45 degrees for equal widths.',
  'The figure of the grain turns the corner; unequal widths take unequal angles.',
);
export const MI2 = rule(
  'MI-2',
  'A mitre is end grain: it wants a spline, keys, dowels or a loose tenon.',
  'Glue alone on end grain lets go.',
  { text: 'woodmagazine.com, strengthening mitres', basis: 'read' },
);
const MI3 = rule(
  'MI-3',
  'Grooves and rebates are cut before the mitres.',
  'They run true to the edge only while it is straight.',
);

export const mitredFrame: JointType = {
  type: 'mitred-frame',
  title: 'Mitred corner',
  says: 'Two members of a frame or a box meeting on the slant of the corner; lengths are to the long points.',
  meets: 'corner',
  many: true,
  needs: ['a mitre saw or mitre sled'],
  rules: [MI1, MI2, MI3],
  figures: [
    {
      name: 'strengthened',
      label: 'strengthened by',
      kind: 'text',
      rule: MI2,
      formula: 'nothing unless said',
      choices: ['nothing', 'dowels', 'spline', 'keys'],
      value: () => 'nothing',
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const parts = (['from', 'into'] as const).map(role => mitreOf(c, role));
  const [own, other] = parts as [Mitre, Mitre];
  if (Math.abs(dot(c.from.frame.x, c.into.frame.x)) > 0.7)
    return {
      cuts: [],
      glue: [],
      fasteners: [],
      limits: [],
      impossible: [
        {
          figure: 'strengthened',
          fault: `${c.from.instance} and ${c.into.instance} lie in one line, which makes no corner`,
          mend: 'let one run along the other side of the corner',
        },
      ],
    };
  return {
    cuts: parts.map(({ role, cut }) => ({ role, cut })),
    mates: [[0, 1]] as [number, number][],
    glue: [
      { area: Math.hypot(own.wide, other.wide) * Math.min(own.deep, other.deep), grain: 'end' as const },
    ],
    fasteners: [],
    limits:
      c.word('strengthened') === 'nothing'
        ? [
            {
              rule: MI2,
              figure: 'strengthened',
              value: 0,
              min: 1,
              kind: 'number' as const,
              severity: 'note' as const,
              remedy: 'Add a spline, keys or dowels.',
            },
          ]
        : [],
  };
}

export interface Mitre {
  role: Role;
  cut: CutDraft;
  /** The member's size in the plane of the corner and square to it, mm. */
  wide: number;
  deep: number;
}

/**
 * Angle from square and the side more is taken from: the inner edge of the corner. A frame lies with its
 * widths in the plane of the corner and is mitred; a box with its thicknesses, and is bevelled.
 */
export function mitreOf(c: MakeContext, role: Role): Mitre {
  const own: Member = role === 'from' ? c.from : c.into;
  const other: Member = role === 'from' ? c.into : c.from;
  const region: Box = role === 'from' ? c.contact.inFrom : c.contact.inInto;
  const end: EndName = region.min.x <= own.body.length - region.max.x ? 'end1' : 'end2';
  const plane = Math.abs(dot(own.frame.y, other.frame.x)) > 0.7 ? 'y' : 'z';
  const far = across(c, role === 'from' ? 'into' : 'from', {
    min: { x: 0, y: 0, z: 0 },
    max: { x: other.body.length, y: other.body.width, z: other.body.thickness },
  });
  const inner = far.min[plane] + far.max[plane] > region.min[plane] + region.max[plane] ? 1 : -1;
  const wide = own.body[SIZE_OF_AXIS[plane]];
  const angle = (inner * Math.atan2(region.max.x - region.min.x, wide) * 180) / Math.PI;
  return {
    role,
    cut: {
      kind: 'end-cut',
      end,
      mitre: plane === 'y' ? angle : 0,
      bevel: plane === 'z' ? angle : 0,
    },
    wide,
    deep: plane === 'y' ? own.body.thickness : own.body.width,
  };
}
