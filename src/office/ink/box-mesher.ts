import { type Box, box, intersectBoxes } from '../../geometry/box.ts';
import { type Frame, toWorld } from '../../geometry/frame.ts';
import { type Axis, cross, dot, type Vec3, vec } from '../../geometry/vector.ts';
import { hollowOf } from '../../results/cut-shapes.ts';
import type { Cut, Size, TaperCut, TenonCut } from '../../results/cuts.ts';
import type { Instance } from '../../results/piece.ts';
import type { SolidMesh } from './part-mesh.ts';

/**
 * Surface of an instance from boxes alone: envelope less pockets and tenon shoulders (exact, by compressing
 * coordinates), tapers by moving the face, round stock as a prism of 32 sides. Holes, chamfers and angled
 * ends are left to a solid kernel.
 */
export function boxMesh(instance: Instance): SolidMesh {
  const local = instance.round ? roundMesh(instance) : squareMesh(instance);
  const positions = new Float32Array(local.points.flatMap(p => [p.x, p.y, p.z]));
  return placedMesh({ positions, indices: Uint32Array.from(local.triangles) }, instance.frame);
}

const SIDES = 32;
const NEAR = 1e-4;

const envelope = (s: Size): Box => box(0, 0, 0, s.length, s.width, s.thickness);

/** What a tenon takes away beyond its shoulder, as boxes. */
export function tenonWaste(cut: TenonCut, s: Size): Box[] {
  const [x0, x1] = cut.end === 'end1' ? [0, cut.length] : [s.length - cut.length, s.length];
  const all: Box[] = [
    box(x0, 0, 0, x1, s.width, cut.z.low),
    box(x0, 0, s.thickness - cut.z.high, x1, s.width, s.thickness),
    ...strips(cut, s, x0, x1),
  ];
  return all.filter(b => b.max.x > b.min.x && b.max.y > b.min.y && b.max.z > b.min.z);
}

/** The two strips across the other axis; a haunch is left standing beside the tenon. */
function strips(cut: TenonCut, s: Size, x0: number, x1: number): Box[] {
  const low = box(x0, 0, 0, x1, cut.y.low, s.thickness);
  const high = box(x0, s.width - cut.y.high, 0, x1, s.width, s.thickness);
  const { haunch } = cut;
  if (!haunch) return [low, high];
  const tip: [number, number] = cut.end === 'end1' ? [0, x1 - haunch.length] : [x0 + haunch.length, x1];
  if (haunch.side === 'low') {
    const edge = cut.y.low - haunch.width;
    return [box(x0, 0, 0, x1, edge, s.thickness), box(tip[0], edge, 0, tip[1], cut.y.low, s.thickness), high];
  }
  const from = s.width - cut.y.high;
  const edge = from + haunch.width;
  return [low, box(x0, edge, 0, x1, s.width, s.thickness), box(tip[0], from, 0, tip[1], edge, s.thickness)];
}

const isPocket = (cut: Cut): cut is Extract<Cut, { box: Box }> => 'box' in cut;

function wasteOf(instance: Instance): Box[] {
  const whole = envelope(instance.size);
  return [
    hollowOf(instance),
    ...instance.cuts.flatMap(cut =>
      isPocket(cut) ? [cut.box] : cut.kind === 'tenon' ? tenonWaste(cut, instance.size) : [],
    ),
  ]
    .filter(b => b !== undefined)
    .map(b => intersectBoxes(b, whole))
    .filter(b => b !== undefined);
}

function planes(boxes: readonly Box[], k: Axis, more: readonly number[]): number[] {
  const all = [...boxes.flatMap(b => [b.min[k], b.max[k]]), ...more].sort((a, b) => a - b);
  return all.filter((v, i) => i === 0 || v - all[i - 1]! > NEAR);
}

