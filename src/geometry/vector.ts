/** Plain 3D vectors in millimetres (or unit vectors). Row 0: knows nothing of furniture. */

export type Axis = 'x' | 'y' | 'z';
export const AXES: readonly Axis[] = ['x', 'y', 'z'];

export interface Vec3 {
  x: number;
  y: number;
  z: number;
}

export const vec = (x: number, y: number, z: number): Vec3 => ({ x, y, z });
export const ZERO: Vec3 = vec(0, 0, 0);
export const add = (a: Vec3, b: Vec3): Vec3 => vec(a.x + b.x, a.y + b.y, a.z + b.z);
export const sub = (a: Vec3, b: Vec3): Vec3 => vec(a.x - b.x, a.y - b.y, a.z - b.z);
export const scale = (a: Vec3, k: number): Vec3 => vec(a.x * k, a.y * k, a.z * k);
export const dot = (a: Vec3, b: Vec3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vec3, b: Vec3): Vec3 =>
  vec(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const norm = (a: Vec3): number => Math.sqrt(dot(a, a));
export const unit = (a: Vec3): Vec3 => scale(a, 1 / norm(a));
export const axisVector = (axis: Axis, sign: 1 | -1 = 1): Vec3 =>
  vec(axis === 'x' ? sign : 0, axis === 'y' ? sign : 0, axis === 'z' ? sign : 0);

/** Rotates `v` about the world axis through the origin by `angle` radians, right-handed. */
export function rotateAbout(v: Vec3, axis: Axis, angle: number): Vec3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  if (axis === 'x') return vec(v.x, c * v.y - s * v.z, s * v.y + c * v.z);
  if (axis === 'y') return vec(c * v.x + s * v.z, v.y, -s * v.x + c * v.z);
  return vec(c * v.x - s * v.y, s * v.x + c * v.y, v.z);
}
