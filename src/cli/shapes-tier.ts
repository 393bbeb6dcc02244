import { worstFirst } from '../checks/index.ts';
import { overruled } from '../job/overruled.ts';
import type { Loaded } from './load.ts';

/** The second tier: every solid made and compared. Over a second it says how far it is. */
export async function addShapes(loaded: Loaded, tell: (line: string) => void): Promise<void> {
  const [
    { loadMeshKernel },
    { prove },
    { confirmOverlaps },
    { overlapChecks },
    { fitChecks },
    { trappedMembers },
    { wayInChecks },
    { SolidCache },
  ] = await Promise.all([
    import('../host/mesh-kernel-node.ts'),
    import('../proof/prove.ts'),
    import('../proof/confirm.ts'),
    import('../proof/overlap-check.ts'),
    import('../proof/fit-check.ts'),
    import('../proof/motions.ts'),
    import('../proof/way-in-check.ts'),
    import('../solids/shapes.ts'),
  ]);
  const { derived } = loaded.deriving;
  const { instances, joints } = derived.piece;
  const started = performance.now();
  let told = started;
  const mesh = await loadMeshKernel();
  const cache = new SolidCache(mesh);
  const found = prove(derived, mesh, {
    cache,
    progress: (done, of) => {
      const now = performance.now();
      if (now - started < 1000 || now - told < 1000) return;
      told = now;
      tell(`shapes: ${done} of ${of} meetings compared`);
    },
  });
  const proved =
    found.overlaps.length === 0
      ? found
      : confirmOverlaps(
          found,
          instances,
          await (await import('../host/exact-kernel-node.ts')).loadExactKernel(),
        );
  const shapes = overruled(
    [
      ...overlapChecks(proved, instances),
      ...fitChecks(proved, instances, joints),
      ...wayInChecks(trappedMembers(derived.piece, mesh, cache)),
    ],
    loaded.document.overruled ?? {},
  );
  derived.checks = worstFirst([...derived.checks, ...shapes]);
}
