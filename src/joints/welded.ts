import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { flatArea, limit, rule } from './shape.ts';

const WE1 = rule(
  'WE-1',
  'Tube and metal up to 3 mm are fitted tight; thicker metal is set back half its thickness, 2 mm at most, so that the weld goes through.',
  'A weld that only lies on the surface breaks off with it.',
  { text: 'remembered; the welder has the last word', basis: 'memory' },
);
const WE2 = rule(
  'WE-2',
  'Welding is done by someone qualified, or sent out with this drawing; all round unless it says otherwise.',
  'Fumes, light and fire; and a weld nobody can see into holds a person up.',
);
const WE3 = rule(
  'WE-3',
  'A frame is tacked at all its corners, measured over its diagonals, then welded turn about.',
  'Each weld draws its corner as it cools.',
);

/** The thinnest way through the bar; walls of furniture tube are 3 mm and less. */
const metal = (r: JointReader): number =>
  r.kind('from') === 'tube' ? 0 : Math.min(r.size('from', 'thickness'), r.size('from', 'width'));

export const welded: JointType = {
  type: 'welded',
  title: 'Welded end',
  says: 'The end of a bar or tube welded to the face of another; outwork, unless the maker welds.',
  meets: 'end to face',
  many: true,
  needs: ['a welder, or outwork', 'a grinder with its guard', 'a flat place to tack on'],
  rules: [WE1, WE2, WE3],
  figures: [
    {
      name: 'gap',
      label: 'weld gap',
      kind: 'length',
      rule: WE1,
      formula: 'none for tube and metal to 3 mm, else half of it, 2 mm at most',
      value: r => (metal(r) <= 3 ? 0 : Math.min(2, metal(r) / 2)),
    },
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
    glue: [{ area: flatArea(c.contact.inInto), grain: 'metal' as const }],
    fasteners: [],
    limits: [limit(WE1, 'gap', c.figure('gap'), { min: 0, max: 3 }, 'attend', 'Give 2 mm or less.')],
    ...(c.from.kind === 'timber' || c.into.kind === 'timber'
      ? {
          impossible: [
            {
              figure: 'gap',
              fault: `${c.from.kind === 'timber' ? c.from.instance : c.into.instance} is timber`,
              mend: 'weld metal to metal; screw or bolt timber to it',
            },
          ],
        }
      : {}),
  }),
};
