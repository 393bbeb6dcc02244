import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { ExactKernel } from '../results/kernel.ts';
import { exactKernel } from './exact-kernel.ts';

let loading: Promise<ExactKernel> | undefined;

/** Loads the exact kernel once in this thread: about 23 MB, so only when it is needed. */
export function loadExactKernel(): Promise<ExactKernel> {
  loading ??= open();
  return loading;
}

async function open(): Promise<ExactKernel> {
  const { default: opencascade } = await import('replicad-opencascadejs');
  const wasmBinary = await readFile(createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm'));
  return exactKernel(await opencascade({ wasmBinary, print: () => undefined }));
}
