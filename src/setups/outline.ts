import { AXES, type Axis } from '../geometry/vector.ts';
import { profileSpan } from '../results/cut-shapes.ts';
import { type LocalFace, POLYGON_AXES, type ProfileCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import { distanceFrom, FACES, faceAxis, nominal, referenceFace, trueSize } from './sizes.ts';

/** A profile cut as it is marked: from two reference faces, and how far it goes through. */
export interface Outline {
  /** Face on which the line is marked. */
  entry: LocalFace;
  /** Faces from which the marks are measured: the gauge's and the rule's. */
  against: LocalFace;
  end: LocalFace;
  /** Nearest point of the line to `against` and to `end`. */
  gauge: number;
  station: number;
  /** Corners on from gauge and station. */
  points: [number, number][];
  /** From the entry face: where the cut begins and ends. */
  from: number;
  to: number;
  /** Goes through the whole part along its axis. */
  whole: boolean;
  /** Thickness of wood along the axis of the cut. */
  thick: number;
  /** Closed all round: nothing of the line lies on the outside of the part. */
  closed: boolean;
}

const EPS = 1e-6;

/** Marks of a profile cut, from face edge or face side and from the nearer end (SET-1, SET-27). */
export function outlineOf(instance: Instance, cut: ProfileCut): Outline {
  const [first, second] = POLYGON_AXES[cut.axis];
  // x is ruled from an end; on an end itself the narrow way is gauged, it is the one that must be true.
  const narrow = (axis: Axis): number => {
    const [a, b] = profileSpan(cut, axis);
    return b - a;
  };
  const turn = first === 'x' || (second !== 'x' && narrow(second) < narrow(first));
  const [gauged, ruled] = turn ? [second, first] : [first, second];
  const entry = entryOf(instance, cut);
  const against = FACES[gauged].high;
  const [low, high] = profileSpan(cut, ruled);
  const end = ruled === 'x' ? referenceFace(instance, 'x', low, high) : FACES[ruled].high;
  const at = (p: [number, number], axis: Axis): number => (axis === first ? p[0] : p[1]);
  const raw = cut.polygon.map((p): [number, number] => [
    distanceFrom(instance, against, at(p, gauged)),
    distanceFrom(instance, end, at(p, ruled)),
  ]);
  const gauge = Math.min(...raw.map(p => p[0]));
  const station = Math.min(...raw.map(p => p[1]));
  const span = [distanceFrom(instance, entry, cut.from), distanceFrom(instance, entry, cut.to)];
  const thick = nominal(instance, cut.axis);
  const [from, to] = [Math.max(0, Math.min(...span)), Math.min(thick, Math.max(...span))];
  return {
    entry,
    against,
    end,
    gauge,
    station,
    points: raw.map(([a, b]) => [a - gauge, b - station]),
    from,
    to,
    whole: from <= EPS && to >= thick - EPS,
    thick: trueSize(instance, cut.axis),
    closed: AXES.every(axis => {
      if (axis === cut.axis) return true;
      const [a, b] = profileSpan(cut, axis);
      return a > EPS && b < nominal(instance, axis) - EPS;
    }),
  };
}

/** The face that is marked: the one named where it lies across the cut, else the nearer one. */
function entryOf(instance: Instance, cut: ProfileCut): LocalFace {
  if (faceAxis(cut.face) === cut.axis) return cut.face;
  if (cut.axis === 'x') return referenceFace(instance, 'x', cut.from, cut.to);
  return nominal(instance, cut.axis) - cut.to <= cut.from ? FACES[cut.axis].high : FACES[cut.axis].low;
}

/** Steepest slope of the sides from square to a face, degrees, rounded to a tenth: 0 when all sides are square. */
export function slopeOf(points: readonly [number, number][]): number {
  const slopes = points.map(([a, b], i) => {
    const [c, d] = points[(i + 1) % points.length]!;
    const angle = (Math.atan2(Math.abs(c - a), Math.abs(d - b)) * 180) / Math.PI;
    return Math.min(angle, 90 - angle);
  });
  return Math.max(0, ...slopes);
}

/**
 * Tightest radius of a line of short chords, mm: of three neighbouring corners; none where it has only corners.
 * @param inWaste only bends that a tool in the waste must get into: hollows of what stays
 */
export function tightest(points: readonly [number, number][], inWaste = false): number {
  const n = points.length;
  if (n < 7) return Number.POSITIVE_INFINITY;
  const turned = (i: number): number => {
    const [a, b, c] = [points[(i + n - 1) % n]!, points[i]!, points[(i + 1) % n]!];
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  };
  const around = Math.sign(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % n]!;
      return sum + x * v - u * y;
    }, 0),
  );
  const radii = points.map((b, i) => {
    const a = points[(i + n - 1) % n]!;
    const c = points[(i + 1) % n]!;
    const twice = Math.abs(turned(i));
    const [ab, bc, ca] = [gap(a, b), gap(b, c), gap(c, a)];
    // A corner of the outline is no bend: chords of a drawn curve turn by little.
    const turn = Math.asin(Math.min(1, twice / Math.max(EPS, ab * bc)));
    if (twice < EPS || turn > 0.45) return Number.POSITIVE_INFINITY;
    if (inWaste && Math.sign(turned(i)) !== around) return Number.POSITIVE_INFINITY;
    return (ab * bc * ca) / (2 * twice);
  });
  return Math.min(...radii);
}

const gap = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);
