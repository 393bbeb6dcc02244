import { cutShapes, hollowOf } from '../results/cut-shapes.ts';
import type { PlacedSolid, Solid, SolidKernel, Triangles } from '../results/kernel.ts';
import type { Instance } from '../results/piece.ts';

/** What an instance's solid is made from: equal keys mean equal solids, wherever the part stands. */
export const solidKey = (i: Instance): string =>
  JSON.stringify([
    i.size,
    i.round,
    hollowOf(i) ?? i.wall ?? null,
    i.cuts.map(({ id: _id, by: _by, stage: _stage, mate: _mate, ...shape }) => shape),
  ]);

/** A part with a shape: bought-in parts and parts of no size have none. */
export const hasShape = (i: Instance): boolean =>
  i.kind !== 'bought-in' && i.size.length > 0 && i.size.width > 0 && i.size.thickness > 0;

/**
 * Solids by content, so that an unchanged part is never made again (design, section 4.1). `keep` frees what
 * the last piece no longer needs.
 */
export class SolidCache {
  private readonly solids = new Map<string, Solid>();
  private readonly surfaces = new Map<string, Triangles>();
  private readonly kernel: SolidKernel;

  constructor(kernel: SolidKernel) {
    this.kernel = kernel;
  }

  get size(): number {
    return this.solids.size;
  }

  of(instance: Instance): Solid {
    const key = solidKey(instance);
    const kept = this.solids.get(key);
    if (kept) return kept;
    const made = this.kernel.part(
      instance,
      instance.cuts.flatMap(c => cutShapes(c, instance.size)),
    );
    this.solids.set(key, made);
    return made;
  }

  /** The triangles of an instance's solid in its own frame; taken from the kernel once. */
  surface(instance: Instance): Triangles {
    const key = solidKey(instance);
    const kept = this.surfaces.get(key);
    if (kept) return kept;
    const made = this.of(instance).triangles();
    this.surfaces.set(key, made);
    return made;
  }

  keep(instances: readonly Instance[]): void {
    const wanted = new Set(instances.filter(hasShape).map(solidKey));
    for (const [key, solid] of this.solids) {
      if (wanted.has(key)) continue;
      solid.free();
      this.solids.delete(key);
      this.surfaces.delete(key);
    }
  }
}

/** The solids of a piece, each once, with the places of its copies. Loose parts have none and stay out. */
export function placedSolids(instances: readonly Instance[], cache: SolidCache): PlacedSolid[] {
  const placed = new Map<string, PlacedSolid>();
  for (const i of instances) {
    if (i.loose || !hasShape(i)) continue;
    const key = solidKey(i);
    const one = placed.get(key) ?? { name: i.name, solid: cache.of(i), at: [] };
    one.at.push({ name: i.id, frame: i.frame });
    placed.set(key, one);
  }
  return [...placed.values()];
}
