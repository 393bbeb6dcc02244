import type { Box } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { LocalFace, Size } from '../results/cuts.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { faceOf, type Refusal, refused } from './fixing.ts';
import { FACE_AXIS, halfMm, limit, rule, SIZE_OF_AXIS, withSpan } from './shape.ts';

const RU1 = rule(
  'RU-1',
  'A groove that slides on its runner is 0.5 mm higher than it; one that is glued or screwed on it 0.1 mm.',
  'A drawer must run in the wet months and not rattle in the dry ones.',
  { text: 'remembered, 0.3 to 0.8 mm', basis: 'memory' },
);
const RU2 = rule('RU-2', 'It is no deeper than half of the side.', 'The side breaks along it.');
const RU3 = rule(
  'RU-3',
  'Behind the runner 0.5 mm stay free, at a stopped end 1 mm.',
  'The side must not bind on it.',
);
const RU4 = rule(
  'RU-4',
  'Above and below the groove stays as much wood as it is deep, 6 mm at least.',
  'The strip beside it carries the drawer.',
);

const FLUSH = 0.05;

export const runnerGroove: JointType = {
  type: 'runner-groove',
  title: 'Runner in a groove',
  says: 'A strip let into a groove of a side: a drawer that runs on it, or a runner let into a carcase.',
  meets: 'overlap',
  many: true,
  needs: ['a grooving blade or a router and fence'],
  rules: [RU1, RU2, RU3, RU4],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: RU1,
      formula: 'sliding unless said',
      choices: ['sliding', 'fast'],
      value: () => 'sliding',
    },
    {
      name: 'play',
      label: 'play in the height',
      kind: 'length',
      rule: RU1,
      formula: '0.5 mm where it slides, 0.1 where it is fast',
      value: r => (r.word('kind') === 'sliding' ? 0.5 : 0.1),
    },
    {
      name: 'behind',
      label: 'room behind the runner',
      kind: 'length',
      rule: RU3,
      formula: '0.5 mm where it slides, nothing where it is fast',
      value: r => (r.word('kind') === 'sliding' ? 0.5 : 0),
    },
    {
      name: 'at.end',
      label: 'room at a stopped end',
      kind: 'length',
      rule: RU3,
      formula: '1 mm',
      value: () => 1,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, into } = c;
  const region = contact.inInto;
  const span = (a: Axis): number => region.max[a] - region.min[a];
  const axes = (['x', 'y', 'z'] as Axis[]).sort((a, b) => span(b) - span(a));
  const run = axes[0]!;
  const face = openFace(region, into.body, axes.slice(1));
  if (!face) return { cuts: [], glue: [], fasteners: [], limits: [], ...refused([buried(c)]) };
  const entry = FACE_AXIS[face];
  const high = (['x', 'y', 'z'] as const).find(a => a !== run && a !== entry)!;
  const play = c.figure('play');
  const box = grown(region, into.body, {
    [entry]: c.figure('behind'),
    [high]: play / 2,
    [run]: c.figure('at.end'),
  });
  const depth = box.max[entry] - box.min[entry];
  const whole = into.body[SIZE_OF_AXIS[entry]];
  const beside = Math.min(box.min[high], into.body[SIZE_OF_AXIS[high]] - box.max[high]);
  const fast = c.word('kind') === 'fast';
  return {
    cuts: [
      {
        role: 'into' as const,
        cut: {
          kind: 'groove' as const,
          face,
          box,
          run,
          through: false,
          corner: 'square' as const,
          clearance: play,
        },
      },
    ],
    glue: fast ? [{ area: span(run) * span(high), grain: 'long' as const }] : [],
    fasteners: [],
    limits: [
      limit(
        RU2,
        'groove depth',
        depth,
        { max: whole / 2 },
        'attend',
        `Let the runner in by ${halfMm(whole / 3)} mm.`,
      ),
      limit(
        RU4,
        'wood beside the groove',
        beside,
        { min: 6 },
        'attend',
        'Set the runner further from the edge of the side.',
      ),
      limit(
        RU1,
        'play',
        play,
        { min: fast ? 0 : 0.2, max: fast ? 0.3 : 1 },
        'attend',
        fast ? 'Give 0.1 mm.' : 'Give 0.5 mm.',
      ),
    ],
    ...refused(
      depth >= whole
        ? [
            {
              figure: 'behind',
              fault: `a groove ${Math.round(depth * 10) / 10} mm deep goes through a side of ${whole}`,
              mend: `let the runner in by ${halfMm(whole / 3)} mm`,
            },
          ]
        : [],
    ),
  };
}

/** A runner that comes out of no face, or out of both. */
function buried(c: MakeContext): Refusal {
  const { contact, into, from } = c;
  const through = (['y', 'z'] as const).find(
    a => contact.inInto.max[a] - contact.inInto.min[a] >= into.body[SIZE_OF_AXIS[a]] - FLUSH,
  );
  return through
    ? {
        figure: 'behind',
        fault: `${from.instance} goes through a side of ${into.body[SIZE_OF_AXIS[through]]}`,
        mend: `let the runner in by ${halfMm(into.body[SIZE_OF_AXIS[through]] / 3)} mm`,
      }
    : {
        figure: 'play',
        fault: `${from.instance} reaches no face of ${into.instance}`,
        mend: 'let it stand out of a face of the side',
      };
}

/** The face, beside the run, through which the runner stands out. */
function openFace(b: Box, s: Size, axes: readonly Axis[]): LocalFace | undefined {
  for (const a of [...axes].reverse()) {
    const open = [b.min[a] <= FLUSH, b.max[a] >= s[SIZE_OF_AXIS[a]] - FLUSH];
    if (open[0] !== open[1]) return faceOf(a, open[1]!);
  }
  return undefined;
}

/** The region with its room on every side that has wood beyond it. */
function grown(b: Box, s: Size, room: Partial<Record<Axis, number>>): Box {
  return (['x', 'y', 'z'] as const).reduce((box, a) => {
    const whole = s[SIZE_OF_AXIS[a]];
    const more = room[a] ?? 0;
    return withSpan(
      box,
      a,
      b.min[a] <= FLUSH ? 0 : Math.max(0, b.min[a] - more),
      b.max[a] >= whole - FLUSH ? whole : Math.min(whole, b.max[a] + more),
    );
  }, b);
}
