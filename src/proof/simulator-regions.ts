/** How deep a point lies in what a tool takes away: plain shapes, whoever drew them. */
import type { Box } from '../geometry/box.ts';
import { AXES, type Axis, add, dot, scale, sub, type Vec3 } from '../geometry/vector.ts';
import { POLYGON_AXES, type Size } from '../results/cuts.ts';

export type Region =
  | { shape: 'box'; box: Box }
  | { shape: 'cylinder'; from: Vec3; to: Vec3; radius: number }
  | { shape: 'cone'; from: Vec3; to: Vec3; radiusFrom: number; radiusTo: number }
  | { shape: 'prism'; axis: Axis; from: number; to: number; polygon: [number, number][] }
  | { shape: 'beyond'; normal: Vec3; offset: number }
  | { shape: 'turned'; profile: [number, number][]; centre: [number, number] };

/** Beyond any section of furniture, mm: how far out a turning's waste is looked at. */
const FAR_OUT = 1e4;

/** Depth of a point in a region, mm: above 0 inside, below 0 outside; a distance to its surface. */
export function depthIn(p: Vec3, region: Region): number {
  switch (region.shape) {
    case 'box':
      return Math.min(...AXES.map(a => Math.min(p[a] - region.box.min[a], region.box.max[a] - p[a])));
    case 'beyond':
      return dot(region.normal, p) - region.offset;
    case 'prism': {
      const [u, v] = POLYGON_AXES[region.axis];
      const w = p[region.axis];
      const [low, high] = [Math.min(region.from, region.to), Math.max(region.from, region.to)];
      return Math.min(w - low, high - w, depthInPolygon([p[u], p[v]], region.polygon));
    }
    case 'turned': {
      const { profile, centre } = region;
      const radius = Math.hypot(p.y - centre[0], p.z - centre[1]);
      const first = profile[0]?.[0] ?? 0;
      const last = profile.at(-1)?.[0] ?? 0;
      return depthInPolygon([p.x, radius], [...profile, [last, FAR_OUT], [first, FAR_OUT]]);
    }
    default:
      return depthInRound(p, region);
  }
}

function depthInRound(p: Vec3, region: Extract<Region, { shape: 'cylinder' | 'cone' }>): number {
  const way = sub(region.to, region.from);
  const length = Math.hypot(way.x, way.y, way.z);
  const axis = scale(way, 1 / length);
  const at = sub(p, region.from);
  const t = dot(at, axis);
  const off = sub(at, scale(axis, t));
  const aside = Math.hypot(off.x, off.y, off.z);
  const [r0, r1] =
    region.shape === 'cylinder' ? [region.radius, region.radius] : [region.radiusFrom, region.radiusTo];
  const radius = r0 + ((r1 - r0) * t) / length;
  return Math.min(t, length - t, ((radius - aside) * length) / Math.hypot(length, r1 - r0));
}

/** Distance to the outline, above 0 inside. */
function depthInPolygon([x, y]: readonly [number, number], polygon: readonly [number, number][]): number {
  let inside = false;
  let nearest = Number.POSITIVE_INFINITY;
  polygon.forEach(([ax, ay], i) => {
    const [bx, by] = polygon[(i + 1) % polygon.length]!;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    nearest = Math.min(nearest, Math.hypot(x - ax - t * dx, y - ay - t * dy));
  });
  return inside ? nearest : -nearest;
}

/** Deepest in any of them: at least as deep in their union. */
export const depthInAny = (p: Vec3, regions: readonly Region[]): number =>
  regions.reduce((best, r) => Math.max(best, depthIn(p, r)), Number.NEGATIVE_INFINITY);

/** The part of the stock in which a region can lie. */
export function reachOf(region: Region, stock: Size): Box {
  const whole: Box = {
    min: { x: 0, y: 0, z: 0 },
    max: { x: stock.length, y: stock.width, z: stock.thickness },
  };
  switch (region.shape) {
    case 'box':
      return within(region.box, whole);
    case 'prism': {
      const [u, v] = POLYGON_AXES[region.axis];
      const box: Box = { min: { ...whole.min }, max: { ...whole.max } };
      box.min[region.axis] = Math.min(region.from, region.to);
      box.max[region.axis] = Math.max(region.from, region.to);
      for (const [axis, i] of [
        [u, 0],
        [v, 1],
      ] as const) {
        box.min[axis] = Math.min(...region.polygon.map(p => p[i]));
        box.max[axis] = Math.max(...region.polygon.map(p => p[i]));
      }
      return within(box, whole);
    }
    case 'turned':
      return within(
        {
          min: { ...whole.min, x: region.profile[0]?.[0] ?? 0 },
          max: { ...whole.max, x: region.profile.at(-1)?.[0] ?? 0 },
        },
        whole,
      );
    case 'beyond': {
      const { normal, offset } = region;
      if (Math.abs(normal.x) < 1e-6) return whole;
      const crossings = [0, stock.width].flatMap(y =>
        [0, stock.thickness].map(z => (offset - normal.y * y - normal.z * z) / normal.x),
      );
      return within(
        normal.x > 0
          ? { min: { ...whole.min, x: Math.min(...crossings) }, max: whole.max }
          : { min: whole.min, max: { ...whole.max, x: Math.max(...crossings) } },
        whole,
      );
    }
    default: {
      const r = region.shape === 'cylinder' ? region.radius : Math.max(region.radiusFrom, region.radiusTo);
      const reach = { x: r, y: r, z: r };
      const ends = [region.from, region.to];
      return within(
        {
          min: sub(least(ends, Math.min), reach),
          max: add(least(ends, Math.max), reach),
        },
        whole,
      );
    }
  }
}

const least = (points: readonly Vec3[], pick: (...values: number[]) => number): Vec3 => ({
  x: pick(...points.map(p => p.x)),
  y: pick(...points.map(p => p.y)),
  z: pick(...points.map(p => p.z)),
});

const within = (box: Box, whole: Box): Box => {
  const clamp = (p: Vec3): Vec3 => ({
    x: Math.min(whole.max.x, Math.max(0, p.x)),
    y: Math.min(whole.max.y, Math.max(0, p.y)),
    z: Math.min(whole.max.z, Math.max(0, p.z)),
  });
  return { min: clamp(box.min), max: clamp(box.max) };
};

/** Points spread evenly through boxes, the same each time: Halton's sequence in bases 2, 3 and 5 (1960). */
export function* pointsIn(boxes: readonly Box[], count: number): Generator<Vec3> {
  if (boxes.length === 0) return;
  const min = least(
    boxes.map(b => b.min),
    Math.min,
  );
  const max = least(
    boxes.map(b => b.max),
    Math.max,
  );
  for (let i = 1; i <= count; i++)
    yield {
      x: min.x + (max.x - min.x) * radical(i, 2),
      y: min.y + (max.y - min.y) * radical(i, 3),
      z: min.z + (max.z - min.z) * radical(i, 5),
    };
}

function radical(index: number, base: number): number {
  let [value, share] = [0, 1 / base];
  for (let i = index; i > 0; i = Math.floor(i / base)) {
    value += (i % base) * share;
    share /= base;
  }
  return value;
}
