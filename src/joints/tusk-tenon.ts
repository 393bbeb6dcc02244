import type { CutDraft, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { mortiseAndTenon } from './mortise-and-tenon.ts';
import { beyond, deep, limit, rule, SIZE_OF_AXIS } from './shape.ts';

const TT1 = rule(
  'TT-1',
  'The tenon stands out by the key and a key and a half of wood beyond it.',
  'Short grain beyond the key shears off when it is driven.',
);
const TT2 = rule(
  'TT-2',
  'The key hole begins 1 mm inside the far face.',
  'The key must bear on the post, not on the end of its own hole, to draw the shoulder home.',
);
const TT3 = rule(
  'TT-3',
  'The key is a quarter of the tenon wide.',
  'The tenon keeps sound wood on both sides of it.',
);

/** A through tenon held by a loose key: it comes apart again. */
export const tuskTenon: JointType = {
  ...mortiseAndTenon,
  type: 'tusk-tenon',
  title: 'Tusk tenon',
  says: 'A tenon that stands out beyond the post and is drawn tight by a loose key, to be knocked apart again.',
  needs: [...mortiseAndTenon.needs, 'a tapered key, cut to the fit'],
  rules: [TT1, TT2, TT3],
  figures: [
    ...mortiseAndTenon.figures
      .filter(f => f.name !== 'tip' && f.name !== 'haunch.length' && f.name !== 'mortise.deeper')
      .map(f => {
        if (f.name === 'kind')
          return { ...f, rule: TT1, formula: 'through', choices: ['through'], value: () => 'through' };
        if (f.name === 'tenon.length')
          return {
            ...f,
            rule: TT1,
            formula: 'the depth of the post, the key, and a key and a half beyond',
            value: r => Math.ceil(r.depthOf('into') + 2.5 * r.figure('key.width')),
          } satisfies typeof f;
        return f;
      }),
    {
      name: 'key.width',
      positive: true,
      label: 'key, along the tenon',
      kind: 'length',
      rule: TT3,
      formula: 'a half of the post, 15 to 25 mm',
      value: r => Math.min(25, Math.max(15, Math.round(r.depthOf('into') / 2))),
    },
    {
      name: 'key.thickness',
      positive: true,
      label: 'key, across the tenon',
      kind: 'length',
      rule: TT3,
      formula: 'a quarter of the tenon, 6 mm at least',
      value: r => Math.max(6, Math.round(r.figure('tenon.width') / 4)),
    },
    {
      name: 'key.inside',
      label: 'key hole begins inside the face by',
      kind: 'length',
      rule: TT2,
      formula: '1 mm',
      value: () => 1,
    },
  ],
  make,
};

const FIXED: Record<string, number | string> = { tip: 'square', 'haunch.length': 0, 'mortise.deeper': 0 };

function make(c: MakeContext) {
  const made = mortiseAndTenon.make({
    ...c,
    figure: name => (name in FIXED ? Number(FIXED[name]) : c.figure(name)),
    word: name => (name in FIXED ? String(FIXED[name]) : c.word(name)),
  });
  const tenon = made.cuts[0]!.cut;
  const { contact, from, into } = c;
  if (tenon.kind !== 'tenon' || made.impossible) return made;
  const depth = deep(contact, into.body);
  const start = depth - c.figure('key.inside');
  const edges = tenon.cheeks === 'z' ? 'y' : 'z';
  const [low, high] = [tenon[edges].low, from.body[SIZE_OF_AXIS[edges]] - tenon[edges].high];
  const middle = (low + high) / 2;
  const half = c.figure('key.thickness') / 2;
  const whole = {
    min: { x: 0, y: 0, z: 0 },
    max: { x: from.body.length, y: from.body.width, z: from.body.thickness },
  };
  const reach = (length: number) => beyond(whole, contact.fromFace, from.body, length);
  const [a, b] = [reach(start), reach(start + c.figure('key.width'))];
  const x = contact.fromFace === 'end2' ? [a.max.x, b.max.x] : [b.min.x, a.min.x];
  const hole: CutDraft = {
    kind: 'mortise',
    face: tenon.cheeks === 'z' ? 'face' : 'faceEdge',
    box: {
      min: { ...whole.min, x: x[0]!, [edges]: middle - half },
      max: { ...whole.max, x: x[1]!, [edges]: middle + half },
    },
    run: 'x',
    through: true,
    corner: 'square',
  };
  const left = c.figure('tenon.length') - start - c.figure('key.width');
  return {
    ...made,
    glue: [],
    cuts: [...made.cuts, { role: 'from' as const, cut: hole }],
    limits: [
      ...made.limits,
      limit(
        TT1,
        'left.beyond',
        left,
        { min: c.figure('key.width') },
        'attend',
        `Make the tenon ${Math.ceil(start + 2 * c.figure('key.width'))} mm long.`,
      ),
    ],
    ...(left <= 0
      ? {
          impossible: [
            {
              figure: 'tenon.length',
              fault: `the tenon of ${c.figure('tenon.length')} mm ends inside the key`,
              mend: `give ${Math.ceil(start + 2.5 * c.figure('key.width'))} mm`,
            },
          ],
        }
      : {}),
  };
}
