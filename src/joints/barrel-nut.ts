import { machineScrew } from '../reference/screws.ts';
import { OPPOSITE } from '../setting-out/faces.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  bored,
  innerFace,
  pointAcross,
  type Refusal,
  type RoleCut,
  refused,
  runOf,
  soldAtLeast,
  spots,
} from './fixing.ts';
import { deep, limit, longAxis, otherAxis, rule, SIZE_OF_AXIS } from './shape.ts';

const BN1 = rule(
  'BN-1',
  'M6 bolts in rails to 32 mm thick, M8 in thicker; the nut is bored from the inner face.',
  'The walls beside the bolt stay a third of the rail each.',
);
const BN2 = rule(
  'BN-2',
  'The nut stands four of its diameters from the end of the rail, 35 mm at least.',
  'The end grain between nut and shoulder shears out.',
  { text: 'remembered, 30 to 50 mm', basis: 'memory' },
);
const BN3 = rule(
  'BN-3',
  'The bolt passes the nut by 5 mm at most, and its hole runs on 5 mm beyond its point.',
  'All threads of the nut hold; a bolt that bottoms does not draw the shoulder home.',
);
const BN4 = rule(
  'BN-4',
  'One bolt has a dowel on either side; from 120 mm of rail on there are two bolts.',
  'The bolt draws, the dowels keep the rail from turning.',
);
const BN5 = rule(
  'BN-5',
  'The hole for the nut leaves 3 mm of the far face.',
  'A nut that shows through is a repair.',
);

/** Barrel nuts as sold, remembered: diameter and length by thread, mm. */
const NUTS: Record<string, { diameter: number; length: number }> = {
  M6: { diameter: 10, length: 14 },
  M8: { diameter: 14, length: 18 },
};
const BOLTS = [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200];
const thick = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));
const nut = (r: JointReader) => NUTS[r.word('size')] ?? NUTS.M6!;

export const barrelNut: JointType = {
  type: 'barrel-nut',
  title: 'Knock-down bolt with barrel nut',
  says: 'A bolt through a post into the end of a rail, drawn by a round nut that lies across the rail.',
  meets: 'end to face',
  many: false,
  needs: ['a drill press or a jig for holes in end grain', 'bolts and barrel nuts', 'dowels'],
  rules: [BN1, BN2, BN3, BN4, BN5],
  figures: [
    {
      name: 'size',
      label: 'thread',
      kind: 'text',
      rule: BN1,
      formula: 'M6 in rails to 32 mm, else M8',
      choices: Object.keys(NUTS),
      value: r => (thick(r) <= 32 ? 'M6' : 'M8'),
    },
    {
      name: 'nut.diameter',
      positive: true,
      label: 'nut diameter',
      kind: 'length',
      rule: BN1,
      formula: 'by the size: M6 10, M8 14 mm; or as yours is',
      value: r => nut(r).diameter,
    },
    {
      name: 'nut.length',
      positive: true,
      label: 'nut length',
      kind: 'length',
      rule: BN5,
      formula:
        'by the size: M6 14, M8 18 mm, no more than leaves 3 mm of the rail on both sides; or as yours is',
      value: r => Math.max(1, Math.min(nut(r).length, Math.floor(thick(r) - 6))),
    },
    {
      name: 'nut.from_end',
      positive: true,
      label: 'nut from the end of the rail',
      kind: 'length',
      rule: BN2,
      formula: 'four diameters of the nut, 35 mm at least',
      value: r => Math.max(35, 4 * r.figure('nut.diameter')),
    },
    {
      name: 'sunk',
      label: 'head sunk in the post by',
      kind: 'length',
      rule: BN3,
      formula: 'nothing unless said',
      value: () => 0,
    },
    {
      name: 'bolt.length',
      positive: true,
      label: 'bolt length',
      kind: 'length',
      rule: BN3,
      formula: 'through the post and the nut, the next length sold',
      value: r =>
        soldAtLeast(
          BOLTS,
          r.depthOf('into') - r.figure('sunk') + r.figure('nut.from_end') + r.figure('nut.diameter') / 2,
        ),
    },
    {
      name: 'bolts',
      label: 'bolts',
      kind: 'count',
      rule: BN4,
      formula: 'one; two from 120 mm of rail on',
      value: r => (runOf(r.contact).long >= 120 ? 2 : 1),
    },
    {
      name: 'dowel.diameter',
      label: 'dowels beside one bolt',
      kind: 'length',
      rule: BN4,
      formula: '8 mm, 6 in rails under 20; nothing beside two bolts',
      value: r => (r.figure('bolts') > 1 ? 0 : thick(r) < 20 ? 6 : 8),
    },
  ],
  adds: () => undefined,
  make,
};

