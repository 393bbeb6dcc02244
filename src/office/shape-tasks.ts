import { fitChecks } from '../proof/fit-check.ts';
import { trappedMembers } from '../proof/motions.ts';
import { overlapChecks } from '../proof/overlap-check.ts';
import { prove } from '../proof/prove.ts';
import { wayInChecks } from '../proof/way-in-check.ts';
import type { Check } from '../results/checks.ts';
import type { SolidKernel, Triangles } from '../results/kernel.ts';
import type { Piece } from '../results/piece.ts';
import { hasShape, SolidCache, solidKey } from '../solids/shapes.ts';

export interface ShapeInput {
  piece: Piece;
  /** Keys of the surfaces that the asker has already. */
  known: readonly string[];
}

export interface Shapes {
  /** Surfaces in part frames, by `solidKey`; only those that were not known. */
  surfaces: Map<string, Triangles>;
  /** What the solids say of each other. */
  checks: Check[];
}

/** Tasks of the thread that makes solids; the kernel is loaded when first asked. */
export function shapeTasks(load: () => Promise<SolidKernel>) {
  let cache: SolidCache | undefined;
  return {
    shapes: async ({ piece, known }: ShapeInput): Promise<Shapes> => {
      const kernel = await load();
      cache ??= new SolidCache(kernel);
      const have = new Set(known);
      const surfaces = new Map<string, Triangles>();
      for (const instance of piece.instances) {
        if (!hasShape(instance)) continue;
        const key = solidKey(instance);
        if (!have.has(key) && !surfaces.has(key)) surfaces.set(key, cache.surface(instance));
      }
      const proved = prove({ piece }, kernel, { cache });
      const { instances, joints } = piece;
      return {
        surfaces,
        checks: [...overlapChecks(proved, instances), ...fitChecks(proved, instances, joints)],
      };
    },
    /** Takes the piece apart by straight motions: slower than the shapes, so asked for after them. */
    ways: async ({ piece }: { piece: Piece }): Promise<Check[]> => {
      const kernel = await load();
      cache ??= new SolidCache(kernel);
      const checks = wayInChecks(trappedMembers(piece, kernel, cache));
      cache.keep(piece.instances);
      return checks;
    },
  };
}

export type ShapeTasks = ReturnType<typeof shapeTasks>;
