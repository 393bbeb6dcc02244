import { add, dot, scale, sub, type Vec3 } from '../geometry/vector.ts';
import type { Facet, Segment } from './facets.ts';

/**
 * Order of painting, back to front, by binary space partition (Fuchs, Kedem and Naylor, SIGGRAPH 1980): facets
 * are split where they pass through each other's planes, so that any order of boxes, crossing or cyclic, comes right.
 * All facets given must face the eye, which then stands in front of every plane.
 */
export function depthOrder(facets: readonly Facet[]): Facet[] {
  const painted: Facet[] = [];
  paint([...facets], painted);
  return painted;
}

const EPS = 1e-3;
/** Planes tried at each step; the one that cuts fewest facets is taken. */
const TRIES = 24;

function paint(facets: Facet[], painted: Facet[]): void {
  if (facets.length === 0) return;
  const splitter = choose(facets);
  const back: Facet[] = [];
  const front: Facet[] = [];
  const level: Facet[] = [];
  for (const facet of facets) sort(facet, splitter, back, front, level);
  paint(back, painted);
  painted.push(...level.sort((a, b) => a.rank - b.rank || a.owner - b.owner));
  paint(front, painted);
}

const heightOver = (plane: Facet): ((p: Vec3) => number) => {
  const offset = dot(plane.normal, plane.points[0]!);
  return p => dot(plane.normal, p) - offset;
};

function choose(facets: readonly Facet[]): Facet {
  const step = Math.max(1, Math.floor(facets.length / TRIES));
  let best = facets[0]!;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < facets.length; i += step) {
    const height = heightOver(facets[i]!);
    let cost = 0;
    let balance = 0;
    for (const facet of facets) {
      const heights = facet.points.map(height);
      const above = heights.some(h => h > EPS);
      const below = heights.some(h => h < -EPS);
      if (above && below) cost += 6;
      else balance += above ? 1 : below ? -1 : 0;
    }
    cost += Math.abs(balance);
    if (cost < least) {
      least = cost;
      best = facets[i]!;
    }
  }
  return best;
}

function sort(facet: Facet, splitter: Facet, back: Facet[], front: Facet[], level: Facet[]): void {
  const height = heightOver(splitter);
  const heights = facet.points.map(height);
  const above = heights.some(h => h > EPS);
  const below = heights.some(h => h < -EPS);
  if (!above && !below) level.push(facet);
  else if (!below) front.push(facet);
  else if (!above) back.push(facet);
  else {
    const low = half(facet, height);
    const high = half(facet, p => -height(p));
    if (low) back.push(low);
    if (high) front.push(high);
  }
}

const mix = (a: Vec3, b: Vec3, t: number): Vec3 => add(a, scale(sub(b, a), t));

/** The piece of a facet where `height` is below 0; the new side is no edge of the part. */
function half(facet: Facet, height: (p: Vec3) => number): Facet | undefined {
  const points: Vec3[] = [];
  facet.points.forEach((p, i) => {
    const q = facet.points[(i + 1) % facet.points.length]!;
    const [hp, hq] = [height(p), height(q)];
    if (hp <= 0) points.push(p);
    if ((hp > 0 && hq < 0) || (hp < 0 && hq > 0)) points.push(mix(p, q, hp / (hp - hq)));
  });
  if (points.length < 3) return undefined;
  const segments = facet.segments.flatMap(([a, b]): Segment[] => {
    const [ha, hb] = [height(a), height(b)];
    if (ha > 0 && hb > 0) return [];
    if (ha <= 0 && hb <= 0) return [[a, b]];
    const at = mix(a, b, ha / (ha - hb));
    return ha <= 0 ? [[a, at]] : [[at, b]];
  });
  return { ...facet, points, segments };
}
