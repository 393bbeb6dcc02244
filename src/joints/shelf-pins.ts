import { vec } from '../geometry/vector.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { axisAlong, bored, type Refusal, type RoleCut, refused, runOf } from './fixing.ts';
import { deep, FACE_AXIS, isHigh, limit, longAxis, rule, SIZE_OF_AXIS, sizeAlong } from './shape.ts';

const SP1 = rule(
  'SP-1',
  'Pins are 5 mm thick for shelves up to 25 mm, else 7 mm, and enter two diameters.',
  'They bear in shear; a short hole works loose.',
  { text: 'remembered, as pins are sold', basis: 'memory' },
);
const SP2 = rule(
  'SP-2',
  'Holes stand 32 mm apart, two above the shelf and two below it besides its own.',
  'Bought fittings share the spacing; more holes weaken and show.',
  { text: 'remembered, the usual boring pitch', basis: 'memory' },
);
const SP3 = rule(
  'SP-3',
  'The two rows stand a tenth of the depth from front and back, 25 to 60 mm.',
  'Near enough to the corners that the shelf does not rock, far enough that the side does not split.',
);
const SP4 = rule(
  'SP-4',
  'A shelf is 1 mm shorter than the opening at each end, 3 mm at most.',
  'It must drop in, and stay on its pins.',
);

export const shelfPins: JointType = {
  type: 'shelf-pins',
  title: 'Shelf on pins',
  says: 'A loose shelf on pins in rows of holes.',
  meets: 'end to face',
  within: 3,
  many: false,
  needs: ['a drill with a stop', 'a strip with holes as a guide', 'shelf pins'],
  rules: [SP1, SP2, SP3, SP4],
  figures: [
    {
      name: 'pin.diameter',
      positive: true,
      label: 'pin diameter',
      kind: 'length',
      rule: SP1,
      formula: '5 mm, 7 mm from a shelf of 26 mm on; or as your pins are',
      value: r => (runOf(r.contact).short <= 25 ? 5 : 7),
    },
    {
      name: 'pin.depth',
      positive: true,
      label: 'hole depth',
      kind: 'length',
      rule: SP1,
      formula: 'two diameters and 1 mm, leaving 3 mm of the side',
      value: r => Math.max(1, Math.min(2 * r.figure('pin.diameter') + 1, r.depthOf('into') - 3)),
    },
    {
      name: 'pitch',
      positive: true,
      label: 'holes apart',
      kind: 'length',
      rule: SP2,
      formula: '32 mm',
      value: () => 32,
    },
    {
      name: 'above',
      label: 'holes above the shelf',
      kind: 'count',
      rule: SP2,
      formula: 'two',
      value: () => 2,
    },
    {
      name: 'below',
      label: 'holes below the shelf',
      kind: 'count',
      rule: SP2,
      formula: 'two',
      value: () => 2,
    },
    {
      name: 'set.in',
      label: 'rows from front and back',
      kind: 'length',
      rule: SP3,
      formula: 'a tenth of the depth, 25 to 60 mm, a quarter of it at most',
      value: r => Math.min(depthOf(r) / 4, Math.max(25, Math.min(60, Math.round(depthOf(r) / 10)))),
    },
  ],
  adds: () => undefined,
  make,
};

const depthOf = (r: JointReader): number => runOf(r.contact).long;

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const up = axisAlong(into.frame, vec(0, 0, 1));
  const entry = FACE_AXIS[contact.intoFace];
  const [diameter, depth] = [c.figure('pin.diameter'), c.figure('pin.depth')];
  const whole = deep(contact, into.body);
  // A shelf lies level when its thickness stands upright.
  const level =
    up && up.axis !== entry && up.axis !== longAxis(contact.inInto, contact.intoFace) ? up : undefined;
  const cuts: RoleCut[] = [];
  let nearest = Number.POSITIVE_INFINITY;
  if (level) {
    const run = (['x', 'y', 'z'] as const).find(a => a !== entry && a !== level.axis)!;
    const under = level.sign > 0 ? contact.inInto.min[level.axis] : contact.inInto.max[level.axis];
    const size = into.body[SIZE_OF_AXIS[level.axis]];
    const [above, below] = [c.figure('above'), c.figure('below')].map(n => Math.max(0, Math.round(n))) as [
      number,
      number,
    ];
    for (const row of [
      contact.inInto.min[run] + c.figure('set.in'),
      contact.inInto.max[run] - c.figure('set.in'),
    ])
      for (let i = -below; i <= above; i++) {
        // The shelf lies on top of its pins.
        const at = under + level.sign * (i * c.figure('pitch') - diameter / 2);
        nearest = Math.min(nearest, at, size - at);
        cuts.push({
          role: 'into',
          cut: bored(
            contact.intoFace,
            into.body,
            { ...vec(0, 0, 0), [run]: row, [level.axis]: at, [entry]: isHigh(contact.intoFace) ? whole : 0 },
            { role: 'plain', diameter, depth },
          ),
        });
      }
  }
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `${diameter} mm shelf pin`,
        kind: 'pin' as const,
        quantity: 2,
        length: 2 * diameter + 6,
        diameter,
      },
    ],
    limits: [
      limit(SP1, 'pin.depth', depth, { min: 1.5 * diameter }, 'attend', `Bore ${2 * diameter + 1} mm.`),
      limit(
        SP4,
        'gap at the end',
        contact.apart,
        { max: 2 },
        'attend',
        `Make ${from.instance} longer: 1 mm at each end is enough.`,
      ),
    ],
    ...refused(refusals(c, level !== undefined, depth, whole, nearest, diameter)),
  };
}

function refusals(
  c: MakeContext,
  level: boolean,
  depth: number,
  whole: number,
  nearest: number,
  diameter: number,
): Refusal[] {
  const found: Refusal[] = [];
  if (!level)
    found.push({
      figure: 'pitch',
      fault: `${c.from.instance} does not lie level against an upright`,
      mend: 'use a housing or screws',
    });
  if (depth <= 0 || depth >= whole)
    found.push({
      figure: 'pin.depth',
      fault: `holes ${depth} mm deep in a side of ${whole}`,
      mend: `bore ${Math.max(1, Math.floor(whole - 3))} mm`,
    });
  if (level && nearest < 2 * diameter)
    found.push({
      figure: c.figure('above') >= c.figure('below') ? 'above' : 'below',
      fault: `a hole stands ${Math.round(nearest * 10) / 10} mm from the end of ${c.into.instance}`,
      mend: `leave ${2 * diameter} mm: bore fewer holes`,
    });
  const room = sizeAlong(
    c.into.body,
    c.contact.intoFace === 'face' || c.contact.intoFace === 'back' ? 'faceEdge' : 'face',
  );
  if (c.figure('set.in') < 2 * diameter || c.figure('set.in') > room / 2)
    found.push({
      figure: 'set.in',
      fault: `rows ${c.figure('set.in')} mm from the edges`,
      mend: `give at least ${2 * diameter} mm and less than half the depth`,
    });
  return found;
}
