import type { Box } from '../geometry/box.ts';
import { toLocal } from '../geometry/frame.ts';
import type { EndName } from '../results/cuts.ts';
import type { JointLimit } from '../results/piece.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  across,
  beyond,
  deep,
  FACE_AXIS,
  limit,
  rule,
  SIZE_OF_AXIS,
  sunk,
  wholeMm,
  withSpan,
} from './shape.ts';
import { refusals } from './tenon-refusals.ts';

const SIZING = { text: 'woodmagazine.com, sizing mortises', basis: 'read' } as const;

const MT1 = rule(
  'MT-1',
  'The tenon is a third of the rail, to the nearest chisel or cutter.',
  'Thinner breaks, thicker leaves weak walls beside the mortise.',
  SIZING,
);
const MT2 = rule(
  'MT-2',
  'A stub tenon goes two thirds into the other member; half at least.',
  'Glue area grows with length; the wood behind must not break out.',
  SIZING,
);
const MT3 = rule(
  'MT-3',
  'Edge shoulders equal the face shoulders.',
  'They hide the mortise ends and stop the rail from twisting.',
  SIZING,
);
const MT4 = rule(
  'MT-4',
  'A blind mortise is 2 mm deeper than its tenon is long.',
  'Glue and chips need room, or the shoulder never closes (1.5 to 3 mm).',
  SIZING,
);
const MT5 = rule(
  'MT-5',
  'A haunched tenon keeps two thirds of the rail; the haunch is the other third.',
  'A mortise open to the end of a post splits out; the haunch still holds the rail flat.',
  {
    text: 'remembered trade rule; Noyes, Handwork in Wood (1910) gives half the rail less the groove',
    basis: 'memory',
  },
);
const MT6 = rule(
  'MT-6',
  'A haunch is as long as the groove is deep, else 10 mm.',
  'It fills the groove where that runs out.',
);
const MT7 = rule(
  'MT-7',
  'A glued tenon has 0.1 mm play in its thickness.',
  'It slides home by hand with glue on and still holds.',
  { text: 'remembered fit for water-based glue lines, 0.05 to 0.15 mm', basis: 'memory' },
);
const MT8 = rule(
  'MT-8',
  'A through tenon comes flush: as long as the member is deep.',
  'Longer ones are for tusks and proud ends: say so.',
);
const MT9 = rule(
  'MT-9',
  'At least 5 mm of wood stays behind a blind mortise.',
  'Less shows as a bruise or breaks out.',
);

const thin = (r: JointReader): 'width' | 'thickness' =>
  r.size('from', 'thickness') <= r.size('from', 'width') ? 'thickness' : 'width';
const wide = (r: JointReader): 'width' | 'thickness' => (thin(r) === 'thickness' ? 'width' : 'thickness');
const faceShoulder = (r: JointReader): number => (r.size('from', thin(r)) - r.figure('tenon.thickness')) / 2;
const haunched = (r: JointReader): boolean => r.word('kind') === 'haunched';

