import { create } from 'qrcode/lib/core/qrcode.js';
import { type Command, type Item, path, rect } from './list.ts';

/** Quiet ground round a code, in modules (ISO/IEC 18004 asks for four). */
const QUIET = 4;

/** Dark modules of a code by row, level M: a tenth and a half of it may be lost to dust. */
export function codeModules(text: string): boolean[][] {
  const { size, data } = create(text, { errorCorrectionLevel: 'M' }).modules;
  return Array.from({ length: size }, (_, row) =>
    Array.from({ length: size }, (_, column) => data[row * size + column] === 1),
  );
}

/** A code to scan (ISO/IEC 18004) in a square of `side` at (x, y), its quiet ground within. */
export function scanCode(text: string, x: number, y: number, side: number): Item[] {
  const rows = codeModules(text);
  const step = side / (rows.length + 2 * QUIET);
  const at = (n: number): number => (n + QUIET) * step;
  // Runs of a row are one shape, so that no seam shows between modules.
  const d: Command[] = rows.flatMap((row, r) =>
    row.flatMap((dark, c): Command[] => {
      if (!dark || row[c - 1]) return [];
      let end = c;
      while (row[end]) end++;
      const [x0, x1, y0, y1] = [x + at(c), x + at(end), y + at(r), y + at(r + 1)];
      return [['M', x0, y0], ['L', x1, y0], ['L', x1, y1], ['L', x0, y1], ['Z']];
    }),
  );
  return [rect(x, y, side, side, { wash: 'sheet' }), path(d, { wash: 'ink' })];
}
