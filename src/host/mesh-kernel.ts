import type { Manifold, ManifoldToplevel } from 'manifold-3d';
import type { Frame } from '../geometry/frame.ts';
import { signedArea } from '../geometry/polygon.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { hollowOf, type Primitive } from '../results/cut-shapes.ts';
import type { Solid, SolidKernel, StockShape } from '../results/kernel.ts';

/** Segments of a full circle: enough that a bored hole reads round; volumes of round cuts err by under 1 %. */
const SEGMENTS = 32;
/** A cut that ends on a face is drawn a little past it, so that no skin of nothing stays. */
const PAST = 0.01;

export class MeshSolid implements Solid {
  readonly body: Manifold;
  constructor(body: Manifold) {
    this.body = body;
  }
  volume(): number {
    return this.body.volume();
  }
  triangles() {
    const mesh = this.body.getMesh();
    const { vertProperties, numProp, triVerts } = mesh;
    if (numProp === 3)
      return { positions: Float32Array.from(vertProperties), indices: Uint32Array.from(triVerts) };
    const count = vertProperties.length / numProp;
    const positions = new Float32Array(count * 3);
    for (let i = 0; i < count; i++)
      positions.set(vertProperties.subarray(i * numProp, i * numProp + 3), i * 3);
    return { positions, indices: Uint32Array.from(triVerts) };
  }
  /** Sum of the tetrahedra between the origin and each triangle. */
  centre(): Vec3 {
    const { positions, indices } = this.triangles();
    const at = (n: number): Vec3 => ({
      x: positions[3 * n]!,
      y: positions[3 * n + 1]!,
      z: positions[3 * n + 2]!,
    });
    const sum = { x: 0, y: 0, z: 0 };
    let whole = 0;
    for (let t = 0; t < indices.length; t += 3) {
      const [a, b, c] = [at(indices[t]!), at(indices[t + 1]!), at(indices[t + 2]!)];
      const n = crossed(b, c);
      const six = a.x * n.x + a.y * n.y + a.z * n.z;
      whole += six;
      for (const k of ['x', 'y', 'z'] as const) sum[k] += (six * (a[k] + b[k] + c[k])) / 4;
    }
    return { x: sum.x / whole, y: sum.y / whole, z: sum.z / whole };
  }
  free(): void {
    this.body.delete();
  }
}

/** Mesh kernel over the manifold-3d wasm module, which the caller has loaded. */
export function meshKernel(wasm: ManifoldToplevel): SolidKernel {
  const { Manifold: M } = wasm;

  const stock = (shape: StockShape): Manifold => {
    const { size, round, wall } = shape;
    const { length, width, thickness } = size;
    if (!(length > 0 && width > 0 && thickness > 0))
      throw new RangeError(`a part of ${length} x ${width} x ${thickness} mm is no solid`);
    if (!round) {
      const whole = M.cube([length, width, thickness]);
      const hollow = hollowOf(shape);
      if (!hollow) return whole;
      // Where the section is open, the hollow goes past it, so that no skin stays.
      const past = (at: number, most: number): number => (at >= most ? at + PAST : at <= 0 ? at - PAST : at);
      const [y0, y1] = [past(hollow.min.y, width), past(hollow.max.y, width)];
      const [z0, z1] = [past(hollow.min.z, thickness), past(hollow.max.z, thickness)];
      return less(whole, [shifted(M.cube([length + 2 * PAST, y1 - y0, z1 - z0]), -PAST, y0, z0)]);
    }
    const bar = along(
      M.cylinder(length, width / 2, width / 2, SEGMENTS),
      { x: 0, y: width / 2, z: thickness / 2 },
      { x: 1, y: 0, z: 0 },
    );
    if (wall === undefined || wall * 2 >= width) return bar;
    const bore = M.cylinder(length + 2 * PAST, width / 2 - wall, width / 2 - wall, SEGMENTS);
    return less(bar, [along(bore, { x: -PAST, y: width / 2, z: thickness / 2 }, { x: 1, y: 0, z: 0 })]);
  };

  const less = (from: Manifold, gone: Manifold[]): Manifold => {
    if (gone.length === 0) return from;
    const result = M.difference([from, ...gone]);
    result.numTri();
    for (const m of [from, ...gone]) m.delete();
    return result;
  };

  return {
    name: 'manifold-3d',
    part(shape, gone) {
      return new MeshSolid(
        less(
          stock(shape),
          gone.map(p => solidOf(M, p, shape)).filter(m => m !== undefined),
        ),
      );
    },
    shared(a, atA, b, atB) {
      // In one part's own frame and both ways round: nearly coplanar turned faces can report a false overlap.
      const [ma, mb] = [(a as MeshSolid).body, (b as MeshSolid).body];
      const there = common(ma, mb, between(atB, atA));
      return there <= 0 ? 0 : Math.max(0, Math.min(there, common(mb, ma, between(atA, atB))));
    },
    gap(a, atA, b, atB, most) {
      const moved = (b as MeshSolid).body.transform(between(atB, atA));
      const least = (a as MeshSolid).body.minGap(moved, most);
      moved.delete();
      return least;
    },
  };
}

