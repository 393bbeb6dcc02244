import { MACHINE_SCREWS, machineScrew } from '../reference/screws.ts';
import { OPPOSITE } from '../setting-out/faces.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  badRow,
  besideRow,
  bored,
  countFor,
  pointAcross,
  type Refusal,
  type RoleCut,
  refused,
  runOf,
  soldAtMost,
  spots,
} from './fixing.ts';
import { isHard } from './screw-sizes.ts';
import { deep, limit, rule, sizeAlong } from './shape.ts';

const TI1 = rule(
  'TI-1',
  'M5 inserts in wood to 20 mm, M6 to 32, M8 in thicker.',
  'The insert leaves sound walls, and its bolt does not feel slight.',
);
const TI2 = rule(
  'TI-2',
  'The hole is by the table for the insert: less in softwood; drill a test in the same timber.',
  'Too tight splits the wood, too loose pulls out.',
  { text: 'maker tables, remembered; they differ by 0.5 mm', basis: 'memory' },
);
const TI3 = rule(
  'TI-3',
  'The hole is 3 mm deeper than the insert, and 3 mm of wood stays behind it.',
  'The end of the bolt needs room; the far face must not lift.',
);
const TI4 = rule(
  'TI-4',
  'The bolt fills the insert and engages by one and a half of its diameters at least.',
  'Fewer threads strip.',
);
const TI5 = rule('TI-5', 'Two bolts at least, no more than 250 mm apart.', 'One lets the part turn.');
const TI6 = rule(
  'TI-6',
  'The middle of an insert stands one and a half of its outer diameter from an end and one from an edge.',
  'The wood splits as the insert cuts in.',
  { text: 'remembered', basis: 'memory' },
);

/** Lengths of screw-in inserts, mm, remembered: they differ by maker. */
const INSERT_LENGTH: Record<string, number> = { M4: 10, M5: 12, M6: 15, M8: 20, M10: 25 };
const SIZES = MACHINE_SCREWS.rows.filter(s => s.insertOuterMm).map(s => s.name);
/** Lengths of bolts sold, mm. */
const BOLTS = [10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 120, 140, 160, 180, 200];
const sizeFor = (thick: number): string => (thick < 20 ? 'M5' : thick <= 32 ? 'M6' : 'M8');
const outer = (size: string): number => machineScrew(size)?.insertOuterMm?.high ?? 12;

