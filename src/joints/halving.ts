import type { Box } from '../geometry/box.ts';
import type { LocalFace, Size } from '../results/cuts.ts';
import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { FACE_AXIS, flatArea, isHigh, limit, OPPOSITE, rule, SIZE_OF_AXIS, withSpan } from './shape.ts';

const HA1 = rule(
  'HA-1',
  'Half is taken from each member where they cross.',
  'Both keep the same strength and come flush.',
);
const HA2 = rule('HA-2', 'A halving has 0.1 mm play in its width.', 'It must go home with glue on.', {
  text: 'remembered fit',
  basis: 'memory',
});

export const halving: JointType = {
  type: 'halving',
  title: 'Halving',
  says: 'Two members in one plane, half of each cut away where they meet: at a corner, a T or a crossing.',
  meets: 'overlap',
  many: true,
  needs: ['a table saw with sled, or a tenon saw and chisel'],
  rules: [HA1, HA2],
  figures: [
    {
      name: 'share',
      label: 'taken from the first member',
      kind: 'number',
      rule: HA1,
      formula: 'half',
      value: () => 0.5,
    },
    {
      name: 'fit',
      label: 'play in the width',
      kind: 'length',
      rule: HA2,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  // Both are cut along the axis in which the overlap is thinnest and spans both members' faces.
  const [fromFace, intoFace] = facesOf(c);
  const share = c.figure('share');
  const fit = c.figure('fit');
  const depthOf = (region: Box, face: LocalFace): number =>
    region.max[FACE_AXIS[face]] - region.min[FACE_AXIS[face]];
  const first = slice(contact.inFrom, fromFace, depthOf(contact.inFrom, fromFace) * share);
  const second = slice(contact.inInto, intoFace, depthOf(contact.inInto, intoFace) * (1 - share));
  return {
    cuts: [
      {
        role: 'from' as const,
        cut: {
          kind: 'halving' as const,
          face: fromFace,
          box: first,
          run: runOf(first, fromFace, from.body),
          through: false,
          corner: 'square' as const,
          clearance: fit,
        },
      },
      {
        role: 'into' as const,
        cut: {
          kind: 'halving' as const,
          face: intoFace,
          box: second,
          run: runOf(second, intoFace, into.body),
          through: false,
          corner: 'square' as const,
          clearance: fit,
        },
      },
    ],
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: flatArea(contact.inFrom), grain: 'cross' as const }],
    fasteners: [],
    limits: [
      {
        ...limit(HA1, 'share', share, { min: 0.3, max: 0.7 }, 'attend', 'Give 0.5.'),
        kind: 'number' as const,
      },
    ],
    ...(share <= 0 || share >= 1
      ? {
          impossible: [
            { figure: 'share', fault: `a share of ${share} leaves nothing of one member`, mend: 'give 0.5' },
          ],
        }
      : {}),
  };
}

/** `from` is cut from the face that looks at `into` for a lap; for edge crossings from its low world face. */
function facesOf(c: MakeContext): [LocalFace, LocalFace] {
  const { contact, from, into } = c;
  for (const axis of ['z', 'y', 'x'] as const) {
    const span = contact.inFrom.max[axis] - contact.inFrom.min[axis];
    if (span < from.body[SIZE_OF_AXIS[axis]] - 0.05) continue;
    const own: LocalFace = axis === 'z' ? 'back' : axis === 'y' ? 'backEdge' : 'end1';
    const normal = from.frame[axis];
    for (const other of ['z', 'y', 'x'] as const) {
      const along =
        normal.x * into.frame[other].x + normal.y * into.frame[other].y + normal.z * into.frame[other].z;
      if (Math.abs(along) < 1 - 1e-9) continue;
      const low: LocalFace = other === 'z' ? 'back' : other === 'y' ? 'backEdge' : 'end1';
      if (contact.inInto.max[other] - contact.inInto.min[other] < into.body[SIZE_OF_AXIS[other]] - 0.05)
        continue;
      // Opposite sides: what stays of the one fills what is gone from the other.
      return [own, along > 0 ? OPPOSITE[low] : low];
    }
  }
  return [contact.fromFace, contact.intoFace];
}

function slice(region: Box, face: LocalFace, depth: number): Box {
  const axis = FACE_AXIS[face];
  return isHigh(face)
    ? withSpan(region, axis, region.max[axis] - depth, region.max[axis])
    : withSpan(region, axis, region.min[axis], region.min[axis] + depth);
}

/** The tool travels across the member: the axis of the face that the region spans wholly. */
function runOf(box: Box, face: LocalFace, body: Size): 'x' | 'y' | 'z' {
  const axes = (['y', 'z', 'x'] as const).filter(a => a !== FACE_AXIS[face]);
  return axes.find(a => box.max[a] - box.min[a] >= body[SIZE_OF_AXIS[a]] - 0.05) ?? axes[0]!;
}
