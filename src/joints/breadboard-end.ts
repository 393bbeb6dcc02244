import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { breadboardCuts, tenonsOf } from './breadboard-cuts.ts';
import { type Refusal, refused, runOf } from './fixing.ts';
import { deep, flatArea, limit, rule, wholeMm } from './shape.ts';

const BB1 = rule(
  'BB-1',
  'The tongue is a third of the panel thick.',
  'The end piece keeps two cheeks of the same strength.',
);
const BB2 = rule(
  'BB-2',
  'The tongue runs from edge to edge, half as long as the panel is thick.',
  'It keeps the panel flat between the tenons and hides the gap when the panel shrinks.',
  { text: 'remembered, 6 to 12 mm', basis: 'memory' },
);
const BB3 = rule(
  'BB-3',
  'Tenons reach half through the end piece; an odd number, one for each 150 mm of width.',
  'One stands in the middle, and there the panel is held.',
  { text: 'remembered, 120 to 200 mm apart', basis: 'memory' },
);
const BB4 = rule(
  'BB-4',
  'Only the middle tenon is glued; the mortises of the others are longer on both sides by a hundredth of half the width, 2 mm at least.',
  'The panel moves across its grain, the end piece does not: held fast at both edges the panel splits.',
);
const BB5 = rule(
  'BB-5',
  'A peg through each tenon; its hole in all but the middle one is a slot as long as the mortise has play.',
  'The pegs draw the end piece up and let the panel move.',
);
const BB6 = rule(
  'BB-6',
  'Groove and mortises are 1 mm deeper.',
  'Tongue and tenons never hold the shoulder off.',
);
const BB7 = rule(
  'BB-7',
  'The play is no less than 0.6 % of the distance from the middle.',
  'That is 4 % of moisture at 0.3 % a per cent, half of it each way.',
  { text: 'remembered, hardwoods flat sawn', basis: 'memory' },
);

const oddNear = (v: number): number => Math.max(1, 2 * Math.round((v - 1) / 2) + 1);
const pitch = (r: JointReader): number => runOf(r.contact).long / r.figure('tenons');

