import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ShowOptions } from '../results/show.ts';
import type { Loaded } from './load.ts';
import { allResults } from './results.ts';

export interface WriteOptions {
  show: ShowOptions;
  date: string;
  programVersion: string;
  progress(line: string): void;
}

/** Writes every result of a job into a folder; returns the names of the files. */
export async function writeAll(loaded: Loaded, folder: string, options: WriteOptions): Promise<string[]> {
  const { derived } = loaded.deriving;
  const written: string[] = [];
  const put = (name: string, content: string | Uint8Array): void => {
    writeFileSync(join(folder, name), content);
    written.push(name);
  };
  const all = allResults(derived);
  for (const key of ['parts', 'cut', 'setups', 'days', 'check', 'price'] as const)
    put(`${key}.json`, `${JSON.stringify(all[key], null, 2)}\n`);
  return written;
}