export const mortiseAndTenon: JointType = {
  type: 'mortise-and-tenon',
  title: 'Mortise and tenon',
  says: 'The end of a rail, cut to a tongue, glued into a pocket in a post or stile.',
  meets: 'end to face',
  many: false,
  needs: ['a mortising machine, router or chisels', 'a way to saw cheeks upright'],
  rules: [MT1, MT2, MT3, MT4, MT5, MT6, MT7, MT8, MT9],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: MT2,
      formula: 'stub unless said',
      choices: ['stub', 'through', 'haunched'],
      value: () => 'stub',
    },
    {
      name: 'tenon.thickness',
      label: 'tenon thickness',
      kind: 'length',
      rule: MT1,
      formula: "a third of the rail's thickness, whole mm",
      value: r => wholeMm(r.size('from', thin(r)) / 3),
    },
    {
      name: 'tenon.length',
      label: 'tenon length',
      kind: 'length',
      rule: MT2,
      formula: 'two thirds of the depth it enters; the whole of it when through',
      value: r =>
        r.word('kind') === 'through'
          ? r.depthOf('into')
          : Math.max(1, Math.floor((r.depthOf('into') * 2) / 3)),
    },
    {
      name: 'tenon.width',
      label: 'tenon width',
      kind: 'length',
      rule: MT3,
      formula: "the rail's width less an edge shoulder each side; two thirds of it when haunched",
      value: r =>
        haunched(r)
          ? wholeMm((r.size('from', wide(r)) * 2) / 3)
          : r.size('from', wide(r)) - 2 * Math.max(0, faceShoulder(r)),
    },
    {
      name: 'shoulder.near',
      label: 'shoulder towards the end of the post',
      kind: 'length',
      rule: MT3,
      formula: 'half of what the tenon leaves of the rail; all of it when haunched',
      value: r => {
        const left = r.size('from', wide(r)) - r.figure('tenon.width');
        return haunched(r) ? left : left / 2;
      },
    },
    {
      name: 'cheek.face',
      label: 'taken from the face side',
      kind: 'length',
      rule: MT1,
      formula: 'half of what the tenon leaves of the thickness',
      value: r => faceShoulder(r),
    },
    {
      name: 'haunch.length',
      label: 'haunch length',
      kind: 'length',
      rule: MT6,
      formula: '10 mm, no more than the tenon',
      value: r => (haunched(r) ? Math.min(10, r.figure('tenon.length')) : 0),
    },
    {
      name: 'mortise.deeper',
      label: 'mortise deeper than the tenon by',
      kind: 'length',
      rule: MT4,
      formula: '2 mm; nothing when through',
      value: r => (r.word('kind') === 'through' ? 0 : 2),
    },
    {
      name: 'tip',
      label: 'tenon tip',
      kind: 'text',
      rule: MT9,
      formula: 'square unless two mortises meet',
      choices: ['square', 'mitred'],
      value: () => 'square',
    },
    {
      name: 'fit',
      label: 'play in the thickness',
      kind: 'length',
      rule: MT7,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'tenon.length',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const cheeks = from.body.thickness <= from.body.width ? 'z' : 'y';
  const edges = cheeks === 'z' ? 'y' : 'z';
  const through = c.word('kind') === 'through';
  const [thickness, length, width] = [
    c.figure('tenon.thickness'),
    c.figure('tenon.length'),
    c.figure('tenon.width'),
  ];
  const whole = { thick: from.body[SIZE_OF_AXIS[cheeks]], wide: from.body[SIZE_OF_AXIS[edges]] };
  const near = nearSide(c, edges);
  const nearAmount = c.figure('shoulder.near');
  const farAmount = whole.wide - width - nearAmount;
  const taken = {
    [edges]: near === 'high' ? { low: farAmount, high: nearAmount } : { low: nearAmount, high: farAmount },
    [cheeks]: { high: c.figure('cheek.face'), low: whole.thick - thickness - c.figure('cheek.face') },
  } as Record<'y' | 'z', { low: number; high: number }>;

  const tongue = beyond(
    {
      min: { x: 0, y: taken.y.low, z: taken.z.low },
      max: { x: from.body.length, y: from.body.width - taken.y.high, z: from.body.thickness - taken.z.high },
    },
    contact.fromFace,
    from.body,
    length,
  );
  const depth = deep(contact, into.body);
  const haunch = c.figure('haunch.length');
  const tenon: CutDraft = {
    kind: 'tenon',
    end: contact.fromFace as EndName,
    length,
    ...taken,
    cheeks,
    ...(haunch > 0 ? { haunch: { side: near, width: nearAmount, length: haunch } } : {}),
    ...(c.word('tip') === 'mitred' ? { mitredTip: { side: mitreSide(c, cheeks) } } : {}),
    through,
    clearance: c.figure('fit'),
  };
  const pocket = across(c, 'from', tongue);
  const axis = FACE_AXIS[contact.intoFace];
  const mortiseDepth = through ? depth : Math.min(depth, length + c.figure('mortise.deeper'));
  const box = sunk(pocket, contact.intoFace, into.body, mortiseDepth);
  const run = longRun(box, axis);
  const cuts: { role: 'from' | 'into'; cut: CutDraft }[] = [
    { role: 'from', cut: tenon },
    {
      role: 'into',
      cut: {
        kind: 'mortise',
        face: contact.intoFace,
        box,
        run,
        through: mortiseDepth >= depth,
        corner: 'square',
        clearance: c.figure('fit'),
      },
    },
  ];
  if (haunch > 0)
    cuts.push({ role: 'into', cut: haunchSocket(c, taken, near, edges, haunch, nearAmount, run) });
  return {
    cuts,
    mates: [[0, 1]] as [number, number][],
    glue: [
      { area: 2 * length * width, grain: 'long' as const },
      { area: 2 * length * thickness, grain: 'cross' as const },
    ],
    fasteners: [],
    limits: limits(c, whole.thick, depth, mortiseDepth, through),
    ...refusals(c, whole, depth, through, farAmount, box),
  };
}

