import type { ExactKernel } from '../results/kernel.ts';
import type { Instance } from '../results/piece.ts';
import { placedSolids, SolidCache } from '../solids/shapes.ts';

export interface StepInput {
  title: string;
  instances: Instance[];
}

/** Work of the exact kernel, which is loaded at the first. Every answer says how much memory the kernel holds, bytes. */
export const exactTasks = (load: () => Promise<ExactKernel>) => ({
  step: async ({ title, instances }: StepInput): Promise<{ bytes: Uint8Array; memory: number }> => {
    const kernel = await load();
    const cache = new SolidCache(kernel);
    const bytes = kernel.step(title, placedSolids(instances, cache));
    cache.keep([]);
    return { bytes, memory: kernel.memory() };
  },
});

export type ExactTasks = ReturnType<typeof exactTasks>;
