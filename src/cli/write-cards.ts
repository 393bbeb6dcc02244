import { writeFileSync } from 'node:fs';
import { cardPack } from '../papers/card-pack.ts';
import { readPaperFonts } from '../papers/font-reader.ts';
import { type Loaded, onDisk } from './load.ts';
import type { WriteOptions } from './write-all.ts';

/** The set-up cards of a job as a PDF at a path; returns how many cards it holds. */
export async function writeCards(loaded: Loaded, path: string, options: WriteOptions): Promise<number> {
  const { derived } = loaded.deriving;
  const bytes = await cardPack(
    derived,
    {
      title: derived.title,
      number: String(loaded.document.number ?? ''),
      settingOut: 1,
      date: options.date,
      programVersion: options.programVersion,
      currency: options.show.currency,
      unit: options.show.unit,
    },
    await readPaperFonts(),
  );
  onDisk(path, () => writeFileSync(path, bytes));
  return derived.setups.setups.length;
}