/** How far a dowel enters the rail and the post, mm: glued in the rail, dry in the post. */
const DOWEL = { from: 20, into: 12 };

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const s = machineScrew(c.word('size'))!;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const inner = innerFace(c, side);
  const whole = deep(contact, into.body);
  const thickness = from.body[SIZE_OF_AXIS[side]];
  const [sunk, length, fromEnd] = [c.figure('sunk'), c.figure('bolt.length'), c.figure('nut.from_end')];
  const inRail = length - (whole - sunk);
  const clearance = s.clearanceMm?.high ?? s.diameterMm + 0.6;
  const head = OPPOSITE[contact.intoFace];
  const n = Math.max(1, Math.round(c.figure('bolts')));
  const nutDepth = thickness / 2 + c.figure('nut.length') / 2;
  const bolts = spots(c, n, runOf(contact).long / 4).flatMap((at): RoleCut[] => {
    const there = pointAcross(c, 'from', at);
    const centre = { ...at, x: contact.fromFace === 'end2' ? at.x - fromEnd : at.x + fromEnd };
    return [
      {
        role: 'from',
        cut: bored(contact.fromFace, from.body, at, {
          role: 'clearance',
          diameter: clearance,
          depth: inRail + 5,
        }),
      },
      {
        role: 'from',
        cut: bored(inner, from.body, centre, {
          role: 'plain',
          diameter: c.figure('nut.diameter'),
          depth: nutDepth,
        }),
      },
      {
        role: 'into',
        cut: bored(head, into.body, there, { role: 'clearance', diameter: clearance, depth: whole }),
      },
      ...(sunk > 0
        ? [
            {
              role: 'into' as const,
              cut: bored(head, into.body, there, {
                role: 'plain' as const,
                diameter: 2.5 * s.diameterMm,
                depth: sunk,
              }),
            },
          ]
        : []),
    ];
  });
  const dowel = c.figure('dowel.diameter');
  const dowels =
    dowel > 0
      ? spots(c, 2, runOf(contact).long / 6).flatMap((at): RoleCut[] => [
          {
            role: 'from',
            cut: bored(contact.fromFace, from.body, at, {
              role: 'dowel',
              diameter: dowel,
              depth: DOWEL.from,
            }),
          },
          {
            role: 'into',
            cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', at), {
              role: 'dowel',
              diameter: dowel,
              depth: Math.min(DOWEL.into, whole - 3),
            }),
          },
        ])
      : [];
  const beyond = inRail - fromEnd - c.figure('nut.diameter') / 2;
  return {
    cuts: [...bolts, ...dowels],
    glue: [],
    fasteners: [
      {
        item: `${s.name} x ${length} bolt`,
        kind: 'other' as const,
        quantity: n,
        length,
        diameter: s.diameterMm,
      },
      {
        item: `${s.name} barrel nut ${c.figure('nut.diameter')} x ${c.figure('nut.length')}`,
        kind: 'other' as const,
        quantity: n,
        length: c.figure('nut.length'),
        diameter: c.figure('nut.diameter'),
      },
      ...(dowel > 0
        ? [{ item: `${dowel} x 30 dowel`, kind: 'dowel' as const, quantity: 2, length: 30, diameter: dowel }]
        : []),
    ],
    limits: [
      limit(
        BN1,
        'beside the bolt',
        (thickness - clearance) / 2,
        { min: 2 },
        'attend',
        'Use a thinner bolt or a thicker rail.',
      ),
      limit(
        BN2,
        'nut.from_end',
        fromEnd,
        { min: Math.min(30, 3 * c.figure('nut.diameter')) },
        'attend',
        `Give ${Math.max(35, 4 * c.figure('nut.diameter'))} mm.`,
      ),
      limit(BN5, 'behind the nut', thickness - nutDepth, { min: 2 }, 'attend', 'Use a shorter nut.'),
    ],
    ...refused(refusals(c, { beyond, nutDepth, thickness, whole, sunk, clearance, dowel })),
  };
}

interface Measures {
  beyond: number;
  nutDepth: number;
  thickness: number;
  whole: number;
  sunk: number;
  clearance: number;
  dowel: number;
}

function refusals(c: MakeContext, m: Measures): Refusal[] {
  const found: Refusal[] = [];
  const through = m.whole - m.sunk + c.figure('nut.from_end') + c.figure('nut.diameter') / 2;
  if (m.sunk >= m.whole)
    found.push({
      figure: 'sunk',
      fault: `a head sunk by ${m.sunk} mm goes through a post of ${m.whole}`,
      mend: `sink it ${Math.floor(m.whole / 2)} mm at most`,
    });
  else if (m.beyond < -c.figure('nut.diameter') / 2)
    found.push({
      figure: 'bolt.length',
      fault: `a bolt of ${c.figure('bolt.length')} mm does not go through its nut`,
      mend: `use ${soldAtLeast(BOLTS, through)} mm`,
    });
  if (m.nutDepth >= m.thickness)
    found.push({
      figure: 'nut.length',
      fault: `the hole for the nut is ${m.nutDepth} mm deep, the rail only ${m.thickness}`,
      mend: `use a nut of ${Math.max(1, Math.floor(m.thickness - 6))} mm`,
    });
  if (m.clearance >= m.thickness)
    found.push({
      figure: 'size',
      fault: `a bolt hole of ${m.clearance} mm in a rail of ${m.thickness}`,
      mend: 'use M6, or a thicker rail',
    });
  const apart = runOf(c.contact).long / 3;
  if (m.dowel > 0 && apart < (m.dowel + m.clearance) / 2 + 2)
    found.push({
      figure: 'dowel.diameter',
      fault: `dowels of ${m.dowel} mm run into the bolt: they stand ${Math.round(apart)} mm from it`,
      mend:
        apart > 10 ? `use ${Math.floor(2 * (apart - 2) - m.clearance)} mm, or 0 for none` : 'give 0 for none',
    });
  return found;
}
