/** Prices on pieces that a plate with no limits would use too often: with them its worth is a bound. */

/** The most worthy plate when pieces may be used as often as wished. */
export interface PricedPlate {
  most(worth: Float64Array): number;
  /** Pieces of each item on the plate last asked for, under the same worths. */
  used(worth: Float64Array): Int32Array;
}

/** Steps without a clearly lower bound before steps are halved. */
const PATIENCE = 8;
const CLEAR = 1e-4;
/** Length of a step at first, as a share of the bound. */
const STEP_OF_BOUND = 0.05;

/** Worths less prices, moved so that the bound falls (subgradient steps, each direction averaged with the last). */
export class Prices {
  best: Float64Array;
  bound = Infinity;
  settled = false;
  private readonly plate: PricedPlate;
  private readonly worth: Float64Array;
  private readonly caps: Int32Array;
  now: Float64Array;
  /** Mean of the directions so far, the latest weighing most. */
  private readonly way: Float64Array;
  private least = Infinity;
  private share = 1;
  private idle = 0;

  constructor(plate: PricedPlate, worth: Float64Array, caps: Int32Array) {
    this.plate = plate;
    this.worth = worth;
    this.caps = caps;
    this.best = worth.slice();
    this.now = worth.slice();
    this.way = new Float64Array(worth.length);
  }

  move(steps: number, value: number, stop?: () => boolean): void {
    const { worth, caps, plate, now } = this;
    for (let step = 0; step < steps && value < this.bound; step++) {
      if (step > 0 && stop?.()) return;
      let least = plate.most(now);
      for (let i = 0; i < caps.length; i++) least += caps[i]! * (worth[i]! - now[i]!);
      this.idle = least < this.least * (1 - CLEAR) ? 0 : this.idle + 1;
      if (least < this.least) {
        this.least = least;
        this.best = now.slice();
        this.bound = Math.floor(least + 1e-6);
      }
      if (this.idle >= PATIENCE) {
        this.idle = 0;
        this.share /= 2;
        if (this.share < 1e-3) {
          this.share = 0.1;
          this.settled = true;
          return;
        }
      }
      if (!this.step(Math.max(1, STEP_OF_BOUND * least))) {
        this.settled = true;
        return;
      }
    }
  }

  /** One step along what the table's plates use too often or too seldom; false when that is nothing. */
  private step(gap: number): boolean {
    const { plate, worth, caps, now, way } = this;
    const used = plate.used(now);
    let norm = 0;
    for (let i = 0; i < caps.length; i++) {
      way[i] = 0.5 * (used[i]! - caps[i]!) + 0.5 * way[i]!;
      if (now[i]! >= worth[i]! && way[i]! < 0) way[i] = 0;
      norm += way[i]! ** 2;
    }
    if (norm === 0) return false;
    const move = (this.share * gap) / norm;
    for (let i = 0; i < caps.length; i++) now[i] = Math.max(0, Math.min(worth[i]!, now[i]! - move * way[i]!));
    return true;
  }
}
