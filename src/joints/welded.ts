import type {
  JointFigure,
  JointParts,
  JointReader,
  JointType,
  MakeContext,
} from '../setting-out/joint-type.ts';
import { limit, rule } from './shape.ts';

export const WE1 = rule(
  'WE-1',
  'Tube and metal up to 3 mm are fitted tight; thicker metal is set back half its thickness, 2 mm at most, so that the weld goes through.',
  'A weld that only lies on the surface breaks off with it.',
  { text: 'remembered; the welder has the last word', basis: 'memory' },
);
export const WE2 = rule(
  'WE-2',
  'Welding is done by someone qualified, or sent out with this drawing; all round unless it says otherwise.',
  'Fumes, light and fire; and a weld nobody can see into holds a person up.',
);
export const WE3 = rule(
  'WE-3',
  'A frame is tacked at all its corners, measured over its diagonals, then welded turn about.',
  'Each weld draws its corner as it cools.',
);

/** Metal to be welded through, mm: the wall, or the thinnest way through a solid bar. */
const metal = (r: JointReader): number =>
  r.wall('from') ?? Math.min(r.size('from', 'thickness'), r.size('from', 'width'));

/** The gap between the two at the weld. */
export const WELD_GAP: JointFigure = {
  name: 'gap',
  label: 'weld gap',
  kind: 'length',
  rule: WE1,
  formula: 'none for metal to 3 mm, else half of it, 2 mm at most',
  value: r => (metal(r) <= 3 ? 0 : Math.min(2, metal(r) / 2)),
};

/** Refused with timber on either side; a gap over 3 mm is told. */
export function weldLimits(c: MakeContext): Pick<JointParts, 'limits' | 'impossible'> {
  const timber = [c.from, c.into].find(m => m.kind === 'timber' || m.kind === 'sheet');
  return {
    limits: [limit(WE1, 'gap', c.figure('gap'), { min: 0, max: 3 }, 'attend', 'Give 2 mm or less.')],
    ...(timber === undefined
      ? {}
      : {
          impossible: [
            {
              figure: 'gap',
              fault: `${timber.instance} is ${timber.kind}`,
              mend: 'weld metal to metal; screw or bolt timber to it',
            },
          ],
        }),
  };
}

export const welded: JointType = {
  type: 'welded',
  title: 'Welded end',
  says: 'The end of a bar or tube welded to the face of another; outwork, unless the maker welds.',
  meets: 'end to face',
  many: true,
  needs: ['a welder, or outwork', 'a grinder with its guard', 'a flat place to tack on'],
  rules: [WE1, WE2, WE3],
  figures: [
    WELD_GAP,
    {
      name: 'set.back',
      label: 'end set back',
      kind: 'length',
      rule: WE1,
      formula: 'less the gap',
      value: r => -r.figure('gap'),
    },
  ],
  adds: () => 'set.back',
  make: (c: MakeContext) => ({
    cuts: [],
    glue: [],
    weld: {
      length: c.from.round ? Math.PI * c.from.body.width : 2 * (c.from.body.width + c.from.body.thickness),
    },
    fasteners: [],
    ...weldLimits(c),
  }),
};