export const threadedInsert: JointType = {
  type: 'threaded-insert',
  title: 'Threaded insert and bolt',
  says: 'A bolt through one part into a threaded sleeve in the other, to be taken apart again.',
  meets: 'face to face',
  many: true,
  needs: ['drills for bolt and insert', 'a driver for the insert', 'bolts and washers'],
  rules: [TI1, TI2, TI3, TI4, TI5, TI6],
  figures: [
    {
      name: 'size',
      label: 'thread',
      kind: 'text',
      rule: TI1,
      formula: 'M5 in wood under 20 mm, M6 to 32, else M8; by the part that takes the insert',
      choices: SIZES,
      value: r => sizeFor(Math.min(r.depthOf('into'), runOf(r.contact).short)),
    },
    {
      name: 'insert.length',
      positive: true,
      label: 'insert length',
      kind: 'length',
      rule: TI3,
      formula: 'by the size: M5 12, M6 15, M8 20 mm; no more than leaves 6 mm of the part; or as yours is',
      value: r =>
        Math.max(1, Math.min(INSERT_LENGTH[r.word('size')] ?? 15, Math.floor(r.depthOf('into') - 6))),
    },
    {
      name: 'insert.hole',
      positive: true,
      label: 'hole for the insert',
      kind: 'length',
      rule: TI2,
      formula: 'from the table, by the timber',
      value: r => {
        const s = machineScrew(r.word('size'));
        return (
          (isHard(r.material('into')) ? s?.insertHoleHardwoodMm?.high : s?.insertHoleSoftwoodMm?.high) ?? 10.5
        );
      },
    },
    {
      name: 'sunk',
      label: 'head sunk by',
      kind: 'length',
      rule: TI4,
      formula: 'nothing unless said',
      value: () => 0,
    },
    {
      name: 'bolt.length',
      positive: true,
      label: 'bolt length',
      kind: 'length',
      rule: TI4,
      formula: 'the part under the head and the insert, the next length sold below',
      value: r => soldAtMost(BOLTS, r.depthOf('from') - r.figure('sunk') + r.figure('insert.length') + 2),
    },
    {
      name: 'bolts',
      label: 'bolts at each meeting',
      kind: 'count',
      rule: TI5,
      formula: 'one for each 250 mm begun, two at least',
      value: r => countFor(r, 250),
    },
    {
      name: 'end',
      label: 'first bolt from the end',
      kind: 'length',
      rule: TI6,
      formula: 'one and a half outer diameters, a sixth of the run where that is more, 50 mm at most',
      value: r => Math.max(1.5 * outer(r.word('size')), Math.min(50, Math.round(runOf(r.contact).long / 6))),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const s = machineScrew(c.word('size'))!;
  const head = OPPOSITE[contact.fromFace];
  const whole = sizeAlong(from.body, contact.fromFace);
  const sunk = c.figure('sunk');
  const depth = c.figure('insert.length') + 3;
  const engaged = c.figure('bolt.length') - (whole - sunk);
  const points = spots(c, c.figure('bolts'), c.figure('end'));
  const clearance = s.clearanceMm?.high ?? s.diameterMm + 0.5;
  const cuts = points.flatMap((at): RoleCut[] => [
    {
      role: 'from',
      cut: bored(head, from.body, at, { role: 'clearance', diameter: clearance, depth: whole }),
    },
    {
      role: 'into',
      cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', at), {
        role: 'plain',
        diameter: c.figure('insert.hole'),
        depth,
      }),
    },
    ...(sunk > 0
      ? [
          {
            role: 'from' as const,
            cut: bored(head, from.body, at, { role: 'plain', diameter: 2.5 * s.diameterMm, depth: sunk }),
          },
        ]
      : []),
  ]);
  const length = c.figure('bolt.length');
  const left = deep(contact, into.body) - depth;
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `${s.name} x ${length} bolt`,
        kind: 'other' as const,
        quantity: points.length,
        length,
        diameter: s.diameterMm,
      },
      {
        item: `${s.name} x ${c.figure('insert.length')} threaded insert`,
        kind: 'other' as const,
        quantity: points.length,
        length: c.figure('insert.length'),
        diameter: outer(s.name),
      },
    ],
    limits: [
      limit(
        TI4,
        'thread engaged',
        engaged,
        { min: 1.5 * s.diameterMm },
        'attend',
        `Use a bolt of ${Math.ceil(whole - sunk + 1.5 * s.diameterMm)} mm or more.`,
      ),
      limit(
        TI3,
        'wood behind',
        left,
        { min: 3 },
        'attend',
        `Use an insert of ${Math.floor(deep(contact, into.body) - 6)} mm.`,
      ),
      limit(
        TI6,
        'beside the insert',
        besideRow(c),
        { min: outer(s.name) / 2 + 3 },
        'attend',
        'Use a smaller insert, or a wider part.',
      ),
    ],
    ...refused(refusals(c, engaged, left, whole, sunk)),
  };
}

function refusals(c: MakeContext, engaged: number, left: number, whole: number, sunk: number): Refusal[] {
  const found: Refusal[] = [];
  const length = c.figure('bolt.length');
  const depth = c.figure('insert.length') + 3;
  if (sunk >= whole)
    found.push({
      figure: 'sunk',
      fault: `a head sunk by ${sunk} mm goes through a part of ${whole}`,
      mend: `sink it ${Math.floor(whole / 2)} mm at most`,
    });
  else if (engaged <= 0)
    found.push({
      figure: 'bolt.length',
      fault: `a bolt of ${length} mm does not reach its insert`,
      mend: `use ${soldAtMost(BOLTS, whole - sunk + c.figure('insert.length') + 2)} mm`,
    });
  else if (engaged > depth)
    found.push({
      figure: 'bolt.length',
      fault: `a bolt of ${length} mm stands on the bottom of its hole, ${Math.round((engaged - depth) * 10) / 10} mm too long`,
      mend: `use ${soldAtMost(BOLTS, length - engaged + depth)} mm`,
    });
  if (left <= 0)
    found.push({
      figure: 'insert.length',
      fault: `the hole is ${depth} mm deep, the wood only ${depth + left}`,
      mend: `use an insert of ${Math.max(1, Math.floor(depth + left - 6))} mm`,
    });
  if (2 * besideRow(c) < c.figure('insert.hole'))
    found.push({
      figure: 'size',
      fault: `a hole of ${c.figure('insert.hole')} mm breaks out of ${Math.round(2 * besideRow(c))} mm`,
      mend: `use ${sizeFor(2 * besideRow(c))}`,
    });
  return [...found, ...badRow(c, 'end', outer(c.word('size')) / 2 + 2, 'insert')];
}