/** The faces of a cell, each as its outward step and the four corners (in steps) anticlockwise from outside. */
const CELL_FACES: { step: [number, number, number]; corners: [number, number, number][] }[] = [
  {
    step: [1, 0, 0],
    corners: [
      [1, 0, 0],
      [1, 1, 0],
      [1, 1, 1],
      [1, 0, 1],
    ],
  },
  {
    step: [-1, 0, 0],
    corners: [
      [0, 0, 0],
      [0, 0, 1],
      [0, 1, 1],
      [0, 1, 0],
    ],
  },
  {
    step: [0, 1, 0],
    corners: [
      [0, 1, 0],
      [0, 1, 1],
      [1, 1, 1],
      [1, 1, 0],
    ],
  },
  {
    step: [0, -1, 0],
    corners: [
      [0, 0, 0],
      [1, 0, 0],
      [1, 0, 1],
      [0, 0, 1],
    ],
  },
  {
    step: [0, 0, 1],
    corners: [
      [0, 0, 1],
      [1, 0, 1],
      [1, 1, 1],
      [0, 1, 1],
    ],
  },
  {
    step: [0, 0, -1],
    corners: [
      [0, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
      [1, 0, 0],
    ],
  },
];

interface LocalMesh {
  points: Vec3[];
  triangles: number[];
}

function squareMesh(instance: Instance): LocalMesh {
  const whole = envelope(instance.size);
  const waste = wasteOf(instance);
  const tapers = instance.cuts.filter((c): c is TaperCut => c.kind === 'taper');
  const boxes = [whole, ...waste];
  const xs = planes(
    boxes,
    'x',
    tapers.flatMap(t => [t.from, t.to]).filter(x => x > 0 && x < whole.max.x),
  );
  const ys = planes(boxes, 'y', []);
  const zs = planes(boxes, 'z', []);
  const n = [xs.length - 1, ys.length - 1, zs.length - 1] as const;
  const solid = new Uint8Array(n[0] * n[1] * n[2]).fill(1);
  const at = (i: number, j: number, k: number): number => (i * n[1] + j) * n[2] + k;
  for (const b of waste) {
    for (let i = 0; i < n[0]; i++) {
      if (!within(b, 'x', xs, i)) continue;
      for (let j = 0; j < n[1]; j++) {
        if (!within(b, 'y', ys, j)) continue;
        for (let k = 0; k < n[2]; k++) if (within(b, 'z', zs, k)) solid[at(i, j, k)] = 0;
      }
    }
  }
  const filled = (i: number, j: number, k: number): boolean =>
    i >= 0 && j >= 0 && k >= 0 && i < n[0] && j < n[1] && k < n[2] && solid[at(i, j, k)] === 1;
  const mesh = boundary(n, filled, (i, j, k) => vec(xs[i]!, ys[j]!, zs[k]!));
  for (const taper of tapers) mesh.points = mesh.points.map(p => tapered(p, taper, instance.size));
  return mesh;
}

const within = (b: Box, k: Axis, planesOf: readonly number[], i: number): boolean => {
  const mid = (planesOf[i]! + planesOf[i + 1]!) / 2;
  return mid > b.min[k] && mid < b.max[k];
};

function boundary(
  n: readonly [number, number, number],
  filled: (i: number, j: number, k: number) => boolean,
  point: (i: number, j: number, k: number) => Vec3,
): LocalMesh {
  const points: Vec3[] = [];
  const triangles: number[] = [];
  const known = new Map<number, number>();
  const corner = (i: number, j: number, k: number): number => {
    const key = (i * (n[1] + 1) + j) * (n[2] + 1) + k;
    let index = known.get(key);
    if (index === undefined) {
      index = points.push(point(i, j, k)) - 1;
      known.set(key, index);
    }
    return index;
  };
  for (let i = 0; i < n[0]; i++)
    for (let j = 0; j < n[1]; j++)
      for (let k = 0; k < n[2]; k++) {
        if (!filled(i, j, k)) continue;
        for (const { step, corners } of CELL_FACES) {
          if (filled(i + step[0], j + step[1], k + step[2])) continue;
          const [a, b, c, d] = corners.map(q => corner(i + q[0], j + q[1], k + q[2]));
          triangles.push(a!, b!, c!, a!, c!, d!);
        }
      }
  return { points, triangles };
}

function tapered(p: Vec3, t: TaperCut, s: Size): Vec3 {
  const share = Math.min(1, Math.max(0, (p.x - t.from) / (t.to - t.from)));
  const by = share * t.amount;
  if (by === 0) return p;
  if (t.face === 'face' && p.z > s.thickness - NEAR) return { ...p, z: p.z - by };
  if (t.face === 'back' && p.z < NEAR) return { ...p, z: by };
  if (t.face === 'faceEdge' && p.y > s.width - NEAR) return { ...p, y: p.y - by };
  if (t.face === 'backEdge' && p.y < NEAR) return { ...p, y: by };
  return p;
}

/** A bar or tube along x; a tube's bore is `wall` inside. */
function roundMesh({ size, wall }: Instance): LocalMesh {
  const r = size.width / 2;
  const points: Vec3[] = [];
  const triangles: number[] = [];
  const ring = (x: number, radius: number): number => {
    const first = points.length;
    for (let i = 0; i < SIDES; i++) {
      const a = (2 * Math.PI * i) / SIDES;
      points.push(vec(x, r + radius * Math.cos(a), r + radius * Math.sin(a)));
    }
    return first;
  };
  const band = (from: number, to: number): void => {
    for (let i = 0; i < SIDES; i++) {
      const j = (i + 1) % SIDES;
      triangles.push(from + i, from + j, to + j, from + i, to + j, to + i);
    }
  };
  const fan = (first: number, out: 1 | -1): void => {
    for (let i = 1; i + 1 < SIDES; i++)
      triangles.push(first, ...(out > 0 ? [first + i, first + i + 1] : [first + i + 1, first + i]));
  };
  const a = ring(0, r);
  const b = ring(size.length, r);
  band(a, b);
  if (wall !== undefined && wall > 0 && wall < r) {
    const c = ring(0, r - wall);
    const d = ring(size.length, r - wall);
    band(d, c);
    band(c, a);
    band(b, d);
  } else {
    fan(a, -1);
    fan(b, 1);
  }
  return { points, triangles };
}

/** A surface of the part's own frame, set in the world. */
export function placedMesh(local: SolidMesh, frame: Frame): SolidMesh {
  const positions = new Float32Array(local.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [local.positions[i]!, local.positions[i + 1]!, local.positions[i + 2]!];
    const w = toWorld(frame, vec(x, y, z));
    positions.set([w.x, w.y, w.z], i);
  }
  const indices = Uint32Array.from(local.indices);
  // A mirrored frame turns the surface inside out: turn each triangle back.
  if (dot(cross(frame.x, frame.y), frame.z) < 0)
    for (let t = 0; t < indices.length; t += 3) {
      const second = indices[t + 1]!;
      indices[t + 1] = indices[t + 2]!;
      indices[t + 2] = second;
    }
  return { positions, indices };
}
