import type { Axis } from '../geometry/vector.ts';
import type { EndName } from '../results/cuts.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, type RoleCut, refused } from './fixing.ts';
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
  wholeMm,
  withSpan,
} from './shape.ts';
import { KEY_FIGURES, keyed, keyHoles, keyLimits, keyRefusals, TW5 } from './twin-tenon-keys.ts';

const TW1 = rule(
  'TW-1',
  'A rail more than half as thick as it is wide gets two tenons beside each other in its thickness; a wide one two in its width.',
  'Twice the glue face, and no tenon so thick that the post is weakened or so wide that it shrinks loose.',
);
const TW2 = rule(
  'TW-2',
  'Beside each other in the thickness: shoulder, tenon, gap, tenon, shoulder, each a fifth. In the width: each tenon a third, the gap a fifth.',
  'The wood between the mortises is as strong as a tenon.',
  { text: 'remembered trade proportions', basis: 'memory' },
);
const TW3 = rule(
  'TW-3',
  'Length, play and room behind the mortise are those of a single tenon: two thirds in, 0.1 mm, 2 mm deeper.',
  'Both tenons must go home together.',
);
const TW4 = rule(
  'TW-4',
  'At least 6 mm of wood stays between the two mortises.',
  'Less splits when the second is chopped.',
);

const TW6 = rule(
  'TW-6',
  'A board held dry by two tenons in its width has mortises as much wider as it moves.',
  'Tight ones split it, or push the posts apart.',
);

type Split = 'y' | 'z';
const thin = (r: JointReader): 'width' | 'thickness' =>
  r.size('from', 'thickness') <= r.size('from', 'width') ? 'thickness' : 'width';
const wide = (r: JointReader): 'width' | 'thickness' => (thin(r) === 'thickness' ? 'width' : 'thickness');
const inWidth = (r: JointReader): boolean => r.word('beside') === 'width';
const span = (r: JointReader): number => r.size('from', inWidth(r) ? wide(r) : thin(r));
const section = (r: JointReader): number => r.size('from', inWidth(r) ? thin(r) : wide(r));
const usual = (r: JointReader): number => wholeMm(span(r) / (inWidth(r) ? 3 : 5));

export const twinTenon: JointType = {
  type: 'twin-tenon',
  title: 'Twin tenon',
  says: 'Two tenons at one end of a rail, beside each other in its thickness or its width, each with a mortise of its own.',
  meets: 'end to face',
  many: false,
  needs: ['a mortising machine, router or chisels', 'a way to saw cheeks upright'],
  rules: [TW1, TW2, TW3, TW4, TW5, TW6],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: TW3,
      formula: 'stub unless said',
      choices: ['stub', 'through'],
      value: () => 'stub',
    },
    {
      name: 'beside',
      label: 'beside each other in the',
      kind: 'text',
      rule: TW1,
      formula: 'thickness where that is more than half the width, else width',
      choices: ['thickness', 'width'],
      value: r => (r.size('from', thin(r)) > r.size('from', wide(r)) / 2 ? 'thickness' : 'width'),
    },
    {
      name: 'first.size',
      label: 'first tenon',
      kind: 'length',
      rule: TW2,
      formula: 'a fifth of the thickness, or a third of the width, whole mm',
      value: usual,
    },
    {
      name: 'second.size',
      label: 'second tenon',
      kind: 'length',
      rule: TW2,
      formula: 'as the first',
      value: r => r.figure('first.size'),
    },
    {
      name: 'between',
      label: 'between the tenons',
      kind: 'length',
      rule: TW2,
      formula: 'a fifth, whole mm, 6 at least',
      value: r => Math.max(6, wholeMm(span(r) / 5)),
    },
    {
      name: 'shoulder.first',
      label: 'shoulder before the first tenon',
      kind: 'length',
      rule: TW2,
      formula: 'half of what the tenons and the gap leave',
      value: r => (span(r) - r.figure('first.size') - r.figure('second.size') - r.figure('between')) / 2,
    },
    {
      name: 'across',
      label: 'tenons the other way',
      kind: 'length',
      rule: TW2,
      formula: 'the width less a fifth at each edge; or a third of the thickness',
      value: r => (inWidth(r) ? wholeMm(section(r) / 3) : halfMm((section(r) * 3) / 5)),
    },
    {
      name: 'shoulder.across',
      label: 'shoulder the other way, towards the low side',
      kind: 'length',
      rule: TW2,
      formula: 'half of what the tenons leave',
      value: r => (section(r) - r.figure('across')) / 2,
    },
    {
      name: 'tenon.length',
      label: 'tenon length',
      kind: 'length',
      rule: TW3,
      formula: 'two thirds of the depth it enters; the whole of it when through',
      value: r =>
        r.word('kind') === 'through'
          ? r.depthOf('into')
          : Math.max(1, Math.floor((r.depthOf('into') * 2) / 3)),
    },
    {
      name: 'mortise.deeper',
      label: 'mortises deeper than the tenons by',
      kind: 'length',
      rule: TW3,
      formula: '2 mm; nothing when through',
      value: r => (r.word('kind') === 'through' ? 0 : 2),
    },
    {
      name: 'mortise.wider',
      label: 'mortises wider than the tenons, each side',
      kind: 'length',
      rule: TW6,
      formula: 'nothing unless said',
      value: () => 0,
    },
    ...KEY_FIGURES,
    {
      name: 'fit',
      label: 'play in the thickness',
      kind: 'length',
      rule: TW3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'tenon.length',
  make,
};

