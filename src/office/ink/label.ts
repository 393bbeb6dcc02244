import type { Sheet, Spot } from './camera.ts';
import type { IdMask } from './ink-view.ts';

/** Where the name of the picked part goes, and the point its leader ends on. CSS pixels. */
export interface LabelPlace {
  point: Spot;
  x: number;
  y: number;
  width: number;
  height: number;
}

const CELL = 4;

/** Finds free ground near the part, from the ids drawn on the sheet. Part numbers start at 0. */
export function placeLabel(
  mask: IdMask,
  part: number,
  sheet: Sheet,
  ratio: number,
  width: number,
  height: number,
): LabelPlace | undefined {
  const [columns, rows] = [Math.ceil(sheet.width / CELL), Math.ceil(sheet.height / CELL)];
  const sums = new Int32Array((columns + 1) * (rows + 1));
  const mine: Spot[] = [];
  for (let j = 0; j < rows; j++) {
    let run = 0;
    for (let i = 0; i < columns; i++) {
      const id = idAt(mask, (i + 0.5) * CELL * ratio, (j + 0.5) * CELL * ratio);
      if (id > 0) run++;
      if (id === part + 1) mine.push([i, j]);
      sums[(j + 1) * (columns + 1) + i + 1] = sums[j * (columns + 1) + i + 1]! + run;
    }
  }
  if (mine.length === 0) return undefined;
  const point = middleOf(mine);
  const [w, h] = [Math.ceil((width + 8) / CELL), Math.ceil((height + 6) / CELL)];
  const taken = (i: number, j: number): number =>
    sums[(j + h) * (columns + 1) + i + w]! -
    sums[j * (columns + 1) + i + w]! -
    sums[(j + h) * (columns + 1) + i]! +
    sums[j * (columns + 1) + i]!;
  let [best, least]: [LabelPlace | undefined, number] = [undefined, Number.POSITIVE_INFINITY];
  for (let j = 2; j + h < rows - 30; j++)
    for (let i = 36; i + w < columns - 2; i++) {
      const [x, y] = [(i + w / 2) * CELL, (j + h / 2) * CELL];
      const cost =
        taken(i, j) * 400 + Math.hypot(x - point[0], (y - point[1]) * 1.2) + (y > point[1] ? 60 : 0);
      if (cost < least) {
        least = cost;
        best = { point, x: i * CELL + 4, y: j * CELL + 3, width, height };
      }
    }
  return best;
}

function idAt(mask: IdMask, x: number, y: number): number {
  const column = Math.min(mask.width - 1, Math.floor(x));
  const row = mask.height - 1 - Math.min(mask.height - 1, Math.floor(y));
  const i = (row * mask.width + column) * 4;
  return mask.bytes[i + 2]! + mask.bytes[i + 3]! * 256;
}

/** The drawn cell nearest to the middle of all of them. */
function middleOf(cells: readonly Spot[]): Spot {
  const sum = cells.reduce((s, c): Spot => [s[0] + c[0], s[1] + c[1]], [0, 0]);
  const middle: Spot = [sum[0] / cells.length, sum[1] / cells.length];
  let [best, least] = [cells[0]!, Number.POSITIVE_INFINITY];
  for (const c of cells) {
    const d = Math.hypot(c[0] - middle[0], c[1] - middle[1]);
    if (d < least) [best, least] = [c, d];
  }
  return [(best[0] + 0.5) * CELL, (best[1] + 0.5) * CELL];
}

/** Marks nearer to each other than this would be read as one, CSS pixels. */
const APART = { x: 22, y: 15 };

/** Where each part's mark stands: on the part where it can be seen. The smaller part gives way to the larger. */
export function markSpots(mask: IdMask, sheet: Sheet, ratio: number): Map<number, Spot> {
  const cells = new Map<number, Spot[]>();
  for (let j = 0; j < Math.ceil(sheet.height / CELL); j++)
    for (let i = 0; i < Math.ceil(sheet.width / CELL); i++) {
      const id = idAt(mask, (i + 0.5) * CELL * ratio, (j + 0.5) * CELL * ratio);
      if (id === 0) continue;
      const known = cells.get(id - 1);
      if (known) known.push([i, j]);
      else cells.set(id - 1, [[i, j]]);
    }
  const spots = new Map<number, Spot>();
  for (const [part, drawn] of [...cells].sort((a, b) => b[1].length - a[1].length)) {
    const spot = middleOf(drawn);
    const crowded = [...spots.values()].some(
      s => Math.abs(s[0] - spot[0]) < APART.x && Math.abs(s[1] - spot[1]) < APART.y,
    );
    if (!crowded) spots.set(part, spot);
  }
  return spots;
}
