import { toWorld } from '../../src/geometry/frame.ts';
import { AXES, type Axis, cross, type Vec3, vec } from '../../src/geometry/vector.ts';
import type { SolidKernel } from '../../src/results/kernel.ts';
import type { Instance } from '../../src/results/piece.ts';
import { SolidCache } from '../../src/solids/shapes.ts';

/** A gap between two parts: faces that look at each other square to a world axis. */
export interface Gap {
  /** The way from the first part to the second: `+x`. */
  way: string;
  axis: Axis;
  sign: number;
  /** mm */
  gap: number;
  /** Where the face of the first part lies along the axis, world mm. */
  level: number;
  /** Area over which they face each other, mm2. */
  area: number;
}

type Flat = [number, number][];
interface Facet {
  level: number;
  triangle: Flat;
}

const OTHERS: Record<Axis, [Axis, Axis]> = { x: ['y', 'z'], y: ['z', 'x'], z: ['x', 'y'] };
const EDGE = 0.02;

/** Triangles of a solid that lie square to an axis and look along `sign` of it. */
function facets(cache: SolidCache, i: Instance, axis: Axis, sign: number): Facet[] {
  const { positions, indices } = cache.of(i).triangles();
  const point = (n: number): Vec3 =>
    toWorld(i.frame, vec(positions[3 * n]!, positions[3 * n + 1]!, positions[3 * n + 2]!));
  const found: Facet[] = [];
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = [point(indices[t]!), point(indices[t + 1]!), point(indices[t + 2]!)];
    const n = cross(vec(b.x - a.x, b.y - a.y, b.z - a.z), vec(c.x - a.x, c.y - a.y, c.z - a.z));
    const long = Math.hypot(n.x, n.y, n.z);
    if (long < 1e-9 || (n[axis] / long) * sign < 1 - 1e-6) continue;
    const [u, v] = OTHERS[axis];
    found.push({ level: a[axis], triangle: [a, b, c].map((p): [number, number] => [p[u], p[v]]) });
  }
  return found;
}

const area = (p: Flat): number =>
  Math.abs(p.reduce((s, [x, y], i) => s + x * p[(i + 1) % p.length]![1] - y * p[(i + 1) % p.length]![0], 0)) /
  2;

/** Area that two triangles share: the one clipped by the edges of the other. */
function shared(a: Flat, b: Flat): number {
  const turn = Math.sign(
    b[0]![0] * (b[1]![1] - b[2]![1]) + b[1]![0] * (b[2]![1] - b[0]![1]) + b[2]![0] * (b[0]![1] - b[1]![1]),
  );
  let left = a;
  for (let i = 0; i < 3 && left.length > 2; i++) {
    const [p, q] = [b[i]!, b[(i + 1) % 3]!];
    const inside = ([x, y]: [number, number]): number =>
      turn * ((q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]));
    const next: Flat = [];
    left.forEach((s, k) => {
      const e = left[(k + 1) % left.length]!;
      const [ds, de] = [inside(s), inside(e)];
      if (ds >= 0) next.push(s);
      if (ds >= 0 !== de >= 0) {
        const f = ds / (ds - de);
        next.push([s[0] + f * (e[0] - s[0]), s[1] + f * (e[1] - s[1])]);
      }
    });
    left = next;
  }
  return left.length > 2 ? area(left) : 0;
}

/**
 * Every gap up to `most` mm between two placed parts, measured on their solids: faces of the first that look at faces
 * of the second over more than 4 mm2, square to a world axis. Gaps equal to a fiftieth are one. Nothing is taken
 * from the joints' figures.
 */
export function gapsBetween(kernel: SolidKernel, a: Instance, b: Instance, most: number): Gap[] {
  const cache = new SolidCache(kernel);
  const sums = new Map<string, Gap>();
  for (const axis of AXES)
    for (const sign of [1, -1]) {
      const theirs = facets(cache, b, axis, -sign);
      for (const mine of facets(cache, a, axis, sign))
        for (const other of theirs) {
          const gap = (other.level - mine.level) * sign;
          if (gap < -EDGE || gap > most) continue;
          const both = shared(mine.triangle, other.triangle);
          if (both <= 0) continue;
          const way = `${sign > 0 ? '+' : '-'}${axis}`;
          const key = `${way} ${Math.round(gap / EDGE)}`;
          const held = sums.get(key);
          if (held) held.area += both;
          else sums.set(key, { way, axis, sign, gap: Math.max(0, gap), level: mine.level, area: both });
        }
    }
  cache.keep([]);
  return [...sums.values()].filter(g => g.area > 4);
}