/** Volume that `a` shares with `b` moved into its frame. */
function common(a: Manifold, b: Manifold, move: Matrix): number {
  const moved = b.transform(move);
  const both = a.intersect(moved);
  const volume = both.volume();
  moved.delete();
  both.delete();
  return volume;
}

type Statics = ManifoldToplevel['Manifold'];

function solidOf(M: Statics, p: Primitive, { size }: StockShape): Manifold | undefined {
  if (p.shape === 'box') {
    const grown = (low: number, high: number, whole: number): [number, number] => [
      low <= 0 ? low - PAST : low,
      high >= whole ? high + PAST : high,
    ];
    const [x, y, z] = [
      grown(p.box.min.x, p.box.max.x, size.length),
      grown(p.box.min.y, p.box.max.y, size.width),
      grown(p.box.min.z, p.box.max.z, size.thickness),
    ];
    if (x[1] <= x[0] || y[1] <= y[0] || z[1] <= z[0]) return undefined;
    return shifted(M.cube([x[1] - x[0], y[1] - y[0], z[1] - z[0]]), x[0], y[0], z[0]);
  }
  if (p.shape === 'prism') {
    if (p.to <= p.from) return undefined;
    const area = signedArea(p.polygon);
    if (Math.abs(area) < 1e-9) return undefined;
    const ring = area > 0 ? p.polygon : [...p.polygon].reverse();
    const drawn = shifted(M.extrude([ring], p.to - p.from + 2 * PAST), 0, 0, p.from - PAST);
    // The polygon lies in the two other axes in cyclic order, so the drawing axis turns onto the right one.
    if (p.axis === 'z') return drawn;
    return p.axis === 'x'
      ? turn(drawn, { x: { x: 0, y: 1, z: 0 }, y: { x: 0, y: 0, z: 1 }, z: { x: 1, y: 0, z: 0 } })
      : turn(drawn, { x: { x: 0, y: 0, z: 1 }, y: { x: 1, y: 0, z: 0 }, z: { x: 0, y: 1, z: 0 } });
  }
  if (p.shape === 'beyond') return beyondPlane(M, p, size);
  if (p.shape === 'turned') return turnedWaste(M, p, size);
  const way = { x: p.to.x - p.from.x, y: p.to.y - p.from.y, z: p.to.z - p.from.z };
  const length = Math.hypot(way.x, way.y, way.z);
  if (length <= 0) return undefined;
  const unit = { x: way.x / length, y: way.y / length, z: way.z / length };
  const [low, high] = p.shape === 'cylinder' ? [p.radius, p.radius] : [p.radiusFrom, p.radiusTo];
  const start = { x: p.from.x - unit.x * PAST, y: p.from.y - unit.y * PAST, z: p.from.z - unit.z * PAST };
  const through = outside(p.to, size) ? 2 * PAST : PAST;
  return along(M.cylinder(length + through, low, high, SEGMENTS), start, unit);
}

