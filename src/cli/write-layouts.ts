import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { layoutSvgs } from '../papers/exports.ts';
import { readPaperFonts } from '../papers/font-reader.ts';
import { type LabelForm, labelPack } from '../papers/label-pages.ts';
import { layoutsCsv, sawCutsCsv } from '../papers/layout-csv.ts';
import { type Loaded, onDisk } from './load.ts';
import type { WriteOptions } from './write-all.ts';

/** Layouts as tables and drawings in a folder; returns the paths written. */
export function writeLayouts(
  loaded: Loaded,
  folder: string,
  what: { csv: boolean; svg: boolean },
  options: WriteOptions,
): string[] {
  const { derived } = loaded.deriving;
  const files = [
    ...(what.csv
      ? [
          { name: 'layouts.csv', bytes: layoutsCsv(derived) },
          { name: 'saw-cuts.csv', bytes: sawCutsCsv(derived) },
        ]
      : []),
    ...(what.svg ? layoutSvgs(derived, options.show) : []),
  ];
  onDisk(folder, () => mkdirSync(folder, { recursive: true }));
  return files.map(({ name, bytes }) => {
    const path = join(folder, name);
    onDisk(path, () => writeFileSync(path, bytes));
    return path;
  });
}

/** Labels of all parts as a PDF at a path; returns how many. */
export async function writeLabels(
  loaded: Loaded,
  path: string,
  form: LabelForm,
  options: WriteOptions,
): Promise<number> {
  const { derived } = loaded.deriving;
  const info = {
    title: derived.title,
    number: String(loaded.document.number ?? ''),
    settingOut: 1,
    date: options.date,
    programVersion: options.programVersion,
    currency: options.show.currency,
    unit: options.show.unit,
  };
  const bytes = await labelPack(derived, info, await readPaperFonts(), form);
  onDisk(path, () => writeFileSync(path, bytes));
  return derived.piece.groups
    .filter(group => group.kind !== 'bought-in')
    .reduce((sum, group) => sum + group.instances.length, 0);
}
