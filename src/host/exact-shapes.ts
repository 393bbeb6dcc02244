import type { OpenCascadeInstance, TopoDS_Shape } from 'replicad-opencascadejs';
import { signedArea } from '../geometry/polygon.ts';
import { type Axis, cross, norm, scale, sub, type Vec3 } from '../geometry/vector.ts';
import { hollowOf, type Primitive } from '../results/cut-shapes.ts';
import type { StockShape } from '../results/kernel.ts';

/** The wasm module, loaded by the caller. */
export type Oc = OpenCascadeInstance;
interface Held {
  delete(): void;
}

/** Objects of the wasm heap made for one piece of work; all go when it ends. */
export class Scope {
  private readonly held: Held[] = [];
  keep<T extends Held>(one: T): T {
    this.held.push(one);
    return one;
  }
  end(): void {
    for (const one of this.held.splice(0).reverse()) one.delete();
  }
}

/** Runs some work; what it kept is given back whether it ends well or not. */
export function scoped<T>(work: (scope: Scope) => T): T {
  const scope = new Scope();
  try {
    return work(scope);
  } finally {
    scope.end();
  }
}

/** Points nearer than this are one, mm. */
const SAME = 1e-6;
/** How far a waste that goes past everything is drawn beyond the part, in lengths of its diagonal. */
const BEYOND = 2;

/** Builds plain solids on the wasm heap; the caller's scope holds them. */
export class Shapes {
  private readonly oc: Oc;
  private readonly scope: Scope;
  constructor(oc: Oc, scope: Scope) {
    this.oc = oc;
    this.scope = scope;
  }

  /** The bar, board or tube before any cut; a RangeError names sizes that are no solid. */
  stock(shape: StockShape): TopoDS_Shape {
    const { size, round, wall } = shape;
    const { length, width, thickness } = size;
    if (!(length > 0 && width > 0 && thickness > 0))
      throw new RangeError(`a part of ${length} x ${width} x ${thickness} mm is no solid`);
    if (!round) {
      const whole = this.block({ x: 0, y: 0, z: 0 }, { x: length, y: width, z: thickness });
      const inside = hollowOf(shape);
      return inside ? this.cut(whole, [this.block(inside.min, inside.max)]) : whole;
    }
    const hollow = wall !== undefined && wall * 2 < width;
    const from = { x: 0, y: width / 2, z: thickness / 2 };
    const to = { ...from, x: length };
    const bar = this.cylinder(from, to, width / 2);
    return hollow ? this.cut(bar, [this.cylinder(from, to, width / 2 - wall)]) : bar;
  }

  /** What a primitive takes away, or nothing where it has no volume. */
  waste(p: Primitive, { size }: StockShape): TopoDS_Shape | undefined {
    switch (p.shape) {
      case 'box': {
        const { min, max } = p.box;
        const some = (['x', 'y', 'z'] as const).every(k => max[k] - min[k] > SAME);
        return some ? this.block(min, max) : undefined;
      }
      case 'cylinder':
        return norm(sub(p.from, p.to)) > SAME ? this.cylinder(p.from, p.to, p.radius) : undefined;
      case 'cone':
        return this.cone(p);
      case 'prism':
        return this.prism(p);
      case 'beyond':
        return this.beyond(p, Math.hypot(size.length, size.width, size.thickness) * BEYOND);
      case 'turned':
        return this.turned(p);
    }
  }

  /** One cut with all tools: about eight times faster than one after another. */
  cut(from: TopoDS_Shape, tools: readonly TopoDS_Shape[]): TopoDS_Shape {
    const { oc, scope } = this;
    const before = scope.keep(new oc.NCollection_List_TopoDS_Shape());
    before.Append(from);
    const gone = scope.keep(new oc.NCollection_List_TopoDS_Shape());
    for (const tool of tools) gone.Append(tool);
    const operation = scope.keep(new oc.BRepAlgoAPI_Cut());
    operation.SetArguments(before);
    operation.SetTools(gone);
    operation.Build();
    if (operation.HasErrors()) throw new Error('the exact kernel cannot make this cut');
    const result = scope.keep(operation.Shape());
    operation.Clear();
    return result;
  }

  private point({ x, y, z }: Vec3) {
    return this.scope.keep(new this.oc.gp_Pnt(x, y, z));
  }
  private block(min: Vec3, max: Vec3): TopoDS_Shape {
    const made = this.scope.keep(new this.oc.BRepPrimAPI_MakeBox(this.point(min), this.point(max)));
    return this.scope.keep(made.Shape());
  }
  private cylinder(from: Vec3, to: Vec3, radius: number): TopoDS_Shape {
    const { oc, scope } = this;
    const height = norm(sub(from, to));
    const way = scope.keep(new oc.gp_Dir(to.x - from.x, to.y - from.y, to.z - from.z));
    const axes = scope.keep(new oc.gp_Ax2(this.point(from), way));
    const made = scope.keep(new oc.BRepPrimAPI_MakeCylinder(axes, radius, height));
    return scope.keep(made.Shape());
  }

