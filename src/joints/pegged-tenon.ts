import { box } from '../geometry/box.ts';
import { scale } from '../geometry/vector.ts';
import { LOCAL_NORMAL } from '../setting-out/faces.ts';
import type { CutDraft, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { mortiseAndTenon } from './mortise-and-tenon.ts';
import { across, FACE_AXIS, isHigh, limit, rule, SIZE_OF_AXIS } from './shape.ts';

const PT1 = rule(
  'PT-1',
  'A peg is a third of the tenon thick at least, 6 mm or more.',
  'Thinner pegs shear before the tenon gives.',
);
const PT2 = rule(
  'PT-2',
  'The peg stands one and a half diameters from the shoulder.',
  'Nearer, the post splits at its edge; further, the tenon shears out at its end.',
);
const PT3 = rule(
  'PT-3',
  'For draw-boring the hole in the tenon is 1 mm nearer to the shoulder.',
  'The peg pulls the shoulder home and keeps it there without glue.',
  { text: 'remembered, 0.8 to 1.5 mm by timber', basis: 'memory' },
);

export const peggedTenon: JointType = {
  ...mortiseAndTenon,
  type: 'pegged-tenon',
  title: 'Pegged mortise and tenon',
  says: 'A mortise and tenon locked by a peg through both, draw-bored if the hole in the tenon is set back.',
  needs: [...mortiseAndTenon.needs, 'riven or turned pegs', 'a drill press'],
  rules: [PT1, PT2, PT3],
  figures: [
    ...mortiseAndTenon.figures,
    {
      name: 'peg.diameter',
      positive: true,
      label: 'peg diameter',
      kind: 'length',
      rule: PT1,
      formula: 'two thirds of the tenon, 6 mm at least, whole mm',
      value: r => Math.max(6, Math.round((r.figure('tenon.thickness') * 2) / 3)),
    },
    {
      name: 'peg.from_shoulder',
      positive: true,
      label: 'peg from the shoulder',
      kind: 'length',
      rule: PT2,
      formula: 'one and a half diameters, no more than half the tenon',
      value: r => Math.min(1.5 * r.figure('peg.diameter'), r.figure('tenon.length') / 2),
    },
    {
      name: 'draw',
      label: 'drawn by',
      kind: 'length',
      rule: PT3,
      formula: '1 mm; 0 for a plain peg',
      value: () => 1,
    },
  ],
  make,
};

function make(c: MakeContext) {
  const made = mortiseAndTenon.make(c);
  const { contact, from, into } = c;
  const [diameter, inwards, draw] = [
    c.figure('peg.diameter'),
    c.figure('peg.from_shoulder'),
    c.figure('draw'),
  ];
  const tenon = made.cuts[0]!.cut;
  if (tenon.kind !== 'tenon' || made.impossible) return made;
  const edges = tenon.cheeks === 'z' ? 'y' : 'z';
  const along = contact.fromFace === 'end2' ? from.body.length + inwards : -inwards;
  const middle = (tenon[edges].low + from.body[SIZE_OF_AXIS[edges]] - tenon[edges].high) / 2;
  const at = {
    x: along,
    y: middle,
    z: middle,
    [tenon.cheeks]: from.body[SIZE_OF_AXIS[tenon.cheeks]],
  } as Record<'x' | 'y' | 'z', number>;
  const there = across(c, 'from', box(at.x, at.y, at.z, at.x, at.y, at.z)).min;
  const crossAxis = (['x', 'y', 'z'] as const).find(
    a =>
      a !== FACE_AXIS[contact.intoFace] &&
      Math.abs(
        into.frame[a].x * from.frame[tenon.cheeks].x +
          into.frame[a].y * from.frame[tenon.cheeks].y +
          into.frame[a].z * from.frame[tenon.cheeks].z,
      ) > 0.7,
  )!;
  const face =
    crossAxis === 'x' ? ('end2' as const) : crossAxis === 'y' ? ('faceEdge' as const) : ('face' as const);
  const whole = into.body[SIZE_OF_AXIS[crossAxis]];
  const impossible = refusals(c, diameter, inwards, draw);
  const hole = (role: 'from' | 'into'): CutDraft =>
    role === 'into'
      ? {
          kind: 'hole',
          role: 'dowel',
          face,
          at: { ...there, [crossAxis]: isHigh(face) ? whole : 0 },
          direction: scale(LOCAL_NORMAL[face], -1),
          diameter,
          depth: whole,
          through: true,
        }
      : {
          kind: 'hole',
          role: 'dowel',
          face: tenon.cheeks === 'z' ? 'face' : 'faceEdge',
          at: { ...at, x: contact.fromFace === 'end2' ? at.x - draw : at.x + draw },
          direction: scale(LOCAL_NORMAL[tenon.cheeks === 'z' ? 'face' : 'faceEdge'], -1),
          diameter,
          depth: from.body[SIZE_OF_AXIS[tenon.cheeks]],
          through: true,
        };
  return {
    ...made,
    cuts: [
      ...made.cuts,
      { role: 'into' as const, cut: hole('into') },
      { role: 'from' as const, cut: hole('from') },
    ],
    fasteners: [
      {
        item: `${diameter} x ${whole + 10} peg`,
        kind: 'pin' as const,
        quantity: 1,
        length: whole + 10,
        diameter,
      },
    ],
    limits: [
      ...made.limits,
      limit(
        PT1,
        'peg.diameter',
        diameter,
        { min: Math.max(6, c.figure('tenon.thickness') / 3) },
        'attend',
        `Use a peg of ${Math.max(6, Math.round((c.figure('tenon.thickness') * 2) / 3))} mm.`,
      ),
      limit(
        PT2,
        'peg.from_shoulder',
        inwards,
        { min: diameter, max: c.figure('tenon.length') - diameter },
        'attend',
        `Bore ${1.5 * diameter} mm from the shoulder.`,
      ),
    ],
    ...refused(impossible),
  };
}

/** A peg must go through the tenon, clear of its shoulder and its tip. */
function refusals(c: MakeContext, diameter: number, inwards: number, draw: number): Refusal[] {
  const found: Refusal[] = [];
  const [length, width] = [c.figure('tenon.length'), c.figure('tenon.width')];
  if (diameter >= Math.min(width, length))
    found.push({
      figure: 'peg.diameter',
      fault: `a peg of ${diameter} mm in a tenon ${width} wide and ${length} long`,
      mend: `use one of ${Math.max(1, Math.floor(Math.min(width, length) / 3))} mm`,
    });
  else if (inwards - draw < diameter / 2 || inwards + diameter / 2 >= length)
    found.push({
      figure: 'peg.from_shoulder',
      fault: `a peg ${inwards} mm from the shoulder breaks out of a tenon ${length} mm long`,
      mend: `give ${Math.round(length / 2)} mm`,
    });
  if (draw >= diameter / 2)
    found.push({
      figure: 'draw',
      fault: `drawn by ${draw} mm a peg of ${diameter} does not find its hole`,
      mend: 'give 1 mm',
    });
  return found;
}
