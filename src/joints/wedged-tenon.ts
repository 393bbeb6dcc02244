import type { Axis } from '../geometry/vector.ts';
import { POLYGON_AXES } from '../results/cuts.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, type RoleCut, refused } from './fixing.ts';
import { mortiseAndTenon } from './mortise-and-tenon.ts';
import { beyond, deep, FACE_AXIS, halfMm, isHigh, limit, rule, SIZE_OF_AXIS, withSpan } from './shape.ts';

const WT1 = rule(
  'WT-1',
  'A wedged tenon goes right through and stands 2 mm proud, to be planed flush when the wedges are in.',
  'The wedges are driven from outside, and end grain planes clean only when it stands over.',
);
const WT2 = rule(
  'WT-2',
  'Two kerfs, each a sixth of the tenon from its edge, three quarters of its length deep.',
  'The outer strips bend without splitting; nearer the shoulder they break off.',
  { text: 'remembered trade proportions', basis: 'memory' },
);
const WT3 = rule(
  'WT-3',
  'The mortise widens towards the outside by 1 mm at each end for every 25 mm of depth, 1 mm at least.',
  'The spread tenon is a dovetail that cannot be drawn; a slope steeper than 1 in 8 breaks the strips.',
  { text: 'remembered, 1 in 20 to 1 in 30', basis: 'memory' },
);
const WT4 = rule(
  'WT-4',
  'Wedges spread the tenon along the grain of the member, against end grain.',
  'Across the grain they split it.',
);
const WT5 = rule(
  'WT-5',
  'A wedge is as wide as the tenon is thick, and at its thick end as thick as the kerf and the widening together.',
  'It fills both when it is home.',
);

const FIXED: Record<string, number | string> = {
  kind: 'through',
  tip: 'square',
  'haunch.length': 0,
  'mortise.deeper': 0,
};

export const wedgedTenon: JointType = {
  ...mortiseAndTenon,
  type: 'wedged-tenon',
  title: 'Wedged through tenon',
  says: 'A through tenon with saw kerfs, spread by wedges into a mortise that widens outwards.',
  needs: [...mortiseAndTenon.needs, 'hardwood wedges, two a joint'],
  rules: [WT1, WT2, WT3, WT4, WT5],
  figures: [
    ...mortiseAndTenon.figures
      .filter(f => !(f.name in FIXED))
      .map(f =>
        f.name === 'tenon.length'
          ? ({
              ...f,
              rule: WT1,
              formula: 'the depth of the member and 2 mm',
              value: r => r.depthOf('into') + 2,
            } satisfies typeof f)
          : f.name === 'tenon.width'
            ? ({
                ...f,
                formula: "the rail's width less an edge shoulder each side",
                value: r =>
                  Math.max(r.size('from', 'width'), r.size('from', 'thickness')) -
                  Math.max(
                    0,
                    Math.min(r.size('from', 'width'), r.size('from', 'thickness')) -
                      r.figure('tenon.thickness'),
                  ),
              } satisfies typeof f)
            : f.name === 'shoulder.near'
              ? ({
                  ...f,
                  formula: 'half of what the tenon leaves of the rail',
                  value: r =>
                    (Math.max(r.size('from', 'width'), r.size('from', 'thickness')) -
                      r.figure('tenon.width')) /
                    2,
                } satisfies typeof f)
              : f,
      ),
    {
      name: 'kerf',
      label: 'saw kerf for a wedge',
      kind: 'length',
      rule: WT2,
      formula: '1.5 mm, a tenon saw; or as your saw cuts',
      value: () => 1.5,
    },
    {
      name: 'kerf.from_edge',
      label: 'kerf from the edge of the tenon',
      kind: 'length',
      rule: WT2,
      formula: "a sixth of the tenon's width, to 0.5 mm",
      value: r => halfMm(r.figure('tenon.width') / 6),
    },
    {
      name: 'kerf.depth',
      label: 'kerf depth from the tip',
      kind: 'length',
      rule: WT2,
      formula: "three quarters of the tenon's length",
      value: r => Math.round(r.figure('tenon.length') * 0.75),
    },
    {
      name: 'flare',
      label: 'mortise wider outside, each end',
      kind: 'length',
      rule: WT3,
      formula: '1 mm for 25 of depth, to 0.5 mm, 1 mm at least',
      value: r => Math.max(1, halfMm(r.depthOf('into') / 25)),
    },
  ],
  make,
};

