/** One question over all materials: what is this made of, and how heavy is it. */
import { nearestKeys } from './keys.ts';
import { METALS, metal } from './metals.ts';
import { SHEETS, sheetFigures, sheetMaterial } from './sheet-materials.ts';
import type { Band } from './sourced.ts';
import { TIMBERS, timberSpecies } from './timber-species.ts';

export type MaterialKind = 'timber' | 'sheet' | 'metal' | 'glass' | 'plastic';

export interface MaterialDensity {
  /** The key under which the tables hold it. */
  readonly key: string;
  readonly name: string;
  readonly kind: MaterialKind;
  /** kg/m3; timber at 12 % moisture. */
  readonly densityKgM3: Band;
}

/**
 * Density of any timber, sheet material, metal, glass or plastic of the tables.
 * @param thicknessMm for sheets, whose density falls with thickness
 */
export function materialDensity(key: string, thicknessMm?: number): MaterialDensity | undefined {
  const timber = timberSpecies(key);
  if (timber) return { key: timber.key, name: timber.name, kind: 'timber', densityKgM3: timber.densityKgM3 };
  const sheet = sheetMaterial(key);
  if (sheet) {
    const densityKgM3 =
      thicknessMm === undefined ? sheet.densityKgM3 : sheetFigures(sheet, thicknessMm).densityKgM3;
    return { key: sheet.key, name: sheet.name, kind: 'sheet', densityKgM3 };
  }
  const other = metal(key);
  return other && { key: other.key, name: other.name, kind: other.kind, densityKgM3: other.densityKgM3 };
}

/** Keys of any material most like the word, for a hint. */
export function nearestMaterials(word: string, count = 3): string[] {
  return nearestKeys(word, [...TIMBERS.rows, ...SHEETS.rows, ...METALS.rows], count);
}
