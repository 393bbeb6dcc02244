import type { Axis } from '../geometry/vector.ts';
import { scale } from '../geometry/vector.ts';
import { screw, WOOD_SCREWS, type WoodScrew } from '../reference/screws.ts';
import { LOCAL_NORMAL, OPPOSITE } from '../setting-out/faces.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { badRow, type Refusal, refused } from './fixing.ts';
import { counterbore, known, pilotFor, shorter, soldLength, usualSize } from './screw-sizes.ts';
import { across, deep, FACE_AXIS, isHigh, limit, longAxis, otherAxis, rule, sizeAlong } from './shape.ts';

const SC1 = rule(
  'SC-1',
  'A screw is three times as long as the part under its head, or as long as the wood allows.',
  'Two thirds of it hold.',
  { text: 'Use Screws Like a Pro (2007)', basis: 'read' },
);
const SC2 = rule(
  'SC-2',
  'Three millimetres of wood stay beyond the point.',
  'Less shows as a bump, or comes through.',
);
const SC3 = rule(
  'SC-3',
  'Clearance under the head, pilot for the thread, from the table for the screw and the timber.',
  'A screw that bites in both parts holds them apart; none drilled splits hardwood.',
);
const SC4 = rule(
  'SC-4',
  'Screws stand at most 200 mm apart and two at least.',
  'One alone lets the part turn.',
);
const SC5 = rule(
  'SC-5',
  'The first screw stands five diameters from an end and two from an edge.',
  'Nearer, the wood splits.',
  { text: 'remembered, holes drilled: 5 to 7 d from ends, 1.5 to 2 d from edges', basis: 'memory' },
);
const SC6 = rule(
  'SC-6',
  'Solid wood held across its grain sits on slots; the middle is fixed.',
  'It moves with the seasons and would split or bend the frame.',
  { text: 'woodcraft.com, tabletop fasteners', basis: 'read' },
);

const under = (r: JointReader): number => Math.max(0, r.depthOf('from') - r.figure('sunk'));
const run = (r: JointReader): number => {
  const axis = longAxis(r.contact.inFrom, r.contact.fromFace);
  return r.contact.inFrom.max[axis] - r.contact.inFrom.min[axis];
};

