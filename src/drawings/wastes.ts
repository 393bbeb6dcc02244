import type { Box } from '../geometry/box.ts';
import { signedArea } from '../geometry/polygon.ts';
import {
  AXES,
  type Axis,
  add,
  axisVector,
  cross,
  dot,
  norm,
  scale,
  sub,
  unit,
  type Vec3,
  vec,
} from '../geometry/vector.ts';
import { cutShapes, type Primitive } from '../results/cut-shapes.ts';
import { POLYGON_AXES, type Size } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { Facet, Segment } from './facets.ts';
import { keepBelow, keptBelow, type Plane } from './planes.ts';

type Prism = Extract<Primitive, { shape: 'prism' }>;
type Flat = [number, number];

const EPS = 1e-6;
/** Points nearer than this to a line lie on it, mm. */
const NEAR = 1e-3;
/** Walls of a waste that meet at less than this are one curved surface and show no line between them. */
const SMOOTH = Math.cos((20 * Math.PI) / 180);

/** Wastes of curves, cut-outs, dovetails and other slanting cuts: prisms in the part's frame. */
export const prismsOf = (instance: Instance): Prism[] =>
  instance.cuts.flatMap(cut =>
    'polygon' in cut || cut.kind === 'bent'
      ? cutShapes(cut, instance.size).filter(p => p.shape === 'prism')
      : [],
  );

/**
 * Takes prisms out of a surface of convex facets: what lies inside a waste goes, and the waste's own walls
 * come, as far as they stand in the wood that the planes leave.
 */
export function cutPrisms(
  facets: readonly Facet[],
  prisms: readonly Prism[],
  boxes: readonly Box[],
  size: Size,
  owner: number,
  planes: readonly Plane[],
): Facet[] {
  if (prisms.length === 0) return [...facets];
  const open = boxes.map(boxPlanes);
  const blocks = prisms.map(p => slabs(p.polygon).map(quad => block(p, quad)));
  const kept = facets.flatMap(f =>
    blocks.flat().reduce<Facet[]>((pieces, b) => pieces.flatMap(piece => outside(piece, b)), [f]),
  );
  const walls = prisms.flatMap((prism, i) => {
    const others = [...blocks.flatMap((b, j) => (j === i ? [] : b)), ...open];
    return wallsOf(prism, size, owner).flatMap(wall =>
      others
        .reduce<Facet[]>((pieces, b) => pieces.flatMap(piece => outside(piece, b)), keptBelow([wall], planes))
        .filter(
          piece => standsIn(behind(piece), size, planes) && !others.some(b => within(behind(piece), b)),
        ),
    );
  });
  const lines = walls.flatMap(w => w.segments);
  return [...kept.map(f => ({ ...f, segments: [...f.segments, ...adopted(f.points, lines)] })), ...walls];
}

/** What of some lines runs along the border of a facet: a wall's line is seen from the facet's side too. */
function adopted(points: readonly Vec3[], lines: readonly Segment[]): Segment[] {
  return points.flatMap((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const side = sub(q, p);
    const length = norm(side);
    if (length < EPS) return [];
    const way = scale(side, 1 / length);
    return lines.flatMap(([a, b]): Segment[] => {
      const off = (v: Vec3): number => norm(sub(sub(v, p), scale(way, dot(way, sub(v, p)))));
      if (off(a) > NEAR || off(b) > NEAR) return [];
      const [s, t] = [dot(way, sub(a, p)), dot(way, sub(b, p))].sort((x, y) => x - y) as [number, number];
      const [from, to] = [Math.max(0, s), Math.min(length, t)];
      return to - from > NEAR ? [[add(p, scale(way, from)), add(p, scale(way, to))]] : [];
    });
  });
}

const boxPlanes = (b: Box): Plane[] =>
  AXES.flatMap(k => [
    { normal: axisVector(k, 1), offset: b.max[k], end: false },
    { normal: axisVector(k, -1), offset: -b.min[k], end: false },
  ]);

