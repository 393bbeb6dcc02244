import type { Box } from '../geometry/box.ts';
import type { JointLimit } from '../results/piece.ts';
import type { JointFigure, MakeContext } from '../setting-out/joint-type.ts';
import type { Refusal, RoleCut } from './fixing.ts';
import { limit, rule, withSpan } from './shape.ts';

/** Keys through twin tenons that stand out beyond the post: a shelf that comes apart again. */

export const TW5 = rule(
  'TW-5',
  'Keyed twin tenons stand out by the key and a key and a half of wood; the key hole begins 1 mm inside the far face.',
  'Short grain beyond the key shears off; a key that bears in its own hole does not draw the shoulder home.',
);

export const KEY_FIGURES: JointFigure[] = [
  {
    name: 'key.width',
    label: 'key, along the tenon',
    kind: 'length',
    rule: TW5,
    formula: 'nothing: no keys unless said',
    value: () => 0,
  },
  {
    name: 'key.thickness',
    label: 'key, across the tenon',
    kind: 'length',
    rule: TW5,
    formula: 'a quarter of the tenon, 6 mm at least',
    value: r => Math.max(6, Math.round(r.figure('first.size') / 4)),
  },
  {
    name: 'key.from_shoulder',
    label: 'key hole from the shoulder',
    kind: 'length',
    rule: TW5,
    formula: 'the depth of the member less 1 mm',
    value: r => Math.max(0, r.depthOf('into') - 1),
  },
];

export const keyed = (c: MakeContext): boolean => c.figure('key.width') > 0;

/** Wood beyond the key, mm. */
const beyondKey = (c: MakeContext): number =>
  c.figure('tenon.length') - c.figure('key.from_shoulder') - c.figure('key.width');

/** Holes for the keys, in the middle of each tenon. `bar` is the end beyond the shoulder, `split` the axis of the pair. */
export function keyHoles(c: MakeContext, bar: Box, split: 'y' | 'z', tenons: [number, number][]): RoleCut[] {
  if (!keyed(c)) return [];
  const [start, width, half] = [
    c.figure('key.from_shoulder'),
    c.figure('key.width'),
    c.figure('key.thickness') / 2,
  ];
  const out = c.contact.fromFace === 'end2';
  const x = out ? bar.min.x + start : bar.max.x - start;
  const along = withSpan(bar, 'x', x, out ? x + width : x - width);
  return tenons.map(([a, b]): RoleCut => {
    const middle = (a + b) / 2;
    return {
      role: 'from',
      cut: {
        kind: 'mortise',
        face: split === 'y' ? 'face' : 'faceEdge',
        box: withSpan(along, split, middle - half, middle + half),
        run: 'x',
        through: true,
        corner: 'square',
      },
    };
  });
}

export const keyLimits = (c: MakeContext): JointLimit[] =>
  keyed(c)
    ? [
        limit(
          TW5,
          'left beyond the key',
          beyondKey(c),
          { min: c.figure('key.width') },
          'attend',
          `Make the tenons ${Math.ceil(c.figure('key.from_shoulder') + 2.5 * c.figure('key.width'))} mm long.`,
        ),
      ]
    : [];

export function keyRefusals(c: MakeContext): Refusal[] {
  if (!keyed(c)) return [];
  const found: Refusal[] = [];
  const least = Math.min(c.figure('first.size'), c.figure('second.size'));
  if (beyondKey(c) <= 0)
    found.push({
      figure: 'tenon.length',
      fault: `tenons of ${c.figure('tenon.length')} mm end inside their keys`,
      mend: `give ${Math.ceil(c.figure('key.from_shoulder') + 2.5 * c.figure('key.width'))} mm`,
    });
  if (c.figure('key.thickness') <= 0 || c.figure('key.thickness') >= least)
    found.push({
      figure: 'key.thickness',
      fault: `a key ${c.figure('key.thickness')} mm thick in a tenon of ${least}`,
      mend: `give ${Math.max(1, Math.round(least / 4))} mm`,
    });
  if (c.word('kind') !== 'through')
    found.push({
      figure: 'kind',
      fault: 'a key holds a tenon that goes through',
      mend: 'make it a through one',
    });
  return found;
}