/** A block larger than the part, laid with one face in the plane. */
function beyondPlane(
  M: Statics,
  p: Extract<Primitive, { shape: 'beyond' }>,
  s: StockShape['size'],
): Manifold {
  const reach = 2 * Math.hypot(s.length, s.width, s.thickness);
  const block = shifted(M.cube([reach * 2, reach * 2, reach]), -reach, -reach, 0);
  // Nearest point of the plane to the part's middle, so that the block covers all of the part beyond it.
  const middle = { x: s.length / 2, y: s.width / 2, z: s.thickness / 2 };
  const away = p.offset - (p.normal.x * middle.x + p.normal.y * middle.y + p.normal.z * middle.z);
  const at = {
    x: middle.x + p.normal.x * away,
    y: middle.y + p.normal.y * away,
    z: middle.z + p.normal.z * away,
  };
  return along(block, at, p.normal);
}

/** The outline out to beyond the stock, turned about the part's own axis. */
function turnedWaste(
  M: Statics,
  p: Extract<Primitive, { shape: 'turned' }>,
  s: StockShape['size'],
): Manifold | undefined {
  const first = p.profile[0];
  const last = p.profile.at(-1);
  if (!first || !last || last[0] <= first[0]) return undefined;
  const start = first[0] <= 0 ? first[0] - PAST : first[0];
  const end = last[0] >= s.length ? last[0] + PAST : last[0];
  const outline: [number, number][] = [
    [first[1], start],
    ...p.profile.map(([x, r]): [number, number] => [r, x]),
    [last[1], end],
    [p.reach, end],
    [p.reach, start],
  ];
  const area = signedArea(outline);
  const drawn = M.revolve([area > 0 ? outline : outline.reverse()], SEGMENTS);
  return along(drawn, { x: 0, y: p.centre[0], z: p.centre[1] }, { x: 1, y: 0, z: 0 });
}

const outside = (p: Vec3, s: StockShape['size']): boolean => {
  const near = 1e-6;
  return [p.x, s.length - p.x, p.y, s.width - p.y, p.z, s.thickness - p.z].some(d => d <= near);
};

/** A solid moved; `from` is deleted, for wasm memory is not collected. */
function shifted(from: Manifold, x: number, y: number, z: number): Manifold {
  const result = from.translate(x, y, z);
  from.delete();
  return result;
}

/** Turns a solid drawn along z so that it runs from `start` along `way`; `from` is deleted. */
function along(from: Manifold, start: Vec3, way: Vec3): Manifold {
  const helper = Math.abs(way.x) < 0.9 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
  const y0 = crossed(way, helper);
  const n = Math.hypot(y0.x, y0.y, y0.z);
  const y = { x: y0.x / n, y: y0.y / n, z: y0.z / n };
  return turn(from, { x: crossed(y, way), y, z: way }, start);
}

const crossed = (a: Vec3, b: Vec3): Vec3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

function turn(
  from: Manifold,
  axes: { x: Vec3; y: Vec3; z: Vec3 },
  at: Vec3 = { x: 0, y: 0, z: 0 },
): Manifold {
  const { x, y, z } = axes;
  const result = from.transform([x.x, x.y, x.z, 0, y.x, y.y, y.z, 0, z.x, z.y, z.z, 0, at.x, at.y, at.z, 1]);
  from.delete();
  return result;
}

type Matrix = Parameters<Manifold['transform']>[0];

/** From one part's frame into another's. */
function between(from: Frame, to: Frame): Matrix {
  const local = (v: Vec3): [number, number, number] => [
    v.x * to.x.x + v.y * to.x.y + v.z * to.x.z,
    v.x * to.y.x + v.y * to.y.y + v.z * to.y.z,
    v.x * to.z.x + v.y * to.z.y + v.z * to.z.z,
  ];
  const d = {
    x: from.origin.x - to.origin.x,
    y: from.origin.y - to.origin.y,
    z: from.origin.z - to.origin.z,
  };
  return [...local(from.x), 0, ...local(from.y), 0, ...local(from.z), 0, ...local(d), 1] as Matrix;
}
