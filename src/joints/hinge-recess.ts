import type { JointReader, JointType, MakeContext, Role } from '../setting-out/joint-type.ts';
import { innerFace, type Refusal, type RoleCut, refused, runOf, soldAtMost, spots } from './fixing.ts';
import { behind, platePilot, plateScrew } from './plate-screws.ts';
import { known } from './screw-sizes.ts';
import {
  across,
  FACE_AXIS,
  halfMm,
  isHigh,
  limit,
  longAxis,
  otherAxis,
  rule,
  SIZE_OF_AXIS,
  sunk,
  withSpan,
} from './shape.ts';

const HI1 = rule(
  'HI-1',
  'Two hinges, three from 1200 mm on; each a tenth of the height or the next size below, 38 mm at least.',
  'The upper one is in tension; a short leaf tears out.',
  { text: 'remembered trade rule', basis: 'memory' },
);
const HI2 = rule(
  'HI-2',
  'A hinge stands its own length from the end of the door.',
  'Nearer, it meets the joint of the frame; further, the door sags.',
);
const HI3 = rule(
  'HI-3',
  'Both recesses together and the gap are as deep as the knuckle is thick: each is half of what the gap leaves.',
  'A closed hinge is as thick as its knuckle; deeper binds, shallower gapes.',
);
const HI4 = rule(
  'HI-4',
  'The pin stands half a knuckle clear of the face: the recess is as wide as the leaf from the pin, less that.',
  'The door swings free of the frame.',
);
const HI5 = rule('HI-5', 'At least 3 mm of wood stays beside a leaf.', 'The edge splits at the screws.');
const HI6 = rule(
  'HI-6',
  'Sizes are those of the hinge in hand, measured.',
  'Makers differ by more than the fit allows.',
);

const HI7 = rule(
  'HI-7',
  'Three screws hold a leaf, 3 mm thick and 16 long or what the wood bears; pilots in the middle of the leaf, a sixth of its length from its ends.',
  'The holes of the leaf in hand are pricked through it; the screw goes where its pilot is.',
  { text: 'remembered; pilots from the table of screws', basis: 'memory' },
);

/** Screws of a leaf, and what of its length they stand from its middle. */
const SCREW = known('3.0');
const LEAF_SCREWS = [-1 / 3, 0, 1 / 3];

/** Butt hinges as they are sold, remembered: length, leaf from the pin, leaf thickness, knuckle, mm. */
const BUTTS = [
  { length: 38, leaf: 11, thickness: 1.2, knuckle: 4.5 },
  { length: 50, leaf: 14, thickness: 1.5, knuckle: 5 },
  { length: 64, leaf: 17, thickness: 1.8, knuckle: 6 },
  { length: 76, leaf: 20, thickness: 2, knuckle: 6.5 },
  { length: 102, leaf: 30, thickness: 2.4, knuckle: 8 },
];
const LENGTHS = BUTTS.map(b => b.length);
const butt = (r: JointReader) =>
  BUTTS.reduce((a, b) =>
    Math.abs(b.length - r.figure('leaf.length')) < Math.abs(a.length - r.figure('leaf.length')) ? b : a,
  );

