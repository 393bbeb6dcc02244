import { type Axis, add, scale } from '../../src/geometry/vector.ts';
import { axisAlong, faceOf } from '../../src/joints/fixing.ts';
import type { Cut, LocalFace } from '../../src/results/cuts.ts';
import type { Instance } from '../../src/results/piece.ts';
import { SIZE_OF_AXIS } from '../../src/setting-out/faces.ts';
import type { Gap } from './gaps.ts';

/** Parts made too big on purpose, to see the overlap told. */

const NEAR = 0.03;

/** Where a world plane square to an axis lies along the part's own axis, and which way `sign` looks there. */
function localPlane(i: Instance, axis: Axis, level: number): { axis: Axis; sign: 1 | -1; at: number } {
  const d = { x: 0, y: 0, z: 0, [axis]: 1 };
  const own = axisAlong(i.frame, d)!;
  return { ...own, at: (level - i.frame.origin[axis]) * own.sign };
}

/** The part `by` mm bigger where the face of a gap lies: its cut that makes the face is less deep, or the whole part larger. */
export function grownAt(i: Instance, gap: Gap, by: number): Instance {
  const plane = localPlane(i, gap.axis, gap.level);
  const sign = (plane.sign * gap.sign) as 1 | -1;
  const size = i.size[SIZE_OF_AXIS[plane.axis]];
  let changed = false;
  const cuts = i.cuts.map(cut => {
    const grown = grownCut(cut, i, plane.axis, sign, plane.at, by);
    changed ||= grown !== cut;
    return grown;
  });
  if (changed) return { ...i, cuts };
  const outer = Math.abs(plane.at - (sign > 0 ? size : 0)) < NEAR;
  if (!outer) throw new Error(`no face of ${i.id} lies at ${gap.way} ${gap.level}`);
  return grownFace(i, faceOf(plane.axis, sign > 0), by);
}

/** A part with more wood on one face; what is cut into that face keeps its depth, the rest its place. */
export function grownFace(i: Instance, face: LocalFace, by: number): Instance {
  const axis: Axis =
    face === 'end1' || face === 'end2' ? 'x' : face === 'backEdge' || face === 'faceEdge' ? 'y' : 'z';
  const low = face === 'end1' || face === 'backEdge' || face === 'back';
  return {
    ...i,
    size: { ...i.size, [SIZE_OF_AXIS[axis]]: i.size[SIZE_OF_AXIS[axis]] + by },
    frame: low ? { ...i.frame, origin: add(i.frame.origin, scale(i.frame[axis], -by)) } : i.frame,
    cuts: low ? i.cuts : i.cuts.map(cut => withFace(cut, axis, i.size[SIZE_OF_AXIS[axis]], by)),
  };
}

/** A recess or hole in a face that has moved out by `by`. */
function withFace(cut: Cut, axis: Axis, at: number, by: number): Cut {
  if (cut.kind === 'hole' && Math.abs(cut.at[axis] - at) < NEAR)
    return { ...cut, at: { ...cut.at, [axis]: cut.at[axis] + by } };
  if (!('box' in cut) || Math.abs(cut.box.max[axis] - at) > NEAR) return cut;
  const { min, max } = cut.box;
  return {
    ...cut,
    box: { min: { ...min, [axis]: min[axis] + by }, max: { ...max, [axis]: max[axis] + by } },
  };
}

/** The cut made so much less deep, if its wall is the face that lies at `at` and looks along `sign` of the axis. */
function grownCut(cut: Cut, i: Instance, axis: Axis, sign: 1 | -1, at: number, by: number): Cut {
  if (cut.kind === 'tenon' && axis !== 'x') {
    const side = sign > 0 ? 'high' : 'low';
    const taken = cut[axis][side];
    const wall = sign > 0 ? i.size[SIZE_OF_AXIS[axis]] - taken : taken;
    return taken >= by && Math.abs(wall - at) < NEAR
      ? { ...cut, [axis]: { ...cut[axis], [side]: taken - by } }
      : cut;
  }
  if (cut.kind === 'tenon') {
    const wall = cut.end === 'end2' ? i.size.length - cut.length : cut.length;
    return Math.abs(wall - at) < NEAR ? { ...cut, length: cut.length - by } : cut;
  }
  if (!('box' in cut)) return cut;
  const { min, max } = cut.box;
  if (sign > 0 && Math.abs(min[axis] - at) < NEAR)
    return { ...cut, box: { max, min: { ...min, [axis]: min[axis] + by } } };
  if (sign < 0 && Math.abs(max[axis] - at) < NEAR)
    return { ...cut, box: { min, max: { ...max, [axis]: max[axis] - by } } };
  return cut;
}

/** The whole part moved on by `by` mm the way of a gap: walls that slant along that way keep clear of it. */
export const pushed = (i: Instance, gap: Gap, by: number): Instance => ({
  ...i,
  frame: {
    ...i.frame,
    origin: { ...i.frame.origin, [gap.axis]: i.frame.origin[gap.axis] + gap.sign * by },
  },
});

/** A round end, turned or a bar, thicker in diameter. */
export function thickerRound(i: Instance, by: number): Instance {
  const turned = i.cuts.map(c =>
    c.kind === 'turned' ? { ...c, profile: c.profile.map(p => ({ ...p, diameter: p.diameter + by })) } : c,
  );
  if (i.cuts.some(c => c.kind === 'turned')) return { ...i, cuts: turned };
  const shift = add(scale(i.frame.y, -by / 2), scale(i.frame.z, -by / 2));
  return {
    ...i,
    size: { ...i.size, width: i.size.width + by, thickness: i.size.thickness + by },
    frame: { ...i.frame, origin: add(i.frame.origin, shift) },
  };
}
