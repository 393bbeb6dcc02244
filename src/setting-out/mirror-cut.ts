import { box } from '../geometry/box.ts';
import {
  type Cut,
  FACE_AXIS,
  type LocalFace,
  POLYGON_AXES,
  type ProfileCut,
  type Size,
} from '../results/cuts.ts';
import { OPPOSITE } from './faces.ts';

const swapEdge = (f: LocalFace): LocalFace => (FACE_AXIS[f] === 'y' ? OPPOSITE[f] : f);

function mirrorProfile(cut: ProfileCut, width: number): ProfileCut {
  if (cut.axis === 'y')
    return { ...cut, face: swapEdge(cut.face), from: width - cut.to, to: width - cut.from };
  const acrossFirst = POLYGON_AXES[cut.axis][0] === 'y';
  return {
    ...cut,
    face: swapEdge(cut.face),
    polygon: cut.polygon.map(([a, b]) => (acrossFirst ? [width - a, b] : [a, width - b])),
  };
}

/** The same cut on the mirror-image part: back edge and face edge change over. */
export function mirrorCut(cut: Cut, size: Size): Cut {
  const w = size.width;
  switch (cut.kind) {
    case 'tenon':
      return { ...cut, y: { low: cut.y.high, high: cut.y.low } };
    case 'end-cut':
      return { ...cut, mitre: -cut.mitre || 0 };
    case 'hole':
      return {
        ...cut,
        face: swapEdge(cut.face),
        at: { ...cut.at, y: w - cut.at.y },
        direction: { ...cut.direction, y: -cut.direction.y || 0 },
      };
    case 'chamfer':
    case 'round-over':
      return { ...cut, edges: cut.edges.map(e => ({ a: swapEdge(e.a), b: swapEdge(e.b) })) };
    case 'taper':
      return { ...cut, face: swapEdge(cut.face) as typeof cut.face };
    case 'turned':
    case 'bent':
      return cut;
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe':
      return mirrorProfile(cut, w);
    default:
      return {
        ...cut,
        face: swapEdge(cut.face),
        box: box(
          cut.box.min.x,
          w - cut.box.max.y,
          cut.box.min.z,
          cut.box.max.x,
          w - cut.box.min.y,
          cut.box.max.z,
        ),
      };
  }
}
