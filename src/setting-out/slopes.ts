import { directionToLocal, directionToWorld, toLocal, toWorld } from '../geometry/frame.ts';
import { AXES, add, dot, scale, sub, type Vec3, vec } from '../geometry/vector.ts';
import type { EndName, LocalFace } from '../results/cuts.ts';
import { FACE_AXIS } from '../results/cuts.ts';
import type { Body } from './bodies.ts';
import { isHigh, LOCAL_FACES, LOCAL_NORMAL, SIZE_OF_AXIS } from './faces.ts';
import type { Contact } from './joint-type.ts';

/** How one end of a part stands to the slanting face it runs against. */
export interface Slope {
  /** From the end of the body to the long point on the face, outwards, mm; below 0 where the body is too long. */
  reach: number;
  /** The end as it is sawn, degrees from square: positive takes more from the face edge, and from the face. */
  mitre: number;
  bevel: number;
}

/** A face seen at less than this from edge-on is no face to saw an end against, as a cosine. */
const EDGE_ON = 0.2;
const NEAR = 0.05;

/** Distance along a line from a point to the plane of a face of a body, mm. */
function toPlane(p: Vec3, way: Vec3, b: Body, face: LocalFace): number {
  const normal = directionToWorld(b.frame, LOCAL_NORMAL[face]);
  const axis = FACE_AXIS[face];
  const on = toWorld(b.frame, { ...vec(0, 0, 0), [axis]: isHigh(face) ? b.size[SIZE_OF_AXIS[axis]] : 0 });
  return dot(sub(on, p), normal) / dot(way, normal);
}

/** Does a world point on the plane of a face lie within the face? */
function within(p: Vec3, b: Body, face: LocalFace): boolean {
  const local = toLocal(b.frame, p);
  return AXES.every(
    k => k === FACE_AXIS[face] || (local[k] > -NEAR && local[k] < b.size[SIZE_OF_AXIS[k]] + NEAR),
  );
}

/**
 * Ends of `a` that run against a face of `b`, at whatever slant: the face is the one that all four long arrises
 * meet and that lies nearest to the end, no further short of it than `short` mm, nor deeper than half the part.
 */
export function slopesBetween(a: Body, b: Body, short: number): Contact[] {
  return (['end1', 'end2'] as const).flatMap(end => {
    const out = end === 'end2' ? 1 : -1;
    const way = scale(a.frame.x, out);
    const x = end === 'end2' ? a.size.length : 0;
    const corner = (y: number, z: number): Vec3 => toWorld(a.frame, vec(x, y, z));
    const arrises = [0, a.size.width].flatMap(y => [0, a.size.thickness].map(z => corner(y, z)));
    const middle = corner(a.size.width / 2, a.size.thickness / 2);
    const faces = LOCAL_FACES.filter(
      face => dot(directionToWorld(b.frame, LOCAL_NORMAL[face]), way) < -EDGE_ON,
    ).flatMap(face => {
      const distance = toPlane(middle, way, b, face);
      const met = arrises.map(p => toPlane(p, way, b, face));
      const good =
        distance <= short &&
        distance >= -a.size.length / 2 &&
        arrises.every((p, i) => within(add(p, scale(way, met[i]!)), b, face));
      return good ? [{ face, distance, met }] : [];
    });
    const nearest = faces.sort((p, q) => Math.abs(p.distance) - Math.abs(q.distance))[0];
    return nearest ? [contactOf(a, b, end, nearest.face, arrises, nearest.met)] : [];
  });
}

function contactOf(
  a: Body,
  b: Body,
  end: EndName,
  intoFace: LocalFace,
  arrises: readonly Vec3[],
  met: readonly number[],
): Contact {
  const out = end === 'end2' ? 1 : -1;
  const way = scale(a.frame.x, out);
  const points = arrises.map((p, i) => add(p, scale(way, met[i]!)));
  const outward = directionToLocal(a.frame, scale(directionToWorld(b.frame, LOCAL_NORMAL[intoFace]), -1));
  const degrees = (t: number): number => {
    const angle = (Math.atan(t) * 180) / Math.PI;
    return Math.abs(angle) < 1e-6 ? 0 : angle;
  };
  const boxOf = (list: readonly Vec3[]) => ({
    min: vec(
      Math.min(...list.map(p => p.x)),
      Math.min(...list.map(p => p.y)),
      Math.min(...list.map(p => p.z)),
    ),
    max: vec(
      Math.max(...list.map(p => p.x)),
      Math.max(...list.map(p => p.y)),
      Math.max(...list.map(p => p.z)),
    ),
  });
  return {
    from: a.copy.id,
    into: b.copy.id,
    fromFace: end,
    intoFace,
    world: boxOf(points),
    inFrom: boxOf(points.map(p => toLocal(a.frame, p))),
    inInto: boxOf(points.map(p => toLocal(b.frame, p))),
    apart: 0,
    slope: {
      reach: Math.round(Math.max(...met) * 1e6) / 1e6,
      mitre: degrees(outward.y / Math.abs(outward.x)),
      bevel: degrees(outward.z / Math.abs(outward.x)),
    },
  };
}