  /** A flat face with straight edges; points that coincide are one. */
  private face(points: readonly Vec3[]): TopoDS_Shape | undefined {
    const { oc, scope } = this;
    const ring = points.filter((p, i) => norm(sub(p, points[(i + 1) % points.length]!)) > SAME);
    if (ring.length < 3) return undefined;
    const wire = scope.keep(new oc.BRepBuilderAPI_MakeWire());
    for (const [i, p] of ring.entries()) {
      const edge = scope.keep(
        new oc.BRepBuilderAPI_MakeEdge(this.point(p), this.point(ring[(i + 1) % ring.length]!)),
      );
      wire.Add(scope.keep(edge.Edge()));
    }
    const face = scope.keep(new oc.BRepBuilderAPI_MakeFace(scope.keep(wire.Wire()), true));
    return scope.keep(face.Shape());
  }

  private prism({ axis, from, to, polygon }: Extract<Primitive, { shape: 'prism' }>) {
    if (to - from <= SAME || Math.abs(signedArea(polygon)) < SAME) return undefined;
    const face = this.face(polygon.map(([u, v]) => standing(axis, u, v, from)));
    if (!face) return undefined;
    const way = standing(axis, 0, 0, to - from);
    const drawn = this.scope.keep(new this.oc.gp_Vec(way.x, way.y, way.z));
    return this.scope.keep(this.scope.keep(new this.oc.BRepPrimAPI_MakePrism(face, drawn)).Shape());
  }

  private revolved(outline: readonly Vec3[], at: Vec3, along: Vec3): TopoDS_Shape | undefined {
    const face = this.face(outline);
    if (!face) return undefined;
    const { oc, scope } = this;
    const axis = scope.keep(
      new oc.gp_Ax1(this.point(at), scope.keep(new oc.gp_Dir(along.x, along.y, along.z))),
    );
    return scope.keep(scope.keep(new oc.BRepPrimAPI_MakeRevol(face, axis)).Shape());
  }

  private cone({ from, to, radiusFrom, radiusTo }: Extract<Primitive, { shape: 'cone' }>) {
    const height = norm(sub(from, to));
    if (height <= SAME) return undefined;
    const way = scale(sub(to, from), 1 / height);
    const helper = Math.abs(way.x) < 0.9 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
    const side = cross(way, helper);
    const out = scale(side, 1 / Math.hypot(side.x, side.y, side.z));
    const at = (p: Vec3, r: number): Vec3 => ({
      x: p.x + out.x * r,
      y: p.y + out.y * r,
      z: p.z + out.z * r,
    });
    return this.revolved([from, at(from, radiusFrom), at(to, radiusTo), to], from, way);
  }

  private turned({ profile, centre, reach }: Extract<Primitive, { shape: 'turned' }>) {
    const [first, last] = [profile[0], profile.at(-1)];
    if (!first || !last || last[0] - first[0] <= SAME) return undefined;
    const outline: [number, number][] = [...profile, [last[0], reach], [first[0], reach]];
    return this.revolved(
      outline.map(([x, r]) => ({ x, y: centre[0] + r, z: centre[1] })),
      { x: 0, y: centre[0], z: centre[1] },
      { x: 1, y: 0, z: 0 },
    );
  }

  /** A block of `reach` on the far side of the plane, about the plane's point nearest to the part's origin. */
  private beyond({ normal, offset }: Extract<Primitive, { shape: 'beyond' }>, reach: number) {
    const { oc, scope } = this;
    const helper = Math.abs(normal.x) < 0.9 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
    const side = cross(normal, helper);
    const u = scale(side, 1 / Math.hypot(side.x, side.y, side.z));
    const v = cross(normal, u);
    const at = scale(normal, offset);
    const corner = sub(sub(at, scale(u, reach)), scale(v, reach));
    const dir = (d: Vec3) => scope.keep(new oc.gp_Dir(d.x, d.y, d.z));
    const axes = scope.keep(new oc.gp_Ax2(this.point(corner), dir(normal), dir(u)));
    const made = scope.keep(new oc.BRepPrimAPI_MakeBox(axes, 2 * reach, 2 * reach, reach));
    return scope.keep(made.Shape());
  }
}

/** A point of a polygon drawn along an axis: the two others in cyclic order. */
const standing = (axis: Axis, u: number, v: number, w: number): Vec3 =>
  axis === 'x' ? { x: w, y: u, z: v } : axis === 'y' ? { x: v, y: w, z: u } : { x: u, y: v, z: w };
