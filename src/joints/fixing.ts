import { toLocal, toWorld } from '../geometry/frame.ts';
import { type Axis, scale, type Vec3, vec } from '../geometry/vector.ts';
import type { HoleCut, LocalFace, Size } from '../results/cuts.ts';
import { LOCAL_NORMAL } from '../setting-out/faces.ts';
import type {
  Contact,
  CutDraft,
  JointParts,
  JointReader,
  MakeContext,
  Role,
} from '../setting-out/joint-type.ts';
import { FACE_AXIS, isHigh, longAxis, otherAxis, sizeAlong } from './shape.ts';

/** What joints made with bought fixings share: where they stand in a meeting, and their holes. Body frames, mm. */

export type RoleCut = { role: Role; cut: CutDraft };
export type Refusal = NonNullable<JointParts['impossible']>[number];

/** `impossible` when there is something to refuse, nothing when there is not. */
export const refused = (found: Refusal[]): { impossible?: Refusal[] } =>
  found.length > 0 ? { impossible: found } : {};

/** How far a meeting runs the long way and the short way, mm. */
export function runOf(contact: Contact): { long: number; short: number } {
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const span = (a: Axis): number => contact.inFrom.max[a] - contact.inFrom.min[a];
  return { long: span(along), short: span(side) };
}

/** Default count of fixings in a row: one for each `pitch` begun, `least` at least. */
export const countFor = (r: JointReader, pitch: number, least = 2): number =>
  Math.max(least, Math.ceil(runOf(r.contact).long / pitch));

/** Points in `from`, on the face that meets, evenly along the meeting and `aside` of its middle line. */
export function spots(c: MakeContext, count: number, end: number, aside = 0): Vec3[] {
  const { contact, from } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const axis = FACE_AXIS[contact.fromFace];
  const n = Math.max(1, Math.round(count));
  const [low, high] = [contact.inFrom.min[along] + end, contact.inFrom.max[along] - end];
  return Array.from({ length: n }, (_, i) => ({
    ...vec(0, 0, 0),
    [axis]: isHigh(contact.fromFace) ? sizeAlong(from.body, contact.fromFace) : 0,
    [side]: (contact.inFrom.min[side] + contact.inFrom.max[side]) / 2 + aside,
    [along]: n === 1 ? (low + high) / 2 : low + ((high - low) * i) / (n - 1),
  }));
}

/** A point of one member in the other's body frame. */
export function pointAcross(c: MakeContext, from: Role, p: Vec3): Vec3 {
  const [a, b] = from === 'from' ? [c.from, c.into] : [c.into, c.from];
  return toLocal(b.frame, toWorld(a.frame, p));
}

/** The same point moved along the face's axis onto that face of a body. */
export const onFace = (p: Vec3, face: LocalFace, size: Size): Vec3 => ({
  ...p,
  [FACE_AXIS[face]]: isHigh(face) ? sizeAlong(size, face) : 0,
});

/** A hole square to a face. As deep as the part, it goes through. */
export function bored(
  face: LocalFace,
  size: Size,
  at: Vec3,
  hole: Pick<HoleCut, 'role' | 'diameter' | 'depth'> &
    Partial<Pick<HoleCut, 'countersink' | 'slot' | 'clearance'>>,
): CutDraft {
  const whole = sizeAlong(size, face);
  return {
    kind: 'hole',
    face,
    at: onFace(at, face, size),
    direction: scale(LOCAL_NORMAL[face], -1),
    through: hole.depth >= whole - 1e-6,
    ...hole,
    depth: Math.min(hole.depth, whole),
  };
}

/** The face of a body that looks along an axis, low or high. */
export const faceOf = (axis: Axis, high: boolean): LocalFace =>
  axis === 'x'
    ? high
      ? 'end2'
      : 'end1'
    : axis === 'y'
      ? high
        ? 'faceEdge'
        : 'backEdge'
      : high
        ? 'face'
        : 'back';

/** Axis of a member that lies along a world direction, or undefined at a slant. */
export function axisAlong(
  frame: MakeContext['from']['frame'],
  d: Vec3,
): { axis: Axis; sign: 1 | -1 } | undefined {
  for (const axis of ['x', 'y', 'z'] as const) {
    const v = frame[axis];
    const along = v.x * d.x + v.y * d.y + v.z * d.z;
    if (Math.abs(along) > 0.7) return { axis, sign: along > 0 ? 1 : -1 };
  }
  return undefined;
}

/** Refusal of a row that begins nearer to the end than `least`, or runs past its middle. */
export function badRow(c: MakeContext, figure: string, least: number, what: string): Refusal[] {
  const end = c.figure(figure);
  const run = runOf(c.contact).long;
  if (end < least - 1e-6)
    return [
      {
        figure,
        fault: `the first ${what} stands ${end} mm from the end: the wood splits`,
        mend: `give ${Math.ceil(least)} mm or more`,
      },
    ];
  return end > run / 2 + 1e-6
    ? [
        {
          figure,
          fault: `${end} mm from the end is beyond the middle of the ${Math.round(run)} mm that meet`,
          mend: `give ${Math.floor(run / 4)} mm`,
        },
      ]
    : [];
}

/** Narrowest distance of a row in the middle of the meeting from the sides of it, mm. */
export const besideRow = (c: MakeContext): number => runOf(c.contact).short / 2;

/** The face of `from` on the given axis that looks towards the middle of the piece. */
export function innerFace(c: MakeContext, axis: Axis): LocalFace {
  const middle = toLocal(c.from.frame, c.middle)[axis];
  return faceOf(axis, middle > sizeAlong(c.from.body, faceOf(axis, true)) / 2);
}

/** The largest of ascending sizes sold that is no more than wanted, else the smallest. */
export const soldAtMost = (sizes: readonly number[], wanted: number): number =>
  sizes.filter(s => s <= wanted + 1e-6).at(-1) ?? sizes[0]!;

/** The smallest of ascending sizes sold that is no less than wanted, else the largest. */
export const soldAtLeast = (sizes: readonly number[], wanted: number): number =>
  sizes.find(s => s >= wanted - 1e-6) ?? sizes.at(-1)!;