export const breadboardEnd: JointType = {
  type: 'breadboard-end',
  title: 'Breadboard end',
  says: 'An end piece across a solid panel: a long tongue and tenons in groove and mortises, glued in the middle, pegged in slots elsewhere.',
  meets: 'end to face',
  many: false,
  needs: ['a grooving blade or router', 'a morticer or chisels', 'pegs'],
  rules: [BB1, BB2, BB3, BB4, BB5, BB6, BB7],
  figures: [
    {
      name: 'tongue.thickness',
      positive: true,
      label: 'tongue thickness',
      kind: 'length',
      rule: BB1,
      formula: "a third of the panel's thickness, whole mm",
      value: r => wholeMm(r.size('from', 'thickness') / 3),
    },
    {
      name: 'tongue.length',
      positive: true,
      label: 'tongue length',
      kind: 'length',
      rule: BB2,
      formula: "half the panel's thickness, whole mm",
      value: r => wholeMm(r.size('from', 'thickness') / 2),
    },
    {
      name: 'tenon.length',
      positive: true,
      label: 'tenon length',
      kind: 'length',
      rule: BB3,
      formula: 'half the width of the end piece, whole mm',
      value: r => wholeMm(r.depthOf('into') / 2),
    },
    {
      name: 'tenons',
      positive: true,
      label: 'tenons on each board',
      kind: 'count',
      rule: BB3,
      formula: 'the odd number nearest to one for each 150 mm',
      value: r => oddNear(runOf(r.contact).long / 150),
    },
    {
      name: 'tenon.width',
      positive: true,
      label: 'tenon width',
      kind: 'length',
      rule: BB3,
      formula: 'half their pitch, 70 mm at most, whole mm',
      value: r => wholeMm(Math.min(70, pitch(r) / 2)),
    },
    {
      name: 'play',
      label: 'play of the outer tenons, on each side',
      kind: 'length',
      rule: BB4,
      formula:
        'a hundredth of half the width of the board, 2 mm at least, to 0.5 mm; more on a glued-up panel',
      value: r => Math.max(2, Math.round(runOf(r.contact).long / 100) / 2),
    },
    {
      name: 'deeper',
      label: 'groove and mortises deeper by',
      kind: 'length',
      rule: BB6,
      formula: '1 mm',
      value: () => 1,
    },
    {
      name: 'peg.diameter',
      positive: true,
      label: 'peg diameter',
      kind: 'length',
      rule: BB5,
      formula: "a third of the panel's thickness, whole mm, 4 at least",
      value: r => Math.max(4, wholeMm(r.size('from', 'thickness') / 3)),
    },
    {
      name: 'fit',
      label: 'play in the thickness',
      kind: 'length',
      rule: BB1,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'tenon.length',
  make,
};

function make(c: MakeContext) {
  const none = { cuts: [], glue: [], fasteners: [], limits: [] };
  const wrong = refusals(c);
  if (wrong.length > 0) return { ...none, ...refused(wrong) };
  const tenons = tenonsOf(c);
  const glued = tenons.find(t => t.glued);
  const [length, width, play] = [c.figure('tenon.length'), c.figure('tenon.width'), c.figure('play')];
  const furthest = Math.max(...tenons.map(t => t.fromMiddle));
  const diameter = c.figure('peg.diameter');
  return {
    ...breadboardCuts(c, tenons),
    glue: glued ? [{ area: 2 * width * length, grain: 'cross' as const }] : [],
    fasteners: [
      {
        item: `${diameter} x ${Math.round(c.into.body.thickness)} peg`,
        kind: 'dowel' as const,
        quantity: tenons.length,
        length: Math.round(c.into.body.thickness),
        diameter,
      },
    ],
    limits: [
      limit(
        BB1,
        'tongue.thickness',
        c.figure('tongue.thickness'),
        { min: c.from.body.thickness / 4, max: c.from.body.thickness / 2 },
        'attend',
        `Give ${wholeMm(c.from.body.thickness / 3)} mm.`,
      ),
      ...(tenons.some(t => !t.glued)
        ? [
            limit(
              BB7,
              'play',
              play,
              { min: 0.006 * furthest },
              'attend',
              `Give ${Math.ceil(0.012 * furthest) / 2} mm.`,
            ),
          ]
        : []),
    ],
    room: glued
      ? { instance: c.from.instance, width, swell: 0, shrink: 0, what: 'glued' as const }
      : {
          instance: c.from.instance,
          width: furthest,
          swell: play,
          shrink: play,
          what: 'slotted screw' as const,
        },
  };
}

function refusals(c: MakeContext): Refusal[] {
  const { from, into, contact } = c;
  const whole = deep(contact, into.body);
  const [thickness, tongue, tenon] = [
    c.figure('tongue.thickness'),
    c.figure('tongue.length'),
    c.figure('tenon.length'),
  ];
  const found: Refusal[] = [];
  const thick = from.body.thickness;
  if (flatArea(contact.inFrom) < from.body.width * thick - 0.05 * from.body.width)
    return [
      {
        figure: 'tongue.thickness',
        fault: `the end of ${from.instance}, ${from.body.width} by ${thick} mm, stands over ${into.instance}`,
        mend: 'make the end piece as thick as the panel and as long as it is wide',
      },
    ];
  if (thickness >= thick - 2)
    found.push({
      figure: 'tongue.thickness',
      fault: `the tongue is ${thickness} mm thick, the panel only ${thick}`,
      mend: `give ${wholeMm(thick / 3)} mm`,
    });
  const deeper = c.figure('deeper');
  if (deeper < 0 || tenon + deeper >= whole)
    found.push(
      tenon + 1 >= whole
        ? {
            figure: 'tenon.length',
            fault: `the mortise is ${tenon + deeper} mm deep, the end piece only ${whole} wide`,
            mend: `give ${Math.floor(Math.min(whole / 2, whole - deeper - 1))} mm`,
          }
        : { figure: 'deeper', fault: `mortises ${deeper} mm deeper in ${whole} mm`, mend: 'give 1 mm' },
    );
  if (tongue >= tenon)
    found.push({
      figure: 'tongue.length',
      fault: `the tongue is ${tongue} mm long, the tenons only ${tenon}`,
      mend: `give ${Math.round(tenon * 4) / 10} mm`,
    });
  return found.length > 0 ? found : crowded(c);
}

/** Tenons and their play must leave wood between the mortises, and pegs must stand in their tenons. */
function crowded(c: MakeContext): Refusal[] {
  const wide = runOf(c.contact).long;
  const n = Math.max(1, Math.round(c.figure('tenons')));
  const [width, play, peg] = [c.figure('tenon.width'), c.figure('play'), c.figure('peg.diameter')];
  const each = wide / n;
  if (play < 0)
    return [{ figure: 'play', fault: 'the mortise is narrower than its tenon', mend: 'give 2 mm' }];
  if (width > each - 6)
    return each > 12
      ? [
          {
            figure: 'tenon.width',
            fault: `${n} tenons of ${width} mm on ${Math.round(wide)} mm leave nothing between`,
            mend: `give ${Math.floor(each / 2)} mm`,
          },
        ]
      : [
          {
            figure: 'tenons',
            fault: `${n} tenons on ${Math.round(wide)} mm`,
            mend: `make ${oddNear(wide / 150)}`,
          },
        ];
  if (width + 2 * play > each - 4)
    return [
      {
        figure: 'play',
        fault: `mortises ${width + 2 * play} mm long stand ${Math.round(each)} apart`,
        mend: `give ${Math.max(0, Math.floor(Math.min(each - 4 - width, width - peg - 2) / 2))} mm`,
      },
    ];
  const room = Math.min(width - 2 * play, c.figure('tenon.length') - c.figure('tongue.length')) - 2;
  return peg > room
    ? [
        room >= 1
          ? {
              figure: 'peg.diameter',
              fault: `a peg of ${peg} mm and its slot leave nothing of the tenon`,
              mend: `give ${Math.floor(room)} mm`,
            }
          : {
              figure: 'play',
              fault: `slots with ${2 * play} mm of travel leave nothing of a tenon of ${width}`,
              mend: `give ${Math.max(0, Math.floor((width - peg - 2) / 2))} mm`,
            },
      ]
    : [];
}
