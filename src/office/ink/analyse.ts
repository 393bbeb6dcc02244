import { cross, dot, norm, scale, sub, unit, type Vec3 } from '../../geometry/vector.ts';
import type { Instance } from '../../results/piece.ts';
import { grainFrame, inkMaterial } from './material.ts';
import { corner, type EdgeKind, type MeshEdge, type PartMesh, type SolidMesh } from './part-mesh.ts';

/** Under this the two triangles are one plane and no edge is drawn; under the second they are one smooth face. */
const ONE_PLANE = Math.cos((0.4 * Math.PI) / 180);
const SMOOTH = Math.cos((22 * Math.PI) / 180);
/** Triangles under this area (mm2) carry no normal that can be trusted. */
const SLIVER = 1e-3;

interface RawEdge {
  a: number;
  b: number;
  triangles: number[];
}

/** Disjoint sets over 0..n-1. */
class Sets {
  private readonly parent: number[];
  constructor(n: number) {
    this.parent = Array.from({ length: n }, (_, i) => i);
  }
  find(i: number): number {
    let at = i;
    while (this.parent[at] !== at) {
      this.parent[at] = this.parent[this.parent[at]!]!;
      at = this.parent[at]!;
    }
    return at;
  }
  join(i: number, j: number): void {
    this.parent[this.find(i)] = this.find(j);
  }
}

function rawEdges(mesh: SolidMesh): RawEdge[] {
  const found = new Map<number, RawEdge>();
  for (let t = 0; t < mesh.indices.length / 3; t++)
    for (let k = 0; k < 3; k++) {
      const p = mesh.indices[3 * t + k]!;
      const q = mesh.indices[3 * t + ((k + 1) % 3)]!;
      const [a, b] = p < q ? [p, q] : [q, p];
      const key = a * 2 ** 26 + b;
      const edge = found.get(key);
      if (edge) edge.triangles.push(t);
      else found.set(key, { a, b, triangles: [t] });
    }
  return [...found.values()];
}

/** Finds faces and edges of a surface by the angle between its triangles. */
export function analyse(instance: Instance, mesh: SolidMesh): PartMesh {
  const n = mesh.indices.length / 3;
  const normals: Vec3[] = [];
  const areas = new Float64Array(n);
  for (let t = 0; t < n; t++) {
    const [a, b, c] = [0, 1, 2].map(k => corner(mesh, mesh.indices[3 * t + k]!)) as [Vec3, Vec3, Vec3];
    const q = cross(sub(b, a), sub(c, a));
    areas[t] = norm(q) / 2;
    normals.push(areas[t]! > 0 ? unit(q) : { x: 0, y: 0, z: 1 });
  }
  const raw = rawEdges(mesh);
  const smooth = new Sets(n);
  const flat = new Sets(n);
  const angle = (e: RawEdge): number => {
    const [s, t] = e.triangles as [number, number];
    return areas[s]! < SLIVER || areas[t]! < SLIVER ? 1 : dot(normals[s]!, normals[t]!);
  };
  for (const e of raw) {
    if (e.triangles.length !== 2) continue;
    const d = angle(e);
    const [s, t] = e.triangles as [number, number];
    if (d > SMOOTH) smooth.join(s, t);
    if (d >= ONE_PLANE) flat.join(s, t);
  }
  const faces = new Uint32Array(n);
  const numbers = new Map<number, number>();
  for (let t = 0; t < n; t++) {
    const root = smooth.find(t);
    if (!numbers.has(root)) numbers.set(root, numbers.size);
    faces[t] = numbers.get(root)!;
  }
  const kindOf = tangents(n, areas, smooth, flat);
  const edges: MeshEdge[] = [];
  for (const e of raw) {
    const [s, t] = [e.triangles[0]!, e.triangles[1] ?? e.triangles[0]!];
    const d = e.triangles.length === 2 ? angle(e) : -1;
    if (d >= ONE_PLANE) continue;
    edges.push({
      a: corner(mesh, e.a),
      b: corner(mesh, e.b),
      faces: [faces[s]!, faces[t]!],
      normals: [normals[s]!, normals[t]!],
      kind: d > SMOOTH ? kindOf(s, t) : 'crease',
    });
  }
  return {
    ...mesh,
    instance: instance.id,
    material: inkMaterial(instance),
    grainFrame: grainFrame(instance),
    normals,
    areas,
    faces,
    faceCount: numbers.size,
    edges: joined(edges),
  };
}

/** A smooth edge beside the widest flat of its face is the tangent line of a round-over: drawn, but thinly. */
function tangents(
  n: number,
  areas: Float64Array,
  smooth: Sets,
  flat: Sets,
): (s: number, t: number) => EdgeKind {
  const area = new Map<number, number>();
  const widest = new Map<number, number>();
  for (let t = 0; t < n; t++) {
    const f = flat.find(t);
    area.set(f, (area.get(f) ?? 0) + areas[t]!);
  }
  for (let t = 0; t < n; t++) {
    const f = smooth.find(t);
    widest.set(f, Math.max(widest.get(f) ?? 0, area.get(flat.find(t))!));
  }
  return (s, t) => {
    const [p, q] = [area.get(flat.find(s))!, area.get(flat.find(t))!];
    const most = Math.max(p, q);
    return most > 6 * Math.min(p, q) && most > 0.99 * widest.get(smooth.find(s))! ? 'tangent' : 'smooth';
  };
}

const point = (p: Vec3): string => `${p.x.toFixed(3)} ${p.y.toFixed(3)} ${p.z.toFixed(3)}`;
const rounded = (p: Vec3): string => `${p.x.toFixed(2)} ${p.y.toFixed(2)} ${p.z.toFixed(2)}`;

/** Joins pieces of one line between the same two faces, so that a long edge is one stroke. */
function joined(edges: MeshEdge[]): MeshEdge[] {
  const lines = new Map<string, MeshEdge[]>();
  for (const e of edges) {
    const key = `${e.faces.join()}|${e.kind}|${e.normals.map(rounded).join()}|${rounded(direction(e))}`;
    const list = lines.get(key);
    if (list) list.push(e);
    else lines.set(key, [e]);
  }
  return [...lines.values()].flatMap(chain);
}

/** Direction of an edge, the same whichever end comes first. */
function direction(e: MeshEdge): Vec3 {
  const d = unit(sub(e.b, e.a));
  const lead = [d.x, d.y, d.z].find(v => Math.abs(v) > 1e-6) ?? 1;
  return lead < 0 ? scale(d, -1) : d;
}

function chain(edges: MeshEdge[]): MeshEdge[] {
  if (edges.length === 1) return edges;
  const along = direction(edges[0]!);
  const sorted = edges
    .map(e => (dot(e.a, along) <= dot(e.b, along) ? e : { ...e, a: e.b, b: e.a }))
    .sort((p, q) => dot(p.a, along) - dot(q.a, along));
  const open = new Map<string, MeshEdge>();
  const out: MeshEdge[] = [];
  for (const e of sorted) {
    const before = open.get(point(e.a));
    if (before) {
      open.delete(point(e.a));
      before.b = e.b;
      open.set(point(e.b), before);
    } else {
      const start = { ...e };
      out.push(start);
      open.set(point(e.b), start);
    }
  }
  return out;
}
