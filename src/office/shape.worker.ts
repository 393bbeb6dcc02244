import './no-eval.ts';
import Module from 'manifold-3d';
import wasmAddress from 'manifold-3d/manifold.wasm?url';
import { meshKernel } from '../host/mesh-kernel.ts';
import type { FromWorker, ToWorker } from '../host/talk.ts';
import { work } from '../host/work.ts';
import type { SolidKernel } from '../results/kernel.ts';
import { shapeTasks } from './shape-tasks.ts';

/** The thread in which solids are made and compared. */
let loading: Promise<SolidKernel> | undefined;
const load = (): Promise<SolidKernel> => {
  loading ??= Module({ locateFile: () => wasmAddress }).then(wasm => {
    wasm.setup();
    return meshKernel(wasm);
  });
  return loading;
};
const tasks = shapeTasks(load);
const tell = (message: FromWorker): void => postMessage(message);
addEventListener('message', (event: MessageEvent<ToWorker>) => void work(tasks, event.data, tell));
