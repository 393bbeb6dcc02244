import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { plainMitre } from './mitre-line.ts';
import { type Mitre, mitreOf } from './mitred-frame.ts';
import { rule } from './shape.ts';
import { WE1, WE2, WE3, WELD_GAP, weldLimits } from './welded.ts';

const WM1 = rule(
  'WM-1',
  'Each end is sawn so that the joint runs from inner to outer corner; the whole gap is taken from the first bar.',
  'Saw stops are set once for all bars of a side, and the frame comes to its size outside.',
);

/** How much longer the line of the corner is than the first bar is wide: the gap stands square to that line. */
function slant(r: JointReader): number {
  const { min, max } = r.contact.inFrom;
  const run = max.x - min.x;
  // The bar's size in the plane of the corner is the one the other's size there comes nearest to.
  const [y, z] = [max.y - min.y, max.z - min.z];
  const wide = Math.abs(y - run) <= Math.abs(z - run) ? y : z;
  return Math.hypot(run, wide) / wide;
}

/** Round the mitred end: two lines from inner to outer corner, two across. */
function roundMitre(c: MakeContext): number {
  const [own, other] = (['from', 'into'] as const).map(role => mitreOf(c, role)) as [Mitre, Mitre];
  return 2 * (Math.hypot(own.wide, other.wide) + Math.min(own.deep, other.deep));
}

export const weldedMitre: JointType = {
  type: 'welded-mitre',
  title: 'Welded mitre',
  says: 'Two bars, tubes or angles of a frame mitred and welded at the corner; outwork, unless the maker welds.',
  meets: 'corner',
  many: true,
  needs: ['a metal saw that turns to the mitre', 'a welder, or outwork', 'a grinder with its guard'],
  rules: [WM1, WE1, WE2, WE3],
  figures: [
    WELD_GAP,
    {
      name: 'set.back',
      label: 'end set back',
      kind: 'length',
      rule: WM1,
      formula: 'less the gap, measured along the bar',
      value: r => -r.figure('gap') * slant(r),
    },
  ],
  adds: () => 'set.back',
  make: (c: MakeContext) => ({
    ...plainMitre(c, 'gap'),
    glue: [],
    weld: { length: roundMitre(c) },
    ...weldLimits(c),
  }),
};