const within = (p: Vec3, planes: readonly Plane[]): boolean =>
  planes.every(plane => dot(plane.normal, p) < plane.offset);

/** In the wood that tapers and sawn ends leave of the envelope. */
const standsIn = (p: Vec3, s: Size, planes: readonly Plane[]): boolean =>
  p.x > 0 && p.y > 0 && p.z > 0 && p.x < s.length && p.y < s.width && p.z < s.thickness && within(p, planes);

/** A point a hair inside the wood behind the middle of a facet. */
function behind(facet: Facet): Vec3 {
  const middle = scale(facet.points.reduce(add, vec(0, 0, 0)), 1 / facet.points.length);
  return sub(middle, scale(facet.normal, 0.01));
}

/** A simple polygon as trapezia between its corners' stations along the first axis. */
export function slabs(polygon: readonly Flat[]): Flat[][] {
  const stations = [...new Set(polygon.map(p => p[0]))].sort((a, b) => a - b);
  const sides = polygon.map((p, i) => [p, polygon[(i + 1) % polygon.length]!] as const);
  const found: Flat[][] = [];
  for (let i = 1; i < stations.length; i++) {
    const [u0, u1] = [stations[i - 1]!, stations[i]!];
    if (u1 - u0 < EPS) continue;
    const mid = (u0 + u1) / 2;
    const at = ([p, q]: readonly [Flat, Flat], u: number): number =>
      p[1] + ((q[1] - p[1]) * (u - p[0])) / (q[0] - p[0]);
    const crossing = sides
      .filter(([p, q]) => Math.min(p[0], q[0]) <= u0 + EPS && Math.max(p[0], q[0]) >= u1 - EPS)
      .filter(([p, q]) => Math.abs(q[0] - p[0]) > EPS)
      .sort((a, b) => at(a, mid) - at(b, mid));
    for (let k = 0; k + 1 < crossing.length; k += 2) {
      const [low, high] = [crossing[k]!, crossing[k + 1]!];
      const quad: Flat[] = [
        [u0, at(low, u0)],
        [u1, at(low, u1)],
        [u1, at(high, u1)],
        [u0, at(high, u0)],
      ];
      found.push(
        quad.filter((p, j) => {
          const q = quad[(j + 1) % 4]!;
          return Math.hypot(p[0] - q[0], p[1] - q[1]) > EPS;
        }),
      );
    }
  }
  return found;
}

const placed = (axis: Axis, [u, v]: Flat, w: number): Vec3 => {
  const [first, second] = POLYGON_AXES[axis];
  return { ...vec(0, 0, 0), [axis]: w, [first]: u, [second]: v };
};

/** Planes around a convex prism; inside is below all of them. */
function block(prism: Prism, quad: readonly Flat[]): Plane[] {
  const middle = placed(
    prism.axis,
    [quad.reduce((s, p) => s + p[0], 0) / quad.length, quad.reduce((s, p) => s + p[1], 0) / quad.length],
    (prism.from + prism.to) / 2,
  );
  const way = placed(prism.axis, [0, 0], 1);
  const facing = (normal: Vec3, p: Vec3): Plane => {
    const out = dot(normal, sub(p, middle)) < 0 ? scale(normal, -1) : normal;
    return { normal: out, offset: dot(out, p), end: false };
  };
  const sides = quad.map((p, i) => {
    const a = placed(prism.axis, p, 0);
    const b = placed(prism.axis, quad[(i + 1) % quad.length]!, 0);
    return facing(unit(cross(sub(b, a), way)), placed(prism.axis, p, prism.from));
  });
  return [
    ...sides,
    facing(scale(way, -1), placed(prism.axis, quad[0]!, prism.from)),
    facing(way, placed(prism.axis, quad[0]!, prism.to)),
  ];
}

