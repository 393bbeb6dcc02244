/** What the ways of the tools leave of a blank, cell by cell, and what falls off with the waste. */
import { AXES, type Axis } from '../geometry/vector.ts';
import type { Size } from '../results/cuts.ts';
import type { Way } from './simulator.ts';
import { extent } from './simulator-card.ts';

/** Cells of a grid drawn through all faces of the ways, and which of them are still one piece with the part. */
export interface Cells {
  planes: Record<Axis, number[]>;
  /** Removed by a tool, or fallen off with the waste. */
  gone: Uint8Array;
  fallen: Uint8Array;
}

export const cellIndex = (planes: Cells['planes'], i: number, j: number, k: number): number =>
  (i * (planes.y.length - 1) + j) * (planes.z.length - 1) + k;

export const middle = (planes: readonly number[], i: number): number => (planes[i]! + planes[i + 1]!) / 2;

/**
 * What is left of the blank: cells in a way are gone, and so is whatever no longer hangs on the largest piece.
 * @param also further planes (of the designed solid), to which planes within `tolerance` are drawn
 */
export function whatIsLeft(
  blank: Size,
  ways: readonly Way[],
  also: Record<Axis, readonly number[]>,
  tolerance: number,
): Cells {
  const snap = Object.fromEntries(
    AXES.map(axis => {
      const fixed = [0, extent(blank, axis), ...also[axis]];
      return [
        axis,
        (at: number): number => {
          const nearest = fixed.reduce((best, p) => (Math.abs(p - at) < Math.abs(best - at) ? p : best));
          return Math.abs(nearest - at) <= tolerance
            ? nearest
            : Math.min(Math.max(at, 0), extent(blank, axis));
        },
      ];
    }),
  ) as Record<Axis, (at: number) => number>;
  const boxes = ways.map(({ box }) => ({
    min: { x: snap.x(box.min.x), y: snap.y(box.min.y), z: snap.z(box.min.z) },
    max: { x: snap.x(box.max.x), y: snap.y(box.max.y), z: snap.z(box.max.z) },
  }));
  const planes = Object.fromEntries(
    AXES.map(axis => [
      axis,
      unique([
        0,
        extent(blank, axis),
        ...also[axis],
        ...boxes.flatMap(b => [b.min[axis], b.max[axis]]),
      ]).filter(p => p >= 0 && p <= extent(blank, axis)),
    ]),
  ) as Record<Axis, number[]>;
  const [nx, ny, nz] = AXES.map(axis => planes[axis].length - 1) as [number, number, number];
  const gone = new Uint8Array(nx * ny * nz);
  for (let i = 0; i < nx; i++)
    for (let j = 0; j < ny; j++)
      for (let k = 0; k < nz; k++) {
        const p = { x: middle(planes.x, i), y: middle(planes.y, j), z: middle(planes.z, k) };
        if (boxes.some(b => AXES.every(a => p[a] > b.min[a] && p[a] < b.max[a])))
          gone[cellIndex(planes, i, j, k)] = 1;
      }
  const fallen = dropLoose(planes, gone);
  return { planes, gone, fallen };
}

const unique = (list: number[]): number[] =>
  [...list].sort((a, b) => a - b).filter((p, i, all) => i === 0 || p - all[i - 1]! > 1e-6);

/** Pieces joined face to face; all but the largest have fallen. */
function dropLoose(planes: Cells['planes'], gone: Uint8Array): Uint8Array {
  const [nx, ny, nz] = AXES.map(axis => planes[axis].length - 1) as [number, number, number];
  const piece = new Int32Array(gone.length).fill(-1);
  const volumes: number[] = [];
  const wide = (axis: Axis, i: number): number => planes[axis][i + 1]! - planes[axis][i]!;
  for (let start = 0; start < gone.length; start++) {
    if (gone[start] === 1 || piece[start] !== -1) continue;
    const stack = [start];
    piece[start] = volumes.length;
    let volume = 0;
    while (stack.length > 0) {
      const at = stack.pop()!;
      const k = at % nz;
      const j = Math.floor(at / nz) % ny;
      const i = Math.floor(at / (nz * ny));
      volume += wide('x', i) * wide('y', j) * wide('z', k);
      for (const [di, dj, dk] of NEIGHBOURS) {
        const [a, b, c] = [i + di, j + dj, k + dk];
        if (a < 0 || b < 0 || c < 0 || a >= nx || b >= ny || c >= nz) continue;
        const next = cellIndex(planes, a, b, c);
        if (gone[next] === 1 || piece[next] !== -1) continue;
        piece[next] = volumes.length;
        stack.push(next);
      }
    }
    volumes.push(volume);
  }
  const largest = volumes.indexOf(Math.max(...volumes));
  const fallen = new Uint8Array(gone.length);
  for (let c = 0; c < gone.length; c++)
    if (gone[c] === 0 && piece[c] !== largest) {
      fallen[c] = 1;
      gone[c] = 1;
    }
  return fallen;
}

const NEIGHBOURS: readonly [number, number, number][] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];
