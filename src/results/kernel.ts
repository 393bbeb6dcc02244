import type { Frame } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Primitive } from './cut-shapes.ts';
import type { Size } from './cuts.ts';
import type { OpenSection } from './piece.ts';

/** Triangles of a closed surface, mm: three coordinates a vertex, three indices a triangle, outward. */
export interface Triangles {
  positions: Float32Array;
  indices: Uint32Array;
}

/** What a part is cut from, in its own frame. */
export interface StockShape {
  size: Size;
  round: boolean;
  /** Wall of a tube or of an open section, mm. */
  wall?: number;
  section?: OpenSection;
  /** Mirror image of its definition: an angle's second leg lies on the face edge. */
  mirrored?: boolean;
}

/** A solid held by a kernel; `free` it when done (wasm memory is not collected). */
export interface Solid {
  /** mm3 */
  volume(): number;
  /** Centre of gravity in the solid's own frame, mm. */
  centre(): Vec3;
  triangles(): Triangles;
  free(): void;
}

/** A solid-modelling kernel, injected by the caller (design, section 3): pure code never loads one. */
export interface SolidKernel {
  name: string;
  /** The stock less what is taken away; throws when a size is not above 0. */
  part(stock: StockShape, gone: readonly Primitive[]): Solid;
  /** Volume, mm3, that two placed solids share. */
  shared(a: Solid, atA: Frame, b: Solid, atB: Frame): number;
  /** Least distance, mm, between two placed solids: 0 when they touch or share room, `most` when further apart. */
  gap(a: Solid, atA: Frame, b: Solid, atB: Frame, most: number): number;
}

/** A solid that stands at some places of a piece under one name, for an exchange file. */
export interface PlacedSolid {
  name: string;
  solid: Solid;
  at: { name: string; frame: Frame }[];
}

/** The kernel of the exact tier: true round faces, and STEP (ISO 10303-21) of a whole piece. */
export interface ExactKernel extends SolidKernel {
  /** Every solid once, standing at its places by reference. */
  step(title: string, solids: readonly PlacedSolid[]): Uint8Array;
  /** Memory that the kernel holds, bytes: it grows and is given back only by ending its thread. */
  memory(): number;
}
