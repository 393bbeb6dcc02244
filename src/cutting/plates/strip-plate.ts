/**
 * The most that a plate of strips can be worth, pieces no more often than there are in any one strip, strips
 * as often as wished (two stages; P. C. Gilmore, R. E. Gomory, Operations Research 13 (1965)). Sizes are
 * whole and grown by one kerf.
 */
import type { CutProblem, Lie } from '../problem.ts';
import type { PricedPlate } from './prices.ts';

export interface Standing {
  item: number;
  lie: Lie;
  /** Along the strip and across it. */
  along: number;
  across: number;
  most: number;
}

export class StripPlate implements PricedPlate {
  readonly alongLength: boolean;
  readonly length: number;
  readonly width: number;
  /** Lowest first. */
  readonly pieces: readonly Standing[];
  /** `strip[r * (length + 1) + x]`: most in length x with the first r pieces. */
  readonly strip: Float64Array;
  /** `plate[y]`: most in strips that take y of the width. */
  readonly plate: Float64Array;
  /** Distinct heights of strips, and how many pieces are no higher. */
  readonly heights: readonly { across: number; reach: number }[];

  constructor(problem: CutProblem, alongLength: boolean) {
    const on = problem.stocks[0]!;
    this.alongLength = alongLength;
    this.length = (alongLength ? on.l : on.w) + on.kerf;
    this.width = (alongLength ? on.w : on.l) + on.kerf;
    this.pieces = problem.items
      .flatMap((one, item) =>
        one.lies[0]!.map(lie => ({
          item,
          lie,
          along: (alongLength ? lie.l : lie.w) + on.kerf,
          across: (alongLength ? lie.w : lie.l) + on.kerf,
          most: one.demands.length,
        })),
      )
      .sort((a, b) => a.across - b.across || a.along - b.along);
    this.heights = this.pieces
      .map((piece, k) => ({ across: piece.across, reach: k + 1 }))
      .filter(({ across, reach }) => this.pieces[reach]?.across !== across);
    this.strip = new Float64Array((this.pieces.length + 1) * (this.length + 1));
    this.plate = new Float64Array(this.width + 1);
  }

  most(worth: Float64Array): number {
    const { strip, plate, pieces, length, width } = this;
    const row = length + 1;
    pieces.forEach(({ item, along, most }, r) => {
      const below = r * row;
      const here = below + row;
      for (let x = 0; x <= length; x++) {
        let best = strip[below + x]!;
        for (let k = 1, left = x - along; k <= most && left >= 0; k++, left -= along)
          best = Math.max(best, strip[below + left]! + k * worth[item]!);
        strip[here + x] = best;
      }
    });
    for (let y = 1; y <= width; y++) {
      let best = plate[y - 1]!;
      for (const { across, reach } of this.heights) {
        if (across > y) break;
        best = Math.max(best, plate[y - across]! + strip[reach * row + length]!);
      }
      plate[y] = best;
    }
    return plate[width]!;
  }

  used(worth: Float64Array): Int32Array {
    const { strip, plate, length } = this;
    const used = new Int32Array(worth.length);
    let y = this.width;
    while (y > 0) {
      const chosen = this.heights.find(
        ({ across, reach }) =>
          across <= y &&
          plate[y]! > plate[y - 1]! &&
          plate[y - across]! + strip[reach * (length + 1) + length]! >= plate[y]!,
      );
      if (!chosen) {
        y -= 1;
        continue;
      }
      this.countStrip(chosen.reach, worth, used);
      y -= chosen.across;
    }
    return used;
  }

  private countStrip(reach: number, worth: Float64Array, used: Int32Array): void {
    const { strip, pieces } = this;
    const row = this.length + 1;
    let x = this.length;
    for (let r = reach; r > 0; r--) {
      const { item, along, most } = pieces[r - 1]!;
      const value = strip[r * row + x]!;
      for (let k = 0; k <= most && k * along <= x; k++)
        if (strip[(r - 1) * row + x - k * along]! + k * worth[item]! >= value) {
          used[item]! += k;
          x -= k * along;
          break;
        }
    }
  }
}
