import type { Frame } from '../geometry/frame.ts';
import type { Primitive } from './cut-shapes.ts';
import type { Size } from './cuts.ts';

/** Triangles of a closed surface, mm: three coordinates a vertex, three indices a triangle, outward. */
export interface Triangles {
  positions: Float32Array;
  indices: Uint32Array;
}

/** What a part is cut from, in its own frame. */
export interface StockShape {
  size: Size;
  round: boolean;
  /** Wall of a tube, mm. */
  wall?: number;
}

/** A solid held by a kernel; `free` it when done (wasm memory is not collected). */
export interface Solid {
  /** mm3 */
  volume(): number;
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
}
