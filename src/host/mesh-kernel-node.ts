import Module from 'manifold-3d';
import type { SolidKernel } from '../results/kernel.ts';
import { meshKernel } from './mesh-kernel.ts';

let loading: Promise<SolidKernel> | undefined;

/** Loads the mesh kernel once in this process. */
export function loadMeshKernel(): Promise<SolidKernel> {
  loading ??= Module().then(wasm => {
    wasm.setup();
    return meshKernel(wasm);
  });
  return loading;
}
