import { MACHINE_SCREWS, machineScrew } from '../reference/screws.ts';
import { OPPOSITE } from '../setting-out/faces.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  badRow,
  bored,
  countFor,
  pointAcross,
  type RoleCut,
  refused,
  runOf,
  soldAtMost,
  spots,
} from './fixing.ts';
import { deep, limit, rule, sizeAlong } from './shape.ts';

const TP1 = rule(
  'TP-1',
  'The screw is no thicker than two thirds of the metal it is tapped into; M3 at least.',
  'Thin metal holds few threads, thick screws leave no wall.',
);
const TP2 = rule(
  'TP-2',
  'The tapping drill is the thread less its pitch: M4 3.3, M5 4.2, M6 5.0, M8 6.8.',
  'About three quarters of a full thread: more breaks the tap, less strips.',
  { text: 'drill tables, read with the screws', basis: 'read' },
);
const TP3 = rule(
  'TP-3',
  'A tapped hole goes right through where it may; blind, it is three threads deeper than the screw.',
  'The tap has a lead and the chips need room.',
);
const TP4 = rule(
  'TP-4',
  'The screw engages by its own diameter in steel, one and a half in brass and aluminium.',
  'Fewer threads strip.',
);
const TP5 = rule(
  'TP-5',
  'Middle of a hole one and a half diameters from any edge.',
  'Nearer, the edge bulges and the thread opens.',
);

const SIZES = MACHINE_SCREWS.rows.filter(s => s.tappingDrillMm).map(s => s.name);
const LENGTHS = [6, 8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 60];
const diameterOf = (size: string): number => machineScrew(size)?.diameterMm ?? 4;
const bearing = (metal: string): number => (/steel|stainless|iron/.test(metal) ? 1 : 1.5);

/** The largest thread no thicker than two thirds of the metal, M3 at least. */
function sizeFor(thick: number): string {
  return [...SIZES].reverse().find(s => diameterOf(s) <= (thick * 2) / 3) ?? 'M3';
}

export const tapped: JointType = {
  type: 'tapped',
  title: 'Machine screw into tapped metal',
  says: 'A screw through one part into a thread cut in the metal of the other.',
  meets: 'face to face',
  many: true,
  needs: ['a drill press', 'taps and a wrench, cutting oil', 'machine screws'],
  rules: [TP1, TP2, TP3, TP4, TP5],
  figures: [
    {
      name: 'size',
      label: 'thread',
      kind: 'text',
      rule: TP1,
      formula: 'the largest no thicker than two thirds of the metal tapped',
      choices: SIZES,
      value: r => sizeFor(Math.min(r.depthOf('into'), runOf(r.contact).short / 2)),
    },
    {
      name: 'length',
      label: 'screw length',
      kind: 'length',
      rule: TP4,
      formula: 'what it clamps and what it engages, the next length sold below',
      value: r => soldAtMost(LENGTHS, r.depthOf('from') + r.depthOf('into')),
    },
    {
      name: 'screws',
      label: 'screws at each meeting',
      kind: 'count',
      rule: TP5,
      formula: 'one for each 120 mm begun, two at least',
      value: r => countFor(r, 120),
    },
    {
      name: 'end',
      label: 'first screw from the end',
      kind: 'length',
      rule: TP5,
      formula: 'two diameters, a sixth of the run where that is more, 40 mm at most',
      value: r =>
        Math.max(2 * diameterOf(r.word('size')), Math.min(40, Math.round(runOf(r.contact).long / 6))),
    },
  ],
  adds: () => undefined,
  make,
};

const NOTHING = { cuts: [], glue: [], fasteners: [], limits: [] };

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const s = machineScrew(c.word('size'));
  if (!s?.tappingDrillMm || into.kind === 'timber' || into.kind === 'sheet')
    return {
      ...NOTHING,
      ...refused([
        {
          figure: 'size',
          fault: `${into.instance} is ${into.material}, which takes no thread of ${c.word('size')}`,
          mend: 'tap metal with M3 to M10, or use a threaded insert in wood',
        },
      ]),
    };
  const clamped = sizeAlong(from.body, contact.fromFace);
  const whole = deep(contact, into.body);
  const length = c.figure('length');
  const engaged = Math.min(length - clamped, whole);
  const drill = s.tappingDrillMm.high;
  const pitch = s.diameterMm - drill;
  const points = spots(c, c.figure('screws'), c.figure('end'));
  const cuts = points.flatMap((at): RoleCut[] => [
    {
      role: 'from',
      cut: bored(OPPOSITE[contact.fromFace], from.body, at, {
        role: 'clearance',
        diameter: s.clearanceMm?.high ?? s.diameterMm + 0.5,
        depth: clamped,
      }),
    },
    {
      role: 'into',
      cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', at), {
        role: 'tapped',
        diameter: drill,
        depth: engaged + 3 * pitch,
      }),
    },
  ]);
  const bite = bearing(into.material) * s.diameterMm;
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `${s.name} x ${length} machine screw`,
        kind: 'other' as const,
        quantity: points.length,
        length,
        diameter: s.diameterMm,
      },
    ],
    limits: [
      limit(
        TP4,
        'length',
        length,
        { min: clamped + Math.min(whole, bite), max: clamped + whole },
        'attend',
        `Give ${soldAtMost(LENGTHS, clamped + whole)} mm.`,
      ),
      limit(
        TP5,
        'end',
        c.figure('end'),
        { min: 1.5 * s.diameterMm },
        'attend',
        `Give ${2 * s.diameterMm} mm.`,
      ),
    ],
    ...refused([
      ...badRow(c, 'end', s.diameterMm, 'screw'),
      ...(engaged <= 0
        ? [
            {
              figure: 'length',
              fault: `a screw of ${length} mm does not reach through ${clamped}`,
              mend: `give ${soldAtMost(LENGTHS, clamped + whole)} mm`,
            },
          ]
        : []),
    ]),
  };
}
