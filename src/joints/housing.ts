import { bodyBox } from '../setting-out/bodies.ts';
import type { CutDraft, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { across, beyond, deep, flatArea, halfMm, limit, longAxis, rule, sunk, withSpan } from './shape.ts';

const HO1 = rule(
  'HO-1',
  'A housing is a third as deep as the board is thick.',
  'Enough to bear the load; the board keeps its strength.',
);
const HO2 = rule('HO-2', 'No housing deeper than half the board.', 'The board breaks along it.');
const HO4 = rule(
  'HO-4',
  'At the end of a board the housing is a rebate and may take two thirds.',
  'Nothing beyond it can break away.',
);
const HO3 = rule(
  'HO-3',
  'A housing is cut to the board that goes in, measured, with 0.1 mm play.',
  'Sheet is seldom its nominal thickness.',
  { text: 'remembered fit, 0.05 to 0.15 mm', basis: 'memory' },
);

export const housing: JointType = {
  type: 'housing',
  title: 'Housing',
  says: 'The whole end of a board let into a trench across another.',
  meets: 'end to face',
  many: false,
  needs: ['a router, a grooving blade or a saw and router plane'],
  rules: [HO1, HO2, HO3, HO4],
  figures: [
    {
      name: 'depth',
      positive: true,
      label: 'housing depth',
      kind: 'length',
      rule: HO1,
      formula: "a third of the board's thickness, to 0.5 mm",
      value: r => Math.max(1, halfMm(r.depthOf('into') / 3)),
    },
    {
      name: 'fit',
      label: 'play in the width',
      kind: 'length',
      rule: HO3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'depth',
  make,
};

function make(c: MakeContext) {
  const { contact, into } = c;
  const depth = c.figure('depth');
  const whole = deep(contact, into.body);
  const box = sunk(
    across(c, 'from', beyond(contact.inFrom, contact.fromFace, c.from.body, depth)),
    contact.intoFace,
    into.body,
    depth,
  );
  const atEnd = box.min.x < 0.05 || box.max.x > into.body.length - 0.05;
  return {
    cuts: [
      {
        role: 'into' as const,
        cut: {
          kind: 'housing' as const,
          face: contact.intoFace,
          box,
          run: longAxis(box, contact.intoFace),
          through: depth >= whole,
          corner: 'square' as const,
          clearance: c.figure('fit'),
        },
      },
      ...ears(c, depth),
    ],
    glue: [{ area: flatArea(contact.inInto), grain: 'end' as const }],
    fasteners: [],
    limits: [
      atEnd
        ? limit(
            HO4,
            'depth',
            depth,
            { max: (whole * 2) / 3 + 1e-9 },
            'attend',
            `Give ${halfMm(whole / 2)} mm.`,
          )
        : limit(HO2, 'depth', depth, { max: whole / 2 }, 'attend', `Give ${halfMm(whole / 3)} mm.`),
    ],
    ...(depth >= whole
      ? {
          impossible: [
            {
              figure: 'depth',
              fault: `the housing is ${depth} mm deep, the board only ${whole} thick`,
              mend: `give ${halfMm(whole / 3)} mm`,
            },
          ],
        }
      : {}),
  };
}

/** Where the board that goes in is wider than the other, its end is cut back to the shoulder on what stands over. */
function ears(c: MakeContext, depth: number): { role: 'from'; cut: CutDraft }[] {
  const { contact, from } = c;
  const whole = bodyBox(from.body);
  return (['y', 'z'] as const).flatMap(axis =>
    (['low', 'high'] as const).flatMap(side => {
      const [low, high] =
        side === 'low' ? [0, contact.inFrom.min[axis]] : [contact.inFrom.max[axis], whole.max[axis]];
      if (high - low < 0.05) return [];
      const over = withSpan(beyond(whole, contact.fromFace, from.body, depth), axis, low, high);
      return [
        {
          role: 'from' as const,
          cut: {
            kind: 'notch' as const,
            face: SIDE[axis][side],
            box: over,
            run: axis === 'y' ? ('z' as const) : ('y' as const),
            through: true,
            corner: 'square' as const,
          },
        },
      ];
    }),
  );
}

const SIDE = {
  y: { low: 'backEdge', high: 'faceEdge' },
  z: { low: 'back', high: 'face' },
} as const;
