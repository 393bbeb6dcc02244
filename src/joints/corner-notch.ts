import type { Box } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { LocalFace, Size } from '../results/cuts.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { faceOf, type Refusal, refused } from './fixing.ts';
import { FACE_AXIS, limit, rule, SIZE_OF_AXIS, withSpan } from './shape.ts';

const NO1 = rule(
  'NO-1',
  'The notch is the post as it measures, with 0.2 mm play on each side that touches.',
  'It must drop over the post without force; more shows as a gap.',
  { text: 'remembered fit', basis: 'memory' },
);
const NO2 = rule(
  'NO-2',
  'A notch takes no more than half of the width of the board.',
  'The short grain beside it breaks off.',
);

export const cornerNotch: JointType = {
  type: 'corner-notch',
  title: 'Notch round a post',
  says: 'A board cut out at its corner or its edge, to lie round a post or to take a rail flush.',
  meets: 'overlap',
  many: true,
  needs: ['a fine saw and chisel, or a band saw'],
  rules: [NO1, NO2],
  figures: [
    {
      name: 'play',
      label: 'play on each side',
      kind: 'length',
      rule: NO1,
      formula: '0.2 mm',
      value: () => 0.2,
    },
  ],
  adds: () => undefined,
  make,
};

const AXES: readonly Axis[] = ['z', 'x', 'y'];
const FLUSH = 0.05;

function make(c: MakeContext) {
  const { contact, into } = c;
  const play = c.figure('play');
  const region = contact.inInto;
  const through = AXES.filter(a => spans(region, into.body, a));
  // The notch is cut through the thickness where it can be; a rail let in flush is cut from the face it lies in.
  const run = through[0];
  const box = grown(region, into.body, play);
  const sides = AXES.filter(a => a !== run);
  const open = openFace(region, into.body, sides);
  const share = Math.min(...sides.map(a => (region.max[a] - region.min[a]) / into.body[SIZE_OF_AXIS[a]]));
  const span = (a: Axis): number => region.max[a] - region.min[a];
  return {
    cuts:
      run && open
        ? [
            {
              role: 'into' as const,
              cut: {
                kind: 'notch' as const,
                face: open,
                box,
                run,
                through: spans(region, into.body, FACE_AXIS[open]),
                corner: 'square' as const,
                clearance: 2 * play,
              },
            },
          ]
        : [],
    glue: run ? [{ area: span(run) * Math.min(...sides.map(span)), grain: 'end' as const }] : [],
    fasteners: [],
    limits: [
      {
        ...limit(NO2, 'share', share, { max: 0.5 }, 'attend', 'Use a thinner post, or a halving.'),
        kind: 'number' as const,
      },
    ],
    ...refused(refusals(c, run !== undefined && open !== undefined)),
  };
}

const spans = (b: Box, s: Size, a: Axis): boolean => b.max[a] - b.min[a] >= s[SIZE_OF_AXIS[a]] - FLUSH;

/** The region with its play on every side that has wood beyond it. */
function grown(b: Box, s: Size, play: number): Box {
  return AXES.reduce((box, a) => {
    const whole = s[SIZE_OF_AXIS[a]];
    return withSpan(
      box,
      a,
      b.min[a] <= FLUSH ? 0 : b.min[a] - play,
      b.max[a] >= whole - FLUSH ? whole : b.max[a] + play,
    );
  }, b);
}

/** The side through which the post comes in: a notch without one is a mortise. */
function openFace(b: Box, s: Size, sides: readonly Axis[]): LocalFace | undefined {
  for (const a of [...sides].reverse()) {
    if (b.min[a] <= FLUSH) return faceOf(a, false);
    if (b.max[a] >= s[SIZE_OF_AXIS[a]] - FLUSH) return faceOf(a, true);
  }
  return undefined;
}

function refusals(c: MakeContext, open: boolean): Refusal[] {
  return open
    ? []
    : [
        {
          figure: 'play',
          fault: `${c.from.instance} lies inside ${c.into.instance} and reaches none of its edges`,
          mend: 'let it reach an edge, or use a mortise',
        },
      ];
}
