import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused, runOf } from './fixing.ts';
import {
  across,
  deep,
  flatArea,
  limit,
  longAxis,
  otherAxis,
  rule,
  sunk,
  wholeMm,
  withSpan,
} from './shape.ts';

const LT1 = rule(
  'LT-1',
  'The loose tenon is a third of the thinner member thick.',
  'As for a tenon of its own.',
);
const LT2 = rule(
  'LT-2',
  'It enters each member by two and a half times its thickness, leaving 5 mm.',
  'Glue area on both sides alike; no far face bruised.',
);
const LT3 = rule(
  'LT-3',
  'Each mortise is 1 mm deeper than the tenon reaches.',
  'Glue needs room, or the joint stays open.',
);
const LT4 = rule('LT-4', 'It is half as wide as the member, in the middle.', 'Wood stays on both edges.');

const thin = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));
const wide = (r: JointReader): number => Math.max(r.size('from', 'thickness'), r.size('from', 'width'));

export const looseTenon: JointType = {
  type: 'loose-tenon',
  title: 'Loose tenon',
  says: 'Two mortises with round ends and a tenon of its own between them.',
  meets: 'end to face',
  many: true,
  needs: ['a slot mortiser or a router with a template', 'tenon stock with rounded edges'],
  rules: [LT1, LT2, LT3, LT4],
  figures: [
    {
      name: 'tenon.thickness',
      positive: true,
      label: 'tenon thickness',
      kind: 'length',
      rule: LT1,
      formula: 'a third of the thinner member, whole mm',
      value: r => wholeMm(thin(r) / 3),
    },
    {
      name: 'tenon.width',
      positive: true,
      label: 'tenon width',
      kind: 'length',
      rule: LT4,
      formula: 'half the member',
      value: r => Math.round(wide(r) / 2),
    },
    {
      name: 'enters.from',
      positive: true,
      label: 'enters the end',
      kind: 'length',
      rule: LT2,
      formula: 'two and a half thicknesses',
      value: r => Math.round(2.5 * r.figure('tenon.thickness')),
    },
    {
      name: 'enters.into',
      positive: true,
      label: 'enters the face',
      kind: 'length',
      rule: LT2,
      formula: 'two and a half thicknesses, leaving 6 mm',
      value: r =>
        Math.max(
          1,
          Math.min(Math.round(2.5 * r.figure('tenon.thickness')), Math.floor(r.depthOf('into') - 6)),
        ),
    },
    {
      name: 'fit',
      label: 'play in the thickness',
      kind: 'length',
      rule: LT1,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const [thickness, width] = [c.figure('tenon.thickness'), c.figure('tenon.width')];
  const run = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, run);
  const middle = (a: 'x' | 'y' | 'z'): number => (contact.inFrom.min[a] + contact.inFrom.max[a]) / 2;
  let mouth = withSpan(contact.inFrom, run, middle(run) - width / 2, middle(run) + width / 2);
  mouth = withSpan(mouth, side, middle(side) - thickness / 2, middle(side) + thickness / 2);
  const there = across(c, 'from', mouth);
  const whole = deep(contact, into.body);
  const pocket = (role: 'from' | 'into', depth: number): CutDraft => {
    const [face, body, at] =
      role === 'from' ? [contact.fromFace, from.body, mouth] : [contact.intoFace, into.body, there];
    const box = sunk(at, face, body, depth + 1);
    return {
      kind: 'mortise',
      face,
      box,
      run: longAxis(box, face),
      through: false,
      corner: 'round',
      clearance: c.figure('fit'),
    };
  };
  const length = c.figure('enters.from') + c.figure('enters.into');
  return {
    cuts: [
      { role: 'from' as const, cut: pocket('from', c.figure('enters.from')) },
      { role: 'into' as const, cut: pocket('into', c.figure('enters.into')) },
    ],
    mates: [[0, 1]] as [number, number][],
    glue: [
      { area: 2 * width * length, grain: 'long' as const },
      { area: flatArea(contact.inInto), grain: 'end' as const },
    ],
    fasteners: [
      {
        item: `${thickness} x ${width} x ${length} loose tenon`,
        kind: 'other' as const,
        quantity: 1,
        length,
        diameter: thickness,
      },
    ],
    limits: [
      limit(
        LT1,
        'tenon.thickness',
        thickness,
        {
          min: (contact.inFrom.max[side] - contact.inFrom.min[side]) / 4,
          max: (contact.inFrom.max[side] - contact.inFrom.min[side]) / 2,
        },
        'attend',
        `Use ${wholeMm((contact.inFrom.max[side] - contact.inFrom.min[side]) / 3)} mm.`,
      ),
    ],
    ...refused(refusals(c, whole)),
  };
}

function refusals(c: MakeContext, whole: number): Refusal[] {
  const found: Refusal[] = [];
  const { long, short } = runOf(c.contact);
  const [thickness, width] = [c.figure('tenon.thickness'), c.figure('tenon.width')];
  if (thickness >= short)
    found.push({
      figure: 'tenon.thickness',
      fault: `a loose tenon ${thickness} mm thick where ${Math.round(short * 10) / 10} meet`,
      mend: `use ${wholeMm(short / 3)} mm`,
    });
  if (width >= long)
    found.push({
      figure: 'tenon.width',
      fault: `a loose tenon ${width} mm wide where ${Math.round(long * 10) / 10} meet`,
      mend: `use ${wholeMm(long / 2)} mm`,
    });
  for (const [figure, deep] of [
    ['enters.into', whole],
    ['enters.from', c.from.body.length],
  ] as const)
    if (c.figure(figure) + 1 >= deep)
      found.push({
        figure,
        fault: `the mortise is ${c.figure(figure) + 1} mm deep, the wood only ${deep}`,
        mend: `enter ${Math.max(1, Math.floor(deep - 6))} mm`,
      });
  return found;
}