/** The axes of the rail's end: across which the tenons stand beside each other, and the other. */
function axes(c: MakeContext): { split: Split; other: Split } {
  const thinAxis: Split = c.from.body.thickness <= c.from.body.width ? 'z' : 'y';
  const wideAxis: Split = thinAxis === 'z' ? 'y' : 'z';
  return c.word('beside') === 'width'
    ? { split: wideAxis, other: thinAxis }
    : { split: thinAxis, other: wideAxis };
}

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const { split, other } = axes(c);
  const whole = { split: from.body[SIZE_OF_AXIS[split]], other: from.body[SIZE_OF_AXIS[other]] };
  const [first, second, between] = [c.figure('first.size'), c.figure('second.size'), c.figure('between')];
  const start = c.figure('shoulder.first');
  const last = whole.split - start - first - between - second;
  const low = c.figure('shoulder.across');
  const size = c.figure('across');
  const length = c.figure('tenon.length');
  const depth = deep(contact, into.body);
  const through = c.word('kind') === 'through';
  const sunkBy = through ? depth : Math.min(depth, length + c.figure('mortise.deeper'));
  const taken = {
    [split]: { low: start, high: last },
    [other]: { low, high: whole.other - low - size },
  } as Record<Split, { low: number; high: number }>;
  const fit = c.figure('fit');
  const bar = beyond(
    { min: { x: 0, y: 0, z: 0 }, max: { x: from.body.length, y: from.body.width, z: from.body.thickness } },
    contact.fromFace,
    from.body,
    length,
  );
  const tongue = (a: number, b: number) => withSpan(withSpan(bar, split, a, b), other, low, low + size);
  const wider = c.figure('mortise.wider');
  const mortise = (a: number, b: number): RoleCut => {
    const box = sunk(across(c, 'from', tongue(a - wider, b + wider)), contact.intoFace, into.body, sunkBy);
    return {
      role: 'into',
      cut: {
        kind: 'mortise',
        face: contact.intoFace,
        box,
        run: longAxis(box, contact.intoFace),
        through: sunkBy >= depth,
        corner: 'square',
        clearance: fit,
      },
    };
  };
  const tenon: CutDraft = {
    kind: 'tenon',
    end: contact.fromFace as EndName,
    length,
    y: taken.y,
    z: taken.z,
    cheeks: from.body.thickness <= from.body.width ? 'z' : 'y',
    through,
    clearance: fit,
  };
  const slot: CutDraft = {
    kind: 'open-mortise',
    face: contact.fromFace,
    box: withSpan(bar, split, start + first, start + first + between),
    run: other,
    through: true,
    corner: 'square',
    clearance: fit,
  };
  // In the thickness there are four broad cheeks; in the width the cheeks are those of one tenon, parted.
  const [one, two] = [4 * length * size, 2 * length * (first + second)];
  const cheeks = c.word('beside') === 'width' ? { long: two, cross: one } : { long: one, cross: two };
  const cuts: RoleCut[] = [
    { role: 'from', cut: tenon },
    { role: 'from', cut: slot },
    mortise(start, start + first),
    mortise(start + first + between, start + first + between + second),
    ...keyHoles(c, bar, split, [
      [start, start + first],
      [start + first + between, start + first + between + second],
    ]),
  ];
  return {
    cuts,
    mates: [[0, 2]] as [number, number][],
    glue: keyed(c)
      ? []
      : [
          { area: cheeks.long, grain: 'long' as const },
          { area: cheeks.cross, grain: 'cross' as const },
        ],
    fasteners: [],
    limits: [
      ...keyLimits(c),
      limit(TW4, 'between', between, { min: 6 }, 'attend', 'Leave 6 mm between the tenons.'),
      limit(
        TW3,
        'mortise.left',
        through ? 5 : depth - sunkBy,
        { min: 5 },
        'attend',
        `Tenons of ${Math.floor(depth - 5 - c.figure('mortise.deeper'))} mm leave 5 mm of wood.`,
      ),
      limit(TW3, 'fit', fit, { min: 0, max: 0.3 }, 'attend', 'Give 0.1 mm.'),
    ],
    ...refused([...refusals(c, whole, last, depth, through, cuts), ...keyRefusals(c)]),
  };
}

