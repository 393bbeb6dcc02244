/** One plate by local search over the order in which single pieces are laid: what is no worse is kept. */
import { type ChooseRule, type FillWay, layoutOf, type SplitRule, tryFill } from '../fill.ts';
import type { CutProblem, Layout } from '../problem.ts';
import type { Random } from '../random.ts';

const RULES: readonly SplitRule[] = ['rip', 'cross', 'large rest', 'short side'];
const CHOICES: readonly ChooseRule[] = ['area', 'side'];

export class PlateClimb {
  private readonly single: CutProblem;
  private readonly item: number[] = [];
  private readonly worth: Float64Array;
  private readonly random: Random;
  private way: FillWay;
  private value = -1;

  constructor(problem: CutProblem, worth: Float64Array, random: Random) {
    this.random = random;
    const items = problem.items.flatMap((one, i) =>
      one.demands.map(demand => {
        this.item.push(i);
        return { ...one, demands: [demand] };
      }),
    );
    this.single = { items, stocks: problem.stocks };
    this.worth = Float64Array.from(this.item, i => worth[i]!);
    this.way = { order: this.shaken(0.5), split: 'large rest', choose: 'side' };
  }

  /** Tries `steps` neighbours; returns the best plate seen in them. */
  climb(steps: number): { layout: Layout; value: number } | undefined {
    let best: { layout: Layout; value: number } | undefined;
    for (let step = 0; step < steps; step++) {
      const way = step === 0 ? this.way : this.neighbour();
      const left = new Int32Array(this.item.length).fill(1);
      const trial = tryFill(this.single.items, this.single.stocks, 0, left, way);
      const value = trial.steps.reduce((sum, { item }) => sum + this.worth[item]!, 0);
      if (value >= this.value) {
        this.way = way;
        this.value = value;
        if (!best || value > best.value)
          best = { layout: this.grouped(layoutOf(this.single.stocks, trial)), value };
      }
    }
    return best;
  }

  /** Begins again somewhere else. */
  restart(): void {
    this.way = {
      order: this.shaken(0.2 + this.random()),
      split: pick(RULES, this.random),
      choose: pick(CHOICES, this.random),
    };
    this.value = -1;
  }

  private shaken(noise: number): number[] {
    const key = this.item.map((_, i) => {
      const dense = this.worth[i]! / this.single.items[i]!.area;
      return dense * this.single.items[i]!.area ** 0.3 * (1 + noise * (this.random() - 0.5));
    });
    return key.map((_, i) => i).sort((a, b) => key[b]! - key[a]! || a - b);
  }

  private neighbour(): FillWay {
    const order = [...this.way.order];
    const moves = 1 + Math.floor(this.random() * 3);
    for (let k = 0; k < moves; k++) {
      const [taken] = order.splice(Math.floor(this.random() * order.length), 1);
      order.splice(Math.floor(this.random() * (order.length + 1)), 0, taken!);
    }
    if (this.random() < 0.9) return { ...this.way, order };
    return { order, split: pick(RULES, this.random), choose: pick(CHOICES, this.random) };
  }

  /** Single pieces named by their item again. */
  private grouped(layout: Layout): Layout {
    const counts = new Map<number, number>();
    const rename = (slab: Layout['slab']): void => {
      if (slab.item !== undefined) {
        slab.item = this.item[slab.item]!;
        counts.set(slab.item, (counts.get(slab.item) ?? 0) + 1);
      }
      if (slab.kept) rename(slab.kept);
      if (slab.rest) rename(slab.rest);
    };
    rename(layout.slab);
    return { ...layout, counts };
  }
}

const pick = <T>(from: readonly T[], random: Random): T => from[Math.floor(random() * from.length)]!;
