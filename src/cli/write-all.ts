import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { exportFiles } from '../papers/exports.ts';
import { readPaperFonts } from '../papers/font-reader.ts';
import { jobPack } from '../papers/pack.ts';
import type { ShowOptions } from '../results/show.ts';
import { type Loaded, onDisk } from './load.ts';
import { allResults } from './results.ts';

export interface WriteOptions {
  show: ShowOptions;
  date: string;
  programVersion: string;
}

/** Writes every result of a job into a folder; returns the names of the files. */
export async function writeAll(loaded: Loaded, folder: string, options: WriteOptions): Promise<string[]> {
  const { derived } = loaded.deriving;
  const written: string[] = [];
  const put = (name: string, content: string | Uint8Array): void => {
    onDisk(join(folder, name), () => writeFileSync(join(folder, name), content));
    written.push(name);
  };
  const all = allResults(derived);
  for (const key of ['parts', 'cut', 'setups', 'days', 'check', 'price'] as const)
    put(`${key}.json`, `${JSON.stringify(all[key], null, 2)}\n`);
  for (const file of exportFiles(derived, options.show)) put(file.name, file.bytes);
  const info = {
    title: derived.title,
    number: String(loaded.document.number ?? ''),
    settingOut: 1,
    date: options.date,
    programVersion: options.programVersion,
    currency: options.show.currency,
    unit: options.show.unit,
  };
  put('pack.pdf', await jobPack(derived, info, await readPaperFonts()));
  return written;
}