function make(c: MakeContext) {
  const made = mortiseAndTenon.make({
    ...c,
    figure: name => (name in FIXED ? Number(FIXED[name]) : c.figure(name)),
    word: name => (name in FIXED ? String(FIXED[name]) : c.word(name)),
  });
  const [tenon, mortise] = [made.cuts[0]?.cut, made.cuts[1]?.cut];
  if (made.impossible || tenon?.kind !== 'tenon' || mortise?.kind !== 'mortise') return made;
  const { contact, from, into } = c;
  const edges = tenon.cheeks === 'z' ? 'y' : 'z';
  const [low, high] = [tenon[edges].low, from.body[SIZE_OF_AXIS[edges]] - tenon[edges].high];
  const [kerf, inset, depth] = [c.figure('kerf'), c.figure('kerf.from_edge'), c.figure('kerf.depth')];
  const tip = beyond(
    { min: { x: 0, y: 0, z: 0 }, max: { x: from.body.length, y: from.body.width, z: from.body.thickness } },
    contact.fromFace,
    from.body,
    tenon.length,
  );
  const reach =
    contact.fromFace === 'end2'
      ? withSpan(tip, 'x', tip.max.x - depth, tip.max.x)
      : withSpan(tip, 'x', tip.min.x, tip.min.x + depth);
  const kerfs = [low + inset, high - inset - kerf].map(
    (at): RoleCut => ({
      role: 'from',
      cut: {
        kind: 'open-mortise',
        face: contact.fromFace,
        box: withSpan(reach, edges, at, at + kerf),
        run: tenon.cheeks,
        through: true,
        corner: 'square',
      },
    }),
  );
  const spread = spreadAxis(c, edges);
  const flare = c.figure('flare');
  const whole = deep(contact, into.body);
  const thickness = c.figure('tenon.thickness');
  const wedge = halfMm(kerf + flare);
  return {
    ...made,
    cuts: [...made.cuts, ...kerfs, ...flares(c, mortise.box, spread, flare)],
    fasteners: [
      {
        item: `${wedge} x ${thickness} x ${depth} hardwood wedge`,
        kind: 'other' as const,
        quantity: 2,
        length: depth,
        diameter: wedge,
      },
    ],
    limits: [
      ...made.limits,
      {
        ...limit(
          WT3,
          'flare',
          flare,
          { min: whole / 40, max: whole / 8 },
          'attend',
          `Give ${Math.max(1, halfMm(whole / 25))} mm.`,
        ),
      },
      {
        ...limit(
          WT4,
          'spread to the grain',
          spread === 'x' ? 0 : 90,
          { max: 45 },
          'attend',
          'Turn the tenon so that its width lies along the grain of the member, or peg it.',
        ),
        kind: 'angle' as const,
      },
    ],
    ...refused(refusals(c, high - low, depth, tenon.length, mortise.box, spread, flare)),
  };
}

/** The axis of the receiving member along which the wedges spread the tenon. */
function spreadAxis(c: MakeContext, edges: 'y' | 'z'): Axis {
  const d = c.from.frame[edges];
  const along = (a: Axis): number => {
    const v = c.into.frame[a];
    return Math.abs(v.x * d.x + v.y * d.y + v.z * d.z);
  };
  return (['x', 'y', 'z'] as const).reduce((best, a) => (along(a) > along(best) ? a : best));
}

/** The two slants by which the mortise widens towards the far face. */
function flares(
  c: MakeContext,
  { min, max }: { min: Record<Axis, number>; max: Record<Axis, number> },
  spread: Axis,
  flare: number,
): RoleCut[] {
  const { contact, into } = c;
  const entry = FACE_AXIS[contact.intoFace];
  const axis = (['x', 'y', 'z'] as const).find(a => a !== entry && a !== spread)!;
  const whole = into.body[SIZE_OF_AXIS[entry]];
  const [near, far] = isHigh(contact.intoFace) ? [whole, 0] : [0, whole];
  const point = (s: number, e: number): [number, number] =>
    POLYGON_AXES[axis][0] === spread ? [s, e] : [e, s];
  return ([-1, 1] as const).map(sign => {
    const edge = sign < 0 ? min[spread] : max[spread];
    return {
      role: 'into',
      cut: {
        kind: 'slant',
        face: far === 0 ? FACES[entry].low : FACES[entry].high,
        axis,
        from: min[axis],
        to: max[axis],
        polygon: [point(edge, near), point(edge + sign * flare, far), point(edge, far)],
        through: false,
      },
    };
  });
}

const FACES = {
  x: { low: 'end1', high: 'end2' },
  y: { low: 'backEdge', high: 'faceEdge' },
  z: { low: 'back', high: 'face' },
} as const;

function refusals(
  c: MakeContext,
  width: number,
  depth: number,
  length: number,
  { min, max }: { min: Record<Axis, number>; max: Record<Axis, number> },
  spread: Axis,
  flare: number,
): Refusal[] {
  const found: Refusal[] = [];
  const [kerf, inset] = [c.figure('kerf'), c.figure('kerf.from_edge')];
  if (kerf <= 0 || 2 * (inset + kerf) >= width)
    found.push({
      figure: 'kerf.from_edge',
      fault: `two kerfs of ${kerf} mm, ${inset} from the edges, leave nothing of a tenon of ${width}`,
      mend: `set them ${halfMm(width / 6)} mm from the edges`,
    });
  if (depth <= 0 || depth >= length)
    found.push({
      figure: 'kerf.depth',
      fault: `a kerf ${depth} mm deep in a tenon of ${length}`,
      mend: `give ${Math.round(length * 0.75)} mm`,
    });
  const whole = c.into.body[SIZE_OF_AXIS[spread]];
  if (flare <= 0 || min[spread] - flare < 0 || max[spread] + flare > whole)
    found.push({
      figure: 'flare',
      fault: `a mortise widened by ${flare} mm at each end does not stay inside the ${whole} of ${c.into.instance}`,
      mend: 'give 1 mm, or a narrower tenon',
    });
  return found;
}
