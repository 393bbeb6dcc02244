import { scale } from '../geometry/vector.ts';
import { LOCAL_NORMAL } from '../setting-out/faces.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import {
  across,
  deep,
  FACE_AXIS,
  flatArea,
  isHigh,
  limit,
  longAxis,
  otherAxis,
  rule,
  sizeAlong,
} from './shape.ts';

const MEMORY = { text: 'remembered trade rule', basis: 'memory' } as const;
const DO1 = rule(
  'DO-1',
  'A dowel is between a third and half of the thinner member: 6, 8, 10, 12 or 16 mm.',
  'Thinner shears, thicker leaves the wood beside it weak.',
  MEMORY,
);
const DO2 = rule(
  'DO-2',
  'Two dowels at least; on an end one more for each 60 mm, along an edge for each 150.',
  'One alone lets the member turn.',
);
const DO3 = rule(
  'DO-3',
  'Each half enters two and a half diameters; less where the wood is not deep enough, leaving 4 mm.',
  'Longer gains little; a hole that breaks through shows.',
);
const DO4 = rule('DO-4', 'Holes are 1 mm deeper than the dowel reaches.', 'Glue and chips need room.');
const DO5 = rule('DO-5', 'The outer dowels stand two diameters from the edge.', 'Closer, the edge splits.');

const SIZES = [6, 8, 10, 12, 16];
const nearestSize = (wanted: number): number =>
  SIZES.reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a));
const onEnd = (r: JointReader): boolean => FACE_AXIS[r.contact.fromFace] === 'x';
const span = (r: JointReader, which: 'long' | 'short'): number => {
  const along = longAxis(r.contact.inFrom, r.contact.fromFace);
  const axis = which === 'long' ? along : otherAxis(r.contact.fromFace, along);
  return r.contact.inFrom.max[axis] - r.contact.inFrom.min[axis];
};
/** On an end the member's own section rules; along an edge what the two share. */
const thin = (r: JointReader): number =>
  onEnd(r) ? Math.min(r.size('from', 'thickness'), r.size('from', 'width')) : span(r, 'short');
const wide = (r: JointReader): number =>
  onEnd(r) ? Math.max(r.size('from', 'thickness'), r.size('from', 'width')) : span(r, 'long');