/** Which edge of the rail lies nearer to an end of the post. */
function nearSide(c: MakeContext, edges: 'y' | 'z'): 'low' | 'high' {
  const { contact, from, into } = c;
  const slice = (low: number, high: number): Box =>
    across(c, 'from', withSpan(contact.inFrom, edges, low, high));
  const toEnd = (b: Box): number => Math.min(b.min.x, into.body.length - b.max.x);
  const span = from.body[SIZE_OF_AXIS[edges]];
  return toEnd(slice(span * 0.75, span)) <= toEnd(slice(0, span * 0.25)) ? 'high' : 'low';
}

/** The long point of a mitred tip lies on the outer side of the post, away from the other mortise and the piece. */
function mitreSide(c: MakeContext, cheeks: 'y' | 'z'): 'low' | 'high' {
  const { contact, from, into } = c;
  const span = from.body[SIZE_OF_AXIS[cheeks]];
  const high = across(c, 'from', withSpan(contact.inFrom, cheeks, span * 0.75, span));
  // The axis of the post along which the tenon's thickness lies.
  const axis = (['x', 'y', 'z'] as const).find(
    a =>
      a !== FACE_AXIS[contact.intoFace] &&
      high.max[a] - high.min[a] < (contact.inInto.max[a] - contact.inInto.min[a]) * 0.5,
  );
  if (!axis) return 'high';
  const middle = (contact.inInto.min[axis] + contact.inInto.max[axis]) / 2;
  const inwards = toLocal(into.frame, c.middle)[axis] > into.body[SIZE_OF_AXIS[axis]] / 2 ? 1 : -1;
  return ((high.min[axis] + high.max[axis]) / 2 - middle) * inwards < 0 ? 'high' : 'low';
}

function haunchSocket(
  c: MakeContext,
  taken: Record<'y' | 'z', { low: number; high: number }>,
  near: 'low' | 'high',
  edges: 'y' | 'z',
  length: number,
  width: number,
  run: 'x' | 'y' | 'z',
): CutDraft {
  const { contact, from, into } = c;
  const span = from.body[SIZE_OF_AXIS[edges]];
  const cheeks = edges === 'y' ? 'z' : 'y';
  const whole = from.body[SIZE_OF_AXIS[cheeks]];
  let stub: Box = withSpan(contact.inFrom, cheeks, taken[cheeks].low, whole - taken[cheeks].high);
  stub = near === 'high' ? withSpan(stub, edges, span - width, span) : withSpan(stub, edges, 0, width);
  const box = sunk(across(c, 'from', stub), contact.intoFace, into.body, length);
  return {
    kind: 'notch',
    face: contact.intoFace,
    box,
    run,
    through: false,
    corner: 'square',
    clearance: c.figure('fit'),
  };
}

const longRun = (b: Box, not: 'x' | 'y' | 'z'): 'x' | 'y' | 'z' =>
  (['x', 'y', 'z'] as const)
    .filter(a => a !== not)
    .sort((p, q) => b.max[q] - b.min[q] - (b.max[p] - b.min[p]))[0]!;

function limits(
  c: MakeContext,
  rail: number,
  depth: number,
  mortise: number,
  through: boolean,
): JointLimit[] {
  const all = [
    limit(
      MT1,
      'tenon.thickness',
      c.figure('tenon.thickness'),
      { min: rail / 4, max: rail / 2 },
      'attend',
      `Make the tenon ${wholeMm(rail / 3)} mm thick.`,
    ),
    limit(MT7, 'fit', c.figure('fit'), { min: 0, max: 0.3 }, 'attend', 'Give 0.1 mm.'),
  ];
  if (through) return all;
  return [
    ...all,
    limit(
      MT2,
      'tenon.length',
      c.figure('tenon.length'),
      { min: depth / 3 },
      'note',
      `Half the depth is ${depth / 2} mm, two thirds ${Math.floor((depth * 2) / 3)}.`,
    ),
    limit(
      MT9,
      'mortise.left',
      depth - mortise,
      { min: 5 },
      'attend',
      `A tenon of ${Math.floor(depth - 5 - c.figure('mortise.deeper'))} mm leaves 5 mm.`,
    ),
  ];
}