/** The pieces of a facet outside a convex block; a facet that only touches it stays whole. */
function outside(facet: Facet, planes: readonly Plane[]): Facet[] {
  const height = (p: Vec3, plane: Plane): number => dot(plane.normal, p) - plane.offset;
  if (planes.some(plane => facet.points.every(p => height(p, plane) > -EPS * 100))) {
    const flush = planes.some(
      plane =>
        facet.points.every(p => Math.abs(height(p, plane)) < EPS * 100) &&
        dot(plane.normal, facet.normal) > 0.99,
    );
    // A facet that lies in a wall of the block and looks the same way is the waste's own surface.
    if (!flush) return [facet];
  }
  const pieces: Facet[] = [];
  let rest: Facet | undefined = facet;
  for (const plane of planes) {
    if (!rest) break;
    const beyond: Plane = { normal: scale(plane.normal, -1), offset: -plane.offset, end: plane.end };
    const out = rest.points.some(p => height(p, plane) > EPS * 100)
      ? keepBelow(rest, beyond, false)
      : undefined;
    if (out) pieces.push(out);
    rest = keepBelow(rest, plane, false);
  }
  return rest ? pieces : [facet];
}

/** Walls and blind ends of a waste as facets of the wood that stays: they look into the waste. */
function wallsOf(prism: Prism, size: Size, owner: number): Facet[] {
  const { axis, polygon, from, to } = prism;
  const area = signedArea(polygon);
  const ring = area > 0 ? polygon : [...polygon].reverse();
  const way = placed(axis, [0, 0], 1);
  const inward = (i: number): Vec3 => {
    const [p, q] = [ring[i]!, ring[(i + 1) % ring.length]!];
    const along = sub(placed(axis, q, 0), placed(axis, p, 0));
    return norm(along) < EPS ? vec(0, 0, 0) : unit(cross(way, along));
  };
  const sharp = (i: number, j: number): boolean => dot(inward(i), inward(j)) < SMOOTH;
  const sides = ring.flatMap((p, i): Facet[] => {
    const q = ring[(i + 1) % ring.length]!;
    const normal = inward(i);
    if (norm(normal) < 0.5) return [];
    const [a, b, c, d] = [
      placed(axis, p, from),
      placed(axis, q, from),
      placed(axis, q, to),
      placed(axis, p, to),
    ];
    const before = (i + ring.length - 1) % ring.length;
    const after = (i + 1) % ring.length;
    const segments: Segment[] = [
      [a, b],
      [d, c],
      ...(sharp(before, i) ? [[a, d] as const] : []),
      ...(sharp(i, after) ? [[b, c] as const] : []),
    ];
    return [
      {
        points: [a, b, c, d],
        normal,
        segments,
        kind: Math.abs(normal.x) > 0.7 ? 'end' : 'face',
        field: { corner: a, along: sub(d, a), across: sub(b, a) },
        rank: 1,
        owner,
      },
    ];
  });
  const extent = { x: size.length, y: size.width, z: size.thickness }[axis];
  const outline = (at: number): Segment[] =>
    ring.map((p, i) => [placed(axis, p, at), placed(axis, ring[(i + 1) % ring.length]!, at)] as const);
  const caps = [
    { at: from, normal: way, blind: from > EPS },
    { at: to, normal: scale(way, -1), blind: to < extent - EPS },
  ].flatMap(({ at, normal, blind }) =>
    blind
      ? slabs(polygon).map((quad): Facet => {
          const points = quad.map(p => placed(axis, p, at));
          return {
            points,
            normal,
            // The outline only: no line where two slabs of one end meet.
            segments: adopted(points, outline(at)),
            kind: axis === 'x' ? 'end' : 'face',
            field: {
              corner: points[0]!,
              along: sub(points[1]!, points[0]!),
              across: sub(points.at(-1)!, points[0]!),
            },
            rank: 1,
            owner,
          };
        })
      : [],
  );
  return [...sides, ...caps];
}
