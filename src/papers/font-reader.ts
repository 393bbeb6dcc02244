import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { FONT_FILES, FONT_KEYS, type PaperFonts } from './fonts.ts';
import { unpackWoff } from './unpack-woff.ts';

/** Reads the fonts from the installed packages, once per process. */
export function readPaperFonts(): Promise<PaperFonts> {
  reading ??= readAll();
  return reading;
}

let reading: Promise<PaperFonts> | undefined;

async function readAll(): Promise<PaperFonts> {
  const { resolve } = createRequire(import.meta.url);
  const read = async (file: string): Promise<Uint8Array> =>
    unpackWoff(new Uint8Array(await readFile(resolve(file))));
  const cuts = await Promise.all(
    FONT_KEYS.map(async key => {
      const { latin, extended } = FONT_FILES[key];
      return [key, { latin: await read(latin), extended: await read(extended) }] as const;
    }),
  );
  return Object.fromEntries(cuts) as PaperFonts;
}
