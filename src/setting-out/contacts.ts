import { type Box, boxBetween, boxSize, boxToWorld, intersectBoxes, squareTo } from '../geometry/box.ts';
import { directionToWorld, toWorld } from '../geometry/frame.ts';
import { AXES, type Axis, dot, norm, sub } from '../geometry/vector.ts';
import type { LocalFace } from '../results/cuts.ts';
import { FACE_AXIS } from '../results/cuts.ts';
import type { Body } from './bodies.ts';
import { bodyBox } from './bodies.ts';
import { isHigh, LOCAL_FACES, LOCAL_NORMAL } from './faces.ts';
import type { Contact, Meets } from './joint-type.ts';
import { slopesBetween } from './slopes.ts';

/** Faces closer than this are the same plane, mm: below what anyone can saw, above float noise. */
export const TOUCH = 0.05;

const ENDS: readonly LocalFace[] = ['end1', 'end2'];
const RIM: readonly LocalFace[] = ['end1', 'end2', 'backEdge', 'faceEdge'];

const entering = (meets: Meets, round: boolean): readonly LocalFace[] => {
  if (meets === 'end to face' || meets === 'end to end') return ENDS;
  return meets === 'edge to face' && !round ? RIM : LOCAL_FACES;
};

const worldBox = (b: Body): Box => boxToWorld(b.frame, bodyBox(b.size));

/** The face's rectangle as a flat box in the part's frame. */
function faceBox(b: Body, face: LocalFace): Box {
  const whole = bodyBox(b.size);
  const axis = FACE_AXIS[face];
  const at = isHigh(face) ? whole.max[axis] : 0;
  return { min: { ...whole.min, [axis]: at }, max: { ...whole.max, [axis]: at } };
}

const flatArea = (b: Box): number => {
  const s = boxSize(b);
  const [, middle, most] = [s.x, s.y, s.z].sort((p, q) => p - q);
  return middle! * most!;
};

/** Overlap of two boxes, flat where they only touch. */
function touching(a: Box, b: Box): Box | undefined {
  const low = (k: Axis): number => Math.max(a.min[k], b.min[k]);
  const high = (k: Axis): number => Math.min(a.max[k], b.max[k]);
  if (AXES.some(k => high(k) < low(k) - TOUCH)) return undefined;
  const pick = (f: (k: Axis) => number) => ({ x: f('x'), y: f('y'), z: f('z') });
  return { min: pick(k => Math.min(low(k), high(k))), max: pick(k => Math.max(low(k), high(k))) };
}

const LEAST_AREA = 1;

/** A rectangle moved square onto the plane of another: across the gap between a door and its frame. */
const flatOn = (a: Box, plane: Box, axis: Axis): Box => ({
  min: { ...a.min, [axis]: plane.min[axis] },
  max: { ...a.max, [axis]: plane.max[axis] },
});

/** Pairs of faces that lie in one plane, look at each other and share some area. */
function facing(a: Body, b: Body, meets: Meets, within: number): Contact[] {
  const found: Contact[] = [];
  for (const fromFace of entering(meets, false)) {
    const normal = directionToWorld(a.frame, LOCAL_NORMAL[fromFace]);
    for (const intoFace of meets === 'end to end' ? ENDS : LOCAL_FACES) {
      const other = directionToWorld(b.frame, LOCAL_NORMAL[intoFace]);
      if (dot(normal, other) > -1 + 1e-9) continue;
      const fa = faceBox(a, fromFace);
      const fb = faceBox(b, intoFace);
      const gap = dot(sub(toWorld(b.frame, fb.min), toWorld(a.frame, fa.min)), normal);
      if (gap < -TOUCH || gap > within) continue;
      // In the frame of the receiving part the two rectangles are compared flat against its face.
      const inInto = touching(flatOn(boxBetween(a.frame, b.frame, fa), fb, FACE_AXIS[intoFace]), fb);
      if (!inInto || flatArea(inInto) < LEAST_AREA) continue;
      found.push({
        from: a.copy.id,
        into: b.copy.id,
        fromFace,
        intoFace,
        world: boxToWorld(b.frame, inInto),
        inFrom: boxBetween(b.frame, a.frame, inInto),
        inInto,
        apart: gap > TOUCH ? gap : 0,
      });
    }
  }
  return found;
}

/** Bodies that share room: halvings and mitred corners. */
function sharing(a: Body, b: Body): Contact[] {
  const inInto = intersectBoxes(boxBetween(a.frame, b.frame, bodyBox(a.size)), bodyBox(b.size));
  if (!inInto || AXES.some(k => inInto.max[k] - inInto.min[k] < TOUCH)) return [];
  const inFrom = boxBetween(b.frame, a.frame, inInto);
  return [
    {
      from: a.copy.id,
      into: b.copy.id,
      fromFace: nearestFace(a, inFrom),
      intoFace: nearestFace(b, inInto),
      world: boxToWorld(b.frame, inInto),
      inFrom,
      inInto,
      apart: 0,
    },
  ];
}

/** The face nearest to a shared region that does not span the part: where the other part lies. */
function nearestFace(b: Body, region: Box): LocalFace {
  const whole = bodyBox(b.size);
  let best: LocalFace = 'end1';
  let least = Number.POSITIVE_INFINITY;
  for (const face of LOCAL_FACES) {
    const axis = FACE_AXIS[face];
    if (region.max[axis] - region.min[axis] > whole.max[axis] - TOUCH) continue;
    const gap = isHigh(face) ? whole.max[axis] - region.max[axis] : region.min[axis];
    if (gap < least - 1e-9) {
      least = gap;
      best = face;
    }
  }
  return best;
}

/** Can a joint be set out between the two? Cuts are boxes, so only square to each other; a round bar turns freely in its hole. */
const settable = (a: Body, b: Body, meets: Meets): boolean =>
  squareTo(a.frame, b.frame) || (a.round && meets === 'end to face');

export function contactsBetween(a: Body, b: Body, meets: Meets, within: number = TOUCH): Contact[] {
  if (meets === 'end to slope') return slopesBetween(a, b, Math.max(TOUCH, within));
  if (!settable(a, b, meets)) return [];
  return meets === 'overlap' || meets === 'corner'
    ? sharing(a, b)
    : facing(a, b, meets, Math.max(TOUCH, within));
}

/** Do the two stand at a slant, so that no joint can be set out between them? */
export const atSlant = (a: Body, b: Body, meets: Meets): boolean => !settable(a, b, meets);

/** Least distance between two bodies' boxes, for the hint when nothing meets, mm. */
export function apart(a: Body, b: Body): number {
  const [wa, wb] = [worldBox(a), worldBox(b)];
  const gap = (k: Axis): number => Math.max(0, wa.min[k] - wb.max[k], wb.min[k] - wa.max[k]);
  return norm({ x: gap('x'), y: gap('y'), z: gap('z') });
}
