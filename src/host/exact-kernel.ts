import type { TopLoc_Location, TopoDS_Shape } from 'replicad-opencascadejs';
import type { Frame } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { ExactKernel, Solid } from '../results/kernel.ts';
import { type Oc, type Scope, Shapes, scoped } from './exact-shapes.ts';
import { writeStep } from './exact-step.ts';

/** How far a chord may lie inside a round face when triangles are asked for, mm. */
const CHORD = 0.05;

/** A solid with true round faces, on the heap of its wasm module. */
export class ExactSolid implements Solid {
  readonly body: TopoDS_Shape;
  private readonly oc: Oc;
  constructor(oc: Oc, body: TopoDS_Shape) {
    this.oc = oc;
    this.body = body;
  }
  volume(): number {
    return volumeOf(this.oc, this.body).volume;
  }
  centre(): Vec3 {
    return volumeOf(this.oc, this.body).centre;
  }
  triangles() {
    const { oc } = this;
    return scoped(scope => {
      scope.keep(new oc.BRepMesh_IncrementalMesh(this.body, CHORD, false, 0.2, false));
      const positions: number[] = [];
      const indices: number[] = [];
      const faces = scope.keep(
        new oc.TopExp_Explorer(this.body, oc.TopAbs_ShapeEnum.TopAbs_FACE, oc.TopAbs_ShapeEnum.TopAbs_SHAPE),
      );
      for (; faces.More(); faces.Next()) {
        const face = scope.keep(oc.TopoDS.Face(scope.keep(faces.Current())));
        const place = scope.keep(new oc.TopLoc_Location());
        const mesh = scope.keep(oc.BRep_Tool.Triangulation(face, place, 0));
        const start = positions.length / 3;
        const move = scope.keep(place.Transformation());
        for (let n = 1; n <= mesh.NbNodes(); n++) {
          const node = scope.keep(mesh.Node(n));
          const moved = scope.keep(node.Transformed(move));
          positions.push(moved.X(), moved.Y(), moved.Z());
        }
        const turned = face.Orientation() === oc.TopAbs_Orientation.TopAbs_REVERSED;
        for (let n = 1; n <= mesh.NbTriangles(); n++) {
          const triangle = scope.keep(mesh.Triangle(n));
          const [a, b, c] = [1, 2, 3].map(k => start + triangle.Value(k) - 1) as [number, number, number];
          indices.push(a, ...(turned ? [c, b] : [b, c]));
        }
      }
      return { positions: Float32Array.from(positions), indices: Uint32Array.from(indices) };
    });
  }
  free(): void {
    this.body.delete();
  }
}

function volumeOf(oc: Oc, body: TopoDS_Shape): { volume: number; centre: Vec3 } {
  return scoped(scope => {
    const found = scope.keep(new oc.GProp_GProps());
    oc.BRepGProp.VolumeProperties(body, found, false, false, false);
    const at = scope.keep(found.CentreOfMass());
    return { volume: found.Mass(), centre: { x: at.X(), y: at.Y(), z: at.Z() } };
  });
}

/** Where a frame puts a solid. */
export function locationOf(oc: Oc, scope: Scope, { origin: o, x, y, z }: Frame): TopLoc_Location {
  const move = scope.keep(new oc.gp_Trsf());
  move.SetValues(x.x, y.x, z.x, o.x, x.y, y.y, z.y, o.y, x.z, y.z, z.z, o.z);
  return scope.keep(new oc.TopLoc_Location(move));
}

/** Errors of the wasm module come as exceptions without words: give them theirs. */
function worded<T>(oc: Oc, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Error) throw error;
    const said = oc.getExceptionMessage(error as WebAssembly.Exception).filter(word => word);
    throw new Error(`the exact kernel: ${said.join(', ')}`);
  }
}

/** Exact kernel over the OpenCascade wasm module, which the caller has loaded. */
export function exactKernel(oc: Oc): ExactKernel {
  const placed = (scope: Scope, solid: Solid, at: Frame): TopoDS_Shape =>
    scope.keep((solid as ExactSolid).body.Moved(locationOf(oc, scope, at), false));
  return {
    name: 'OpenCascade',
    part: (stock, gone) =>
      worded(oc, () =>
        scoped(scope => {
          const shapes = new Shapes(oc, scope);
          const whole = shapes.stock(stock);
          const tools = gone.map(p => shapes.waste(p, stock)).filter(t => t !== undefined);
          const made = tools.length === 0 ? whole : shapes.cut(whole, tools);
          // A handle of its own: the scope's goes with the scope.
          return new ExactSolid(oc, made.Located(scope.keep(new oc.TopLoc_Location()), false));
        }),
      ),
    shared: (a, atA, b, atB) =>
      worded(oc, () =>
        scoped(scope => {
          const common = scope.keep(new oc.BRepAlgoAPI_Common(placed(scope, a, atA), placed(scope, b, atB)));
          if (common.HasErrors()) throw new Error('the exact kernel cannot compare these two');
          const found = scope.keep(common.Shape());
          const { volume } = volumeOf(oc, found);
          common.Clear();
          return Math.max(0, volume);
        }),
      ),
    gap: (a, atA, b, atB, most) =>
      worded(oc, () =>
        scoped(scope => {
          const between = scope.keep(
            new oc.BRepExtrema_DistShapeShape(placed(scope, a, atA), placed(scope, b, atB)),
          );
          return between.InnerSolution() ? 0 : Math.min(most, between.Value());
        }),
      ),
    step: (title, solids) => worded(oc, () => writeStep(oc, title, solids)),
    memory: () => oc.wasmMemory.buffer.byteLength,
  };
}
