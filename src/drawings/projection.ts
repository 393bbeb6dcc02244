import { cross, dot, type Vec3, vec } from '../geometry/vector.ts';
import type { Point } from './list.ts';

/** A parallel view: unit vectors of the page's right and up in the world, and the way to the eye. */
export interface Projection {
  right: Vec3;
  up: Vec3;
  eye: Vec3;
}

export const projection = (right: Vec3, up: Vec3): Projection => ({ right, up, eye: cross(right, up) });

/**
 * Turned view: `azimuth` degrees from the front towards the right end, `elevation` degrees above the floor.
 * World x to the right, y to the back, z up (design, section 6).
 */
export function turned(azimuth: number, elevation: number): Projection {
  const [a, e] = [(azimuth * Math.PI) / 180, (elevation * Math.PI) / 180];
  const [ca, sa, ce, se] = [Math.cos(a), Math.sin(a), Math.cos(e), Math.sin(e)];
  return projection(vec(ca, sa, 0), vec(-sa * se, ca * se, ce));
}

export type Elevation = 'front' | 'end' | 'plan';

export const ELEVATIONS: Record<Elevation, Projection> = {
  front: projection(vec(1, 0, 0), vec(0, 0, 1)),
  end: projection(vec(0, 1, 0), vec(0, 0, 1)),
  plan: projection(vec(1, 0, 0), vec(0, 1, 0)),
};

/** Page coordinates of a world point at `scale` units to a millimetre, y down, about the page point `origin`. */
export const onPage =
  (view: Projection, scale: number, origin: Point) =>
  (p: Vec3): Point => [origin[0] + scale * dot(view.right, p), origin[1] - scale * dot(view.up, p)];
