import { add, cross, scale, sub, unit, type Vec3, vec } from '../geometry/vector.ts';
import type { Size, TurnedCut } from '../results/cuts.ts';
import type { Facet, Segment } from './facets.ts';
import { keepBelow } from './planes.ts';

/** Sides of a turned outline as drawn. */
const SIDES = 20;
/** Neighbouring cones that meet at less than this run on without a line. */
const SMOOTH_DEGREES = 12;

/** What of a surface stays outside the turned stretch, with square or round shoulders, and the turned surface. */
export function turnStretch(facets: readonly Facet[], cut: TurnedCut, size: Size, owner: number): Facet[] {
  const profile = cut.profile.filter(
    (p, i, all) => i === 0 || p.at !== all[i - 1]!.at || p.diameter !== all[i - 1]!.diameter,
  );
  const [from, to] = [profile[0]!.at, profile.at(-1)!.at];
  const before = facets.flatMap(f => keepBelow(f, { normal: vec(1, 0, 0), offset: from, end: true }) ?? []);
  const after = facets.flatMap(f => keepBelow(f, { normal: vec(-1, 0, 0), offset: -to, end: true }) ?? []);
  const stays = [...(from > 0 ? before : []), ...(to < size.length ? after : [])].filter(
    f => !f.points.every(p => Math.abs(p.x - from) < 1e-6 || Math.abs(p.x - to) < 1e-6) || isEnd(f, size),
  );
  const shoulders = [
    ...(from > 0 ? [shoulder(from, 1, cut, size, owner)] : []),
    ...(to < size.length ? [shoulder(to, -1, cut, size, owner)] : []),
  ];
  const [y, z] = [size.width / 2, size.thickness / 2];
  const rim = (at: number, r: number): Vec3[] =>
    Array.from({ length: SIDES }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.5)) / SIDES;
      return vec(at, y + r * Math.cos(angle), z + r * Math.sin(angle));
    });
  const lids = [
    ...(from <= 0 ? [lid(rim(0, profile[0]!.diameter / 2), -1, owner)] : []),
    ...(to >= size.length ? [lid(rim(size.length, profile.at(-1)!.diameter / 2), 1, owner)] : []),
  ];
  const bands = profile.slice(1).flatMap((q, i) => {
    const p = profile[i]!;
    const [a, b] = [rim(p.at, p.diameter / 2), rim(q.at, q.diameter / 2)];
    const drawn: boolean[] = [
      i === 0 || turnsSharply(profile[i - 1]!, p, q),
      i + 2 >= profile.length || turnsSharply(p, q, profile[i + 2]!),
    ];
    return band(a, b, drawn as [boolean, boolean], q.at - p.at, owner);
  });
  return [...stays, ...shoulders, ...lids, ...bands];
}

const isEnd = (f: Facet, size: Size): boolean =>
  f.kind === 'end' && f.points.every(p => p.x < 1e-6 || p.x > size.length - 1e-6);

type Ring = TurnedCut['profile'][number];

function turnsSharply(p: Ring, q: Ring, r: Ring): boolean {
  const slope = (a: Ring, b: Ring): number => Math.atan2((b.diameter - a.diameter) / 2, b.at - a.at);
  return Math.abs(slope(q, r) - slope(p, q)) > (SMOOTH_DEGREES * Math.PI) / 180;
}

const edges = (ring: readonly Vec3[]): Segment[] =>
  ring.map((p, i) => [p, ring[(i + 1) % ring.length]!] as const);

function lid(ring: Vec3[], sign: 1 | -1, owner: number): Facet {
  return {
    points: ring,
    normal: vec(sign, 0, 0),
    segments: edges(ring),
    kind: 'end',
    field: { corner: ring[0]!, along: sub(ring[5]!, ring[0]!), across: sub(ring[10]!, ring[0]!) },
    rank: 2,
    owner,
  };
}

/** End of the stock that was not turned, looking along the turned stretch. */
function shoulder(at: number, sign: 1 | -1, cut: TurnedCut, s: Size, owner: number): Facet {
  const r = s.width / 2;
  const points = cut.round
    ? Array.from({ length: SIDES }, (_, i) => {
        const angle = (2 * Math.PI * (i + 0.5)) / SIDES;
        return vec(at, r + r * Math.cos(angle), r + r * Math.sin(angle));
      })
    : [vec(at, 0, 0), vec(at, s.width, 0), vec(at, s.width, s.thickness), vec(at, 0, s.thickness)];
  return {
    points,
    normal: vec(sign, 0, 0),
    segments: edges(points),
    kind: 'end',
    field: { corner: vec(at, 0, 0), along: vec(0, s.width, 0), across: vec(0, 0, s.thickness) },
    rank: 0,
    owner,
  };
}

/** A cone, or the flat ring of a step where both stations are one. */
function band(a: Vec3[], b: Vec3[], drawn: [boolean, boolean], length: number, owner: number): Facet[] {
  return a.flatMap((p, i): Facet[] => {
    const j = (i + 1) % SIDES;
    const points = [p, b[i]!, b[j]!, a[j]!];
    const raw = cross(sub(b[j]!, p), sub(a[j]!, b[i]!));
    if (Math.hypot(raw.x, raw.y, raw.z) < 1e-9) return [];
    const middle = scale(add(p, a[j]!), 0.5);
    const axis = scale(
      a.reduce((sum, v) => add(sum, v), vec(0, 0, 0)),
      1 / SIDES,
    );
    const out = sub(middle, axis);
    const n = unit(raw);
    // A step looks along the axis, towards its smaller rim; a cone looks outwards.
    const smaller = Math.hypot(out.y, out.z) > radius(b[i]!, axis) ? 1 : -1;
    const wanted = length < 1e-9 ? vec(smaller, 0, 0) : out;
    const facing = n.x * wanted.x + n.y * wanted.y + n.z * wanted.z < 0 ? scale(n, -1) : n;
    return [
      {
        points,
        normal: facing,
        segments: [
          ...(drawn[0] ? [[p, a[j]!] as const] : []),
          ...(drawn[1] ? [[b[i]!, b[j]!] as const] : []),
        ],
        kind: 'side',
        field: { corner: p, along: sub(b[i]!, p), across: sub(a[j]!, p) },
        rank: 1,
        owner,
      },
    ];
  });
}

const radius = (p: Vec3, axis: Vec3): number => Math.hypot(p.y - axis.y, p.z - axis.z);
