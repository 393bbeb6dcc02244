import { NAILS, type Nail } from '../reference/nails.ts';
import { OPPOSITE } from '../setting-out/faces.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  badRow,
  bored,
  countFor,
  pointAcross,
  type Refusal,
  type RoleCut,
  refused,
  runOf,
  spots,
} from './fixing.ts';
import { isHard } from './screw-sizes.ts';
import { deep, halfMm, limit, rule, sizeAlong } from './shape.ts';

const NA1 = rule(
  'NA-1',
  'A nail is three times as long as the part under its head is thick, or as long as leaves 3 mm.',
  'Two thirds of it hold; a point that comes through is worse than a short one.',
);
const NA2 = rule(
  'NA-2',
  'In hardwood the hole is drilled three quarters of the nail thick through the part under the head; in softwood it is not.',
  'Dense wood splits, and bends the nail.',
  { text: 'remembered, 70 to 80 %', basis: 'memory' },
);
const NA3 = rule('NA-3', 'Nails stand at most 100 mm apart, two at least.', 'Nails hold by number.');
const NA4 = rule(
  'NA-4',
  'The first nail stands ten diameters from the end, five where it is drilled.',
  'Nearer, the wood splits.',
  { text: 'remembered, 10 d undrilled and 5 d drilled', basis: 'memory' },
);
const NA5 = rule('NA-5', 'Heads are punched 2 mm under the surface.', 'The filling needs room to hold.');

const length = (n: Nail): number => n.lengthMm.high;
const diameter = (n: Nail): number => n.diameterMm.high;
const longest = (room: number): Nail =>
  [...NAILS.rows].reverse().find(n => length(n) <= room) ?? NAILS.rows[0]!;
const room = (r: JointReader): number =>
  Math.min(3 * r.depthOf('from'), r.depthOf('from') + r.depthOf('into') - 3 - r.figure('punched'));

export const nailed: JointType = {
  type: 'nailed',
  title: 'Nailed',
  says: 'A part held to another by nails through it, heads punched in.',
  meets: 'face to face',
  many: true,
  needs: ['a hammer and punch', 'a drill where the wood is hard'],
  rules: [NA1, NA2, NA3, NA4, NA5],
  figures: [
    {
      name: 'punched',
      label: 'heads punched in by',
      kind: 'length',
      rule: NA5,
      formula: '2 mm',
      value: () => 2,
    },
    {
      name: 'nail',
      label: 'nail',
      kind: 'text',
      rule: NA1,
      formula: 'three times the part under the head, no longer than leaves 3 mm, from the table',
      choices: NAILS.rows.map(n => n.name),
      value: r => longest(room(r)).name,
    },
    {
      name: 'drilled',
      label: 'hole drilled',
      kind: 'length',
      rule: NA2,
      formula: 'three quarters of the nail in hardwood, to 0.5 mm; nothing in softwood',
      value: r =>
        isHard(r.material('from')) && r.kind('from') === 'timber'
          ? Math.max(1, halfMm(diameter(NAILS.find(r.word('nail')) ?? NAILS.rows[0]!) * 0.75))
          : 0,
    },
    {
      name: 'nails',
      label: 'nails at each meeting',
      kind: 'count',
      rule: NA3,
      formula: 'one for each 100 mm begun, two at least',
      value: r => countFor(r, 100),
    },
    {
      name: 'end',
      label: 'first nail from the end',
      kind: 'length',
      rule: NA4,
      formula:
        'ten diameters, five where drilled, whole mm, an eighth of the run where that is more, 30 at most',
      value: r => {
        const d = diameter(NAILS.find(r.word('nail')) ?? NAILS.rows[0]!);
        return Math.max(
          Math.ceil((r.figure('drilled') > 0 ? 5 : 10) * d),
          Math.min(30, Math.round(runOf(r.contact).long / 8)),
        );
      },
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const nail = NAILS.find(c.word('nail')) ?? NAILS.rows[0]!;
  const head = OPPOSITE[contact.fromFace];
  const whole = sizeAlong(from.body, contact.fromFace);
  const drilled = c.figure('drilled');
  const reach = length(nail) + c.figure('punched');
  const hold = reach - whole;
  const beyond = deep(contact, into.body) - hold;
  const points = spots(c, c.figure('nails'), c.figure('end'));
  const cuts =
    drilled > 0
      ? points.flatMap((at): RoleCut[] => [
          {
            role: 'from',
            cut: bored(head, from.body, at, { role: 'pilot', diameter: drilled, depth: whole }),
          },
          {
            role: 'into',
            cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', at), {
              role: 'pilot',
              diameter: drilled,
              depth: Math.max(1, hold - 2),
            }),
          },
        ])
      : [];
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `${nail.name} nail`,
        kind: 'other' as const,
        quantity: points.length,
        length: length(nail),
        diameter: diameter(nail),
      },
    ],
    limits: [
      limit(
        NA1,
        'wood beyond the point',
        beyond,
        { min: 3 },
        'attend',
        `Use ${longest(reach - c.figure('punched') + beyond - 3).name} nails.`,
      ),
      limit(NA1, 'hold', hold, { min: 5 * diameter(nail) }, 'attend', 'Use longer nails, or screws.'),
      limit(
        NA2,
        'drilled',
        drilled,
        { max: diameter(nail) },
        'attend',
        `Drill ${halfMm(diameter(nail) * 0.75)} mm.`,
      ),
    ],
    ...refused(refusals(c, nail, whole, hold, beyond)),
  };
}

function refusals(c: MakeContext, nail: Nail, whole: number, hold: number, beyond: number): Refusal[] {
  const found: Refusal[] = [];
  if (beyond <= 0)
    found.push({
      figure: 'nail',
      fault: `a ${nail.name} nail comes through: the parts are ${Math.round((hold + beyond + whole) * 10) / 10} mm together`,
      mend: `use ${longest(length(nail) + beyond - 3).name}`,
    });
  if (hold <= 0)
    found.push({
      figure: 'nail',
      fault: `a ${nail.name} nail does not reach the second part`,
      mend: `use ${longest(3 * whole).name}`,
    });
  return [...found, ...badRow(c, 'end', 2 * diameter(nail), 'nail')];
}
