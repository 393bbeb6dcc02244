import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { bored, pointAcross, type Refusal, refused } from './fixing.ts';
import { deep, FACE_AXIS, isHigh, limit, rule, sizeAlong, wholeMm } from './shape.ts';

const RT1 = rule(
  'RT-1',
  'A round tenon is two thirds of the member thick, to a size that drills come in.',
  'A shoulder all round hides the edge of the hole; thinner breaks at it.',
);
const RT2 = rule(
  'RT-2',
  'It enters one and a half diameters, and leaves 5 mm of wood behind.',
  'End grain in a bore holds by its length; the far face must not bruise.',
);
const RT3 = rule('RT-3', 'The bore is 2 mm deeper than the tenon is long.', 'Glue and air need room.');
const RT4 = rule(
  'RT-4',
  'A glued round tenon has 0.1 mm play in its diameter.',
  'Tighter, it scrapes the glue off; looser, only its shoulder holds.',
  { text: 'remembered fit, 0.05 to 0.15 mm', basis: 'memory' },
);
const RT5 = rule(
  'RT-5',
  'The bore is no wider than half of the face it enters.',
  'The walls beside it split when the tenon swells.',
);

/** Drills a shop has for bores of this kind, mm. */
const DRILLS = [6, 8, 10, 12, 16, 18, 20, 22, 25, 28, 30, 32, 35, 38, 40, 45, 50];
const drillBelow = (wanted: number): number => DRILLS.filter(d => d <= wanted).at(-1) ?? wholeMm(wanted);
const section = (r: JointReader): number => Math.min(r.size('from', 'width'), r.size('from', 'thickness'));

export const roundTenon: JointType = {
  type: 'round-tenon',
  title: 'Round tenon',
  says: 'A turned end glued into a bored hole.',
  meets: 'end to face',
  many: false,
  needs: ['a lathe or a tenon cutter', 'a drill of the same size'],
  rules: [RT1, RT2, RT3, RT4, RT5],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: RT2,
      formula: 'stub unless said',
      choices: ['stub', 'through'],
      value: () => 'stub',
    },
    {
      name: 'tenon.diameter',
      label: 'tenon diameter',
      kind: 'length',
      rule: RT1,
      formula: 'two thirds of the member, half of the face it enters at most, the next drill below',
      value: r => drillBelow(Math.min((section(r) * 2) / 3, narrow(r) / 2)),
    },
    {
      name: 'tenon.length',
      label: 'tenon length',
      kind: 'length',
      rule: RT2,
      formula: 'one and a half diameters, leaving 5 mm and the room at the end; the whole depth when through',
      value: r =>
        r.word('kind') === 'through'
          ? r.depthOf('into')
          : Math.max(
              1,
              Math.min(
                wholeMm(1.5 * r.figure('tenon.diameter')),
                Math.floor(r.depthOf('into') - 5 - r.figure('bore.deeper')),
              ),
            ),
    },
    {
      name: 'bore.deeper',
      label: 'bore deeper than the tenon by',
      kind: 'length',
      rule: RT3,
      formula: '2 mm; nothing when through',
      value: r => (r.word('kind') === 'through' ? 0 : 2),
    },
    {
      name: 'fit',
      label: 'play in the diameter',
      kind: 'length',
      rule: RT4,
      formula: '0.1 mm',
      value: () => 0.1,
    },
  ],
  adds: () => 'tenon.length',
  make,
};

/** The narrower way across the face that is bored. */
function narrow(r: JointReader): number {
  const entry = FACE_AXIS[r.contact.intoFace];
  return Math.min(
    ...(['x', 'y', 'z'] as const)
      .filter(a => a !== entry)
      .map(a => r.size('into', a === 'x' ? 'length' : a === 'y' ? 'width' : 'thickness')),
  );
}

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const [diameter, length] = [c.figure('tenon.diameter'), c.figure('tenon.length')];
  const through = c.word('kind') === 'through';
  const depth = deep(contact, into.body);
  const high = isHigh(contact.fromFace);
  const end = high ? sizeAlong(from.body, contact.fromFace) : 0;
  const centre = { x: end, y: from.body.width / 2, z: from.body.thickness / 2 };
  const bore = through ? depth : length + c.figure('bore.deeper');
  const [a, b] = high ? [end, end + length] : [end - length, end];
  const face = (['x', 'y', 'z'] as const)
    .filter(axis => axis !== FACE_AXIS[contact.intoFace])
    .map(axis => into.body[axis === 'x' ? 'length' : axis === 'y' ? 'width' : 'thickness']);
  return {
    cuts: [
      {
        role: 'from' as const,
        cut: {
          kind: 'turned' as const,
          profile: [
            { at: a, diameter },
            { at: b, diameter },
          ],
          round: from.round,
          clearance: c.figure('fit'),
        },
      },
      {
        role: 'into' as const,
        cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', centre), {
          role: 'bar',
          diameter,
          depth: bore,
          clearance: c.figure('fit'),
        }),
      },
    ],
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: Math.PI * diameter * length, grain: 'cross' as const }],
    fasteners: [],
    limits: [
      limit(
        RT5,
        'tenon.diameter',
        diameter,
        { max: Math.min(...face) / 2 },
        'attend',
        `Bore ${drillBelow(Math.min(...face) / 2)} mm.`,
      ),
      limit(RT2, 'tenon.length', length, { min: diameter }, 'note', `Give ${wholeMm(1.5 * diameter)} mm.`),
      limit(
        RT2,
        'bore.left',
        through ? 5 : depth - bore,
        { min: 4 },
        'attend',
        `Give a tenon of ${Math.floor(depth - 7)} mm.`,
      ),
    ],
    ...refused(refusals(c, Math.min(from.body.width, from.body.thickness), depth, bore, through)),
  };
}

function refusals(c: MakeContext, thick: number, depth: number, bore: number, through: boolean): Refusal[] {
  const found: Refusal[] = [];
  const [diameter, length] = [c.figure('tenon.diameter'), c.figure('tenon.length')];
  if (diameter <= 0 || diameter > thick)
    found.push({
      figure: 'tenon.diameter',
      fault: `a round tenon of ${diameter} mm does not come out of ${thick}`,
      mend: `give ${drillBelow((thick * 2) / 3)} mm`,
    });
  if (length <= 0 || (through && length < depth - 1e-6))
    found.push({
      figure: 'tenon.length',
      fault: `a tenon of ${length} mm ${length <= 0 ? 'is none' : `does not reach through ${depth}`}`,
      mend: length <= 0 ? 'give more than 0' : `give ${depth} mm or more`,
    });
  if (!through && bore >= depth)
    found.push({
      figure: 'tenon.length',
      fault: `the bore is ${bore} mm deep, the member only ${depth}`,
      mend: `give a tenon of ${Math.floor(depth - 7)} mm, or make it a through one`,
    });
  const { inInto, intoFace } = c.contact;
  const room = Math.min(
    ...(['x', 'y', 'z'] as const)
      .filter(a => a !== FACE_AXIS[intoFace])
      .map(a => inInto.max[a] - inInto.min[a]),
  );
  if (found.length === 0 && room < diameter - 0.05)
    found.push({
      figure: 'tenon.diameter',
      fault: `a bore of ${diameter} mm runs off the face of ${c.into.instance}, which holds ${Math.round(room * 10) / 10} of it`,
      mend: 'move the member onto the face, or make the tenon thinner',
    });
  return found;
}
