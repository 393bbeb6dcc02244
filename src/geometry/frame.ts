import { add, axisVector, dot, scale, sub, type Vec3, vec } from './vector.ts';

/**
 * A right-handed frame in the world: `origin` in millimetres, `x`, `y`, `z` unit vectors.
 * For a part: x along the grain, y across the width, z through the thickness (design, section 6).
 */
export interface Frame {
  origin: Vec3;
  x: Vec3;
  y: Vec3;
  z: Vec3;
}

export const WORLD: Frame = {
  origin: vec(0, 0, 0),
  x: axisVector('x'),
  y: axisVector('y'),
  z: axisVector('z'),
};

export const toWorld = (f: Frame, p: Vec3): Vec3 =>
  add(f.origin, add(scale(f.x, p.x), add(scale(f.y, p.y), scale(f.z, p.z))));

export const directionToWorld = (f: Frame, d: Vec3): Vec3 =>
  add(scale(f.x, d.x), add(scale(f.y, d.y), scale(f.z, d.z)));

export function toLocal(f: Frame, p: Vec3): Vec3 {
  const d = sub(p, f.origin);
  return vec(dot(d, f.x), dot(d, f.y), dot(d, f.z));
}

export const directionToLocal = (f: Frame, d: Vec3): Vec3 => vec(dot(d, f.x), dot(d, f.y), dot(d, f.z));
