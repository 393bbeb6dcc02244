import { createDesk } from '../host/desk.ts';
import type { WorkerPort } from '../host/talk.ts';
import type { Triangles } from '../results/kernel.ts';
import type { Piece } from '../results/piece.ts';
import { solidKey } from '../solids/shapes.ts';
import { browserPort } from './browser-port.ts';
import { latestOnly } from './latest.ts';
import type { Shaper } from './ports.ts';
import type { ShapeInput, ShapeTasks } from './shape-tasks.ts';

const spawnWorker = (): WorkerPort =>
  browserPort(new Worker(new URL('./shape.worker.ts', import.meta.url), { type: 'module' }));

/** Makes solids in a worker, the newest piece only; surfaces that did not change are kept. */
export function workerShaper(spawn: () => WorkerPort = spawnWorker): Shaper {
  const desk = createDesk<ShapeTasks>(spawn);
  // Motions take longer than the next change may wait for its shapes: a thread of their own.
  const slow = createDesk<ShapeTasks>(spawn);
  const ways = latestOnly((piece: Piece) => slow.run('ways', { piece }));
  const run = latestOnly((input: ShapeInput) => desk.run('shapes', input));
  let kept: ReadonlyMap<string, Triangles> = new Map();
  return {
    shapes: async (piece: Piece) => {
      const found = await run({ piece, known: [...kept.keys()] });
      if (!found) return undefined;
      const surfaces = new Map<string, Triangles>();
      for (const instance of piece.instances) {
        const key = solidKey(instance);
        const surface = found.surfaces.get(key) ?? kept.get(key);
        if (surface) surfaces.set(key, surface);
      }
      kept = surfaces;
      return { surfaces, checks: found.checks };
    },
    ways,
    close: () => {
      desk.close();
      slow.close();
    },
  };
}