export const dowelled: JointType = {
  type: 'dowelled',
  title: 'Dowelled butt',
  says: 'Two faces held by dowels bored into both.',
  meets: 'face to face',
  many: true,
  needs: ['a dowel jig or drill press', 'fluted dowels'],
  rules: [DO1, DO2, DO3, DO4, DO5],
  figures: [
    {
      name: 'dowel.diameter',
      positive: true,
      label: 'dowel diameter',
      kind: 'length',
      rule: DO1,
      formula: 'two fifths of the thinner member, to the nearest size',
      value: r => nearestSize(thin(r) * 0.4),
    },
    {
      name: 'dowel.count',
      label: 'dowels',
      kind: 'count',
      rule: DO2,
      formula: 'two, and one more for each 60 mm of an end or 150 of an edge',
      value: r => Math.max(2, Math.floor(wide(r) / (onEnd(r) ? 60 : 150)) + 1),
    },
    {
      name: 'enters.from',
      positive: true,
      label: 'enters the end',
      kind: 'length',
      rule: DO3,
      formula: 'two and a half diameters',
      value: r =>
        Math.max(
          1,
          Math.min(Math.round(r.figure('dowel.diameter') * 2.5), Math.floor(r.depthOf('from') - 5)),
        ),
    },
    {
      name: 'enters.into',
      positive: true,
      label: 'enters the face',
      kind: 'length',
      rule: DO3,
      formula: 'two and a half diameters, leaving 4 mm of wood and 1 for the hole',
      value: r =>
        Math.max(
          1,
          Math.min(Math.round(r.figure('dowel.diameter') * 2.5), Math.floor(r.depthOf('into') - 5)),
        ),
    },
    {
      name: 'edge',
      label: 'from the edge',
      kind: 'length',
      rule: DO5,
      formula: 'two diameters',
      value: r => Math.min(2 * r.figure('dowel.diameter'), wide(r) / 4),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const diameter = c.figure('dowel.diameter');
  const n = Math.max(1, Math.round(c.figure('dowel.count')));
  const run = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, run);
  const axis = FACE_AXIS[contact.fromFace];
  const edge = c.figure('edge');
  const [low, high] = [contact.inFrom.min[run] + edge, contact.inFrom.max[run] - edge];
  const depthFrom = c.figure('enters.from') + 1;
  const depthInto = c.figure('enters.into') + 1;
  const thickness =
    FACE_AXIS[contact.fromFace] === 'x'
      ? Math.min(from.body.thickness, from.body.width)
      : contact.inFrom.max[side] - contact.inFrom.min[side];
  const cuts: { role: 'from' | 'into'; cut: CutDraft }[] = [];
  const mates: [number, number][] = [];
  for (let i = 0; i < n; i++) {
    const at = {
      x: 0,
      y: 0,
      z: 0,
      [side]: (contact.inFrom.min[side] + contact.inFrom.max[side]) / 2,
      [run]: n === 1 ? (low + high) / 2 : low + ((high - low) * i) / (n - 1),
      [axis]: isHigh(contact.fromFace) ? sizeAlong(from.body, contact.fromFace) : 0,
    };
    const there = across(c, 'from', { min: at, max: at }).min;
    mates.push([cuts.length, cuts.length + 1]);
    cuts.push(
      {
        role: 'from',
        cut: {
          kind: 'hole',
          role: 'dowel',
          face: contact.fromFace,
          at,
          direction: scale(LOCAL_NORMAL[contact.fromFace], -1),
          diameter,
          depth: depthFrom,
          through: false,
        },
      },
      {
        role: 'into',
        cut: {
          kind: 'hole',
          role: 'dowel',
          face: contact.intoFace,
          at: there,
          direction: scale(LOCAL_NORMAL[contact.intoFace], -1),
          diameter,
          depth: depthInto,
          through: false,
        },
      },
    );
  }
  const length = c.figure('enters.from') + c.figure('enters.into');
  const whole = deep(contact, into.body);
  return {
    cuts,
    mates,
    glue: [
      { area: n * Math.PI * diameter * length, grain: 'long' as const },
      { area: flatArea(contact.inInto), grain: 'end' as const },
    ],
    fasteners: [
      { item: `${diameter} x ${length} dowel`, kind: 'dowel' as const, quantity: n, length, diameter },
    ],
    limits: [
      limit(
        DO1,
        'dowel.diameter',
        diameter,
        { min: thickness / 3.5, max: thickness / 2 },
        'attend',
        `Use ${nearestSize(thickness * 0.4)} mm dowels.`,
      ),
    ],
    ...refused(
      refusals(c, {
        depthInto,
        depthFrom,
        whole,
        long: contact.inFrom.max[run] - contact.inFrom.min[run],
        short: contact.inFrom.max[side] - contact.inFrom.min[side],
        n,
      }),
    ),
  };
}

interface Measures {
  depthInto: number;
  depthFrom: number;
  whole: number;
  long: number;
  short: number;
  n: number;
}

function refusals(c: MakeContext, m: Measures): Refusal[] {
  const found: Refusal[] = [];
  const diameter = c.figure('dowel.diameter');
  for (const [figure, depth, whole] of [
    ['enters.into', m.depthInto, m.whole],
    ['enters.from', m.depthFrom, sizeAlong(c.from.body, c.contact.fromFace)],
  ] as const)
    if (depth >= whole)
      found.push({
        figure,
        fault: `the hole is ${depth} mm deep, the wood only ${whole}`,
        mend: `enter ${Math.max(1, Math.floor(whole - 5))} mm`,
      });
  if (diameter >= m.short)
    found.push({
      figure: 'dowel.diameter',
      fault: `a dowel of ${diameter} mm breaks out of ${Math.round(m.short * 10) / 10} mm`,
      mend: `use ${nearestSize(m.short * 0.4)} mm`,
    });
  const edge = c.figure('edge');
  if (edge <= diameter / 2 || edge > m.long / 2)
    found.push({
      figure: 'edge',
      fault: `the outer dowels stand ${edge} mm from the edge`,
      mend: `give ${Math.min(2 * diameter, Math.floor(m.long / 4))} mm`,
    });
  else if (m.n > 1 && (m.long - 2 * edge) / (m.n - 1) <= diameter)
    found.push({
      figure: 'dowel.count',
      fault: `${m.n} dowels of ${diameter} mm run into each other`,
      mend: `use ${Math.max(1, Math.floor((m.long - 2 * edge) / (2 * diameter)) + 1)}`,
    });
  return found;
}