function refusals(
  c: MakeContext,
  whole: { split: number; other: number },
  last: number,
  depth: number,
  through: boolean,
  cuts: RoleCut[],
): Refusal[] {
  const found: Refusal[] = [];
  const length = c.figure('tenon.length');
  for (const figure of ['first.size', 'second.size', 'across', 'tenon.length', 'between'])
    if (c.figure(figure) <= 0)
      found.push({ figure, fault: `${c.figure(figure)} mm leaves no tenons`, mend: 'give more than 0' });
  if (last < -1e-6)
    found.push({
      figure: 'first.size',
      fault: `tenons of ${c.figure('first.size')} and ${c.figure('second.size')} mm with ${c.figure('between')} between them are more than the rail's ${whole.split}`,
      mend: `give two of ${wholeMm((whole.split - c.figure('between')) / 3)} mm`,
    });
  if (c.figure('across') + c.figure('shoulder.across') > whole.other + 1e-6)
    found.push({
      figure: 'across',
      fault: `tenons of ${c.figure('across')} mm do not come out of the rail's ${whole.other}`,
      mend: `give ${halfMm((whole.other * 3) / 5)} mm`,
    });
  if (!through && length >= depth)
    found.push({
      figure: 'tenon.length',
      fault: `the tenons are ${length} mm long, the member only ${depth} deep`,
      mend: `give at most ${Math.floor((depth * 2) / 3)} mm, or make them through tenons`,
    });
  if (through && length < depth - 1e-6)
    found.push({
      figure: 'tenon.length',
      fault: `through tenons of ${length} mm do not reach through ${depth}`,
      mend: `give ${depth} mm or more`,
    });
  if (2 * c.figure('mortise.wider') >= c.figure('between'))
    found.push({
      figure: 'mortise.wider',
      fault: `mortises ${c.figure('mortise.wider')} mm wider on each side meet: there are ${c.figure('between')} mm between the tenons`,
      mend: `give ${Math.max(0, Math.floor((c.figure('between') - 6) / 2))} mm`,
    });
  if (found.length === 0 && cuts.some(({ role, cut }) => role === 'into' && runsOut(c, cut)))
    found.push({
      figure: 'first.size',
      fault: `a mortise runs out of the side of ${c.into.instance}`,
      mend: 'make the tenons smaller, or let the rail stand wholly on the member',
    });
  return found;
}

const runsOut = (c: MakeContext, cut: CutDraft): boolean =>
  'box' in cut &&
  (['x', 'y', 'z'] as Axis[]).some(
    a =>
      a !== FACE_AXIS[c.contact.intoFace] &&
      (cut.box.min[a] < -0.05 || cut.box.max[a] > c.into.body[SIZE_OF_AXIS[a]] + 0.05),
  );
