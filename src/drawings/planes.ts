import { box, corners } from '../geometry/box.ts';
import { add, cross, dot, norm, scale, sub, unit, type Vec3, vec } from '../geometry/vector.ts';
import type { Cut, EndCut, Size, TaperCut } from '../results/cuts.ts';
import type { Facet, Segment } from './facets.ts';

/** Everything with dot(normal, p) above `offset` is taken away. */
export interface Plane {
  normal: Vec3;
  offset: number;
  /** Across the grain: shows end grain. */
  end: boolean;
}

const EPS = 1e-6;
const through = (normal: Vec3, p: Vec3, end: boolean): Plane => ({ normal, offset: dot(normal, p), end });

/** Sawn ends and tapers as planes in the part's frame. */
export const cutPlanes = (cuts: readonly Cut[], size: Size): Plane[] =>
  cuts.flatMap(cut =>
    cut.kind === 'end-cut' ? [endPlane(cut, size)] : cut.kind === 'taper' ? [taperPlane(cut, size)] : [],
  );

/**
 * An end sawn out of square keeps its long point on the envelope. Positive `mitre` takes more from the face
 * edge (+y), positive `bevel` more from the face (+z), at either end.
 */
function endPlane(cut: EndCut, size: Size): Plane {
  const rad = Math.PI / 180;
  const [m, b] = [Math.tan(cut.mitre * rad), Math.tan(cut.bevel * rad)];
  const out = cut.end === 'end2' ? 1 : -1;
  const normal = unit(vec(out, m, b));
  const long = vec(cut.end === 'end2' ? size.length : 0, m > 0 ? 0 : size.width, b > 0 ? 0 : size.thickness);
  return through(normal, long, true);
}

function taperPlane(cut: TaperCut, size: Size): Plane {
  const onY = cut.face === 'backEdge' || cut.face === 'faceEdge';
  const high = cut.face === 'face' || cut.face === 'faceEdge';
  const level = high ? (onY ? size.width : size.thickness) : 0;
  const point = (x: number, depth: number): Vec3 => {
    const side = high ? level - depth : level + depth;
    return onY ? vec(x, side, 0) : vec(x, 0, side);
  };
  const a = point(cut.from, 0);
  const along = sub(point(cut.to, cut.amount), a);
  const across = onY ? vec(0, 0, 1) : vec(0, 1, 0);
  const raw = unit(cross(along, across));
  const outward = onY ? vec(0, high ? 1 : -1, 0) : vec(0, 0, high ? 1 : -1);
  return through(dot(raw, outward) < 0 ? scale(raw, -1) : raw, a, false);
}

/** Cuts facets by planes and closes the envelope where it was cut. */
export function clipFacets(
  facets: readonly Facet[],
  planes: readonly Plane[],
  size: Size,
  owner: number,
): Facet[] {
  let kept = [...facets];
  planes.forEach((plane, i) => {
    kept = keptBelow(kept, [plane]);
    const lid = lidOf(plane, size, planes.slice(0, i), owner);
    if (lid) kept.push(lid);
  });
  return kept;
}

/** What of the facets stands on the kept side of every plane, open where it was cut. */
export const keptBelow = (facets: readonly Facet[], planes: readonly Plane[]): Facet[] =>
  planes.reduce<Facet[]>((kept, plane) => kept.flatMap(facet => keepBelow(facet, plane) ?? []), [...facets]);

const mix = (a: Vec3, b: Vec3, t: number): Vec3 => add(a, scale(sub(b, a), t));

/** The part of a facet on the kept side of a plane; the new side is an edge of the part unless `drawn` is false. */
export function keepBelow(facet: Facet, plane: Plane, drawn = true): Facet | undefined {
  const height = (p: Vec3): number => dot(plane.normal, p) - plane.offset;
  if (facet.points.every(p => height(p) <= EPS)) return facet;
  const points: Vec3[] = [];
  const fresh: Vec3[] = [];
  facet.points.forEach((p, i) => {
    const q = facet.points[(i + 1) % facet.points.length]!;
    const [hp, hq] = [height(p), height(q)];
    if (hp <= EPS) points.push(p);
    if ((hp > EPS && hq < -EPS) || (hp < -EPS && hq > EPS)) {
      const at = mix(p, q, hp / (hp - hq));
      points.push(at);
      fresh.push(at);
    } else if (Math.abs(hp) <= EPS) fresh.push(p);
  });
  if (points.length < 3) return undefined;
  const segments = facet.segments.flatMap(s => keepSegment(s, height));
  if (drawn && fresh.length === 2) segments.push([fresh[0]!, fresh[1]!]);
  return { ...facet, points, segments };
}

function keepSegment([a, b]: Segment, height: (p: Vec3) => number): Segment[] {
  const [ha, hb] = [height(a), height(b)];
  if (ha <= EPS && hb <= EPS) return [[a, b]];
  if (ha > EPS && hb > EPS) return [];
  const at = mix(a, b, ha / (ha - hb));
  return ha <= EPS ? [[a, at]] : [[at, b]];
}

/** Section of the envelope by a plane, itself cut by the planes before it. */
function lidOf(plane: Plane, size: Size, before: readonly Plane[], owner: number): Facet | undefined {
  const points = section(plane, size);
  if (points.length < 3) return undefined;
  const [first, second] = [points[0]!, points[1]!];
  const grain = plane.end ? vec(0, 0, 0) : vec(1, 0, 0);
  const raw = plane.end ? sub(second, first) : sub(grain, scale(plane.normal, dot(grain, plane.normal)));
  const along = unit(raw);
  const across = unit(cross(plane.normal, along));
  const reach = (d: Vec3): number[] => points.map(p => dot(d, sub(p, first)));
  const [a, c] = [reach(along), reach(across)];
  const corner = add(first, add(scale(along, Math.min(...a)), scale(across, Math.min(...c))));
  const lid: Facet = {
    points,
    normal: plane.normal,
    segments: points.map((p, i) => [p, points[(i + 1) % points.length]!] as const),
    kind: plane.end ? 'end' : 'face',
    field: {
      corner,
      along: scale(along, Math.max(...a) - Math.min(...a)),
      across: scale(across, Math.max(...c) - Math.min(...c)),
    },
    rank: 0,
    owner,
  };
  return before.reduce<Facet | undefined>((kept, p) => (kept ? keepBelow(kept, p) : undefined), lid);
}

/** Corners of the polygon in which a plane cuts the envelope, in order around its normal. */
function section(plane: Plane, size: Size): Vec3[] {
  const all = corners(box(0, 0, 0, size.length, size.width, size.thickness));
  const found: Vec3[] = [];
  all.forEach((p, i) => {
    all.slice(i + 1).forEach(q => {
      const apart = ['x', 'y', 'z'].filter(k => p[k as 'x'] !== q[k as 'x']).length;
      if (apart !== 1) return;
      const [hp, hq] = [dot(plane.normal, p) - plane.offset, dot(plane.normal, q) - plane.offset];
      if (hp * hq > 0 || Math.abs(hp - hq) < EPS) return;
      const at = mix(p, q, hp / (hp - hq));
      if (!found.some(f => norm(sub(f, at)) < 1e-4)) found.push(at);
    });
  });
  if (found.length < 3) return [];
  const centre = scale(found.reduce(add, vec(0, 0, 0)), 1 / found.length);
  const u = unit(sub(found[0]!, centre));
  const v = cross(plane.normal, u);
  const angle = (p: Vec3): number => Math.atan2(dot(v, sub(p, centre)), dot(u, sub(p, centre)));
  return found.sort((a, b) => angle(a) - angle(b));
}