export const screwed: JointType = {
  type: 'screwed',
  title: 'Screwed',
  says: 'A part held to another by screws through it; slotted where solid wood must move.',
  meets: 'face to face',
  many: true,
  needs: ['drills for clearance and pilot', 'a countersink'],
  rules: [SC1, SC2, SC3, SC4, SC5, SC6],
  figures: [
    {
      name: 'size',
      label: 'screw',
      kind: 'text',
      rule: SC3,
      formula: 'about a fifth of the thinner part',
      value: r => usualSize(Math.min(r.depthOf('from'), r.depthOf('into'))),
    },
    {
      name: 'sunk',
      label: 'head sunk in a counterbore by',
      kind: 'length',
      rule: SC1,
      formula: 'nothing unless said',
      value: () => 0,
    },
    {
      name: 'length',
      positive: true,
      label: 'screw length',
      kind: 'length',
      rule: SC1,
      formula: 'three times the part under the head, no longer than leaves 3 mm, as sold',
      value: r => soldLength(known(r.word('size')), Math.min(3 * under(r), under(r) + r.depthOf('into') - 3)),
    },
    {
      name: 'screws',
      label: 'screws at each meeting',
      kind: 'count',
      rule: SC4,
      formula: 'one for each 200 mm begun, two at least',
      value: r => Math.max(2, Math.ceil(run(r) / 200)),
    },
    {
      name: 'end',
      label: 'first screw from the end',
      kind: 'length',
      rule: SC5,
      formula: 'five diameters, at least a sixth of the run',
      value: r => Math.max(5 * known(r.word('size')).shankMm, Math.min(30, run(r) / 6)),
    },
    {
      name: 'slot',
      label: 'slot travel',
      kind: 'length',
      rule: SC6,
      formula: 'nothing unless said',
      value: () => 0,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const s = known(c.word('size'));
  const n = Math.max(1, Math.round(c.figure('screws')));
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const axis = FACE_AXIS[contact.fromFace];
  const headFace = OPPOSITE[contact.fromFace];
  const whole = sizeAlong(from.body, contact.fromFace);
  const sunk = c.figure('sunk');
  const length = c.figure('length');
  const hold = length - (whole - sunk);
  const travel = c.figure('slot');
  const pilot = pilotFor(s, into.material);
  const clearance = s.clearanceMm.high;
  const slotAxis = travel > 0 ? slotAlong(c) : undefined;
  const cuts: { role: 'from' | 'into'; cut: CutDraft }[] = [];
  const mates: [number, number][] = [];
  const [low, high] = [
    contact.inFrom.min[along] + c.figure('end'),
    contact.inFrom.max[along] - c.figure('end'),
  ];
  let furthest = 0;
  for (let i = 0; i < n; i++) {
    const place = n === 1 ? (low + high) / 2 : low + ((high - low) * i) / (n - 1);
    const at = {
      x: 0,
      y: 0,
      z: 0,
      [along]: place,
      [side]: (contact.inFrom.min[side] + contact.inFrom.max[side]) / 2,
      [axis]: isHigh(headFace) ? whole : 0,
    };
    const through = { ...at, [axis]: isHigh(headFace) ? 0 : whole };
    const there = across(c, 'from', { min: through, max: through }).min;
    const panel = c.panel('into');
    furthest = Math.max(furthest, Math.abs(there.y - (panel.min.y + panel.max.y) / 2));
    mates.push([cuts.length, cuts.length + 1]);
    cuts.push(
      {
        role: 'from',
        cut: {
          kind: 'hole',
          role: travel > 0 ? 'slot' : 'clearance',
          face: headFace,
          at,
          direction: scale(LOCAL_NORMAL[headFace], -1),
          diameter: clearance,
          depth: whole,
          through: true,
          ...(sunk > 0 ? {} : { countersink: { diameter: s.headMm.high, angle: 90 } }),
          ...(slotAxis ? { slot: { travel, along: slotAxis } } : {}),
        },
      },
      {
        role: 'into',
        cut: {
          kind: 'hole',
          role: 'pilot',
          face: contact.intoFace,
          at: there,
          direction: scale(LOCAL_NORMAL[contact.intoFace], -1),
          diameter: pilot,
          depth: Math.max(1, hold),
          through: false,
        },
      },
    );
    if (sunk > 0)
      cuts.push({
        role: 'from',
        cut: {
          kind: 'hole',
          role: 'plain',
          face: headFace,
          at,
          direction: scale(LOCAL_NORMAL[headFace], -1),
          diameter: counterbore(s.headMm.high),
          depth: sunk,
          through: false,
        },
      });
  }
  const deepInto = deep(contact, into.body);
  const crossing = into.kind === 'timber' && FACE_AXIS[contact.intoFace] === 'z';
  return {
    cuts,
    mates,
    glue: [],
    fasteners: [
      {
        item: `${s.key} x ${length} screw`,
        kind: 'screw' as const,
        quantity: n,
        length,
        diameter: s.shankMm,
      },
    ],
    limits: [
      limit(
        SC2,
        'length',
        length,
        { max: whole - sunk + deepInto - 3 },
        'attend',
        `Use ${soldLength(s, whole - sunk + deepInto - 3)} mm screws.`,
      ),
      limit(
        SC1,
        'hold',
        hold,
        { min: 2 * s.shankMm },
        'attend',
        'Sink the heads deeper or use longer screws.',
      ),
    ],
    ...(crossing
      ? {
          room: {
            instance: into.instance,
            width: furthest,
            swell: travel / 2,
            shrink: travel / 2,
            what: travel > 0 ? ('slotted screw' as const) : ('glued' as const),
          },
        }
      : {}),
    ...refused(refusals(c, s, { whole, sunk, length, hold, deepInto })),
  };
}

/** The slot lies the way the held panel moves: across its grain. */
function slotAlong(c: MakeContext): Axis {
  const d = c.into.frame.y;
  const f = c.from.frame;
  const along = (v: { x: number; y: number; z: number }): number =>
    Math.abs(v.x * d.x + v.y * d.y + v.z * d.z);
  return along(f.x) > 0.7 ? 'x' : along(f.y) > 0.7 ? 'y' : 'z';
}

interface Measures {
  whole: number;
  sunk: number;
  length: number;
  hold: number;
  deepInto: number;
}

/** The first thing that keeps the screws from holding, and a row that breaks out at its end. */
function refusals(c: MakeContext, s: WoodScrew, m: Measures): Refusal[] {
  const { whole, sunk, length, hold, deepInto } = m;
  const one = (figure: string, fault: string, mend: string): Refusal[] => [{ figure, fault, mend }];
  if (screw(c.word('size')) === undefined)
    return one(
      'size',
      `no screw of size ${c.word('size')} is in the table`,
      `choose one of ${WOOD_SCREWS.rows.map(r => r.key).join(', ')}`,
    );
  if (sunk >= whole)
    return one(
      'sunk',
      `a head sunk by ${sunk} mm goes through a part of ${whole}`,
      `sink it by ${Math.max(0, Math.floor(whole - 2 * s.shankMm))} mm at most`,
    );
  if (length >= whole - sunk + deepInto)
    return one(
      'length',
      `a ${length} mm screw comes through: the parts are ${whole - sunk + deepInto} mm together`,
      shorter(s, whole - sunk + deepInto - 3),
    );
  if (hold <= 0)
    return one(
      'length',
      `a ${length} mm screw does not reach the second part`,
      `sink the head by ${Math.ceil(whole - length + 3 * s.shankMm)} mm, or use ${soldLength(s, 3 * whole)} mm`,
    );
  return badRow(c, 'end', s.shankMm, 'screw');
}
