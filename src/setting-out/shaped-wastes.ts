import type { Axis } from '../geometry/vector.ts';
import { FACE_AXIS, type LocalFace, POLYGON_AXES, type ProfileCut, type Size } from '../results/cuts.ts';
import { isHigh, SIZE_OF_AXIS } from './faces.ts';

type Point = [number, number];
export type ProfileDraft = Omit<ProfileCut, 'id' | 'by' | 'stage'>;

/** Chords of a flat arc: at 24 to an arc of 60 degrees the line is nowhere 0.03 % of its radius off. */
const CHORDS = 24;

/** No chord spans more, degrees: a round of such chords has 0.07 % less area than its circle. */
const WIDEST = 3.75;
const QUARTER = 90 / WIDEST;

/**
 * Depths along a hollow arc from nothing over `depth` in the middle to nothing again: a circle through the
 * three points, radius (c^2/4 + d^2) / 2d for chord c and rise d. Stations from `from` to `to`, mm.
 */
export function hollowArc(from: number, to: number, depth: number): Point[] {
  const half = (to - from) / 2;
  const radius = (half * half + depth * depth) / (2 * depth);
  const least = radius - depth;
  const sweep = Math.atan2(half, least);
  // Even, so that a corner stands at the full rise.
  const chords = Math.max(CHORDS, 2 * Math.ceil((sweep * 180) / Math.PI / WIDEST));
  return Array.from({ length: chords + 1 }, (_, i): Point => {
    const angle = -sweep + (2 * sweep * i) / chords;
    return [from + half + radius * Math.sin(angle), Math.max(0, radius * Math.cos(angle) - least)];
  });
}

/**
 * A fair curve through entered points that never swings beyond them: monotone cubic with the slopes of
 * Fritsch and Carlson (SIAM J. Numer. Anal. 17, 1980), eight chords a span.
 */
