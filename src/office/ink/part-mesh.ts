import type { Vec3 } from '../../geometry/vector.ts';

/** A closed surface of one part in the world, millimetres: welded corners, triangles seen from outside. */
export interface SolidMesh {
  /** x, y, z of each corner. */
  positions: Float32Array;
  /** Three corners a triangle, anticlockwise from outside. */
  indices: Uint32Array;
}

/** How a surface edge is drawn: a crease always, a smooth one only as a rim, a tangent thinly. */
export type EdgeKind = 'crease' | 'smooth' | 'tangent';

export interface MeshEdge {
  a: Vec3;
  b: Vec3;
  /** Groups of the two faces that meet here, and their normals. */
  faces: [number, number];
  normals: [Vec3, Vec3];
  kind: EdgeKind;
}

export type InkMaterial = 'timber' | 'metal' | 'brass' | 'board';

/** Directions of the part's own frame in the world, and what is hatched along them. */
export interface GrainFrame {
  /** Along the grain (or along the bar). */
  grain: Vec3;
  /** Through the thickness of a sheet; absent for solid stock. */
  sheet?: Vec3;
  round: boolean;
}

/** What the ink view draws of one instance. */
export interface PartMesh extends SolidMesh {
  instance: string;
  material: InkMaterial;
  grainFrame: GrainFrame;
  /** Unit normal of each triangle. */
  normals: Vec3[];
  /** Area of each triangle, mm2. */
  areas: Float64Array;
  /** Smooth face each triangle belongs to, numbered from 0 within the part. */
  faces: Uint32Array;
  faceCount: number;
  edges: MeshEdge[];
}

export const corner = (mesh: SolidMesh, index: number): Vec3 => ({
  x: mesh.positions[3 * index]!,
  y: mesh.positions[3 * index + 1]!,
  z: mesh.positions[3 * index + 2]!,
});
