import type { Box } from '../geometry/box.ts';
import { dot } from '../geometry/vector.ts';
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

/** Faces nearer than this are flush, mm. */
const FLUSH = 0.05;

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
  const faces = facesOf(c);
  if (!faces) return { cuts: [], glue: [], fasteners: [], limits: [], impossible: [buried(c)] };
  const [fromFace, intoFace] = faces;
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

const buried = (c: MakeContext) => ({
  figure: 'share',
  fault: `${c.from.instance} lies inside ${c.into.instance} and comes flush with neither face`,
  mend: 'bring a face of the one flush with a face of the other, or use a mortise',
});

type Across = 'x' | 'y' | 'z';
const LOW: Record<Across, LocalFace> = { x: 'end1', y: 'backEdge', z: 'back' };

/**
 * The faces from which the two are cut, opposite ones in the world: what stays of the one fills what is gone
 * from the other. Each must be open at the overlap, or the joint cannot be put together; undefined then.
 */
function facesOf(c: MakeContext): [LocalFace, LocalFace] | undefined {
  const { contact, from, into } = c;
  const spans = (box: Box, body: Size, axis: Across): boolean =>
    box.max[axis] - box.min[axis] >= body[SIZE_OF_AXIS[axis]] - FLUSH;
  const found = (['z', 'y', 'x'] as const).flatMap(own =>
    (['z', 'y', 'x'] as const).flatMap(other => {
      const along = dot(from.frame[own], into.frame[other]);
      if (Math.abs(along) < 0.7) return [];
      const low: [LocalFace, LocalFace] = [LOW[own], along > 0 ? OPPOSITE[LOW[other]] : LOW[other]];
      const high: [LocalFace, LocalFace] = [OPPOSITE[low[0]], OPPOSITE[low[1]]];
      const both = spans(contact.inFrom, from.body, own) && spans(contact.inInto, into.body, other);
      return [low, high].flatMap(faces =>
        openAt(contact.inFrom, faces[0], from.body) && openAt(contact.inInto, faces[1], into.body)
          ? [{ faces, both, length: own === 'x' || other === 'x' }]
          : [],
      );
    }),
  );
  // Flush on both sides is the usual one; unequal ones are flush on one. Nobody halves along a length if he can help it.
  return (found.find(f => f.both) ?? found.find(f => !f.length))?.faces;
}

const openAt = (region: Box, face: LocalFace, body: Size): boolean => {
  const axis = FACE_AXIS[face];
  return isHigh(face) ? region.max[axis] >= body[SIZE_OF_AXIS[axis]] - FLUSH : region.min[axis] <= FLUSH;
};

function slice(region: Box, face: LocalFace, depth: number): Box {
  const axis = FACE_AXIS[face];
  return isHigh(face)
    ? withSpan(region, axis, region.max[axis] - depth, region.max[axis])
    : withSpan(region, axis, region.min[axis], region.min[axis] + depth);
}

/** The tool travels across the member: the axis of the face that the region spans wholly. */
function runOf(box: Box, face: LocalFace, body: Size): 'x' | 'y' | 'z' {
  const axes = (['y', 'z', 'x'] as const).filter(a => a !== FACE_AXIS[face]);
  return axes.find(a => box.max[a] - box.min[a] >= body[SIZE_OF_AXIS[a]] - FLUSH) ?? axes[0]!;
}
