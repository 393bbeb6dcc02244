import type { LocalFace } from '../results/cuts.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import {
  across,
  beyond,
  deep,
  FACE_AXIS,
  halfMm,
  limit,
  longAxis,
  rule,
  SIZE_OF_AXIS,
  sunk,
  withSpan,
} from './shape.ts';

const GP1 = rule(
  'GP-1',
  'The groove is 10 mm deep, never more than half the member.',
  'The panel must not come out when it shrinks, nor the member split.',
);
const GP2 = rule(
  'GP-2',
  'The groove is 0.2 mm wider than the panel edge.',
  'The panel slides while the frame closes and may move afterwards.',
);
const GP3 = rule(
  'GP-3',
  'A solid panel keeps 1 mm for every 100 of its width free on each side edge.',
  'It swells across the grain and would force the frame apart.',
);
const GP4 = rule(
  'GP-4',
  'Along the grain, and for sheet, 1 mm is left.',
  'Enough for the frame to close; wood hardly moves along the grain.',
);

/** Beyond any tenon: a groove that runs through is cut off where the wood ends. */
const FAR = 10_000;

const isSide = (face: LocalFace): boolean => face === 'backEdge' || face === 'faceEdge';
const solid = (r: JointReader): boolean => r.kind('from') === 'timber';

export const groovedPanel: JointType = {
  type: 'grooved-panel',
  title: 'Panel in a groove',
  says: 'A panel held loose in grooves round its edges.',
  meets: 'edge to face',
  many: true,
  needs: ['a grooving blade or a slot cutter'],
  rules: [GP1, GP2, GP3, GP4],
  figures: [
    {
      name: 'groove.depth',
      positive: true,
      label: 'groove depth',
      kind: 'length',
      rule: GP1,
      formula: '10 mm, at most half the member',
      value: r => Math.min(10, halfMm(r.depthOf('into') / 2)),
    },
    {
      name: 'gap.side',
      label: 'gap at a side edge',
      kind: 'length',
      rule: GP3,
      formula: '1 mm for each 100 of width when solid, else 1',
      value: r =>
        solid(r)
          ? Math.max(1, Math.min(halfMm(r.size('from', 'width') / 100), r.figure('groove.depth') / 2))
          : 1,
    },
    { name: 'gap.end', label: 'gap at an end', kind: 'length', rule: GP4, formula: '1 mm', value: () => 1 },
    {
      name: 'enters.side',
      label: 'a side edge enters',
      kind: 'length',
      rule: GP3,
      formula: 'groove less gap',
      value: r => r.figure('groove.depth') - r.figure('gap.side'),
    },
    {
      name: 'enters.end',
      label: 'an end enters',
      kind: 'length',
      rule: GP4,
      formula: 'groove less gap',
      value: r => r.figure('groove.depth') - r.figure('gap.end'),
    },
    {
      name: 'edge.thickness',
      positive: true,
      label: 'panel edge',
      kind: 'length',
      rule: GP2,
      formula: "the panel's thickness unless its edge is rebated",
      value: r => r.size('from', 'thickness'),
    },
    {
      name: 'edge.at',
      label: 'panel edge stands at',
      kind: 'text',
      rule: GP2,
      formula: 'the face unless said',
      choices: ['face', 'middle', 'back'],
      value: () => 'face',
    },
    { name: 'fit', label: 'groove wider by', kind: 'length', rule: GP2, formula: '0.2 mm', value: () => 0.2 },
    {
      name: 'run',
      label: 'groove runs',
      kind: 'text',
      rule: GP1,
      formula: 'through unless said',
      choices: ['through', 'stopped'],
      value: () => 'through',
    },
  ],
  adds: contact => (isSide(contact.fromFace) ? 'enters.side' : 'enters.end'),
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const depth = c.figure('groove.depth');
  const side = isSide(contact.fromFace);
  const gap = c.figure(side ? 'gap.side' : 'gap.end');
  const edge = c.figure('edge.thickness');
  // A rebated edge is usually let in from the panel's back, so the tongue stands at its face; a build-up stands in the middle.
  const thick = from.body.thickness;
  const low = { face: thick - edge, middle: (thick - edge) / 2, back: 0 }[c.word('edge.at')] ?? thick - edge;
  const tongue = withSpan(contact.inFrom, 'z', low, low + edge);
  let box = sunk(
    across(c, 'from', beyond(tongue, contact.fromFace, from.body, depth)),
    contact.intoFace,
    into.body,
    depth,
  );
  const run = longAxis(box, contact.intoFace);
  const thin = (['x', 'y', 'z'] as const).find(a => a !== run && a !== FACE_AXIS[contact.intoFace])!;
  const fit = c.figure('fit');
  const room = into.body[SIZE_OF_AXIS[thin]];
  // At the edge of a member the groove is a rebate: what stands over is not there to cut.
  box = withSpan(box, thin, Math.max(0, box.min[thin] - fit / 2), Math.min(room, box.max[thin] + fit / 2));
  if (c.word('run') === 'through' && run === 'x') box = withSpan(box, 'x', -FAR, into.body.length + FAR);
  const whole = deep(contact, into.body);
  return {
    cuts: [
      {
        role: 'into' as const,
        cut: {
          kind: 'groove' as const,
          face: contact.intoFace,
          box,
          run,
          through: false,
          corner: 'square' as const,
          clearance: fit,
        },
      },
    ],
    glue: [],
    fasteners: [],
    limits: [
      limit(
        GP1,
        'groove.depth',
        depth,
        { max: whole / 2 },
        'attend',
        `Give ${Math.floor(whole / 2)} mm or less.`,
      ),
    ],
    ...(from.kind === 'timber' && side
      ? {
          room: {
            instance: from.instance,
            width: (c.panel('from').max.y - c.panel('from').min.y + 2 * (depth - gap)) / 2,
            swell: gap,
            shrink: depth - gap,
            what: 'panel in groove' as const,
          },
        }
      : {}),
    ...refused(refusals(c, depth, whole, depth - gap, room - (box.max[thin] - box.min[thin]))),
  };
}

function refusals(c: MakeContext, depth: number, whole: number, enters: number, left: number): Refusal[] {
  const found: Refusal[] = [];
  if (depth >= whole)
    found.push({
      figure: 'groove.depth',
      fault: `the groove is ${depth} mm deep, the member only ${whole}`,
      mend: `give ${Math.floor(whole / 2)} mm`,
    });
  const thick = c.from.body.thickness;
  // A build-up stands on both sides of its core and is thicker than that.
  if (c.word('edge.at') !== 'middle' && c.figure('edge.thickness') > thick + 1e-6)
    found.push({
      figure: 'edge.thickness',
      fault: `a panel edge of ${c.figure('edge.thickness')} mm on a panel of ${thick}`,
      mend: `give ${thick} mm or less`,
    });
  if (left < 1e-6)
    found.push({
      figure: 'edge.thickness',
      fault: `a groove for an edge of ${c.figure('edge.thickness')} mm leaves nothing of ${c.into.instance} beside it`,
      mend: `give ${thick} mm`,
    });
  const side = isSide(c.contact.fromFace) ? 'side' : 'end';
  if (c.figure(`enters.${side}`) > depth + 1e-6 || enters < 0)
    found.push({
      figure: `enters.${side}`,
      fault: `the panel enters ${c.figure(`enters.${side}`)} mm, the groove is only ${depth} deep`,
      mend: `give ${Math.max(0, depth - 1)} mm`,
    });
  return found;
}