export function fairCurve(points: readonly Point[]): Point[] {
  if (points.length < 3) return [...points];
  const secants = points.slice(1).map(([b, q], i) => (q - points[i]![1]) / (b - points[i]![0]));
  const slopes = points.map((_, i) => {
    const [before, after] = [secants[i - 1], secants[i]];
    if (before === undefined) return after!;
    if (after === undefined) return before;
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
  const drawn: Point[] = [points[0]!];
  points.slice(1).forEach(([b, q], i) => {
    const [a, p] = points[i]!;
    const h = b - a;
    for (let k = 1; k <= 8; k++) {
      const t = k / 8;
      const [t2, t3] = [t * t, t * t * t];
      drawn.push([
        a + h * t,
        (2 * t3 - 3 * t2 + 1) * p +
          (t3 - 2 * t2 + t) * h * slopes[i]! +
          (3 * t2 - 2 * t3) * q +
          (t3 - t2) * h * slopes[i + 1]!,
      ]);
    }
  });
  return drawn;
}

/** Axis of the stations of a line drawn on an edge seen along `drawn`: the grain, or the width at an end. */
export const stationAxis = (face: LocalFace): Axis => (FACE_AXIS[face] === 'x' ? 'y' : 'x');

/** Waste between a face and a line of depths below it. */
export function lineWaste(
  kind: 'curve' | 'scribe',
  face: LocalFace,
  line: readonly Point[],
  size: Size,
): ProfileDraft {
  const deep = FACE_AXIS[face];
  const along = stationAxis(face);
  const axis = (['z', 'y', 'x'] as const).find(k => k !== deep && k !== along)!;
  const level = isHigh(face) ? size[SIZE_OF_AXIS[deep]] : 0;
  const inward = isHigh(face) ? -1 : 1;
  const ring: Point[] = [
    [line[0]![0], 0],
    ...line.filter(([, depth], i) => depth > 0 || (i > 0 && i < line.length - 1)),
    [line.at(-1)![0], 0],
  ];
  return {
    kind,
    face: axis === 'z' ? 'face' : 'faceEdge',
    axis,
    from: 0,
    to: size[SIZE_OF_AXIS[axis]],
    polygon: ring.map(([at, depth]) => onAxes(axis, along, at, level + inward * depth)),
    through: true,
  };
}

/** Polygon corner from a station along one axis and a place along the other. */
const onAxes = (axis: Axis, along: Axis, at: number, other: number): Point =>
  POLYGON_AXES[axis][0] === along ? [at, other] : [other, at];

/** A window of four sides with round corners, or a round one; `along` and `across` begin at end 1 and the low edge. */
export function windowWaste(
  face: LocalFace,
  window: { along: [number, number]; across: [number, number]; radius: number },
  size: Size,
): ProfileDraft {
  const axis = FACE_AXIS[face];
  const first: Axis = axis === 'x' ? 'y' : 'x';
  const [a0, a1] = window.along;
  const [b0, b1] = window.across;
  const r = window.radius;
  const corners: [number, number, number][] = [
    [a1 - r, b1 - r, 0],
    [a0 + r, b1 - r, 90],
    [a0 + r, b0 + r, 180],
    [a1 - r, b0 + r, 270],
  ];
  const ring = corners.flatMap(([x, y, start]): Point[] =>
    r <= 0
      ? [[x, y]]
      : Array.from({ length: QUARTER + 1 }, (_, i): Point => {
          const angle = ((start + (90 * i) / QUARTER) * Math.PI) / 180;
          return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
        }),
  );
  return {
    kind: 'cut-out',
    face,
    axis,
    from: 0,
    to: size[SIZE_OF_AXIS[axis]],
    polygon: ring.map(([x, y]) => onAxes(axis, first, x, y)),
    through: true,
  };
}

/** A long edge out of square by `degrees`: most is taken where it meets `face`, nothing on the other side. */
export function bevelWaste(face: LocalFace, edge: LocalFace, degrees: number, size: Size): ProfileDraft {
  const [deep, side] = [FACE_AXIS[face], FACE_AXIS[edge]];
  const axis = (['x', 'y', 'z'] as const).find(k => k !== deep && k !== side)!;
  const thick = size[SIZE_OF_AXIS[deep]];
  const taken = Math.tan((degrees * Math.PI) / 180) * thick;
  const at = isHigh(edge) ? size[SIZE_OF_AXIS[side]] : 0;
  const inner = at + (isHigh(edge) ? -taken : taken);
  const [near, far] = isHigh(face) ? [thick, 0] : [0, thick];
  return {
    kind: 'bevel',
    face,
    axis,
    from: 0,
    to: size[SIZE_OF_AXIS[axis]],
    polygon: [onAxes(axis, side, at, near), onAxes(axis, side, inner, near), onAxes(axis, side, at, far)],
    through: true,
  };
}

/** A corner of the outline rounded, seen on the face: between an end and a long side. */
export function cornerWaste(end: 'end1' | 'end2', side: LocalFace, radius: number, size: Size): ProfileDraft {
  const other = FACE_AXIS[side];
  const axis = other === 'y' ? 'z' : 'y';
  const [x, inX] = end === 'end1' ? [0, 1] : [size.length, -1];
  const [y, inY] = isHigh(side) ? [size[SIZE_OF_AXIS[other]], -1] : [0, 1];
  const arc = Array.from({ length: QUARTER + 1 }, (_, i): Point => {
    const angle = (Math.PI / 2) * (i / QUARTER);
    return [x + inX * radius * (1 - Math.sin(angle)), y + inY * radius * (1 - Math.cos(angle))];
  });
  return {
    kind: 'curve',
    face: axis === 'z' ? 'face' : 'faceEdge',
    axis,
    from: 0,
    to: size[SIZE_OF_AXIS[axis]],
    polygon: [[x, y] as Point, ...arc].map(([a, b]) => onAxes(axis, 'x', a, b)),
    through: true,
  };
}
