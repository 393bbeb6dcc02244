/** The sums of piece sizes along one side of a plate: the only places where a cut can matter. */

export type Rounding = 'smaller' | 'larger';

/** Sizes that matter along one side of the plate, in units, kerf included; the last is the whole side. */
export interface Side {
  points: number[];
  /** below[i * n + a]: index of the largest point within point i less point a. */
  below: Int32Array;
  unit: number;
  /** No piece is counted smaller than it is. */
  exact: boolean;
  /** The unit is larger than some piece, which would be counted as nothing. */
  coarse: boolean;
  /** Size of a piece as counted on this side. */
  counted: (size: number) => number;
}

/** @param mostPoints beyond so many sums, pieces are counted in coarser units */
export function side(
  pieces: readonly { size: number; most: number }[],
  whole: number,
  mostPoints: number,
  rounding: Rounding,
): Side {
  const round = rounding === 'smaller' ? Math.floor : Math.ceil;
  const fitting = pieces.filter(piece => piece.size <= whole);
  let unit = fitting.reduce((sum, piece) => divisor(sum, piece.size), 0) || 1;
  for (;;) {
    const exact = fitting.every(piece => piece.size % unit === 0);
    // Exact sums lose nothing when the plate is rounded down; rounded ones need it rounded up.
    const length = exact || rounding === 'larger' ? Math.floor(whole / unit) : Math.ceil(whole / unit);
    const counted = fitting.map(({ size, most }) => ({ size: round(size / unit), most }));
    const points = length <= 400_000 ? pointsOf(counted, length, mostPoints) : undefined;
    if (points && points.length <= mostPoints)
      return {
        points,
        below: belows(points),
        unit,
        exact,
        coarse: counted.some(piece => piece.size === 0),
        counted: size => round(size / unit),
      };
    unit = points ? Math.ceil(unit * 1.5) : Math.ceil(whole / 400_000) + unit;
  }
}

/**
 * Sums of pieces no more often than wanted, all of them; or, where those are fewer, the reduced ones, whose
 * argument needs sums of pieces as often as wished.
 */
function pointsOf(
  pieces: readonly { size: number; most: number }[],
  length: number,
  mostPoints: number,
): number[] {
  const all = sums(pieces, length).filter(sum => sum > 0 && sum < length);
  const endless = pieces.map(({ size }) => ({ size, most: Infinity }));
  const few = reduced(sums(endless, length), length);
  return all.length < Math.min(few.length, mostPoints) ? [...all, length] : few;
}

function sums(pieces: readonly { size: number; most: number }[], length: number): number[] {
  const reach = new Uint8Array(length + 1);
  reach[0] = 1;
  for (const { size: step, most } of pieces) {
    if (step === 0) {
      reach.fill(1);
      break;
    }
    for (let k = Math.min(most, Math.floor(length / step)); k > 0; k--) {
      let changed = false;
      for (let c = length; c >= step; c--)
        if (reach[c - step] === 1 && reach[c] === 0) {
          reach[c] = 1;
          changed = true;
        }
      if (!changed) break;
    }
  }
  const found: number[] = [];
  for (let c = 0; c <= length; c++) if (reach[c] === 1) found.push(c);
  return found;
}

/** Of the sums, those that are the largest within what another sum leaves of the length; and the length. */
function reduced(all: readonly number[], length: number): number[] {
  const kept = new Set<number>([length]);
  let at = all.length - 1;
  for (const sum of all) {
    while (at > 0 && all[at]! > length - sum) at -= 1;
    kept.add(all[at]!);
  }
  return [...kept].filter(point => point > 0).sort((a, b) => a - b);
}

function belows(points: readonly number[]): Int32Array {
  const n = points.length;
  const below = new Int32Array(n * n).fill(-1);
  for (let i = 0; i < n; i++) {
    let b = i;
    for (let a = 0; a < i; a++) {
      while (b >= 0 && points[b]! > points[i]! - points[a]!) b -= 1;
      below[i * n + a] = b;
    }
  }
  return below;
}

function divisor(a: number, b: number): number {
  let [x, y] = [a, b];
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
