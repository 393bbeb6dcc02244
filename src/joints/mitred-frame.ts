import type { Box } from '../geometry/box.ts';
import type { EndName } from '../results/cuts.ts';
import type { CutDraft, JointType, MakeContext, Member, Role } from '../setting-out/joint-type.ts';
import { across, rule, withSpan } from './shape.ts';

const MI1 = rule(
  'MI-1',
  'Each end is sawn so that the joint runs from inner to outer corner: 45 degrees for equal widths.',
  'The figure of the grain turns the corner; unequal widths take unequal angles.',
);
const MI2 = rule(
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
  says: 'Two members of a frame meeting on the slant of the corner; lengths are to the long points.',
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
  const wide = Math.hypot(c.from.body.width, c.into.body.width);
  return {
    cuts: parts.map(({ role, cut }) => ({ role, cut })),
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: wide * Math.min(c.from.body.thickness, c.into.body.thickness), grain: 'end' as const }],
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

/** Angle from square and the side it is taken from: the inner edge of the frame. */
function mitreOf(c: MakeContext, role: Role): { role: Role; cut: CutDraft } {
  const own: Member = role === 'from' ? c.from : c.into;
  const other: Member = role === 'from' ? c.into : c.from;
  const region: Box = role === 'from' ? c.contact.inFrom : c.contact.inInto;
  const end: EndName = region.min.x <= own.body.length - region.max.x ? 'end1' : 'end2';
  const far = across(
    c,
    role === 'from' ? 'into' : 'from',
    withSpan(
      { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: other.body.width, z: other.body.thickness } },
      'x',
      0,
      other.body.length,
    ),
  );
  const inner = far.min.y + far.max.y > region.min.y + region.max.y ? 1 : -1;
  const run = region.max.x - region.min.x;
  const angle = (Math.atan2(run, own.body.width) * 180) / Math.PI;
  return { role, cut: { kind: 'end-cut', end, mitre: inner * angle, bevel: 0 } };
}