export const hingeRecess: JointType = {
  type: 'hinge-recess',
  title: 'Butt hinge let in',
  says: 'A door, flap or lid hung on butt hinges whose leaves are let into both edges.',
  meets: 'face to face',
  within: 6,
  many: true,
  needs: [
    'a marking gauge set to the hinge',
    'a chisel, or a router with a template',
    'butt hinges and screws',
  ],
  rules: [HI1, HI2, HI3, HI4, HI5, HI6, HI7],
  figures: [
    {
      name: 'hinges',
      label: 'hinges',
      kind: 'count',
      rule: HI1,
      formula: 'two, three from 1200 mm on',
      value: r => (runOf(r.contact).long >= 1200 ? 3 : 2),
    },
    {
      name: 'leaf.length',
      positive: true,
      label: 'hinge length',
      kind: 'length',
      rule: HI1,
      formula: 'a tenth of the height, the next size below of 38, 50, 64, 76, 102; or as yours is',
      value: r => soldAtMost(LENGTHS, runOf(r.contact).long / 10),
    },
    {
      name: 'leaf.width',
      positive: true,
      label: 'leaf, from the pin to its edge',
      kind: 'length',
      rule: HI6,
      formula: 'by the length: 11, 14, 17, 20, 30 mm; or as yours is',
      value: r => butt(r).leaf,
    },
    {
      name: 'leaf.thickness',
      positive: true,
      label: 'leaf thickness',
      kind: 'length',
      rule: HI6,
      formula: 'by the length: 1.2, 1.5, 1.8, 2, 2.4 mm; or as yours is',
      value: r => butt(r).thickness,
    },
    {
      name: 'knuckle',
      positive: true,
      label: 'knuckle diameter',
      kind: 'length',
      rule: HI6,
      formula: 'by the length: 4.5, 5, 6, 6.5, 8 mm; or as yours is',
      value: r => butt(r).knuckle,
    },
    {
      name: 'recess.depth',
      label: 'depth of each recess',
      kind: 'length',
      rule: HI3,
      formula: 'half of the knuckle less the gap between the two',
      value: r => Math.max(0, (r.figure('knuckle') - r.contact.apart) / 2),
    },
    {
      name: 'from.end',
      label: 'hinge from the end',
      kind: 'length',
      rule: HI2,
      formula: 'its own length, a fifth of the run at most',
      value: r => Math.min(r.figure('leaf.length'), Math.round(runOf(r.contact).long / 5)),
    },
    {
      name: 'knuckle.on',
      label: 'knuckle on the',
      kind: 'text',
      rule: HI4,
      formula: 'outer side unless said',
      choices: ['outer', 'inner'],
      value: () => 'outer',
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const [length, thick, depth] = [
    c.figure('leaf.length'),
    c.figure('leaf.thickness'),
    c.figure('recess.depth'),
  ];
  const width = c.figure('leaf.width') - c.figure('knuckle') / 2;
  const outerHigh = isHigh(innerFace(c, side)) === (c.word('knuckle.on') === 'inner');
  const [low, high] = [contact.inFrom.min[side], contact.inFrom.max[side]];
  const points = spots(c, c.figure('hinges'), c.figure('from.end') + length / 2);
  const leaf = (centre: number, role: Role): RoleCut => {
    const mouth = withSpan(
      withSpan(contact.inFrom, along, centre - length / 2, centre + length / 2),
      side,
      outerHigh ? high - width : low,
      outerHigh ? high : low + width,
    );
    const [face, body, at] =
      role === 'from'
        ? [contact.fromFace, from.body, mouth]
        : [contact.intoFace, into.body, across(c, 'from', mouth)];
    const box = sunk(at, face, body, depth);
    return {
      role,
      cut: { kind: 'recess', face, box, run: longAxis(box, face), through: false, corner: 'square' },
    };
  };
  const cuts = points.flatMap(p => [leaf(p[along], 'from'), leaf(p[along], 'into')]);
  const behindLeaf = Math.min(behind(c, 'from'), behind(c, 'into'));
  const screw = plateScrew(SCREW, 16, behindLeaf, depth);
  const middle = outerHigh ? high - width / 2 : low + width / 2;
  const pilots = points.flatMap(p =>
    (['from', 'into'] as const).flatMap(role =>
      LEAF_SCREWS.map(share =>
        platePilot(
          c,
          role,
          { ...p, [along]: p[along] + share * length, [side]: middle },
          { size: SCREW, length: screw, plate: depth },
        ),
      ),
    ),
  );
  return {
    cuts: [...cuts, ...pilots],
    mates: points.map((_, i): [number, number] => [2 * i, 2 * i + 1]),
    glue: [],
    fasteners: [
      {
        item: `butt hinge ${length} long, leaf ${c.figure('leaf.width')}, knuckle ${c.figure('knuckle')}`,
        kind: 'other' as const,
        quantity: points.length,
        length,
        diameter: c.figure('knuckle'),
      },
      {
        item: `${SCREW.key} x ${screw} screw`,
        kind: 'screw' as const,
        quantity: 2 * LEAF_SCREWS.length * points.length,
        length: screw,
        diameter: SCREW.shankMm,
      },
    ],
    limits: [
      limit(
        HI5,
        'beside the leaf',
        high - low - width,
        { min: 3 },
        'attend',
        `Use a leaf of ${Math.floor(high - low - 3)} mm or less.`,
      ),
      limit(
        HI3,
        'recess.depth',
        depth,
        { min: thick },
        'attend',
        `Set the two ${halfMm(c.figure('knuckle') - 2 * thick)} mm apart, so that the leaf lies flush.`,
      ),
      limit(
        HI7,
        'behind the screws',
        behindLeaf - depth - screw,
        { min: 1 },
        'attend',
        `Use thicker wood, ${Math.ceil(depth + screw + 3)} mm or more, or a bolt in place of a screw.`,
      ),
      limit(
        HI2,
        'from.end',
        c.figure('from.end'),
        { min: 10 },
        'attend',
        `Set it ${length} mm from the end.`,
      ),
    ],
    ...refused(refusals(c, high - low, width, depth)),
  };
}

function refusals(c: MakeContext, short: number, width: number, depth: number): Refusal[] {
  const found: Refusal[] = [];
  const { long } = runOf(c.contact);
  if (depth <= 0)
    found.push({
      figure: 'knuckle',
      fault: `the two stand ${Math.round(c.contact.apart * 10) / 10} mm apart, the closed hinge is only ${c.figure('knuckle')} thick`,
      mend: `set them ${Math.max(0, halfMm(c.figure('knuckle') - 2 * c.figure('leaf.thickness')))} mm apart, or use a thicker hinge`,
    });
  if (width <= 0 || width > short)
    found.push({
      figure: 'leaf.width',
      fault: `a leaf let in by ${width} mm, the edge is ${Math.round(short * 10) / 10} wide`,
      mend: `use a leaf of ${Math.floor(short + c.figure('knuckle') / 2 - 3)} mm or less`,
    });
  const room = 2 * c.figure('from.end') + c.figure('hinges') * c.figure('leaf.length');
  if (room > long)
    found.push({
      figure: 'leaf.length',
      fault: `${c.figure('hinges')} hinges of ${c.figure('leaf.length')} mm do not stand on ${Math.round(long)} mm`,
      mend: `use hinges of ${soldAtMost(LENGTHS, long / 5)} mm`,
    });
  for (const role of ['from', 'into'] as const) {
    const member = c[role];
    const face = role === 'from' ? c.contact.fromFace : c.contact.intoFace;
    const whole = member.body[SIZE_OF_AXIS[FACE_AXIS[face]]];
    if (depth >= whole)
      found.push({
        figure: 'recess.depth',
        fault: `a recess ${depth} mm deep goes through ${member.instance}, ${whole} thick`,
        mend: 'use a thinner hinge',
      });
  }
  return found;
}
