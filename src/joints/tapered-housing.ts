import type { Axis, Vec3 } from '../geometry/vector.ts';
import { POLYGON_AXES } from '../results/cuts.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { faceOf, pointAcross, type Refusal, type RoleCut, refused, runOf } from './fixing.ts';
import { deep, FACE_AXIS, flatArea, halfMm, isHigh, limit, longAxis, otherAxis, rule } from './shape.ts';

const TH1 = rule(
  'TH-1',
  'A tapered housing is a third as deep as the board is thick.',
  'Enough to bear the load; the board keeps its strength.',
);
const TH2 = rule(
  'TH-2',
  'One wall runs out by 1 in 50, and by no more than a sixth of the thickness of the board that goes in.',
  'It slides in loose from the wide end and is tight only when it is home; a steeper taper lets go again.',
  { text: 'remembered, 1 in 40 to 1 in 80', basis: 'memory' },
);
const TH3 = rule(
  'TH-3',
  'The slanting wall is the one that the load does not press: the upper side of a shelf stays square.',
  'The shelf stands level by its straight side.',
);
const TH4 = rule('TH-4', 'No housing deeper than half the board.', 'The board breaks along it.');

export const taperedHousing: JointType = {
  type: 'tapered-housing',
  title: 'Tapered housing',
  says: 'A housing with one slanting wall, and an end cut to match: the board slides in from one edge and tightens as it comes home.',
  meets: 'end to face',
  many: false,
  needs: ['a router and a tapered fence, or a saw and router plane', 'a shoulder plane for the end'],
  rules: [TH1, TH2, TH3, TH4],
  figures: [
    {
      name: 'depth',
      label: 'housing depth',
      kind: 'length',
      rule: TH1,
      formula: "a third of the board's thickness, to 0.5 mm",
      value: r => Math.max(1, halfMm(r.depthOf('into') / 3)),
    },
    {
      name: 'taper',
      label: 'narrower at the far end by',
      kind: 'length',
      rule: TH2,
      formula: 'a fiftieth of the run, a sixth of the thickness at most, to 0.5 mm',
      value: r => Math.max(0.5, halfMm(Math.min(runOf(r.contact).long / 50, thickness(r) / 6))),
    },
    {
      name: 'fit',
      label: 'play when home',
      kind: 'length',
      rule: TH2,
      formula: 'nothing: it tightens',
      value: () => 0,
    },
  ],
  adds: () => 'depth',
  make,
};

const thickness = (r: JointReader): number => runOf(r.contact).short;

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const [depth, taper] = [c.figure('depth'), c.figure('taper')];
  const { min, max } = contact.inFrom;
  const thick = max[side] - min[side];
  // The slant is on the underside: the side that looks down in the world, the low one where neither does.
  const under = from.frame[side].z > 0.7 ? false : from.frame[side].z < -0.7;
  const [straight, slanted] = under ? [min[side], max[side]] : [max[side], min[side]];
  const inward = under ? -1 : 1;
  // It goes in from the back and is narrow at the front, the high end of the run where it does not lie so.
  const narrowHigh = from.frame[along].y < 0.7;
  const [narrow, wide] = narrowHigh ? [max[along], min[along]] : [min[along], max[along]];
  const at = isHigh(contact.fromFace) ? from.body.length : 0;
  const tip = at + (isHigh(contact.fromFace) ? depth : -depth);
  const point = (a: number, s: number): Vec3 => ({ x: at, y: 0, z: 0, [along]: a, [side]: s }) as Vec3;
  const onEnd = (p: Vec3): [number, number] => [p.y, p.z];
  const shave: RoleCut = {
    role: 'from',
    cut: {
      kind: 'slant',
      face: faceOf(side, under),
      axis: 'x',
      from: Math.min(at, tip),
      to: Math.max(at, tip),
      polygon: [point(wide, slanted), point(narrow, slanted), point(narrow, slanted + inward * taper)].map(
        onEnd,
      ),
      through: false,
    },
  };
  const entry = FACE_AXIS[contact.intoFace];
  const whole = deep(contact, into.body);
  const corners = [
    point(wide, straight),
    point(narrow, straight),
    point(narrow, slanted + inward * taper),
    point(wide, slanted),
  ].map(p => pointAcross(c, 'from', p));
  const [u, v]: [Axis, Axis] = POLYGON_AXES[entry];
  const trench: RoleCut = {
    role: 'into',
    cut: {
      kind: 'slant',
      face: contact.intoFace,
      axis: entry,
      from: isHigh(contact.intoFace) ? whole - depth : 0,
      to: isHigh(contact.intoFace) ? whole : depth,
      polygon: corners.map((p): [number, number] => [p[u], p[v]]),
      through: false,
      clearance: c.figure('fit'),
    },
  };
  return {
    cuts: [shave, trench],
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: flatArea(contact.inInto), grain: 'end' as const }],
    fasteners: [],
    limits: [
      limit(TH4, 'depth', depth, { max: whole / 2 }, 'attend', `Give ${halfMm(whole / 3)} mm.`),
      limit(TH2, 'taper', taper, { min: 0.5, max: thick / 4 }, 'attend', `Give ${halfMm(thick / 6)} mm.`),
    ],
    ...refused(refusals(c, depth, whole, taper, thick, contact)),
  };
}

function refusals(
  c: MakeContext,
  depth: number,
  whole: number,
  taper: number,
  thick: number,
  contact: MakeContext['contact'],
): Refusal[] {
  const found: Refusal[] = [];
  if (depth <= 0 || depth >= whole)
    found.push({
      figure: 'depth',
      fault: `a housing ${depth} mm deep in a board ${whole} thick`,
      mend: `give ${halfMm(whole / 3)} mm`,
    });
  if (taper <= 0 || taper >= thick)
    found.push({
      figure: 'taper',
      fault: `a taper of ${taper} mm on an end ${thick} thick`,
      mend: `give ${halfMm(thick / 6)} mm`,
    });
  const whole2 = c.from.body[longAxis(contact.inFrom, contact.fromFace) === 'y' ? 'width' : 'thickness'];
  if (runOf(contact).long < whole2 - 0.05)
    found.push({
      figure: 'taper',
      fault: `${c.from.instance} is ${whole2} wide and stands over ${c.into.instance}`,
      mend: 'make them equally wide, or use a stopped housing',
    });
  return found;
}
